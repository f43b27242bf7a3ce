#include "blockwright/dart/opened.hpp"
#include "fit/tried_rows.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

// Edges that a row may move; rows that shift or turn a whole part are not listed.
const std::map<int, std::set<std::string>>& named_edges() {
  static const std::set<std::string> shoulders = {"front.shoulder", "front.armhole",
                                                  "back.shoulder", "back.armhole"};
  static const std::set<std::string> sides = {"front.side", "front.armhole", "back.side",
                                              "back.armhole"};
  static const std::set<std::string> front_dart = {"front.shoulder", "front.armhole",
                                                   "front.waist"};
  static const std::map<int, std::set<std::string>> edges = {
      {1, {"front.neckline", "front.centre_front", "back.neckline"}},
      {2, {"front.neckline", "front.centre_front", "back.neckline"}},
      {7, {"back.neckline", "back.centre_back"}},
      {9, shoulders},
      {10, shoulders},
      {17, {"back.shoulder", "back.armhole"}},
      {19, sides},
      {20, sides},
      {21, {"front.armhole"}},
      {22, {"back.armhole"}},
      {25, sides},
      {26, front_dart},
      {29, {"front.waist"}},
      {30, {"front.shoulder", "front.armhole"}},
      {31, front_dart},
      {32, {}},
      {38, {"back.waist", "back.centre_back"}},
      {41, {"front.waist", "front.centre_front"}},
      {45, {"back.waist", "back.centre_back"}},
  };
  return edges;
}

// Whether a shoulder point that came in took an across point along, which stays in: a longer
// shoulder does not widen a chest. In one fitting both amounts are one.
bool came_in(const FittedPattern& fitted) {
  const Effect& effect = fitted.effects.front();
  const bool of_shoulder =
      effect.row == CorrectionRow::ShoulderShorter || effect.row == CorrectionRow::ShoulderLonger;
  return of_shoulder && std::ranges::any_of(effect.moved, [](const MovedLength& moved) {
           return moved.name.starts_with("across_");
         });
}

// A neck that is narrowed stays round: one that is drafted as sharp as that is drawn anew for good.
// Narrowed at the sides it keeps more of its roundness than where it is drawn parallel.
bool is_tight(const Pattern& block, int row) {
  return std::ranges::any_of(block.pieces, [&](const Piece& piece) {
    return least_radius(piece.edge("neckline").path) < (row == 8 ? 26.0 : 20.0);
  });
}

struct LawCount {
  std::vector<double> exact, ratio;
};

double share_beyond(const std::vector<double>& values, double middle, double limit) {
  const auto beyond = std::count_if(values.begin(), values.end(),
                                    [&](double value) { return std::abs(value - middle) > limit; });
  return values.empty() ? 0.0 : static_cast<double>(beyond) / static_cast<double>(values.size());
}

// Ratios that depend much on the curve: only their median is asked for.
const std::set<std::string> kRough = {"8 neckline",      "9 armhole",  "10 armhole",
                                      "22 back.armhole", "49 armhole", "14 front.neckline",
                                      "13 back.armhole"};

}  // namespace

TEST_CASE("Every row is applied in both directions to 300 people, or refused by name", "[tried]") {
  for (const auto& [asked, people] : tried_rows()) {
    const int number = number_of(asked.row);
    INFO(text_of(asked));
    int applied = 0, unfair = 0;
    std::set<std::string> refusals;
    for (const TriedRow& tried : each(people)) {
      if (tried.refusal) {
        CHECK(tried.refusal->code.substr(0, 4) == "fit.");
        CHECK(is_said_of(tried.refusal->where, numbered(number)));
        CHECK(tried.refusal->message.plain().find("mm") != std::string::npos);
        refusals.insert(tried.refusal->code);
        continue;
      }
      ++applied;
      CHECK(tried.whole);
      if (!tried.fair) ++unfair;
      CHECK(tried.widest_gap < 0.1);  // mm
    }
    // A neck dart that is not there cannot be closed; nor a bust dart of 4 degrees. A back shoulder
    // dart of 8 mm closes where the wedge of row 24 asks for less. Some waist darts are short.
    const bool impossible = number == 36 && asked.sign < 0;
    const bool often = number == 27 || number == 28 || number == 47 || number == 35 ||
                       number == 24 || number == 6 || number == 29;
    CHECK(applied >= share_of_blocks(impossible ? 0.0 : often ? 0.4 : 0.95));
    CAPTURE(refusals);
    // Corners square to 1 degree, joined seams smooth to 3, no new inflections.
    CHECK(unfair <= 1 + share_of_blocks(0.007));
  }
}

