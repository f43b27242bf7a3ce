#include "blockwright/fit/catalogue.hpp"

#include "blockwright/base/error.hpp"

#include <iterator>

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr std::string_view kTrade = "common practice, no source";
constexpr std::string_view kUsda = "USDA, \"Fitting Dresses\", rev. 1946";
constexpr std::string_view kRoberts =
    "H. Roberts, \"Garment Fitting\", Washington State University E.M. 2246, 1962";
constexpr std::string_view kBoth =
    "USDA, \"Fitting Dresses\", rev. 1946; H. Roberts, \"Garment Fitting\", Washington State "
    "University E.M. 2246, 1962";
constexpr std::string_view kDressmaker = "\"The New Dressmaker\", 1921";
constexpr std::string_view kHeads =
    "named in the contents of USDA Home Economics Research Report 32, 1965; the rest common "
    "practice, no source";
constexpr std::string_view kManual = "a dressmaking manual of about 1905 to 1911, on linings";
constexpr std::string_view kLesson =
    "a correspondence lesson on figures out of proportion, early 20th century";
constexpr std::string_view kMagazine =
    "a sewing magazine of 2019 has another way; the rest common practice, no source";

// Degrees of slope for each mm that the tip of a shoulder of about 124 mm rises or falls. Plane
// geometry.
constexpr double kSlopePerTip = 0.46;

// Laid out by hand, a few lines to a row: number, name, what is seen, cause, stage, voids, usual,
// least and most amount, measurement in doubt and its change for each mm, source.
// clang-format off

// Neck and shoulder.
const std::vector<FittingRow> kUpperRows = {
    {1, "front neck lower", "the front neck presses on the throat, small tight folds round its base",
     "the front neck point is drawn too high", 2, {5}, 6, 3, 15, FrontWaistLength, -1.0, kTrade},
    {2, "front neck higher",
     "the front neck sits below the pit of the neck; its place is just above the collarbone",
     "the front neck point is drawn too low", 2, {5}, 5, 3, 10, FrontWaistLength, 1.0, kUsda},
    {3, "neck wider", "the neck is tight all round and the bodice rides up",
     "the neck base girth was taken short", 2, {5, 6, 9, 10}, 3, 2, 6, NeckBaseGirth, 4.9, kTrade},
    {4, "neck narrower", "the neck stands off all round", "the neck base girth was taken large", 2,
     {5, 6}, 3, 2, 6, NeckBaseGirth, -4.9, kTrade},
    {5, "front neck edge taken in", "a loose fold from the front neck edge toward the bust",
     "a dart too small, a hollow chest, a bust fuller than the draft, or a stretched edge", 6,
     {23, 29}, 6, 3, 13, {}, 0.0, kMagazine},
    {6, "back neck edge taken in", "the back neck stands away, a gap at the nape",
     "the back neck is too wide, or a round upper back wants a dart", 3, {9}, 5, 3, 13, {}, 0.0,
     kTrade},
    {7, "back neck lower", "a roll across just under the nape", "the nape is drawn too high", 2,
     {6}, 4, 3, 10, BackWaistLength, -1.0, kTrade},
    {8, "neck wider at the sides", "the neck cuts in at the sides only (or stands off there)",
     "the neck width", 2, {9, 10}, 4, 2, 10, NeckBaseGirth, 2.5, kTrade},
    {9, "shoulder shorter", "the armhole seam falls off the shoulder; the neck is dragged aside",
     "the shoulder was taken too long", 2, {21, 22, 23, 24}, 6, 3, 20, ShoulderLength, -1.0, kBoth},
    {10, "shoulder longer",
     "the armhole seam climbs toward the neck, the armhole binds, movement is tight",
     "the shoulder was taken too short", 2, {18, 21, 22}, 6, 3, 20, ShoulderLength, 1.0, kRoberts},
    {11, "shoulder point higher",
     "tight folds from the shoulder tip to the centre, the seam stands off near the neck",
     "shoulders squarer than the draft", 2, {19, 20, 21, 22}, 6, 3, 15, ShoulderSlope, -kSlopePerTip,
     kRoberts},
    {12, "shoulder point lower",
     "loose folds from the neck to the underarm, folds below the armhole, the underarm seam sags",
     "shoulders more sloping than the draft", 2, {19, 20, 21, 22}, 6, 3, 15, ShoulderSlope, kSlopePerTip,
     kUsda},
    {13, "shoulder point forward",
     "the outer end of the seam lies behind the bone; pull at the back armhole", "shoulders forward",
     2, {21, 22}, 6, 3, 13, {}, 0.0, kTrade},
    {14, "shoulder seam forward", "the whole seam lies too far back, and the neck fits",
     "the seam is drawn in the wrong place", 2, {1, 2, 7}, 6, 3, 13, {}, 0.0, kTrade},
    {15, "front shoulder taken up at the neck",
     "the front sags below the bust, the cross grain dips at the centre front",
     "the length over the bust is too long for a flat or low bust", 1, {1, 2, 25}, 8, 5, 20,
     SideNeckToWaist, -1.0, kUsda},
    {16, "back shoulder taken up at the neck",
     "the back sags below the blades, the cross grain dips at the centre back",
     "an over-erect back, the back length too long", 1, {6, 7}, 8, 5, 20, BackWaistLength, -1.0,
     kUsda},
    {17, "back shoulder dart wider",
     "a tight pull over the blade (or puckers at the back shoulder seam)",
     "the dart does not suit the blade", 3, {33}, 5, 3, 10, {}, 0.0, kTrade},
    {18, "upper chest taken in", "a hollow between collarbone and bust, slack high on the chest",
     "a hollow upper chest", 3, {1, 5, 21}, 6, 3, 13, FrontWaistLength, -1.0, kHeads},
};

