// What cannot be cut after a correction: each limit from both sides.
#include "fit/fit_people.hpp"
#include "halves.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>

#include <functional>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

/// The usual half block, its front changed.
HalfBlock with_front(const std::function<void(Opened&)>& change) {
  HalfBlock half = halves_of(usual_block()).right;
  change(half.front);
  return half;
}

std::string refused(const HalfBlock& before, const HalfBlock& after) {
  try {
    require_possible({before, after});
  } catch (const InputError& error) {
    return error.problem().code + ": " + error.problem().message.plain();
  }
  return "";
}

double from_bust_point(const Opened& front) {
  double near = 1e9;
  for (std::size_t e = 0; e + 1 < front.edges.size(); ++e) {
    for (const Path& stretch : front.edges[e].stretches) {
      near = std::fmin(near, nearest(stretch, apex_of(front)).distance);
    }
  }
  return near;
}

/// The bust point lowered until an edge is so near.
HalfBlock with_edge_at(double distance) {
  return with_front([&](Opened& front) {
    Point& apex = front.at(shoulder_dart(front)).apex;
    while (from_bust_point(front) > distance) apex.y -= 0.02;
  });
}

enum class FrontDart { Shoulder, Waist };

/// The dart so wide, its legs a third as long, lest they meet the armhole.
HalfBlock with_dart_of(double degrees, FrontDart which) {
  return with_front([&](Opened& front) {
    Dart& dart =
        front.at(which == FrontDart::Shoulder ? shoulder_dart(front) : waist_dart(front).value());
    for (Point& leg : dart.legs) leg = between(dart.apex, leg, 0.3);
    const Angle more = Angle::degrees(degrees) - dart.angle();
    const bool legs_turn_left = cross(dart.legs[0] - dart.apex, dart.legs[1] - dart.apex) > 0.0;
    dart.legs[1] = rotated_about(dart.legs[1], dart.apex, legs_turn_left ? more : Angle() - more);
  });
}

/// The largest amount that a row takes before it is refused with the code, to 0.001 mm.
double most_before(const std::string& code,
                   const std::function<std::vector<RowAmount>(double)>& rows, double most) {
  double taken = 0.0;
  double over = most;
  REQUIRE(outcome(usual_block(), rows(most)).refusal.code == code);
  while (over - taken > 0.001) {
    const double middle = 0.5 * (taken + over);
    (outcome(usual_block(), rows(middle)).fitted ? taken : over) = middle;
  }
  CHECK(outcome(usual_block(), rows(over)).refusal.code == code);
  return taken;
}

}  // namespace

TEST_CASE("An edge may come within 40 mm of the bust point and no nearer", "[kLeastToBustPoint]") {
  const HalfBlock before = halves_of(usual_block()).right;
  CHECK(has(refused(before, with_edge_at(39.9)), "fit.close"));
  CHECK(has(refused(before, with_edge_at(39.9)), "it must stay 40 mm off"));
  CHECK_FALSE(has(refused(before, with_edge_at(40.1)), "fit.close"));
  // One that was as near before is the draft's, not the correction's.
  CHECK_FALSE(has(refused(with_edge_at(39.9), with_edge_at(39.9)), "fit.close"));
}

TEST_CASE("A dart may grow to 45 degrees and no wider", "[kWidestAngle]") {
  const HalfBlock before = halves_of(usual_block()).right;
  for (const FrontDart which : {FrontDart::Shoulder, FrontDart::Waist}) {
    INFO(static_cast<int>(which));
    const auto wide = [&](double degrees) { return with_dart_of(degrees, which); };
    CHECK(has(refused(before, wide(45.1)), "at most 45 can be cut"));
    CHECK_FALSE(has(refused(before, wide(44.9)), "can be cut"));
    CHECK_FALSE(has(refused(wide(46.0), wide(45.9)), "can be cut"));
  }
}

