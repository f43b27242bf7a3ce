#pragma once

#include "blockwright/base/measure.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace blockwright {

/// The measurements of a tape session. Keys in files are the same words in snake_case
/// (BustGirth = "bust_girth"). All girths are whole girths and all widths whole widths.
enum class MeasurementName {
  BustGirth,
  UpperChestGirth,
  UnderbustGirth,
  WaistGirth,
  HipGirth,
  NeckBaseGirth,
  ArmscyeGirth,
  UpperArmGirth,
  ShoulderLength,
  ShoulderSlope,
  FrontShoulderSlant,
  BackShoulderSlant,
  BackWaistLength,
  FrontWaistLength,
  SideNeckToBustPoint,
  SideNeckToWaist,
  BustPointWidth,
  AcrossBack,
  AcrossFront,
  SideLength,
  ScyeDepth,
  FrontBustWidth,
  WaistToHip,
  Stature,
  NoMeasurement,  ///< stays last, so that the count follows
};

inline constexpr auto kMeasurementCount = static_cast<std::size_t>(MeasurementName::NoMeasurement);

/// What is measured. A width runs across the body; some ways of drafting write down half of it.
enum class MeasurementKind { Girth, Width, Length, Angle };

/// The ease of a close-fitting toile, on the whole girth, width or length.
struct DefaultEase {
  Measure by;  ///< for a usual cup (bust less underbust)
  std::string_view source = {};
  /// More for each mm of cup over the usual, mm: cloth spans from breast to breast and from breast
  /// to neck, where the tape lies in the hollow.
  double per_cup = 0.0;
};

/// How a measurement is filled in that was not taped.
struct FillIn {
  enum class By {
    Survey,   ///< regression on the 1988 survey, src/measure/survey.cpp
    Another,  ///< a surveyed measurement and a constant, which then counts as surveyed
    Draft,    ///< stays empty: the draft derives it by a rule
  };
  By by = By::Survey;
  MeasurementName from = MeasurementName::NoMeasurement;  ///< the other measurement
  Length plus = {};
  Length scatter = {};  ///< SD of a person about that rule
  std::string_view source = {};
};

/// One row of the table of measurements.
struct MeasurementInfo {
  MeasurementName name;
  std::string_view key;       ///< "bust_girth"
  std::string_view iso_term;  ///< the ISO 8559-1 name, or the trade's where ISO has none
  std::string_view how;       ///< how to take it, one or two sentences
  std::string_view closes;    ///< the unknown of the draft that it determines
  MeasurementKind kind;
  Measure least, most;  ///< readings outside are refused as slips
  DefaultEase ease = {};
  FillIn fill_in = {};

  [[nodiscard]] constexpr bool allows(Measure value) const {
    return value >= least && value <= most;
  }
};

