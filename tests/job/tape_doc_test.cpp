// The table of docs/tape.md that says which errors of the tape matter most, computed anew.
// BLOCKWRIGHT_APPROVE=1 in the environment writes it.
#include "blockwright/base/number_text.hpp"
#include "blockwright/draft/bands.hpp"
#include "blockwright/text/units.hpp"
#include "support/band_width.hpp"
#include "support/people.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <functional>

namespace tape_doc_test {

using namespace blockwright;
using namespace blockwright_tests;
using enum MeasurementName;

namespace {

const std::string kPage = std::string(BLOCKWRIGHT_SOURCE_DIR) + "/docs/tape.md";
constexpr const char* kHead =
    "| measurement | a usual error | all lines, in the mean | the line that moves most |\n"
    "|---|---|---|---|\n";
// Of less the page says nothing.
constexpr double kWorthSaying = 0.2;

// The survey's mean woman, everything taped.
Body mean_woman() {
  Session session = bust_only(907.0);
  const Body body = fill_in(session);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (body.has(entry.name)) tape(session, entry.name, body[entry.name].number());
  }
  return fill_in(session);
}

struct Effect {
  MeasurementName name;
  double mean = 0.0;  // of all lines, mm
  LengthBand most;
};

Effect effect_of(MeasurementName name) {
  const Body body = mean_woman();
  BodySpread spread;
  spread.set(name, name, std::pow(tape_sd(name).number(), 2.0));
  const Ease ease = Ease::of_toile();
  const BlockBands bands = block_bands(body, spread, ease, draft_block(body, ease));
  return {name, width_of(bands) / kBandSd,
          *std::ranges::max_element(bands.lengths, std::less(), &LengthBand::aside)};
}

std::string row_of(const Effect& effect) {
  const Measure error = tape_sd(effect.name);
  return fmt::format(
      "| {} | {} | {} mm | {}, {} mm |\n", name_text(info(effect.name).key),
      error.is_angle() ? angle_text(error.angle()) : fixed(error.number(), 0) + " mm",
      fixed(effect.mean, 1), name_text(effect.most.piece + "." + effect.most.edge),
      fixed(effect.most.aside.mm() / kBandSd, 1));
}

std::string table_computed() {
  std::vector<Effect> effects;
  const Body body = mean_woman();
  for (const MeasurementInfo& entry : kMeasurements) {
    if (body.has(entry.name)) effects.push_back(effect_of(entry.name));
  }
  std::ranges::stable_sort(effects, std::greater(), &Effect::mean);
  std::string table = kHead;
  for (const Effect& effect : effects) {
    if (effect.mean >= kWorthSaying) table += row_of(effect);
  }
  return table;
}

struct Table {
  std::size_t from = 0, count = 0;
};

Table table_in(const std::string& page) {
  const std::size_t from = page.find(kHead);
  REQUIRE(from != std::string::npos);
  return {from, std::min(page.find("\n\n", from) + 1, page.size()) - from};
}

}  // namespace

TEST_CASE("The page on the tape says which errors matter most, as computed") {
  std::string page = read_bytes(kPage);
  const auto [from, count] = table_in(page);
  const std::string computed = table_computed();
  if (std::getenv("BLOCKWRIGHT_APPROVE") != nullptr) {
    page.replace(from, count, computed);
    std::ofstream(kPage, std::ios::binary) << page;
    return;
  }
  CHECK(page.substr(from, count) == computed);
}

}  // namespace tape_doc_test