TEST_CASE("Side seams may come to differ by 0.05 mm and no more") {
  const HalfBlock before = halves_of(usual_block()).right;
  const auto longer_by = [&](double by) {
    HalfBlock half = before;
    half.front =
        with_corner_moved(before.front, Corner::Underarm, by * up_to_the_underarm(before.front));
    return half;
  };
  CHECK(has(refused(before, longer_by(0.06)), "side seams would no longer be sewn together"));
  CHECK(has(refused(before, longer_by(-0.06)), "side seams would no longer be sewn together"));
  CHECK(refused(before, longer_by(0.04)).empty());
}

TEST_CASE("A bust is made fuller by 0.8 of the height from its point to the across point at most") {
  // Ours.
  const HalfBlock before = halves_of(usual_block()).right;
  const double height = across_of(before.front).y - apex_of(before.front).y;
  const auto too_near = [&](double width) {
    HalfBlock half = before;
    try {
      moves_of(CorrectionRow::FullerBust).apply(half, {width, ""});
    } catch (const InputError& error) {
      return has(error.problem().message.plain(), "too near the armhole");
    }
    return false;
  };
  CHECK_FALSE(too_near(0.79 * height));
  CHECK(too_near(0.81 * height));
}

/// What is refused of a block whose shoulders are longer by so many mm, half at either end.
struct LongerShoulders {
  double front, back;
};
Problem refusal_of(const LongerShoulders& by) {
  const HalfBlock drafted = halves_of(usual_block()).right;
  const auto moved = [](const Opened& open, double along) {
    const Opened narrower =
        with_corner_moved(open, Corner::ShoulderPoint, 0.5 * along * shoulder_at_tip(open));
    return with_corner_moved(narrower, Corner::SideNeck, -0.5 * along * shoulder_at_neck(open));
  };
  try {
    require_possible({drafted, {moved(drafted.front, by.front), moved(drafted.back, by.back)}});
  } catch (const InputError& error) {
    return error.problem();
  }
  return {};
}

TEST_CASE("A shoulder is corrected down to 25 mm and no shorter", "[kLeastShoulder]") {
  const HalfBlock drafted = halves_of(usual_block()).right;
  const double shorter = std::fmin(closed_length(drafted.front, BlockEdge::Shoulder),
                                   closed_length(drafted.back, BlockEdge::Shoulder));
  const auto code = [&](double left) { return refusal_of({left - shorter, left - shorter}).code; };
  CHECK(code(24.9) == "fit.strap");
  CHECK(code(25.1) != "fit.strap");
}

TEST_CASE("A correction makes a shoulder at most 25 mm longer", "[kMostShoulderGain]") {
  CHECK_FALSE(has(refusal_of({24.9, 24.9}).message.plain(), "is the same shoulder"));
  CHECK(has(refusal_of({25.1, 25.1}).message.plain(), "is the same shoulder"));
}

TEST_CASE("Half a back neck stays at least 0.12 of the whole neck", "[kLeastBackNeck]") {
  const HalfBlock drafted = halves_of(usual_block()).right;
  const auto share = [](const HalfBlock& half) {
    const double back = closed_length(half.back, BlockEdge::Neckline);
    return back / (2.0 * (back + closed_length(half.front, BlockEdge::Neckline)));
  };
  const auto deepened = [&](double by) {
    HalfBlock half = drafted;
    half.front = with_corner_moved(half.front, Corner::CentreNeck, {0.0, -by});
    return half;
  };
  const auto is_refused = [&](const HalfBlock& half) {
    try {
      require_possible({drafted, half});
    } catch (const InputError& error) {
      return has(error.problem().message.plain(), "half the back neck");
    }
    return false;
  };
  double by = 0.0;
  while (share(deepened(by + 1.0)) >= 0.12) by += 1.0;
  CHECK_FALSE(is_refused(deepened(by)));
  CHECK(is_refused(deepened(by + 1.0)));
}

TEST_CASE("A neckline is raised to a radius of 8 mm and no sharper", "[kLeastRadius]") {
  const auto rows = [](double by) { return std::vector{row(7, by, "", -1)}; };
  const FittedPattern left = apply_rows(usual_block(), rows(most_before("fit.curve", rows, 30.0)));
  const auto radius = [&](const char* piece) {
    return least_radius(left.pattern.piece(piece).edge("neckline").path);
  };
  CHECK(std::fmin(radius("front"), radius("back")) == Approx(8.0).margin(0.01));
}

