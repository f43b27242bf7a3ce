#include "back_measures.hpp"

#include "blockwright/block/kinds.hpp"

#include <array>

namespace blockwright {
namespace {

using enum MeasurementName;
using enum NotOnPieces;
using Block = const BlockMeasures&;

constexpr std::string_view kChest =
    "take upper_chest_girth, across_back, across_front and armscye_girth again";
constexpr std::string_view kAcross =
    "take across_back, across_front, shoulder_length and the shoulder slants again";
constexpr std::string_view kFrontLengths =
    "take front_waist_length, side_neck_to_bust_point and side_neck_to_waist again";
constexpr std::string_view kArmhole =
    "take armscye_girth, side_length and side_neck_to_waist again";
constexpr std::string_view kShoulders = "take shoulder_length and the shoulder slants again";
constexpr std::string_view kFrontBust = "take front_bust_width and across_back again";

constexpr auto kBackMeasures = std::to_array<BackMeasure>({
    {BustGirth, [](Block b) { return 2.0 * (b.bust_line_front() + b.bust_line_back()); }},
    {UpperChestGirth, [](Block b) { return 2.0 * b.upper_chest_half(); }, kChest},
    {UnderbustGirth, OnlyShares},
    {WaistGirth, [](Block b) { return 2.0 * b.waist(); }},
    {HipGirth, OnlyEstimates},
    {NeckBaseGirth, [](Block b) { return 2.0 * b.neckline(); }},
    {ArmscyeGirth, [](Block b) { return b.armhole(); }, kArmhole},
    {UpperArmGirth, OnlyEstimates},
    {ShoulderLength,
     [](Block b) { return sewn_length(b.front(), part_of(b.front(), BlockEdge::Shoulder)); }},
    {ShoulderSlope, [](Block b) { return (0.5 * (b.front_slope() + b.back_slope())).degrees(); },
     kShoulders},
    {FrontShoulderSlant,
     [](Block b) {
       return norm(b.closed_front_shoulder_point() - corner_point(b.front(), Corner::CentreWaist));
     },
     kShoulders},
    {BackShoulderSlant,
     [](Block b) {
       return distance(corner_point(b.back(), Corner::ShoulderPoint),
                       corner_point(b.back(), Corner::CentreWaist));
     },
     kShoulders},
    {BackWaistLength, [](Block b) { return length(part_of(b.back(), BlockEdge::Centre).path); }},
    {FrontWaistLength, [](Block b) { return length(part_of(b.front(), BlockEdge::Centre).path); },
     kFrontLengths},
    {SideNeckToBustPoint, [](Block b) { return b.side_neck_to_bust_point(); }},
    {SideNeckToWaist, [](Block b) { return b.side_neck_to_waist(); }, kFrontLengths},
    {BustPointWidth, [](Block b) { return 2.0 * apex_point(b.front()).x; }},
    {AcrossBack, [](Block b) { return 2.0 * across_point(b.back()).x; }, kAcross},
    {AcrossFront, [](Block b) { return 2.0 * b.across_front_half(); }, kAcross},
    {SideLength, [](Block b) { return length(part_of(b.front(), BlockEdge::Side).path); },
     kArmhole},
    {ScyeDepth, OnlyALevel},
    {FrontBustWidth, [](Block b) { return 2.0 * b.bust_line_front(); }, kFrontBust},
    {WaistToHip, OnlyEstimates},
    {Stature, OnlyEstimates},
});
static_assert(covers_every_measurement(kBackMeasures),
              "say how each measurement is measured back, or why it cannot be");

}  // namespace

std::span<const BackMeasure> back_measures() { return kBackMeasures; }

}  // namespace blockwright
