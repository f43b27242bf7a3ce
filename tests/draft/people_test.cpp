// Two thousand people generated from the covariance of the 1988 survey (support/people.hpp): each
// drafts with every check passed, or is refused with the measurements named. The cases of [crowd]
// run together, so that the crowd is drafted once (tests.cmake).
#include "support/people.hpp"

#include "support/armhole_shape.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace blockwright;
using enum MeasurementName;

namespace {

const int kPeople = people(2000);
constexpr unsigned kSeed = 19880;
// Sets so contradictory that no armhole closes: 3 in 1,000 of the survey's own women
// (docs/method.md, "How often, on real women"); half a percent is our limit.
const int kMostRefused = kPeople / 200;

const std::vector<CheckedBlock>& crowd() {
  static const std::vector<CheckedBlock> kCrowd = [] {
    std::vector<CheckedBlock> blocks;
    for (Session session : each_person(kPeople, kSeed)) {
      // The survey has no across front: the people of its covariance have none either.
      session.tape[AcrossFront].reset();
      blocks.push_back(checked_block(session));
    }
    return blocks;
  }();
  return kCrowd;
}

auto each_of_crowd() {
  return each(crowd(),
              "survey_people(" + std::to_string(kPeople) + ", " + std::to_string(kSeed) + ")");
}

bool is_refused(const CheckedBlock& checked) { return has_errors(checked.report.problems); }

}  // namespace

TEST_CASE("Everybody drafts with all checks passed or is refused with the measurement named",
          "[crowd]") {
  int refused = 0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    if (!is_refused(checked)) continue;
    ++refused;
    for (const Problem& problem : checked.report.problems) {
      if (problem.severity != Severity::Error) continue;
      INFO(to_text(problem));
      CHECK((problem.code == "check.armhole" || problem.code == "check.curve" ||
             problem.code == "draft.adjusted"));
      CHECK((measurement_named(problem.where).has_value() ||
             problem.hint.plain().find("_girth") != std::string::npos));
    }
  }
  CHECK(crowd().size() == static_cast<std::size_t>(kPeople));
  REQUIRE(kMostRefused > 0);
  CHECK(refused <= kMostRefused);
}

TEST_CASE(
    "An across front that goes its own way is refused for three people in two hundred at most") {
  // Across front scattered 15 mm about across back less 25, whatever the bust and upper chest say.
  int refused = 0;
  for (const Session& session : each_person(kPeople, kSeed)) {
    refused += is_refused(checked_block(session)) ? 1 : 0;
  }
  CHECK(refused <= 3 * kPeople / 200);
}

TEST_CASE("Every measurement comes back plus its ease, or is named with what reconciling did",
          "[crowd]") {
  long rows = 0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    for (const MeasureBack& row : checked.report.measure_back) {
      INFO(info(row.name).key);
      // An adjustment of less than 0.001 is not told.
      REQUIRE(abs(row.residual() - row.adjustment).number() <= 0.002);
      ++rows;
    }
  }
  CHECK(rows >= 15L * kPeople);
}

TEST_CASE("Half the back neckline is 0.156 to 0.256 of the neck base girth", "[crowd]") {
  // 1st to 99th percentile of 2,208 women: Gordon et al. 1989, NATICK/TR-89/044, strap length less
  // twice neck to bust point; mean 0.206.
  std::vector<double> shares;
  for (const CheckedBlock& checked : each_of_crowd()) {
    const double share =
        length_of(checked.report, "back.neckline") / checked.body[NeckBaseGirth].number();
    CHECK(share > 0.156);
    CHECK(share < 0.256);
    shares.push_back(share);
  }
  CHECK(median_of(shares) == Approx(0.206).margin(0.016));
}

TEST_CASE("Finished shoulders slope 8 to 36 degrees, and 18 to 26 on the average", "[crowd]") {
  // Survey mean 25.7 (Gordon et al. 1989); ASTM D5585-95: 23 degrees (from memory).
  double sum = 0.0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    const MeasureBack* slope = row_of(checked.report, ShoulderSlope);
    REQUIRE(slope != nullptr);
    const double degrees = slope->pattern.number();
    CHECK(degrees >= 8.0 - 1e-6);
    CHECK(degrees <= 36.0 + 1e-6);
    sum += degrees;
  }
  CHECK(sum / kPeople > 18.0);
  CHECK(sum / kPeople < 26.0);
}