TEST_CASE("Shoulders of front and back that could no longer be sewn together are refused",
          "[kSeamsMeet]") {
  const auto refusal = [](double longer) { return refusal_of({longer, 0.0}); };
  CHECK(refusal(0.04).code.empty());
  CHECK(refusal(0.06).code == "fit.limit");
  CHECK(has(refusal(0.06).message.plain(), "shoulders would no longer be sewn together"));
  CHECK(has(refusal(0.06).message.plain(), "at most 0.05 mm"));
}

TEST_CASE("A correction is at most three times the most of its row, and that is said",
          "[kMostTimes]") {
  struct Absurd {
    int number;
    double most;
    AmountAs as;
  };
  // Ours. A fold 2 cm deep across the chest takes 4 cm of it.
  for (const Absurd& one : {Absurd{50, 60.0, AmountAs::PerSeam}, Absurd{19, 60.0, AmountAs::Length},
                            Absurd{18, 19.5, AmountAs::TuckDepth}}) {
    INFO(one.number);
    RowAmount asked = row(one.number, one.most - 0.1);
    asked.as = one.as;
    CHECK(outcome(usual_block(), {asked}).refusal.code.empty());
    asked.by = one.most + 0.1;
    const Problem refusal = outcome(usual_block(), {asked}).refusal;
    CHECK(refusal.code == "fit.amount");
    CHECK(has(refusal.message.plain(), "no toile is so far off"));
  }
}

TEST_CASE("What the fitter watches misses what she pinned by 1 mm at most", "[kMostMissed]") {
  const auto taken_in = [](double by) {
    RowAmount asked = row(45, by);
    asked.place = "centre_back";
    return asked;
  };
  int refused = 0;
  for (const Pattern& block : each_block(30)) {
    double taken = 0.0, over = 45.0;
    const Problem refusal = outcome(block, {taken_in(over)}).refusal;
    if (!has(refusal.message.plain(), "only a part of it would come about")) continue;
    ++refused;
    while (over - taken > 0.001) {
      const double middle = 0.5 * (taken + over);
      (outcome(block, {taken_in(middle)}).fitted ? taken : over) = middle;
    }
    CHECK(2.0 * taken + change(block, taken_in(taken), "waist") == Approx(1.0).margin(0.01));
  }
  CHECK(refused >= (kSanitized ? 0 : 1));
}

TEST_CASE("A dart is not moved over the end of its edge") {
  // The bust point past the centre front.
  const HalfBlock before = halves_of(usual_block()).right;
  const auto closer_by = [&](double by) {
    HalfBlock half = before;
    moves_of(CorrectionRow::BustPointsApart).apply(half, {-by, ""});
    return refused(before, half);
  };
  CHECK(has(closer_by(95.0), "fit.place"));
  CHECK(closer_by(20.0).empty());
}

TEST_CASE("An edge is not led through a dart, scooped or taken in") {
  const HalfBlock before = halves_of(usual_block()).right;
  for (const CorrectionRow row :
       {CorrectionRow::FrontArmholeScooped, CorrectionRow::ArmholeLarger}) {
    INFO(number_of(row));
    HalfBlock half = before;
    moves_of(row).apply(half, {80.0, "front_armhole"});
    CHECK(has(refused(before, half),
              "fit.crossing: the front armhole would cut through the shoulder dart"));
  }
}

TEST_CASE("A bust dart keeps 4 degrees when the bust is made smaller", "[kLeastBustDart]") {
  const auto rows = [](double by) { return std::vector{row(27, by, "", -1)}; };
  const double by = most_before("fit.negative_dart", rows, 60.0);
  const FittedPattern left = apply_rows(usual_block(), rows(by));
  CHECK(left.pattern.piece("front").dart("shoulder").angle().degrees() == Approx(4.0).margin(0.01));
}

TEST_CASE("A dart keeps a mouth of 0.5 mm", "[kLeastMouth]") {
  const auto rows = [](double by) { return std::vector{row(17, by, "", -1)}; };
  const double by = most_before("fit.negative_dart", rows, 20.0);
  const FittedPattern left = apply_rows(usual_block(), rows(by));
  CHECK(left.pattern.piece("back").dart("shoulder").intake() == Approx(0.5).margin(0.01));
}