// Armhole and bust.
const std::vector<FittingRow> kMiddleRows = {
    {19, "underarm lower", "the armhole digs under the arm and the bodice is lifted off",
     "the underarm point is drawn too high", 5, {21, 22}, 6, 3, 20, SideLength, -1.0, kTrade},
    {20, "underarm higher", "the bodice lifts when the arm is raised, slack below the armpit",
     "the underarm point is drawn too low", 5, {}, 6, 3, 15, SideLength, 1.0, kUsda},
    {21, "front armhole scooped", "the armhole cuts at the front of the arm",
     "the across front is too wide at the pitch, the curve too shallow", 5, {23}, 4, 2, 10,
     AcrossFront, -2.0, kTrade},
    {22, "back armhole filled", "the armhole strains behind when the arm reaches forward",
     "the across back is narrow, or the back curve too hollow", 5, {24}, 4, 2, 8, AcrossBack, 2.0,
     kTrade},
    {23, "front armhole edge taken in", "the front armhole gapes, a fold to the bust",
     "a bust fuller than the dart, or a dart given to the waist alone", 3, {5, 21, 29}, 6, 3, 13,
     {}, 0.0, kTrade},
    {24, "back armhole edge taken in", "the back armhole gapes",
     "a prominent blade, or the back too long at the armhole", 3, {17}, 5, 3, 10, {}, 0.0, kTrade},
    {25, "armhole larger", "the armhole is tight all round, the bodice otherwise right",
     "the armscye girth was taken short", 5, {}, 4, 3, 8, ArmscyeGirth, 3.0, kTrade},
    {26, "bust point higher", "the darts point below (or above) the bust",
     "the length from the side neck to the bust point", 3, {5, 23, 27, 28, 29, 30}, 13, 5, 40,
     SideNeckToBustPoint, -1.0, kTrade},
    {27, "fuller bust",
     "tight folds radiate from the bust point, the front waist rides up, the armhole gapes",
     "a cup larger than the draft", 3, {5, 23, 29, 30, 39, 41, 43, 44}, 12.5, 6, 20, BustGirth, 2.0,
     kHeads},
    {28, "smaller bust", "loose folds at and under the bust, the dart points bubble",
     "a cup smaller than the draft", 3, {5, 23, 29, 30, 39, 41, 43, 44}, 6, 6, 20, BustGirth, -2.0,
     kManual},
    {29, "dart shorter", "a dart's point pokes: a pucker beyond the bust, or a dimple short of it",
     "the dart is stitched too far (or not far enough)", 3, {}, 13, 6, 25, {}, 0.0, kTrade},
    {30, "one dart wider", "slack (or strain) round one dart only", "its angle is wrong", 3,
     {5, 23, 44}, 8, 3, 25, {}, 0.0, kTrade},
    {31, "bust points apart", "the dart points stand too close (or too far apart)",
     "the bust point width", 3, {29}, 6, 3, 15, BustPointWidth, 2.0, kTrade},
    {32, "hollow under the bust", "slack across directly under the bust, the waist fits",
     "a hollow under the bust", 4, {}, 8, 4, 12, {}, 0.0, kTrade},
};

