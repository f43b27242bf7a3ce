#include "blockwright/block/kinds.hpp"
#include "blockwright/block/waist_edge.hpp"
#include "blockwright/geometry/solve.hpp"
#include "checks.hpp"

#include <array>

namespace blockwright {
namespace {

using enum MeasurementName;
using enum NotOnPieces;
using Block = const Pattern&;

const Piece& front(Block b) { return piece_of(b, kBodiceFront); }
const Piece& back(Block b) { return piece_of(b, kBodiceBack); }

double edge_length(const Piece& piece, BlockEdge part) { return length(part_of(piece, part).path); }

/// The shoulder point with the shoulder dart closed as it is stitched.
Point sewn_shoulder_point(const Piece& piece) {
  return dart_on(piece, BlockEdge::Shoulder)
      .closed_as_stitched(corner_point(piece, Corner::ShoulderPoint));
}

Angle slope_of(const Piece& piece) {
  return -angle_of(sewn_shoulder_point(piece) - corner_point(piece, Corner::SideNeck));
}

double shoulder_slant(const Piece& piece) {
  return distance(sewn_shoulder_point(piece), corner_point(piece, Corner::CentreWaist));
}

/// Where a point of the front beyond its shoulder dart lies with the dart closed.
Point closed(Block b, Point p) {
  const Dart& dart = dart_on(front(b), BlockEdge::Shoulder);
  return rotated_about(p, dart.apex, dart.angle());
}

/// x on a piece's side edge at height y: a straight line, or two with a joint on the bust line. Its
/// ends are as straight beyond.
double side_at(const Piece& piece, double y) {
  const auto& lines = part_of(piece, BlockEdge::Side).path.curves();
  const Curve& line = y <= end_of(lines.front()).y ? lines.front() : lines.back();
  const Vec along = end_of(line) - start_of(line);
  return start_of(line).x + (y - start_of(line).y) * along.x / along.y;
}

/// How much of a level line at height y the darts of the waist take up as they are stitched.
double taken_by_waist_darts(const Piece& piece, double y) {
  double taken = 0.0;
  for (const Dart& dart : piece.darts) {
    if (is_part(piece, dart.edge, BlockEdge::Waist)) taken += taken_at_level(dart, y);
  }
  return taken;
}

double across_front_half(Block b) { return closed(b, across_point(front(b))).x; }

double upper_chest_half(Block b) {
  return across_point(back(b)).x + across_front_half(b) + armhole_width(b);
}

double side_neck_to_bust_point(Block b) {
  return distance(corner_point(front(b), Corner::SideNeck), apex_point(front(b)));
}

/// The dart's leg; without a dart straight down to the waist edge.
double bust_point_to_waist(Block b) {
  if (const Dart* dart = find_dart_on(front(b), BlockEdge::Waist)) return dart->leg();
  const Point bust = apex_point(front(b));
  const Path& waist = part_of(front(b), BlockEdge::Waist).path;
  const auto beyond = [&](double along) { return point_at_length(waist, along).x - bust.x; };
  const double under = solve_between(beyond, {0.0, length(waist)}, 1e-9);
  return bust.y - point_at_length(waist, under).y;
}

constexpr std::string_view kChest =
    "take upper chest girth, across back, across front and armscye girth again";
constexpr std::string_view kAcross =
    "take across back, across front, shoulder length and the shoulder slants again";
constexpr std::string_view kFrontLengths =
    "take front waist length, side neck to bust point and side neck to waist again";
constexpr std::string_view kArmhole =
    "take armscye girth, side length and side neck to waist again";
constexpr std::string_view kShoulders = "take shoulder length and the shoulder slants again";
constexpr std::string_view kFrontBust = "take front bust width and across back again";

constexpr auto kBackMeasures = std::to_array<BackMeasure>({
    {BustGirth, [](Block b) { return 2.0 * (front_bust_line(b) + back_bust_line(b)); }},
    {UpperChestGirth, [](Block b) { return 2.0 * upper_chest_half(b); }, kChest},
    {UnderbustGirth, OnlyShares},
    {WaistGirth, [](Block b) { return 2.0 * half_length(b, BlockEdge::Waist); }},
    {HipGirth, OnlyEstimates},
    {NeckBaseGirth, [](Block b) { return 2.0 * half_length(b, BlockEdge::Neckline); }},
    {ArmscyeGirth, [](Block b) { return half_length(b, BlockEdge::Armhole); }, kArmhole},
    {UpperArmGirth, OnlyEstimates},
    {ShoulderLength,
     [](Block b) { return sewn_length(front(b), part_of(front(b), BlockEdge::Shoulder)); }},
    {ShoulderSlope,
     [](Block b) { return (0.5 * (slope_of(front(b)) + slope_of(back(b)))).degrees(); },
     kShoulders},
    {FrontShoulderSlant, [](Block b) { return shoulder_slant(front(b)); }, kShoulders},
    {BackShoulderSlant, [](Block b) { return shoulder_slant(back(b)); }, kShoulders},
    {BackWaistLength, [](Block b) { return edge_length(back(b), BlockEdge::Centre); }},
    {FrontWaistLength, [](Block b) { return edge_length(front(b), BlockEdge::Centre); },
     kFrontLengths},
    {SideNeckToBustPoint, side_neck_to_bust_point},
    {SideNeckToWaist, [](Block b) { return side_neck_to_bust_point(b) + bust_point_to_waist(b); },
     kFrontLengths},
    {BustPointWidth, [](Block b) { return 2.0 * apex_point(front(b)).x; }},
    {AcrossBack, [](Block b) { return 2.0 * across_point(back(b)).x; }, kAcross},
    {AcrossFront, [](Block b) { return 2.0 * across_front_half(b); }, kAcross},
    {SideLength, [](Block b) { return edge_length(front(b), BlockEdge::Side); }, kArmhole},
    {ScyeDepth, OnlyALevel},
    {FrontBustWidth, [](Block b) { return 2.0 * front_bust_line(b); }, kFrontBust},
    {WaistToHip, OnlyEstimates},
    {Stature, OnlyEstimates},
});
static_assert(covers_every_measurement(kBackMeasures),
              "say how each measurement is measured back, or why it cannot be");

}  // namespace

double front_bust_line(const Pattern& block) {
  return side_at(front(block), apex_point(front(block)).y);
}

double back_bust_line(const Pattern& block) {
  const auto side_waist = [](const Piece& piece) {
    return corner_point(piece, Corner::SideWaist).y;
  };
  const double over_waist = apex_point(front(block)).y - side_waist(front(block));
  const double level = side_waist(back(block)) + over_waist;
  return side_at(back(block), level) - taken_by_waist_darts(back(block), level);
}

double armhole_width(const Pattern& block) {
  const auto part = [](const Piece& piece) {
    return corner_point(piece, Corner::Underarm).x - across_point(piece).x;
  };
  return part(front(block)) + part(back(block));
}

std::span<const BackMeasure> back_measures() { return kBackMeasures; }

}  // namespace blockwright