TEST_CASE("What the rows predict comes out on 300 people", "[tried]") {
  for (const auto& [asked, people] : tried_rows()) {
    std::map<std::string, LawCount> laws;
    for (const TriedRow& tried : people) {
      for (const MovedLength& moved : tried.moved) {
        if (!moved.predicted) continue;
        if (moved.sample) {
          laws[moved.name].ratio.push_back(moved.change() / *moved.predicted);
        } else {
          laws[moved.name].exact.push_back(moved.change() - *moved.predicted);
        }
      }
    }
    for (auto& [name, law] : laws) {
      INFO(text_of(asked) << ": " << name);
      // Exact laws within 0.5 mm. A few armholes of hardly any height cannot follow; a fold below
      // the bust lets some sides lean so far that the armhole turns with them. A back neckline
      // that is nearly straight cannot be drawn flatter where the nape is folded down.
      const bool cannot_follow = name.ends_with(".armhole") || name == "back.neckline";
      // What did not move at all is not among them.
      const double share =
          static_cast<double>(law.exact.size()) / static_cast<double>(people.size());
      CHECK(share * share_beyond(law.exact, 0.0, 0.5) <= (cannot_follow ? 0.2 : 0.1));
      if (law.ratio.empty()) continue;
      // Of the few people that sanitizers have time for the middle one wanders more.
      const double within = law.ratio.size() < 100 ? 0.6 : 0.3;
      CHECK(std::abs(median_of(law.ratio) - 1.0) <= within);
      if (kRough.count(std::to_string(number_of(asked.row)) + " " + name) == 0) {
        CHECK(share_beyond(law.ratio, 1.0, 0.3) <= 0.2);
      }
    }
  }
}

TEST_CASE("Only the edges that a row names move; all others are the same to the last bit") {
  for (const auto& [number, names] : named_edges()) {
    for (const Pattern& block : each_block(10)) {
      const Outcome got = outcome(block, {usual(fitting_row(numbered(number)), 1)});
      if (!got.fitted) continue;
      for (const Piece& drafted : block.pieces) {
        // A piece that is fitted is parted at its dart legs, which may round a handle's last bit.
        const Piece piece = put_together(opened(drafted));
        for (const Edge& edge : piece.edges) {
          const std::string name = piece.name + "." + edge.name;
          if (names.count(name) > 0) continue;
          INFO("row " << number << ": " << name);
          const Path& is = got.fitted->pattern.piece(piece.name).edge(edge.name).path;
          CHECK((is == edge.path || is == drafted.edge(edge.name).path));
        }
      }
    }
  }
}

TEST_CASE("Zero is the identity, and so are plus and minus of one row together") {
  for (const FittingRow& row : fitting_catalogue()) {
    INFO(row.number());
    RowAmount none = usual(row, 1);
    none.by = 0.0;
    const RowAmount plus = usual(row, 1), minus = usual(row, -1);
    RowAmount tenths[] = {plus, minus, minus};
    for (int i = 0; i < 3; ++i) tenths[i].by = 0.1 * (3 - i);  // 0.3 less 0.2 less 0.1: not quite 0
    for (const FittedPattern& fitted :
         each({apply_rows(usual_block(), {none}), apply_rows(usual_block(), {plus, minus}),
               apply_rows(usual_block(), {tenths[0], tenths[1], tenths[2]})})) {
      REQUIRE(fitted.pattern.pieces.size() == 2);
      for (const Piece& piece : fitted.pattern.pieces) {
        for (const Edge& edge : piece.edges) {
          CHECK(edge.path == usual_block().piece(piece.name).edge(edge.name).path);
        }
      }
    }
  }
}