// Back, lengths, sides, centre seams, one side; 49 is the bust girth at the side seam.
const std::vector<FittingRow> kLowerRows = {
    {33, "across back wider", "strain between the blades, the centre back or armhole seam pulls",
     "the across back was taken narrow", 4, {22, 42, 49}, 6, 3, 15, AcrossBack, 2.0, kDressmaker},
    {34, "across back narrower", "upright folds along the back armhole; keep 1 cm spare for reach",
     "the across back was taken wide", 4, {22, 42, 49}, 6, 3, 13, AcrossBack, -2.0, kTrade},
    {35, "upper back longer",
     "a rounded upper back: short at the centre back, folds from the blade to the underarm",
     "nape to waist taken too short over the curve", 1, {6, 7, 13, 17, 33, 46, 47}, 10, 5, 25,
     BackWaistLength, 1.0, kLesson},
    {36, "back longer below the nape", "a cushion at the nape, the neck tight behind",
     "a high curve of the back", 1, {6, 7, 17}, 8, 5, 20, BackWaistLength, 1.0, kHeads},
    {37, "upper back shorter", "slack across between the blades", "an erect back", 1, {6, 7, 17}, 8,
     5, 15, BackWaistLength, -1.0, kUsda},
    {38, "back waist shorter", "a fold across just above the waist at the centre back",
     "a hollow (sway) back", 1, {45, 47}, 8, 5, 20, BackWaistLength, -1.0, kUsda},
    {39, "longer below the bust", "the waist seam lies above the body's waist all round",
     "the body is longer below the armhole", 1, {26, 44}, 13, 5, 40, SideLength, 1.0, kManual},
    {40, "longer above the bust", "bust point, armhole and neck all sit too high",
     "the body is longer from shoulder to armhole", 1, {19, 20, 21, 22, 23, 24, 25, 26}, 6, 3, 20,
     SideNeckToBustPoint, 1.0, kManual},
    {41, "front waist longer", "the waist is level at sides and back and rides up in front",
     "the front length over the bust", 1, {27}, 8, 5, 25, FrontWaistLength, 1.0, kTrade},
    {42, "side seam forward", "the side seam swings backwards at the waist",
     "the back is too narrow, or the front too wide", 4, {21, 22, 44}, 6, 3, 13, FrontBustWidth,
     -2.0, kTrade},
    {43, "side seam back", "the side seam swings forwards at the waist",
     "the front is too narrow, or the back long", 4, {}, 6, 3, 13, FrontBustWidth, 2.0, kTrade},
    {44, "waist taken in", "the waist is loose (or tight)", "the waist girth", 4, {32, 38}, 10, 5, 30,
     WaistGirth, -2.0, kTrade},
    {45, "centre seam taken in",
     "slack down the centre back with blades right, or loose between the breasts",
     "a straight centre cannot follow a hollow", 4, {6, 44}, 8, 3, 15, WaistGirth, -2.0, kTrade},
    {46, "one shoulder lower", "one shoulder lies lower", "no two sides are alike", 8,
     {19, 20, 21, 22}, 8, 5, 20, {}, 0.0, kTrade},
    {47, "one breast fuller", "one breast is fuller", "no two sides are alike", 8, {5, 23}, 6, 3, 20,
     {}, 0.0, kTrade},
    {48, "one side of the waist higher", "one side of the waist lies higher",
     "no two sides are alike", 8, {}, 6, 3, 20, {}, 0.0, kTrade},
    {49, "bust let out at the side", "tight (or slack) round the bust, the cup right",
     "the bust girth, or its ease", 4, {19, 20, 44}, 12, 6, 40, BustGirth, 2.0, kTrade},
};

