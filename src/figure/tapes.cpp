#include "tapes.hpp"

#include "blockwright/measure/tape_session.hpp"
#include "body_points.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using namespace body;
using enum MeasurementName;

constexpr Course straight(Point a, Point b) { return {{a, b}, 2}; }
constexpr Course bent(Point a, Point b, EndDirections ends) { return {{a, b}, 2, ends}; }
constexpr Course over(Point a, Point b, Point c, EndDirections ends = {}) {
  return {{a, b, c}, 3, ends};
}

// A level tape is drawn as an ellipse of these shares of its half width.
constexpr double kHangs = 0.11, kRises = 0.07;
constexpr Round level_round(double height, double half) {
  return {{0.0, height}, half, kHangs * half, kRises * half};
}

constexpr Tape girth(MeasurementName name, const Round& round) {
  return {.name = name, .figure = TapeFigure::Girths, .round = round, .held = HeldAt::Front};
}

// The armhole lines stand this far from the centre, in front and behind.
constexpr double kFrontHalf = 157.0, kBackHalf = 159.0;
constexpr double kBesideSpine = 26.0;
constexpr double kBesideBody = -230.0;
// Two arrows that end at one point are drawn so far apart that both are seen.
constexpr Point kBesideCentre{-8.0, kWaistLevel};
// Drawn beside the tape to the bust point, which it is one with.
constexpr Point kBesideBust{kBustPoint.x + 13.0, kBustLevel};
constexpr double kForward = 20.0;

// clang-format off
constexpr std::array<Tape, kMeasurementCount> kTapes{{
    girth(BustGirth, level_round(kBustLevel, 145)),
    girth(UpperChestGirth, level_round(kArmpitLevel + 6, 147)),
    girth(UnderbustGirth, level_round(kUnderbustLevel, 133)),
    girth(WaistGirth, level_round(kWaistLevel, kWaistSide.x)),
    girth(HipGirth, level_round(kHipLevel, kHipSide.x)),
    girth(NeckBaseGirth, {{0, kSideNeck.y}, kSideNeck.x, kSideNeck.y - kFrontNeck.y,
                          kNape.y - kSideNeck.y}),
    {.name = ArmscyeGirth, .figure = TapeFigure::Arm,
     .course = over(kShoulder, {152, 1286}, kUnderarm, {{-0.45, -1.0}, {0.1, -1.0}}),
     .hidden = over(kShoulder, {186, 1275}, kUnderarm, {{0.3, -1.0}, {-1.0, -0.6}}),
     .number = {0.36}, .held = HeldAt::Front, .held_share = 0.74},
    {.name = UpperArmGirth, .figure = TapeFigure::Arm,
     .round = {{189, 1207}, 40, 14, 9, Angle::degrees(10)}, .number = {0.5, {6, -24}},
     .held = HeldAt::Front},
    {.name = ShoulderLength, .figure = TapeFigure::Arm,
     .course = over(kSideNeck, {90, 1374}, kShoulder, {{0.34, -0.535}, {0.907, -0.421}}),
     .number = {0.5, {-12, -22}}},
    {.name = ShoulderSlope, .figure = TapeFigure::Arm,
     .course = over({134, kSideNeck.y}, {132.5, 1378}, {127, 1360}),
     .number = {0.45, {17, 3}}, .held = HeldAt::Nowhere},
    {.name = FrontShoulderSlant, .figure = TapeFigure::Front,
     .course = straight(right(kShoulder), kBesideCentre), .number = {0.32}},
    {.name = BackShoulderSlant, .figure = TapeFigure::Back,
     .course = straight(right(kShoulder), kBesideCentre), .number = {0.6}},
    {.name = BackWaistLength, .figure = TapeFigure::Back, .course = straight(kNape, kWaistCentre),
     .number = {0.72}},
    {.name = FrontWaistLength, .figure = TapeFigure::Front, .course = straight(kFrontNeck, kWaistCentre),
     .number = {0.37}},
    {.name = SideNeckToBustPoint, .figure = TapeFigure::Front,
     .course = bent(kSideNeck, kBustPoint, {{0.1, -1.0}, {0.15, -1.0}}), .number = {0.35, {-17, 0}}},
    {.name = SideNeckToWaist, .figure = TapeFigure::Front,
     .course = over(kSideNeck, kBesideBust, {kBesideBust.x, kWaistLevel}, {{0.4, -1.0}, {0.0, -1.0}}),
     .number = {0.87}},
    {.name = BustPointWidth, .figure = TapeFigure::Front,
     .course = straight(right(kBustPoint), kBustPoint), .number = {0.7}},
    {.name = AcrossBack, .figure = TapeFigure::Back,
     .course = straight({-kBackHalf, kAcrossLevel}, {kBackHalf, kAcrossLevel}), .number = {0.8}},
    {.name = AcrossFront, .figure = TapeFigure::Front,
     .course = straight({-kFrontHalf, kAcrossLevel}, {kFrontHalf, kAcrossLevel}), .number = {0.61}},
    {.name = SideLength, .figure = TapeFigure::Side, .course = straight(kSideUnderarm, kSideWaist)},
    {.name = ScyeDepth, .figure = TapeFigure::Back,
     .course = straight({kBesideSpine, kNape.y}, {kBesideSpine, kArmpitLevel}), .number = {0.42}},
    {.name = FrontBustWidth, .figure = TapeFigure::Front,
     .course = over({-145, kBustLevel}, {0, 1136}, {145, kBustLevel}, {{0.8, -1.0}, {0.8, 1.0}}),
     .number = {0.605}},
    {.name = WaistToHip, .figure = TapeFigure::Side,
     .course = straight({kForward, kWaistLevel}, {kForward, kHipLevel})},
    {.name = Stature, .figure = TapeFigure::Side,
     .course = straight({kBesideBody, 0}, {kBesideBody, kStature})},
}};
// clang-format on

consteval bool each_has_its_tape() {
  for (std::size_t i = 0; i < kTapes.size(); ++i) {
    if (static_cast<std::size_t>(kTapes[i].name) != i) return false;
    if ((kTapes[i].course.count < 2) == (kTapes[i].round.across == 0.0)) return false;
  }
  return true;
}
static_assert(each_has_its_tape(), "each measurement has one tape, in the order of the names");

}  // namespace

const Tape& tape_of(MeasurementName name) { return kTapes[static_cast<std::size_t>(name)]; }

TapeFigure figure_of(MeasurementName name) { return tape_of(name).figure; }

int tape_number(MeasurementName name) {
  const auto& order = tape_order();
  return 1 + static_cast<int>(std::ranges::find(order, name) - order.begin());
}

std::vector<MeasurementName> tapes_on(TapeFigure figure) {
  std::vector<MeasurementName> names;
  for (const MeasurementName name : tape_order()) {
    if (figure_of(name) == figure) names.push_back(name);
  }
  return names;
}

std::string_view figure_title(TapeFigure figure) {
  constexpr std::array<std::string_view, kTapeFigures.size()> titles = {"Girths", "Back", "Front",
                                                                        "Side", "Shoulder and arm"};
  return titles[static_cast<std::size_t>(figure)];
}

}  // namespace blockwright