TEST_CASE("A leg is bowed by 6 mm at most", "[kMostBow]") {
  // Half of what is taken in under the bust goes to each leg.
  const auto rows = [](double by) { return std::vector{row(32, by)}; };
  CHECK(most_before("fit.limit", rows, 30.0) == Approx(12.0).margin(0.01));
}

TEST_CASE("A fold across the upper back takes 25 mm beyond what the shoulder dart gives",
          "[kMostFolded]") {
  const auto rows = [](double by) {
    return std::vector{
        RowAmount{CorrectionRow::UpperBackShorter, 1, by, AmountAs::Length, BodySide::Both, ""}};
  };
  const Opened back = halves_of(usual_block()).right.back;
  const Dart& dart = back.at(shoulder_dart(back));
  const double closes =
      dart.angle().radians() - 2.0 * std::asin(0.5 * 0.5 / distance(dart.apex, dart.legs[1]));
  const double by_dart = distance(dart.apex, across_of(back)) * std::sin(closes);
  CHECK(most_before("fit.amount", rows, 60.0) == Approx(by_dart + 25.0).margin(0.1));
}

TEST_CASE("A shoulder rises or falls by 0.9 of its length at most", "[kSteepest]") {
  // Ours. Of 100 mm across and 40 down: 107.7 mm long.
  const ClosedShoulder shoulder{{0.0, 0.0}, {50.0, -20.0}, {100.0, -40.0}, {50.0, -120.0}, Angle()};
  const double most = 0.9 * std::hypot(100.0, 40.0);
  CHECK(tip_raised(shoulder, 40.0 + most - 0.1).length() == Approx(std::hypot(100.0, 40.0)));
  CHECK_THROWS_AS(tip_raised(shoulder, 40.0 + most + 0.1), InputError);
  CHECK_NOTHROW(tip_raised(shoulder, 40.0 - most + 0.1));
  CHECK_THROWS_AS(tip_raised(shoulder, 40.0 - most - 0.1), InputError);
}

TEST_CASE("A bust is made fuller or smaller if its point is 20 mm below the armhole's across point",
          "[kLeastHinge]") {
  const auto told = [](double below) {
    HalfBlock half = with_front(
        [&](Opened& front) { front.at(shoulder_dart(front)).apex.y = across_of(front).y - below; });
    try {
      moves_of(CorrectionRow::FullerBust).apply(half, {2.0, ""});
    } catch (const InputError& error) {
      return error.problem().message.plain();
    }
    return std::string();
  };
  CHECK(has(told(19.9), "too near the armhole"));
  CHECK_FALSE(has(told(20.1), "too near the armhole"));
}

TEST_CASE("The armhole's across point stays 10 mm over the underarm", "[kLeastArmhole]") {
  const Opened back = halves_of(usual_block()).right.back;
  const double height = across_of(back).y - corner_of(back, Corner::Underarm).y;
  const auto is_refused = [&](double left) {
    try {
      (void)with_corner_moved(back, Corner::Underarm, {0.0, height - left});
    } catch (const InputError& error) {
      return has(error.problem().message.plain(), "lower armhole of the back would be used up");
    }
    return false;
  };
  CHECK_FALSE(is_refused(10.1));
  CHECK(is_refused(9.9));
}

TEST_CASE("A stroke of the outline keeps 2 mm from end to end", "[kLeastStroke]") {
  const auto told = [](double left) {
    const Opened back = halves_of(usual_block()).right.back;
    Redrawing work(back);
    const Vec across = work.at(Corner::SideNeck) - work.at(Corner::CentreNeck);
    work.move(Corner::CentreNeck, across - left * unit(across));
    try {
      (void)work.finished();
    } catch (const InputError& error) {
      return error.problem().message.plain();
    }
    return std::string();
  };
  CHECK(has(told(1.99), "the neckline would be used up"));
  CHECK_FALSE(has(told(2.01), "the neckline would be used up"));
}
