#include "blockwright/measure/measurement_name.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum MeasurementName;
using enum MeasurementKind;

// Terms: ISO 8559-1:2017, its clause given where a listing of the standard shows it, the trade's
// name elsewhere. The waist is everywhere the natural waist, where a tied tape settles: ISO's waist
// level, half way between the lowest rib and the hip bone, is another place.
//
// Limits: the smallest and the largest of the 2,208 women of the 1988 survey (Gordon et al. 1989,
// NATICK/TR-89/044), beside each as "survey", widened by about a fifth below and by a third to two
// thirds above, since older and fuller bodies than the survey's must pass (bust 71 to 140 cm, a
// waist larger than the bust). Kept narrow enough that ten times too much or too little, and a
// common reading in the wrong unit, fall outside. The widening is our judgement.
constexpr std::array<MeasurementInfo, kMeasurementCount> kCatalogue{{
    {BustGirth, "bust_girth", "bust girth (ISO 8559-1:2017, 5.3.4)",
     "Level round the fullest part of the bust, over the bra that will be worn, breathing quietly.",
     "the bust line, front and back together", Girth, 600, 1600},  // survey 711 to 1176
    {UpperChestGirth, "upper_chest_girth", "upper chest girth",
     "Level and high in the armpits, above the bust; it may well be more than the bust girth.",
     "the width of the armhole", Girth, 600, 1500},  // survey 753 to 1121
    {UnderbustGirth, "underbust_girth", "underbust girth (ISO 8559-1:2017, 5.3.8)",
     "Level round the body directly under the breasts.",
     "the front's share of the bust, by the fullness of the cup", Girth, 500,
     1450},  // survey 640 to 988
    {WaistGirth, "waist_girth", "natural waist girth",
     "Tie a tape or elastic round the body, bend a little to each side and let it settle: measure "
     "there, and leave it tied for the lengths. This is the natural waist, not ISO's waist level.",
     "the waist darts", Girth, 450, 1600},  // survey 568 to 987
    {HipGirth, "hip_girth", "hip girth (ISO 8559-1:2017, 5.3.13)",
     "Level round the greatest rear protrusion, feet together.",
     "nothing of the bodice; better estimates of what was not taped", Girth, 600,
     1800},  // survey 787 to 1189
    {NeckBaseGirth, "neck_base_girth", "neck base girth (ISO 8559-1:2017, 5.3.3)",
     "Round the base of the neck through nape, side neck points and front neck point, the tape on "
     "its edge or a fine chain.",
     "the width of the neck", Girth, 250, 580},  // survey 298 to 409
    {ArmscyeGirth, "armscye_girth", "armscye girth (ISO 8559-1:2017, 5.3.15)",
     "Through the armpit and over the shoulder point, the arm hanging.", "the drop of the underarm",
     Girth, 240, 700},  // survey 298 to 456
    {UpperArmGirth, "upper_arm_girth", "upper arm girth at the armpit",
     "Square round the relaxed arm, as high as the armpit allows.",
     "nothing of the bodice; a check of the armscye girth", Girth, 170, 620},  // survey 223 to 377
    {ShoulderLength, "shoulder_length", "shoulder length",
     "Side neck point to shoulder point, the outer end of the shoulder bone.",
     "the shoulder point, with the slant or the slope", Length, 80, 220},  // survey 111 to 182
    {ShoulderSlope, "shoulder_slope", "shoulder slope (ISO 8559-1:2017, 5.6.2)",
     "The angle of the shoulder line below the level, in degrees, with an angle meter laid along "
     "the shoulder.",
     "the shoulder points where no slant was taped", Angle, 5, 45},  // survey 12.4 to 39.9
    {FrontShoulderSlant, "front_shoulder_slant", "front shoulder slant",
     "Shoulder point to the natural waist at centre front, the tape straight.",
     "the front shoulder point", Length, 260, 680},  // not surveyed; from stature and shoulder
    {BackShoulderSlant, "back_shoulder_slant", "back shoulder slant",
     "Shoulder point to the natural waist at centre back, the tape straight.",
     "the back shoulder point", Length, 260, 680},  // not surveyed; from stature and shoulder
    {BackWaistLength, "back_waist_length",
     "back neck point to waist (ISO 8559-1:2017, 5.4.5), to the natural waist",
     "Nape (the bone at the neck's base) to the tied waist tape, following the back.",
     "the length of the back", Length, 240, 600},  // survey 283 to 477
    {FrontWaistLength, "front_waist_length",
     "front neck point to waist (ISO 8559-1:2017, 5.4.8), to the natural waist",
     "Front neck point, in the hollow between the collar bones, to the tied waist tape at centre "
     "front.",
     "the depth of the front neck, with side neck to waist", Length, 190,
     540},  // survey 238 to 404
    {SideNeckToBustPoint, "side_neck_to_bust_point", "side neck point to bust point",
     "Side neck point down to the fullest point of the breast.", "the height of the bust point",
     Length, 160, 520},  // survey 202 to 354
    {SideNeckToWaist, "side_neck_to_waist", "side neck point to waist over bust point",
     "Side neck point over the bust point, then straight down to the tied waist tape.",
     "the waist under the bust point, and the depth of the front neck", Length, 250,
     700},  // survey, derived: about 290 to 510
    {BustPointWidth, "bust_point_width", "bust point width",
     "Straight from bust point to bust point, the tape not dipping between the breasts.",
     "how far the bust point lies from centre front", Length, 90,
     340},  // survey 128 to 241, by caliper
    {AcrossBack, "across_back", "across back width",
     "Level between the back armhole lines, half way between shoulder point and armpit, arms "
     "hanging.",
     "the back's part beside the armhole", Length, 220, 620},  // survey 284 to 470
    {AcrossFront, "across_front", "across front width (ISO 8559-1:2017, 5.4.7)",
     "Level between the front armhole lines, half way between shoulder point and armpit.",
     "the front's part beside the armhole", Length, 190, 600},  // not surveyed; from across back
    {SideLength, "side_length", "side length",
     "Underarm point to the tied waist tape straight down the side: from the top edge of a ruler "
     "held level under the arm.",
     "the side seams", Length, 80, 340},  // survey 105 to 268
    {ScyeDepth, "scye_depth", "scye depth length (ISO 8559-1:2017, 5.4.6)",
     "Nape down the spine to the level of the armpits: tie a tape round the chest high under the "
     "arms and measure to it.",
     "the height of the across-back and across-front lines", Length, 100,
     330},  // survey 142 to 235
    {FrontBustWidth, "front_bust_width", "front bust width",
     "Over the bust from side seam to side seam of a garment that sits well, at bust point level.",
     "the front's share of the bust", Length, 290, 950},  // not surveyed; half the bust and more
    {WaistToHip, "waist_to_hip", "waist to hip",
     "The tied waist tape straight down the side to the level of the hip girth.",
     "nothing of the bodice; better estimates of what was not taped", Length, 90,
     400},  // survey 126 to 301
    {Stature, "stature", "stature", "Standing height without shoes, heels together.",
     "nothing of the bodice; better estimates of what was not taped", Length, 1200,
     2200},  // survey 1428 to 1870
}};

}  // namespace

const std::array<MeasurementInfo, kMeasurementCount>& measurement_catalogue() { return kCatalogue; }

const MeasurementInfo& info(MeasurementName name) {
  return kCatalogue[static_cast<std::size_t>(name)];
}

std::optional<MeasurementName> measurement_named(std::string_view key) {
  const auto found = std::ranges::find(kCatalogue, key, &MeasurementInfo::key);
  if (found == kCatalogue.end()) return std::nullopt;
  return found->name;
}

}  // namespace blockwright