TEST_CASE("Plus, then minus on the fitted pattern, gives the first outline within 0.1 mm") {
  // Row 14 trims one piece's own curve and blends the other's: there and back in one fitting is the
  // identity, one after the other it is not.
  for (const int number : {1, 2, 3, 4, 8, 9, 10, 11, 12, 13, 39, 40, 41, 44}) {
    for (const int sign : {1, -1}) {
      int tried = 0, off = 0;
      for (const Pattern& block : each_block(6)) {
        const Outcome there = outcome(block, {usual(fitting_row(numbered(number)), sign)});
        if (!there.fitted) continue;
        const Outcome back =
            outcome(there.fitted->pattern, {usual(fitting_row(numbered(number)), -sign)});
        if (!back.fitted) continue;
        ++tried;
        if (came_in(*there.fitted) || came_in(*back.fitted)) continue;
        if ((number == 3 || number == 4 || number == 8) && is_tight(block, number)) continue;
        if (apart(block, back.fitted->pattern) > 0.1) ++off;
      }
      INFO("row " << number << " " << sign << ": " << off << " of " << tried);
      const int asked = share_of_blocks(1.0 / 6.0);
      CHECK(tried >= asked * 4 / 5);
      // Under a steep shoulder the front neckline gives up a part of its right angle for good. A
      // fold below the bust makes short waist darts end nearer to their apex for good, and a strip
      // above it leaves some front armholes, whose lower part is nearly level, 0.11 to 0.13 mm off.
      const bool for_good = number == 39 || number == 40 || (number >= 11 && number <= 13);
      CHECK(off <= 1 + asked * (for_good ? 3 : 1) / 25);
    }
  }
}

TEST_CASE("Two rows that do not meet give the same in either order") {
  const RowAmount neck{CorrectionRow::FrontNeckLower, 1, 6.0, AmountAs::Length, BodySide::Both, ""};
  const RowAmount waist{
      CorrectionRow::WaistTakenIn, 1, 10.0, AmountAs::PerHalf, BodySide::Both, "waist"};
  const RowAmount under{CorrectionRow::UnderarmLower, 1, 6.0, AmountAs::Length, BodySide::Both, ""};
  const FittedPattern one = apply_rows(usual_block(), {neck, waist, under});
  const FittedPattern other = apply_rows(usual_block(), {under, waist, neck});
  CHECK(apart(one.pattern, other.pattern) < 1e-9);
  // The tool keeps the fitter's order: neck base, widths, armhole.
  std::vector<int> rows;
  for (const Effect& effect : other.effects) rows.push_back(number_of(effect.row));
  CHECK(rows == std::vector<int>{1, 44, 19});
}

TEST_CASE("An amount counts as it was read") {
  const auto waist_change = [](AmountAs as, const char* place) {
    return change(usual_block(), {CorrectionRow::WaistTakenIn, 1, 8.0, as, BodySide::Both, place},
                  "waist");
  };
  // 8 mm: on the whole waist; on each half; from each of two edges of both sides; a tuck of 8 mm
  // depth on each side takes 16 mm there.
  CHECK(waist_change(AmountAs::WholeGirth, "waist") == Approx(-8.0).margin(0.01));
  CHECK(waist_change(AmountAs::PerHalf, "waist") == Approx(-16.0).margin(0.01));
  CHECK(waist_change(AmountAs::PerSeam, "side_at_waist") == Approx(-32.0).margin(0.01));
  CHECK(waist_change(AmountAs::TuckDepth, "side_at_waist") == Approx(-32.0).margin(0.01));
  // At the centre back one seam serves both halves: p from each piece.
  const RowAmount seam{
      CorrectionRow::CentreSeamTakenIn, 1, 8.0, AmountAs::PerSeam, BodySide::Both, "centre_back"};
  CHECK(change(usual_block(), seam, "waist") == Approx(-16.0).margin(0.2));
  // A dart pinned 3 mm deeper has a mouth 6 mm wider, on each half: 12 mm less of the waist.
  const RowAmount dart{
      CorrectionRow::FrontShoulderDartWider, 1, 3.0, AmountAs::TuckDepth, BodySide::Both, ""};
  CHECK(change(usual_block(), dart, "front.shoulder dart") == Approx(6.0).margin(1e-6));
  CHECK(waist_change(AmountAs::TuckDepth, "front_waist_dart") == Approx(-32.0).margin(0.01));
  CHECK(waist_change(AmountAs::WholeGirth, "waist_darts") == Approx(-8.0).margin(0.01));
  // A fold of 8 mm depth along the shoulder seam takes 8 mm from each piece, however it is read.
  for (const AmountAs as : {AmountAs::Length, AmountAs::TuckDepth, AmountAs::PerSeam}) {
    const RowAmount seams{CorrectionRow::ShouldersTakenUp, 1, 8.0, as, BodySide::Both, ""};
    CHECK(change(usual_block(), seams, "back.centre_back") == Approx(-8.0).margin(1e-6));
  }
  // A fold of 5 mm depth across the bodice takes 10 mm of its length.
  const RowAmount fold{
      CorrectionRow::LongerBelowBust, -1, 5.0, AmountAs::TuckDepth, BodySide::Both, ""};
  CHECK(change(usual_block(), fold, "back.centre_back") == Approx(-10.0).margin(1e-6));
}

