// What docs/darts.md says of the places of darts is what the tables of the pieces say.
#include "blockwright/block/kinds.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <set>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

/// A place, and how the rows of the two tables begin that speak of it.
struct Told {
  const PieceKind& kind;
  std::string_view place;
  std::string hold_back, widest;
};

const std::vector<Told>& told_places() {
  static const std::vector<Told> kTold = {
      {kBodiceFront, "shoulder", "front shoulder", "front shoulder"},
      {kBodiceFront, "neck", "front neck", "neck, centre front, low side, back waist"},
      {kBodiceFront, "centre_front", "front centre front",
       "neck, centre front, low side, back waist"},
      {kBodiceFront, "armhole", "front armhole", "front armhole"},
      {kBodiceFront, "side", "front side", "side"},
      {kBodiceFront, "french", "front low side (French), waist",
       "neck, centre front, low side, back waist"},
      {kBodiceFront, "waist", "front low side (French), waist", "front waist"},
      {kBodiceBack, "shoulder", "back shoulder, neck, armhole",
       "back shoulder, neck, armhole, centre back"},
      {kBodiceBack, "neck", "back shoulder, neck, armhole",
       "back shoulder, neck, armhole, centre back"},
      {kBodiceBack, "armhole", "back shoulder, neck, armhole",
       "back shoulder, neck, armhole, centre back"},
      {kBodiceBack, "waist", "back waist, centre back", "neck, centre front, low side, back waist"},
      {kBodiceBack, "centre_back", "back waist, centre back",
       "back shoulder, neck, armhole, centre back"}};
  return kTold;
}

/// The lines of the chapter with this heading.
std::vector<std::string> chapter(const std::string& heading) {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/docs/darts.md");
  REQUIRE(file.good());
  std::vector<std::string> lines;
  bool inside = false;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with("## ")) inside = line == "## " + heading;
    if (inside) lines.push_back(line);
  }
  return lines;
}

/// The numbers in the row of a table that begins with `name`, in mm. All of them are in cm.
std::vector<double> row(const std::vector<std::string>& lines, const std::string& name) {
  const auto line = std::ranges::find_if(
      lines, [&](const std::string& text) { return text.starts_with("| " + name + " |"); });
  REQUIRE(line != lines.end());
  std::vector<double> numbers;
  constexpr const char* kDigits = "0123456789.";
  for (std::size_t at = name.size(); (at = line->find_first_of(kDigits, at)) != std::string::npos;
       at = line->find_first_not_of(kDigits, at)) {
    numbers.push_back(10.0 * std::stod(line->substr(at)));
  }
  return numbers;
}

}  // namespace

TEST_CASE("docs/darts.md gives the hold-back of each place, by bust, and its widest mouth") {
  const auto parts = chapter("The parts of a dart"), widths = chapter("How wide a dart should be");
  std::set<const DartPosition*> seen;
  for (const Told& told : each(told_places())) {
    INFO(told.kind.name << " " << told.place);
    const auto position =
        std::ranges::find(told.kind.dart_positions, told.place, &DartPosition::name);
    REQUIRE(position != told.kind.dart_positions.end());
    seen.insert(&*position);
    // The columns: bust less underbust girth of 8, 13.7 and 20 cm.
    const std::vector<double> hold_backs = {hold_back(*position, 80.0), hold_back(*position, 137.0),
                                            hold_back(*position, 200.0)};
    CHECK(row(parts, told.hold_back) == hold_backs);
    CHECK(row(widths, told.widest) == std::vector<double>{position->widest_mouth});
    // Beyond the columns as at the last, and between them in proportion.
    CHECK(hold_back(*position, 0.0) == hold_backs[0]);
    CHECK(hold_back(*position, 300.0) == hold_backs[2]);
    CHECK(hold_back(*position, 168.5) == Approx(0.5 * (hold_backs[1] + hold_backs[2])));
  }
  CHECK(seen.size() == kBodiceFront.dart_positions.size() + kBodiceBack.dart_positions.size());
}
