#include "body_points.hpp"
#include "seen_faults.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using namespace body;

using Lines = std::vector<BodyLine>;
constexpr auto kCloth = FigureInk::Cloth;
constexpr auto kOnce = BodyLine::Sides::One;
constexpr Vec kTowardsCentre{-1.0, 0.0};

// Of the body's details only what lies under the toile is drawn: breasts and blades.
constexpr double kDetailsBelow = 1300.0;

/// A waist line hangs a little, as a round line seen from a little above.
BodyLine waist_between(Point from, Point to) {
  return {kCloth, {from, {0.5 * (from.x + to.x), from.y - 7.0}, to}, {}, kOnce};
}

BodyLine front_or_back_armhole() { return {kCloth, {kShoulder, {161, 1285}, kUnderarm}}; }

Lines front_toile() {
  return {{kCloth, {kSideNeck, {44, 1355}, kFrontNeck}, {{-0.1, -1.0}, kTowardsCentre}},
          front_or_back_armhole(),
          waist_between(right(kWaistSide), kWaistSide),
          {kCloth, {kFrontNeck, {0.0, kWaistLevel - 7.0}}, {}, kOnce},
          {kCloth, {{124, 1361}, {95, 1205}}},
          {kCloth, {{77, 1051}, {88, 1150}}},
          {kCloth, {{99, 1052}, {88, 1150}}}};
}

Lines back_toile() {
  return {{kCloth, {kSideNeck, {32, 1400}, {0, 1402}}, {{}, kTowardsCentre}},
          front_or_back_armhole(),
          waist_between(right(kWaistSide), kWaistSide),
          {kCloth, {{0, 1402}, {0.0, kWaistLevel - 7.0}}, {}, kOnce},
          {kCloth, {{118, 1364}, {98, 1292}}},
          {kCloth, {{66, 1051}, {74, 1190}}},
          {kCloth, {{82, 1051}, {74, 1190}}}};
}

Lines side_toile() {
  return {{kCloth, {{-63, 1406}, {-10, 1396}, {34, 1364}, {49, 1332}}, {}, kOnce},
          {kCloth, {{-10, 1396}, kSideShoulder}, {}, kOnce},
          {kCloth,
           {kSideShoulder, {34, 1285}, kSideUnderarm, {-52, 1285}, kSideShoulder},
           {{1.0, 0.0}, {1.0, 0.0}},
           kOnce},
          {kCloth, {kSideUnderarm, kSideWaist}, {}, kOnce},
          waist_between({-75.0, kWaistLevel}, {90.0, kWaistLevel})};
}

Lines toile_of(TapeFigure view) {
  if (view == TapeFigure::Side) return side_toile();
  return view == TapeFigure::Back ? back_toile() : front_toile();
}

Lines with_toile(TapeFigure view) {
  Lines lines;
  for (const BodyLine& line : outline_of(view)) {
    const bool inside = line.ink == FigureInk::Detail && line.through.front().y < kDetailsBelow;
    if (line.ink == FigureInk::Body || inside) lines.push_back(line);
  }
  const Lines toile = toile_of(view);
  lines.insert(lines.end(), toile.begin(), toile.end());
  return lines;
}

}  // namespace

const std::vector<BodyLine>& body_in_toile(TapeFigure view) {
  static const Lines front = with_toile(TapeFigure::Front), back = with_toile(TapeFigure::Back),
                     side = with_toile(TapeFigure::Side);
  if (view == TapeFigure::Side) return side;
  return view == TapeFigure::Back ? back : front;
}

Box toile_frame(TapeFigure view) {
  constexpr double bottom = 1008.0, top = 1440.0;
  if (view == TapeFigure::Side) return {-160.0, bottom, 180.0, top};
  return {-258.0, bottom, 258.0, top};
}

}  // namespace blockwright