// Facts of the trade. Common practice, no source.

TEST_CASE("A front neck lowered by 10 mm lengthens the whole neckline by about 16 mm") {
  const RowAmount row{CorrectionRow::FrontNeckLower, 1, 10.0, AmountAs::Length, BodySide::Both, ""};
  std::vector<double> gains;
  for (const Pattern& block : each_block()) gains.push_back(change(block, row, "neckline"));
  CHECK(median_of(gains) == Approx(16.0).margin(1.6));
}

TEST_CASE("An underarm lowered by 10 mm shortens both sides alike and lengthens the armhole") {
  // Said to be 10 to 14 mm, front and back together, of an armhole that only its end is moved of.
  // Drawn anew as a whole, which keeps it as round, it gives about 18.
  const RowAmount row{CorrectionRow::UnderarmLower, 1, 10.0, AmountAs::Length, BodySide::Both, ""};
  std::vector<double> gains;
  for (const Pattern& block : each_block()) {
    const FittedPattern fitted = apply_rows(block, {row});
    gains.push_back(change(block, row, "armhole"));
    for (const char* piece : each({"front", "back"})) {
      CHECK(sewn(block, piece, "side") - sewn(fitted.pattern, piece, "side") ==
            Approx(10.0).margin(1e-6));
    }
  }
  CHECK(median_of(gains) > 10.0);
  CHECK(median_of(gains) < 19.0);
}

TEST_CASE("15 mm taken out at each centre back take 30 mm from the waist, nothing from the front") {
  const RowAmount row{
      CorrectionRow::CentreSeamTakenIn, 1, 15.0, AmountAs::PerSeam, BodySide::Both, "centre_back"};
  for (const Pattern& block : each_block()) {
    const FittedPattern fitted = apply_rows(block, {row});
    CHECK(change(block, row, "waist") == Approx(-30.0).margin(0.5));
    CHECK(fitted.pattern.piece("front").edge("waist").path ==
          block.piece("front").edge("waist").path);
  }
}

TEST_CASE("Cloth taken out at the shoulders raises the bust line by what was taken") {
  const RowAmount front{
      CorrectionRow::FrontShoulderTakenUp, 1, 8.0, AmountAs::Length, BodySide::Both, ""};
  for (const Pattern& block : each_block()) {
    const Piece& was = block.piece("front");
    const Piece is = apply_rows(block, {front}).pattern.piece("front");
    CHECK(is.landmark("side_neck_point").y - is.landmark("bust_point").y ==
          Approx(was.landmark("side_neck_point").y - was.landmark("bust_point").y - 8.0));
  }
}

TEST_CASE("A fold of depth p stitched at the centre front brings the bust points 2p closer") {
  const RowAmount row{
      CorrectionRow::BustPointsApart, -1, 5.0, AmountAs::TuckDepth, BodySide::Both, ""};
  CHECK(change(usual_block(), row, "bust_points") == Approx(-10.0).margin(1e-9));
}

TEST_CASE("A square shoulder lifts the underarm with it, and the armhole keeps its length") {
  const RowAmount row{
      CorrectionRow::ShoulderPointHigher, 1, 6.0, AmountAs::Length, BodySide::Both, ""};
  CHECK(change(usual_block(), row, "front.side") == Approx(6.0).margin(1e-6));
  CHECK(std::abs(change(usual_block(), row, "armhole")) < 0.5);
  const FittedPattern fitted = apply_rows(usual_block(), {row});
  CHECK(sewn(fitted.pattern, "front", "shoulder") ==
        Approx(sewn(usual_block(), "front", "shoulder")).margin(1e-6));
}