// clang-format on

// The other direction of each row, by number.
constexpr std::string_view kReverseNames[] = {
    "front neck higher",
    "front neck lower",
    "neck narrower",
    "neck wider",
    "front neck edge let out",
    "back neck edge let out",
    "back neck higher",
    "neck narrower at the sides",
    "shoulder longer",
    "shoulder shorter",
    "shoulder point lower",
    "shoulder point higher",
    "shoulder point back",
    "shoulder seam back",
    "front shoulder let down at the neck",
    "back shoulder let down at the neck",
    "back shoulder dart narrower",
    "upper chest let out",
    "underarm higher",
    "underarm lower",
    "front armhole filled",
    "back armhole scooped",
    "front armhole edge let out",
    "back armhole edge let out",
    "armhole smaller",
    "bust point lower",
    "smaller bust",
    "fuller bust",
    "dart longer",
    "one dart narrower",
    "bust points closer",
    "fuller under the bust",
    "across back narrower",
    "across back wider",
    "upper back shorter",
    "back shorter below the nape",
    "upper back longer",
    "back waist longer",
    "shorter below the bust",
    "shorter above the bust",
    "front waist shorter",
    "side seam back",
    "side seam forward",
    "waist let out",
    "centre seam let out",
    "one shoulder higher",
    "one breast smaller",
    "one side of the waist lower",
    "bust taken in at the side",
};

std::vector<FittingRow> all_rows() {
  std::vector<FittingRow> rows = kUpperRows;
  for (const auto* part : {&kMiddleRows, &kLowerRows}) {
    rows.insert(rows.end(), part->begin(), part->end());
  }
  require(rows.size() == std::size(kReverseNames), "each row has a name for its reverse");
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].reverse_name = kReverseNames[i];
  return rows;
}

}  // namespace

const std::vector<FittingRow>& fitting_catalogue() {
  static const std::vector<FittingRow> rows = all_rows();
  return rows;
}

const FittingRow& fitting_row(int number) {
  for (const FittingRow& row : fitting_catalogue()) {
    if (row.number == number) return row;
  }
  require(false, "the fitting catalogue has no such row");
  return fitting_catalogue().front();
}

std::string_view row_name(int number, int sign) {
  const FittingRow& row = fitting_row(number);
  return sign < 0 ? row.reverse_name : row.name;
}

std::string_view stage_name(int stage) {
  constexpr std::string_view names[] = {
      "set-up",  "lengths and balance",       "shoulder and neck base", "bust and blade", "widths",
      "armhole", "neck edge and style edges", "waist seam and hem",     "one side alone"};
  require(stage >= 0 && stage < 9, "no such stage");
  return names[stage];
}

double redraft_limit(MeasurementName name) {
  switch (info(name).kind) {
    case MeasurementKind::Girth:
      return kRedraftGirth;
    case MeasurementKind::Length:
      return kRedraftLength;
    case MeasurementKind::Angle:
      return kRedraftSlope;
  }
  return kRedraftLength;
}

}  // namespace blockwright
