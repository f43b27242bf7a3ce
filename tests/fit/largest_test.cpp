#include "blockwright/check/check.hpp"
#include "fit/fit_people.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <utility>

using namespace blockwright;
using namespace blockwright_tests;

// Every row at the largest amount of the catalogue, and at what a newer tape may leave of it.

namespace {

RowAmount largest(const FittingRow& row, int sign) {
  RowAmount amount = usual(row, sign);
  amount.by = row.amount.most.mm();
  return amount;
}

// These close a dart by more than most blocks have: at their largest amount they may be refused
// everywhere. Back shoulder darts are 8 mm wide where the wedges close 10 to 25; a bust dart must
// keep 4 degrees; stitching cannot go on beyond the apex; front waist darts that share their intake
// with a second one are narrower than the 25 mm that row 30 lets out. All others are to serve three
// of four people: what they ask is within the room of a block, but for single shapes.
const std::set<std::pair<int, int>> kUsesUpDart = {{6, -1},  {17, -1}, {24, -1}, {27, -1}, {28, 1},
                                                   {29, -1}, {30, -1}, {36, -1}, {47, -1}};

// Seams and notches that do not walk, pieces that are not whole.
std::string faults_of(const FittedPattern& fitted) {
  std::string faults;
  for (const Problem& problem : check_pattern(fitted.pattern)) {
    if (problem.severity == Severity::Error) faults += to_text(problem) + "\n";
  }
  return faults;
}

// A refusal names row and amount, and tells what else to do: which tape to take again, where the
// row doubts one.
void check_refusal(const FittingRow& row, const Problem& refusal) {
  CHECK(refusal.code.rfind("fit.", 0) == 0);
  CHECK(is_said_of(refusal.where, row.row));
  CHECK(refusal.message.plain().find(" mm") != std::string::npos);
  CHECK_FALSE(refusal.message.empty());
  CHECK_FALSE(refusal.hint.empty());
  CHECK(refusal.measurements.empty() == (refusal.hint.plain().find(" again") == std::string::npos));
  if (row.doubts) CHECK_FALSE(refusal.measurements.empty());
}

}  // namespace

TEST_CASE("At its largest amount every row is applied soundly or refused by name") {
  for (const FittingRow& row : fitting_catalogue()) {
    for (const int sign : {1, -1}) {
      INFO("row " << row.number() << (sign > 0 ? "" : ", its reverse"));
      int applied = 0;
      for (const Pattern& block : each_block(5)) {
        const Outcome got = outcome(block, {largest(row, sign)});
        if (!got.fitted) {
          check_refusal(row, got.refusal);
          continue;
        }
        ++applied;
        CHECK(faults_of(*got.fitted) == "");
      }
      const bool may_lack = kUsesUpDart.contains({row.number(), sign});
      // Of every fifth of 60 people one or two decide.
      const double most_of_them = kSanitized ? 0.6 : 0.75;
      CHECK((may_lack || applied >= share_of_blocks(0.2 * most_of_them)));
    }
  }
}

TEST_CASE("However little a newer tape leaves of a correction, it is applied soundly") {
  for (const FittingRow& row : fitting_catalogue()) {
    for (const int sign : {1, -1}) {
      INFO("row " << row.number() << (sign > 0 ? "" : ", its reverse"));
      int applied = 0;
      for (const Pattern& block : each_block(15)) {
        RowAmount rest = usual(row, sign);
        rest.by = 0.1 * row.amount.least.mm();
        const Outcome got = outcome(block, {rest});
        if (!got.fitted) continue;
        ++applied;
        CHECK(faults_of(*got.fitted) == "");
      }
      const bool may_lack = kUsesUpDart.contains({row.number(), sign});
      CHECK((may_lack || applied >= share_of_blocks(0.9 / 15.0)));
    }
  }
}
