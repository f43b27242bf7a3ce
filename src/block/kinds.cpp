#include "blockwright/block/kinds.hpp"

#include "blockwright/block/armhole.hpp"

namespace blockwright {
namespace {

using enum UsualPlace;

// Which edges a front has, in the order of the outline. Right angles, smooth joined seams, one
// notch in front and two at the back: common practice, no source. A neckline bends one way, an
// armhole turns back at most once, and the least radii: ours.
constexpr KindEdge kFrontEdges[] = {
    {"waist", BlockEdge::Waist, EdgeRole::Hem, CornerShape::Square},
    {"side", BlockEdge::Side, EdgeRole::Seam, CornerShape::Smooth},
    {"armhole", BlockEdge::Armhole, EdgeRole::FreeEdge, CornerShape::Smooth, 1, 12.0},
    {"shoulder", BlockEdge::Shoulder, EdgeRole::Seam, CornerShape::Smooth},
    {"neckline", BlockEdge::Neckline, EdgeRole::FreeEdge, CornerShape::Smooth, 0, 10.0},
    {"centre_front", BlockEdge::Centre, EdgeRole::Fold, CornerShape::Square},
};

constexpr KindEdge kBackEdges[] = {
    kFrontEdges[0], kFrontEdges[1],
    kFrontEdges[2], kFrontEdges[3],
    kFrontEdges[4], {"centre_back", BlockEdge::Centre, EdgeRole::Opening, CornerShape::Square},
};

constexpr std::size_t at(Corner corner) { return static_cast<std::size_t>(corner); }
constexpr std::size_t kArmhole = index_of(BlockEdge::Armhole);
constexpr std::size_t kShoulder = index_of(BlockEdge::Shoulder);
constexpr std::size_t kSide = index_of(BlockEdge::Side);

constexpr KindLandmark kFrontLandmarks[] = {
    {"centre_waist", PointOn::Corner, at(Corner::CentreWaist), PointUse::CentreWaist},
    {"front_neck_point", PointOn::Corner, at(Corner::CentreNeck), PointUse::CentreNeck},
    {"side_neck_point", PointOn::Corner, at(Corner::SideNeck)},
    {"shoulder_point", PointOn::Corner, at(Corner::ShoulderPoint)},
    {"across_front_point", PointOn::Joint, kArmhole},
    {"underarm_point", PointOn::Corner, at(Corner::Underarm)},
    {"side_waist_point", PointOn::Corner, at(Corner::SideWaist)},
    {"bust_point", PointOn::Apex, kShoulder, PointUse::Marked},
};

constexpr KindLandmark kBackLandmarks[] = {
    kFrontLandmarks[0],
    {"nape", PointOn::Corner, at(Corner::CentreNeck), PointUse::CentreNeck},
    kFrontLandmarks[2],
    kFrontLandmarks[3],
    {"across_back_point", PointOn::Joint, kArmhole},
    kFrontLandmarks[5],
    kFrontLandmarks[6],
    {"blade_point", PointOn::Apex, kShoulder},
};

constexpr KindNotch kFrontNotches[] = {{"side", kSide, 1, "back", "side"},
                                       {"armhole", kArmhole, 1, {}, {}, kFrontNotchShare}};
constexpr KindNotch kBackNotches[] = {{"side", kSide, 1, "front", "side"},
                                      {"armhole", kArmhole, 2, {}, {}, kBackNotchShare}};

constexpr KindLine kFrontLines[] = {{"bust_line", LineUse::Bust},
                                    {"across_front_line", LineUse::Across},
                                    {"waist_line", LineUse::Waist}};
constexpr KindLine kBackLines[] = {
    kFrontLines[0], {"across_back_line", LineUse::Across}, kFrontLines[2]};

constexpr KindSeam kFrontSeams[] = {{"side", kSide, "back", "side"},
                                    {"shoulder", kShoulder, "back", "shoulder"}};

// Hold-backs, ways of pressing and widest mouths: common practice, no source; hold-backs from
// memory of handbooks.
constexpr Leg kFirst = Leg::First, kSecond = Leg::Second;
constexpr DartPosition kFrontDarts[] = {
    {"shoulder", "shoulder", true, kSecond, Middle, 25, 50, 60, 90},
    {"neck", "neckline", true, kSecond, Middle, 25, 40, 50, 40},
    {"centre_front", "centre_front", false, kSecond, LevelWithApex, 15, 20, 25, 40},
    {"armhole", "armhole", false, kFirst, AtNotch, 15, 25, 40, 35},
    {"side", "side", true, kFirst, UnderUnderarm, 20, 25, 40, 60},
    {"french", "side", true, kFirst, OverWaist, 13, 20, 30, 40},
    {"waist", "waist", false, kFirst, UnderApex, 13, 20, 30, 45},
};
constexpr DartPosition kBackDarts[] = {
    {"shoulder", "shoulder", true, kSecond, Middle, 25, 25, 25, 25},
    {"neck", "neckline", true, kSecond, Middle, 25, 25, 25, 25},
    {"armhole", "armhole", false, kFirst, LevelWithApex, 25, 25, 25, 25},
    {"waist", "waist", false, kFirst, UnderApex, 15, 15, 15, 40},
    {"centre_back", "centre_back", false, kSecond, LevelWithApex, 15, 15, 15, 25},
};

}  // namespace

constexpr PieceKind kBodiceFront = {"front",     CutOn::Fold,     DraftedFor::Left, 1,
                                    kFrontEdges, kFrontLandmarks, kFrontNotches,    kFrontLines,
                                    kFrontSeams, kFrontDarts};
constexpr PieceKind kBodiceBack = {"back",         CutOn::Pair,  DraftedFor::Right, 2,  kBackEdges,
                                   kBackLandmarks, kBackNotches, kBackLines,        {}, kBackDarts};

}  // namespace blockwright