/// The table. How each is measured back on the finished pieces: src/check/back_measures.cpp.
//
// Terms: ISO 8559-1:2017, its clause given where a listing of the standard shows it, the trade's
// name elsewhere. The waist is everywhere the natural waist, where a tied tape settles: ISO's waist
// level, half way between the lowest rib and the hip bone, is another place.
//
// Limits: the smallest and the largest of the 2,208 women of the 1988 survey (Gordon et al. 1989,
// NATICK/TR-89/044), beside each as "survey", widened by about a fifth below and by a third to two
// thirds above, since older and fuller bodies than the survey's must pass (bust 71 to 140 cm, a
// waist larger than the bust). Kept narrow enough that ten times too much or too little, and a
// common reading in the wrong unit, fall outside. The widening is our judgement.
// clang-format off
// A table, as long as it has rows; its constants are those of a namespace in all but place.
// NOLINTBEGIN(readability-function-size,readability-identifier-naming)
consteval std::array<MeasurementInfo, kMeasurementCount> measurement_table() {
  using enum MeasurementName;
  using enum MeasurementKind;
  constexpr auto mm = [](double value) { return Length::mm(value); };
  constexpr auto degrees = Measure::degrees;
  // Lengths that hang from the shoulder need ease, or the whole bodice sits high.
  constexpr std::string_view kTorsos =
      "found on thirteen simulated torsos (tests/torso): with its like, what a first toile still "
      "wants beyond what the eye lets pass fell from 46 to 21 mm on them. That cloth had no "
      "friction";
  constexpr std::string_view kEstimatesOnly =
      "nothing of the bodice; better estimates of what was not taped";
  constexpr FillIn kByDraft{.by = FillIn::By::Draft};
  return {{
    {BustGirth, "bust_girth", "bust girth (ISO 8559-1:2017, 5.3.4)",
     "Level round the fullest part of the bust, over the bra that will be worn, breathing quietly.",
     "the bust line, front and back together", Girth, mm(600), mm(1600),  // survey 711 to 1176
     {mm(50), "38 to 51 mm in a university costume text (Central Washington University, ch. 16), "
              "up to 100 mm in a textbook's close-fitting block (from memory)"}},
    {UpperChestGirth, "upper_chest_girth", "upper chest girth",
     "Level and high in the armpits, above the bust; it may well be more than the bust girth.",
     "the width of the armhole, settled together with across back, across front and bust dart",
     Girth, mm(600), mm(1500),  // survey 753 to 1121
     {mm(20), "our rule: the armhole's share of the bust ease; no source"}},
    {UnderbustGirth, "underbust_girth", "underbust girth (ISO 8559-1:2017, 5.3.8)",
     "Level round the body directly under the breasts.",
     "the front's share of the bust, by the fullness of the cup",
     Girth, mm(500), mm(1450)},  // survey 640 to 988
    {WaistGirth, "waist_girth", "natural waist girth",
     "Tie a tape or elastic round the body, bend a little to each side and let it settle: measure "
     "there, and leave it tied for the lengths.",
     "the waist darts", Girth, mm(450), mm(1600),  // survey 568 to 987
     {mm(25), "19 to 25 mm for a dress in the costume text of the bust's, 25 to 50 mm elsewhere"}},
    {HipGirth, "hip_girth", "hip girth (ISO 8559-1:2017, 5.3.13)",
     "Level round the fullest part of the seat, feet together.", kEstimatesOnly,
     Girth, mm(600), mm(1800)},  // survey 787 to 1189
    {NeckBaseGirth, "neck_base_girth", "neck base girth (ISO 8559-1:2017, 5.3.3)",
     "Round the base of the neck through nape, side neck points and front neck point, the tape on "
     "its edge or a fine chain.",
     "the width of the neck", Girth, mm(250), mm(580),  // survey 298 to 409
     {mm(6), kTorsos}},
    {ArmscyeGirth, "armscye_girth", "armscye girth (ISO 8559-1:2017, 5.3.15)",
     "Through the armpit and over the shoulder point, the arm hanging.", "the drop of the underarm",
     Girth, mm(240), mm(700),  // survey 298 to 456
     {mm(35), "textbook armholes at bust 88 cm are 400 to 430 mm (from memory) on a body armscye "
              "of 365 mm there (the 1988 survey): body + 35 mm is the close end"}},
    {UpperArmGirth, "upper_arm_girth", "upper arm girth at the armpit",
     "Square round the relaxed arm, as high as the armpit allows.",
     "nothing of the bodice; a check of the armscye girth", 
     Girth, mm(170), mm(620)},  // survey 223 to 377
    {ShoulderLength, "shoulder_length", "shoulder length",
     "Side neck point to shoulder point, the outer end of the shoulder bone (lift the arm level: a "
     "dimple shows there), not on the arm.",
     "the shoulder point, with the slant or the slope",
     Length, mm(80), mm(220)},  // survey 111 to 182
    {ShoulderSlope, "shoulder_slope", "shoulder slope (ISO 8559-1:2017, 5.6.2)",
     "The angle of the shoulder line below the level, in degrees, with an angle meter laid along "
     "the shoulder. No angle meter? Leave it out.",
     "the shoulder points where no slant was taped",
     Angle, degrees(5), degrees(45),  // survey 12.4 to 39.9
     {degrees(-4),
      "our rule: what the slants' ease does on the survey's mean body, the side neck points raised "
      "by the ease of the lengths: nothing in front, 8 degrees at the back of a shoulder of 145 "
      "mm, 4 on the mean of both"}},
    {FrontShoulderSlant, "front_shoulder_slant", "front shoulder slant",
     "Shoulder point to the natural waist at centre front, the tape held straight: it bridges the "
     "hollow beside the breast and does not fall into it.",
     "the front shoulder point",
     Length, mm(260), mm(680),  // not surveyed; from stature and shoulder
     {mm(14), kTorsos, 0.06}, kByDraft},
    {BackShoulderSlant, "back_shoulder_slant", "back shoulder slant",
     "Shoulder point to the natural waist at centre back, the tape held straight over the hollow "
     "of the back.",
     "the back shoulder point",
     Length, mm(260), mm(680),  // not surveyed; from stature and shoulder
     {mm(28), kTorsos, 0.06}, kByDraft},
    {BackWaistLength, "back_waist_length",
     "back neck point to waist (ISO 8559-1:2017, 5.4.5), to the natural waist",
     "Nape (the bone at the neck's base) to the tied waist tape, following the back.",
     "the length of the back", Length, mm(240), mm(600),  // survey 283 to 477
     {mm(6), kTorsos}},  // 0 to 6 mm is common practice, no source
    {FrontWaistLength, "front_waist_length",
     "front neck point to waist (ISO 8559-1:2017, 5.4.8), to the natural waist",
     "Front neck point, in the hollow between the collar bones, to the tied waist tape at centre "
     "front.",
     "the depth of the front neck, with side neck to waist",
     Length, mm(190), mm(540),  // survey 238 to 404
     {mm(13), kTorsos, 0.15}},
    {SideNeckToBustPoint, "side_neck_to_bust_point", "side neck point to bust point",
     "Side neck point down to the fullest point of the breast.", "the height of the bust point",
     Length, mm(160), mm(520),  // survey 202 to 354
     {mm(23), kTorsos, 0.12}},
    {SideNeckToWaist, "side_neck_to_waist", "side neck point to waist over bust point",
     "Side neck point over the bust point, then straight down to the tied waist tape.",
     "the waist under the bust point, and the depth of the front neck",
     Length, mm(250), mm(700),  // survey, derived: about 290 to 510
     {mm(23), kTorsos, 0.15}},
    {BustPointWidth, "bust_point_width", "bust point width",
     "Straight from bust point to bust point, the tape not dipping between the breasts.",
     "how far the bust point lies from centre front",
     Width, mm(90), mm(340)},  // survey 128 to 241, by caliper
    {AcrossBack, "across_back", "across back width",
     "Level between the back armhole lines, half way between shoulder point and armpit, arms "
     "hanging.",
     "the back's part beside the armhole, settled together with across front, upper chest and bust "
     "dart",
     Width, mm(220), mm(620),  // survey 284 to 470
     {mm(2), kTorsos}},  // a textbook's close-fitting block has 10 mm (from memory)
    {AcrossFront, "across_front", "across front width (ISO 8559-1:2017, 5.4.7)",
     "Level between the front armhole lines, half way between shoulder point and armpit.",
     "the front's part beside the armhole, settled together with across back, upper chest and bust "
     "dart",
     Width, mm(190), mm(600),  // not surveyed; from across back
     {mm(6), kTorsos},
     {FillIn::By::Another, AcrossBack, mm(-25), mm(15),
      "ASTM D5585-95 has across chest 25 mm less than across back (from memory, unverified); that "
      "a person differs from this rule by 15 mm (SD) is our judgement"}},
    {SideLength, "side_length", "side length",
     "Underarm point to the tied waist tape straight down the side: from the top edge of a ruler "
     "held level under the arm.",
     "the side seams", Length, mm(80), mm(340)},  // survey 105 to 268
    {ScyeDepth, "scye_depth", "scye depth length (ISO 8559-1:2017, 5.4.6)",
     "Nape down the spine to the level of the armpits: tie a tape round the chest high under the "
     "arms and measure to it.",
     "the height of the across-back and across-front lines",
     Length, mm(100), mm(330)},  // survey 142 to 235
    {FrontBustWidth, "front_bust_width", "front bust width",
     "Over the bust from side seam to side seam of a garment that sits well, at bust point level. No "
     "such garment? Leave it out.",
     "the front's share of the bust",
     Width, mm(290), mm(950),  // not surveyed; half the bust and more
     {mm(25), "the front's half of the bust's ease"}, kByDraft},
    {WaistToHip, "waist_to_hip", "waist to hip",
     "The tied waist tape straight down the side to the level of the hip girth.", kEstimatesOnly,
     Length, mm(90), mm(400)},  // survey 126 to 301
    {Stature, "stature", "stature", "Standing height without shoes, heels together.",
     kEstimatesOnly, Length, mm(1200), mm(2200)},  // survey 1428 to 1870
  }};
}
// NOLINTEND(readability-function-size,readability-identifier-naming)
// clang-format on