TEST_CASE("The armhole is 20 to 90 mm longer than the armscye, by the median as asked", "[crowd]") {
  // Band: textbook blocks against the 1988 survey's armscye (from memory; docs/sources.md).
  std::vector<double> more;
  for (const CheckedBlock& checked : each_of_crowd()) {
    if (is_refused(checked)) continue;
    more.push_back(length_of(checked.report, "armhole") - checked.body[ArmscyeGirth].number());
    CHECK(more.back() >= 20.0);
    CHECK(more.back() <= 90.0);
  }
  CHECK(median_of(more) == Approx(35.0).margin(3.0));
}

TEST_CASE("Of a hundred drafted armholes at least 99 keep each law of a fair armhole", "[crowd]") {
  // Back hollow 0.13 to 0.28 of its chord, back share 0.42 to 0.52, no radius under 12 mm, 180
  // degrees at the sewn underarm: ours (support/armhole_shape.cpp).
  std::map<std::string, int> broken;
  int drafted = 0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    if (is_refused(checked)) continue;
    ++drafted;
    for (const std::string& law : broken_laws(armhole_shape(checked.block.pattern))) ++broken[law];
  }
  for (const auto& [law, count] : broken) {
    INFO(law);
    // Among few people one or two more may do so by chance.
    CHECK(count <= drafted / 100 + (kSanitized ? 2 : 0));
  }
  CHECK(drafted > 0.98 * kPeople);
}

TEST_CASE("Bust darts stay within 3 to 40 degrees and both front darts are a usual pair",
          "[crowd]") {
  // Bounds of the draft; "seldom under 20 or over 45 together" is common practice, no source.
  std::vector<double> both;
  int usual = 0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    const Piece& front = checked.block.pattern.piece("front");
    const double bust = front.dart("shoulder").angle().degrees();
    CHECK(bust >= 3.0 - 1e-9);
    CHECK(bust <= 40.0 + 1e-9);
    both.push_back(bust + front.dart("waist").angle().degrees());
    if (both.back() >= 18.0 && both.back() <= 50.0) ++usual;
  }
  CHECK(median_of(both) == Approx(30.0).margin(5.0));
  CHECK(usual > 0.8 * kPeople);
}

TEST_CASE("Side seams, shoulder seams and dart legs walk to a thousandth of a millimetre",
          "[crowd]") {
  for (const CheckedBlock& checked : each_of_crowd()) {
    const auto& report = checked.report;
    REQUIRE(length_of(report, "front.side") == Approx(length_of(report, "back.side")).margin(1e-6));
    REQUIRE(length_of(report, "front.shoulder") ==
            Approx(length_of(report, "back.shoulder")).margin(1e-6));
    for (const Piece& piece : checked.block.pattern.pieces) {
      for (const Dart& dart : piece.darts) {
        REQUIRE(distance(dart.apex, dart.legs[0]) ==
                Approx(distance(dart.apex, dart.legs[1])).margin(1e-9));
      }
    }
  }
}

TEST_CASE("Ordinary bodies are not complained about") {
  // Upper chest over bust: 23 % of the survey, ASTM D5585-11e1 sizes 00 to 2; hip under bust: 10 %.
  Session session = bust_only(860.0);
  tape(session, UpperChestGirth, 875.0);
  tape(session, HipGirth, 850.0);
  const CheckedBlock checked = checked_block(session);
  CHECK(errors_of(checked.report).empty());
}

TEST_CASE("A full set of consistent tapes is not limited by much", "[crowd]") {
  int warned = 0;
  for (const CheckedBlock& checked : each_of_crowd()) {
    for (const Problem& problem : checked.report.problems) {
      if (problem.severity == Severity::Warning) {
        ++warned;
        break;
      }
    }
  }
  // docs/method.md states the share on the survey's own rows.
  CHECK(warned < 0.6 * kPeople);
}
