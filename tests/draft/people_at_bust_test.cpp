// People of every bust from 72 to 120 cm, generated from the covariance of the 1988 survey given
// the bust (support/people.hpp), and the bust alone from 70 to 150: a refusal is for a body that
// cannot be, not for a size.
#include "support/armhole_shape.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

using namespace blockwright;

namespace {

constexpr unsigned kSeed = 1988;

// At most 2 in 100 of a group; ours.
constexpr int kMostRefusedPerCent = 2;

int most_refused(int count) { return std::max(1, kMostRefusedPerCent * count / 100); }

std::vector<int> every_fourth_cm() {
  std::vector<int> busts;
  for (int bust = 720; bust <= 1200; bust += 40) busts.push_back(bust);
  return busts;
}

std::vector<double> every_cm() {
  std::vector<double> busts;
  for (double bust = 700.0; bust <= 1500.0; bust += 10.0) busts.push_back(bust);
  return busts;
}

}  // namespace

TEST_CASE("Of people at any bust from 72 to 120 cm at most two in a hundred are refused") {
  const int count = people(100);
  for (const int bust : each(every_fourth_cm(), "bust, mm")) {
    int refused = 0;
    std::string why;
    for (Session session : each_at_bust(bust, count, kSeed)) {
      // The survey has no across front: the people of its covariance have none either.
      session.tape[MeasurementName::AcrossFront].reset();
      const std::string errors = errors_of(checked_block(session).report);
      if (errors.empty()) continue;
      ++refused;
      why += errors + "\n";
    }
    INFO(why);
    CHECK(refused <= most_refused(count));
  }
}

TEST_CASE("Of people at any bust from 72 to 140 cm at most one in a hundred has an odd armhole") {
  const int count = people(100);
  for (int bust = 720; bust <= 1400; bust += 40) {
    int odd = 0;
    for (Session session : each_at_bust(bust, count, kSeed)) {
      session.tape[MeasurementName::AcrossFront].reset();
      const CheckedBlock checked = checked_block(session);
      if (has_errors(checked.report.problems)) continue;
      odd += broken_laws(armhole_shape(checked.block.pattern)).empty() ? 0 : 1;
    }
    INFO("bust " << bust << " mm");
    CHECK(odd <= 1);
  }
}

TEST_CASE("The bust girth alone drafts every centimetre from 70 to 150") {
  for (const double bust : each(every_cm(), "bust, mm")) {
    CHECK(errors_of(checked_block(bust_only(bust)).report) == "");
  }
}