inline constexpr std::array<MeasurementInfo, kMeasurementCount> kMeasurements = measurement_table();

/// True if the i-th row is the i-th measurement's and has all that a row needs.
consteval bool is_complete(const std::array<MeasurementInfo, kMeasurementCount>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const MeasurementInfo& row = rows[i];
    if (static_cast<std::size_t>(row.name) != i || row.key.empty() || row.how.empty()) return false;
    const bool is_angle = row.kind == MeasurementKind::Angle;
    if (row.least.is_angle() != is_angle || row.ease.by.is_angle() != is_angle) return false;
    if (row.least >= row.most) return false;
    if (row.ease.by.number() != 0.0 && row.ease.source.empty()) return false;
  }
  return true;
}
static_assert(is_complete(kMeasurements),
              "each measurement has its row, in the order of the names");

/// All measurements in the order in which a session takes them.
constexpr const std::array<MeasurementInfo, kMeasurementCount>& measurement_catalogue() {
  return kMeasurements;
}
constexpr const MeasurementInfo& info(MeasurementName name) {
  return kMeasurements[static_cast<std::size_t>(name)];
}
/// The measure of that number, in mm, or in degrees for the slope.
constexpr Measure measure_of(MeasurementName name, double number) {
  if (info(name).kind == MeasurementKind::Angle) return Measure::degrees(number);
  return Length::mm(number);
}

/// The name of a measurement that is a length: that of the slope does not compile.
class LengthName {
 public:
  // NOLINTBEGIN(google-explicit-constructor): the name itself
  consteval LengthName(MeasurementName name) : name_(name) {
    if (info(name).kind == MeasurementKind::Angle) throw std::logic_error("the slope is an angle");
  }
  constexpr operator MeasurementName() const { return name_; }
  // NOLINTEND(google-explicit-constructor)

 private:
  MeasurementName name_;
};

/// A measure for each kind of measurement; widths count as lengths.
struct ByKind {
  Length girth, length;
  Measure angle;

  [[nodiscard]] constexpr Measure of(MeasurementName name) const {
    const MeasurementKind kind = info(name).kind;
    if (kind == MeasurementKind::Angle) return angle;
    return kind == MeasurementKind::Girth ? girth : length;
  }
};

constexpr std::optional<MeasurementName> measurement_named(std::string_view key) {
  const auto* const found = std::ranges::find(kMeasurements, key, &MeasurementInfo::key);
  return found == kMeasurements.end() ? std::nullopt : std::optional(found->name);
}

}  // namespace blockwright
