#pragma once

#include "blockwright/base/measure.hpp"
#include "blockwright/measure/fitting.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace blockwright {

/// The rows of the fitting catalogue (docs/fitting.md); the value is the row's number there.
// clang-format off
enum class CorrectionRow : int {
  FrontNeckLower = 1, FrontNeckHigher, NeckWider, NeckNarrower, FrontNeckEdgeTakenIn,
  BackNeckEdgeTakenIn, BackNeckLower, SideNeckWider, ShoulderShorter, ShoulderLonger,
  ShoulderPointHigher, ShoulderPointLower, ShoulderPointForward, ShoulderSeamForward,
  FrontShoulderTakenUp, BackShoulderTakenUp, BackShoulderDartWider, UpperChestTakenIn,
  UnderarmLower, UnderarmHigher, FrontArmholeScooped, BackArmholeFilled, FrontArmholeEdgeTakenIn,
  BackArmholeEdgeTakenIn, ArmholeLarger, BustPointHigher, FullerBust, SmallerBust, DartShorter,
  FrontShoulderDartWider, BustPointsApart, UnderBustTakenIn, AcrossBackWider, AcrossBackNarrower,
  UpperBackLonger, BackLongerBelowNape, UpperBackShorter, BackWaistShorter, LongerBelowBust,
  LongerAboveBust, FrontWaistLonger, SideSeamForward, SideSeamBack, WaistTakenIn, CentreSeamTakenIn,
  OneShoulderLower, OneBreastFuller, OneSideOfWaistHigher, BustLetOutAtSide, ShouldersTakenUp,
  NoRow,  ///< stays last, so that the count follows
};
// clang-format on

inline constexpr std::size_t kCorrectionCount = static_cast<std::size_t>(CorrectionRow::NoRow) - 1;
constexpr int number_of(CorrectionRow row) { return static_cast<int>(row); }

/// Where the moves of a row are: src/fit/rows/rows_neck.cpp and so on.
enum class RowPart { Neck, Shoulder, Armhole, Bust, Back, Lengths, Waist };

/// How the amount of a pair of words can be read. A chalk mark, or a line that is to lie elsewhere,
/// is a length and nothing else. Whatever is pinned out or let in could be counted in more than one
/// way (a tuck of depth p takes out 2 p; a seam pinned p beyond its line takes p from each piece;
/// both halves of the body take twice that), so that the way must be said. Common practice, no
/// source.
enum class AmountKind {
  Mark,         ///< how far something is to move
  Fold,         ///< cloth folded out across a piece: its depth, or the length it takes away
  SeamFold,     ///< a fold along a seam, half of it from each piece: however read, it is the same
  NeckEdge,     ///< a gaping neck edge, pinned: one half, or both together
  Edge,         ///< a gaping armhole edge, pinned
  Dart,         ///< how much deeper or less deep a dart is stitched, or the cloth of it
  Pinned,       ///< a seam pinned in
  LetOut,       ///< a seam let out: nothing is pinned
  Width,        ///< a width: of one half, or whole
  PinnedWidth,  ///< the same, or the depth of a tuck on each half
  OneHalf,      ///< cloth on one half, and nothing else
  EachSide,     ///< how far a point moves on each side, or on both together; unsaid it is each
};

/// Words for a row in client files.
struct RowWords {
  int sign = 1;  ///< -1: the row's reverse
  std::string_view action;
  std::string_view place;
  AmountKind kind = AmountKind::Mark;
};

/// A list in a constexpr table.
template <class T, std::size_t Most>
class ShortList {
 public:
  constexpr ShortList(std::initializer_list<T> items) : size_(items.size()) {
    std::ranges::copy(items, items_.begin());
  }
  [[nodiscard]] constexpr const T* begin() const { return items_.data(); }
  [[nodiscard]] constexpr const T* end() const { return items_.data() + size_; }
  [[nodiscard]] constexpr bool empty() const { return size_ == 0; }
  [[nodiscard]] constexpr bool contains(T item) const {
    return std::find(begin(), end(), item) != end();
  }

 private:
  std::array<T, Most> items_{};
  std::size_t size_;
};

/// A length by its name in Effect, and how much it moves for each mm that the row counts.
struct LengthMoved {
  std::string_view name;
  double per_mm = 0.0;
};

/// What the fitter looks at while she pins: it moves by what she pinned, within 0.5 mm
/// (tests/fit/watched_test.cpp). Of no length: `says` tells what moves instead.
struct Watched {
  ShortList<LengthMoved, 2> lengths;
  std::string_view says = {};       ///< what else moves, and what stays; no full stop
  std::string_view place = {};      ///< of the words it holds for; empty: of all
  std::string_view says_back = {};  ///< the same of the row's reverse; empty: the same words
  std::string_view says_with = {};  ///< it is said where a length of such a name has moved, too

  [[nodiscard]] constexpr Watched at(std::string_view where) const {
    return {lengths, says, where, says_back, says_with};
  }
  [[nodiscard]] constexpr Watched or_back(std::string_view words) const {
    return {lengths, says, place, words, says_with};
  }
  [[nodiscard]] constexpr Watched where_moved(std::string_view name) const {
    return {lengths, says, place, says_back, name};
  }
  [[nodiscard]] constexpr std::string_view in_words(int sign) const {
    return sign < 0 && !says_back.empty() ? says_back : says;
  }
};
constexpr Watched watch(std::string_view name, double per_mm, std::string_view says = {}) {
  return {.lengths = {{name, per_mm}}, .says = says};
}
/// The same of both pieces.
constexpr Watched watch(const LengthMoved& front, const LengthMoved& back,
                        std::string_view says = {}) {
  return {.lengths = {front, back}, .says = says};
}
constexpr Watched moves_instead(std::string_view says) { return {.lengths = {}, .says = says}; }

/// What holds of single rows.
struct RowTraits {
  /// Words of several places mean several darts or seams; this one where none is given.
  std::string_view usual_place = {};
  /// Its seam or tuck lies on a centre line and serves both halves of the body.
  bool at_centre_line = false;
  /// Its fold lies along a seam and takes half of its cloth from each of the two pieces, of which
  /// the row counts one.
  bool along_a_seam = false;
  /// The row whose moves it takes for one side of the body.
  std::optional<CorrectionRow> on_one_side = std::nullopt;
};

/// How much of a correction a row takes, as it counts it: how far a point moves, or cloth on one
/// half of the body. In the table: usually(6).from(3).to(15), in mm. Common practice, no source.
struct UsualAmount {
  Length usual, least, most;

  [[nodiscard]] constexpr UsualAmount from(int mm) const { return {usual, Length::mm(mm), most}; }
  [[nodiscard]] constexpr UsualAmount to(int mm) const { return {usual, least, Length::mm(mm)}; }
};
constexpr UsualAmount usually(double mm) { return {Length::mm(mm), {}, {}}; }

/// A measurement that a correction calls into doubt, and what that would change by, whole, for each
/// mm of the row: mm, or degrees of the slope.
struct DoubtedMeasurement {
  MeasurementName name;
  double per_mm;

  [[nodiscard]] constexpr Measure change(Length amount) const {
    return measure_of(name, per_mm * amount.mm());
  }
};
constexpr std::optional<DoubtedMeasurement> doubts(MeasurementName name, double per_mm) {
  return DoubtedMeasurement{name, per_mm};
}

/// One row: a fault, as it is seen on the body, and how much of a correction it usually takes.
struct FittingRow {
  CorrectionRow row;
  RowPart part;
  int stage;  ///< 1 to 8, see stage_name()
  std::string_view name;
  std::string_view reverse_name;  ///< what `name` is when it is done the other way
  std::string_view seen;          ///< on the body
  std::string_view cause;         ///< in the draft or in the tape
  UsualAmount amount;
  std::optional<DoubtedMeasurement> doubts;
  std::string_view source;  ///< where fault and cure were read
  /// Rows whose judgement this one makes void until the next toile.
  ShortList<CorrectionRow, 8> voids;
  ShortList<RowWords, 10> words;
  ShortList<Watched, 5> watched;
  RowTraits traits = {};

  [[nodiscard]] constexpr int number() const { return number_of(row); }
};

/// The last stage is for faults of one side of the body: its rows must be given a side.
inline constexpr int kOneSideStage = 8;

/// The table. What moves for each row: src/fit/rows/rows_*.cpp.
//
// Laid out by hand: row, part, stage, name, its reverse, what is seen, cause; usual amount,
// measurement in doubt and its change for each mm, source, voids; words, what the fitter watches.
// clang-format off
// A table, as long as it has rows; its constants are those of a namespace in all but place.
// NOLINTBEGIN(readability-function-size,readability-identifier-naming)
consteval std::array<FittingRow, kCorrectionCount> correction_table() {
  using enum MeasurementName;
  using enum CorrectionRow;
  using enum RowPart;
  using enum AmountKind;
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
  constexpr std::string_view kNeckGirth = "the neck girth changes by about five times as much";
  constexpr std::string_view kArmholeGoesAlong =
      "the underarm goes along, so that the armhole stays as long";
  constexpr std::string_view kAcrossGoesAlong =
      "where the shoulder points come in nearly to the ends of the across lines, across front and "
      "across back come in with them, so that the armholes stay round";
  constexpr std::string_view kAtAcrossFront =
      "the armhole line at the across point, square to it, to nothing at shoulder point and "
      "underarm; its length changes by about as much";
  constexpr std::string_view kAtAcrossBack =
      "the armhole line at the across point, square to it, to nothing at shoulder point and "
      "underarm; its length changes by next to nothing to twice as much, the more hollow the more";
  constexpr std::string_view kAtTheDarts =
      "all at the waist darts, front and back, to nothing at the bust line; the side waist points "
      "stay";
  constexpr std::string_view kAtTheDart =
      "all at this dart, to nothing at the bust line; the side waist point stays";
  constexpr std::string_view kRoomUnderBust =
      "room at the waist and under the bust, none at the bust line (tight there: let out "
      "side_at_bust, or a fuller bust); the side waist points stay";
  return {{
    // Neck.
    {FrontNeckLower, Neck, 2, "front neck lower", "front neck higher",
     "the front neck presses on the throat, small tight folds round its base",
     "the front neck point is drawn too high", usually(6).from(3).to(15),
     doubts(FrontWaistLength, -1.0), kTrade, {FrontNeckEdgeTakenIn}, {{1, "lower", "front_neck"}},
     {watch("front.centre_front", -1.0)}},
    {FrontNeckHigher, Neck, 2, "front neck higher", "front neck lower",
     "the front neck sits below the pit of the neck; its place is just above the collarbone",
     "the front neck point is drawn too low", usually(5).from(3).to(10),
     doubts(FrontWaistLength, 1.0), kUsda, {FrontNeckEdgeTakenIn}, {{1, "raise", "front_neck"}},
     {watch("front.centre_front", 1.0)}},
    {NeckWider, Neck, 2, "neck wider", "neck narrower",
     "the neck is tight all round and the bodice rides up", "the neck base girth was taken short",
     usually(3).from(2).to(6), doubts(NeckBaseGirth, 4.9), kTrade,
     {FrontNeckEdgeTakenIn, BackNeckEdgeTakenIn, ShoulderShorter, ShoulderLonger},
     {{1, "widen", "neck"}},
     {watch({"front.centre_front", -1.0}, {"back.centre_back", -1.0}, kNeckGirth)}},
    {NeckNarrower, Neck, 2, "neck narrower", "neck wider",
     "the neck stands off all round", "the neck base girth was taken large",
     usually(3).from(2).to(6), doubts(NeckBaseGirth, -4.9), kTrade,
     {FrontNeckEdgeTakenIn, BackNeckEdgeTakenIn}, {{1, "narrow", "neck"}},
     {watch({"front.centre_front", 1.0}, {"back.centre_back", 1.0}, kNeckGirth)}},
    {FrontNeckEdgeTakenIn, Neck, 6, "front neck edge taken in", "front neck edge let out",
     "a loose fold from the front neck edge toward the bust",
     "a dart too small, a hollow chest, a bust fuller than the draft, or a stretched edge",
     usually(6).from(3).to(13), {}, kMagazine, {FrontArmholeEdgeTakenIn, DartShorter},
     {{1, "take_in", "front_neck_edge", NeckEdge}},
     {watch("front.neckline", -1.0)}},
    {BackNeckEdgeTakenIn, Neck, 3, "back neck edge taken in", "back neck edge let out",
     "the back neck stands away, a gap at the nape",
     "the back neck is too wide, or a round upper back wants a dart", usually(5).from(3).to(13), {},
     kTrade, {ShoulderShorter}, {{1, "take_in", "back_neck_edge", NeckEdge}},
     {watch("back.neckline", -1.0)}},
    {BackNeckLower, Neck, 2, "back neck lower", "back neck higher",
     "a roll across just under the nape", "the nape is drawn too high",
     usually(4).from(3).to(10), doubts(BackWaistLength, -1.0), kTrade, {BackNeckEdgeTakenIn},
     {{1, "lower", "back_neck"}, {-1, "raise", "back_neck"}},
     {watch("back.centre_back", -1.0)}},
    {SideNeckWider, Neck, 2, "neck wider at the sides", "neck narrower at the sides",
     "the neck cuts in at the sides only (or stands off there)", "the neck width",
     usually(4).from(2).to(10), doubts(NeckBaseGirth, 2.0), kTrade,
     {ShoulderShorter, ShoulderLonger}, {{1, "widen", "side_neck", EachSide}, {-1, "narrow", "side_neck", EachSide}},
     {watch({"front.shoulder", -1.0}, {"back.shoulder", -1.0},
      "each side neck point moves so far along its shoulder; straight across both together change "
      "the neck by nearly twice as much, and its girth by about twice as much")}},
    // Shoulder.
    {ShoulderShorter, Shoulder, 2, "shoulder shorter", "shoulder longer",
     "the armhole seam falls off the shoulder; the neck is dragged aside",
     "the shoulder was taken too long",
     usually(6).from(3).to(20), doubts(ShoulderLength, -1.0), kBoth,
     {FrontArmholeScooped, BackArmholeFilled, FrontArmholeEdgeTakenIn, BackArmholeEdgeTakenIn},
     {{1, "shorten", "shoulder"}},
     {watch({"front.shoulder", -1.0}, {"back.shoulder", -1.0}, kAcrossGoesAlong)
          .where_moved("across_")}},
    {ShoulderLonger, Shoulder, 2, "shoulder longer", "shoulder shorter",
     "the armhole seam climbs toward the neck, the armhole binds, movement is tight",
     "the shoulder was taken too short", usually(6).from(3).to(20), doubts(ShoulderLength, 1.0),
     kRoberts, {UpperChestTakenIn, FrontArmholeScooped, BackArmholeFilled},
     {{1, "lengthen", "shoulder"}},
     {watch({"front.shoulder", 1.0}, {"back.shoulder", 1.0})}},
    {ShoulderPointHigher, Shoulder, 2, "shoulder point higher", "shoulder point lower",
     "tight folds from the shoulder tip to the centre, the seam stands off near the neck",
     "shoulders squarer than the draft", usually(6).from(3).to(15),
     doubts(ShoulderSlope, -kSlopePerTip), kRoberts,
     {UnderarmLower, UnderarmHigher, FrontArmholeScooped, BackArmholeFilled},
     {{1, "raise", "shoulder_point"}},
     {watch({"front.shoulder_drop", -1.0}, {"back.shoulder_drop", -1.0}, kArmholeGoesAlong)}},
    {ShoulderPointLower, Shoulder, 2, "shoulder point lower", "shoulder point higher",
     "loose folds from the neck to the underarm, folds below the armhole, the underarm seam sags",
     "shoulders more sloping than the draft", usually(6).from(3).to(15),
     doubts(ShoulderSlope, kSlopePerTip), kUsda,
     {UnderarmLower, UnderarmHigher, FrontArmholeScooped, BackArmholeFilled},
     {{1, "lower", "shoulder_point"}},
     {watch({"front.shoulder_drop", 1.0}, {"back.shoulder_drop", 1.0}, kArmholeGoesAlong)}},
    {ShoulderPointForward, Shoulder, 2, "shoulder point forward", "shoulder point back",
     "the outer end of the seam lies behind the bone; pull at the back armhole",
     "shoulders forward", usually(6).from(3).to(13), {}, kTrade,
     {FrontArmholeScooped, BackArmholeFilled},
     {{1, "forward", "shoulder_point"}, {-1, "back", "shoulder_point"}},
     {watch({"front.shoulder_drop", 1.0}, {"back.shoulder_drop", -1.0})}},
    {ShoulderSeamForward, Shoulder, 2, "shoulder seam forward", "shoulder seam back",
     "the whole seam lies too far back, and the neck fits", "the seam is drawn in the wrong place",
     usually(6).from(3).to(13), {}, kTrade, {FrontNeckLower, FrontNeckHigher, BackNeckLower},
     {{1, "forward", "shoulder_seam"}, {-1, "back", "shoulder_seam"}},
     {watch("front.neckline", -1.0,
            "a strip of even width: what the front loses at neck and armhole the back gets")}},
    {FrontShoulderTakenUp, Shoulder, 1,
     "front shoulder taken up at the neck", "front shoulder let down at the neck",
     "the front sags below the bust, the cross grain dips at the centre front",
     "the length over the bust is too long for a flat or low bust",
     usually(8).from(5).to(20), doubts(SideNeckToWaist, -1.0), kUsda,
     {FrontNeckLower, FrontNeckHigher, ArmholeLarger},
     {{1, "shorten", "front_shoulder_neck_end", Fold},
      {-1, "lengthen", "front_shoulder_neck_end"}},
     {watch({"front.centre_front", -1.0}, {"front.shoulder_drop", -1.0})}},
    {BackShoulderTakenUp, Shoulder, 1,
     "back shoulder taken up at the neck", "back shoulder let down at the neck",
     "the back sags below the blades, the cross grain dips at the centre back",
     "an over-erect back, the back length too long", usually(8).from(5).to(20),
     doubts(BackWaistLength, -1.0), kUsda, {BackNeckEdgeTakenIn, BackNeckLower},
     {{1, "shorten", "back_shoulder_neck_end", Fold}, {-1, "lengthen", "back_shoulder_neck_end"}},
     {watch({"back.centre_back", -1.0}, {"back.shoulder_drop", -1.0})}},
    {BackShoulderDartWider, Shoulder, 3, "back shoulder dart wider", "back shoulder dart narrower",
     "a tight pull over the blade (or puckers at the back shoulder seam)",
     "the dart does not suit the blade", usually(5).from(3).to(10), {}, kTrade, {AcrossBackWider},
     {{1, "take_in", "back_shoulder_dart", Dart}, {-1, "let_out", "back_shoulder_dart", Dart}},
     {watch("back.shoulder dart", 1.0,
            "the dart's mouth, and with it the room over the blade; shoulder seam and waist stay "
            "as long")}},
    {UpperChestTakenIn, Shoulder, 3, "upper chest taken in", "upper chest let out",
     "a hollow between collarbone and bust, slack high on the chest", "a hollow upper chest",
     usually(6).from(3).to(13), doubts(FrontWaistLength, -1.0), kHeads,
     {FrontNeckLower, FrontNeckEdgeTakenIn, FrontArmholeScooped},
     {{1, "take_in", "upper_chest", Fold}},
     {watch("front.centre_front", -1.0)}},
    // Armhole.
    {UnderarmLower, Armhole, 5, "underarm lower", "underarm higher",
     "the armhole digs under the arm and the bodice is lifted off",
     "the underarm point is drawn too high", usually(6).from(3).to(20), doubts(SideLength, -1.0),
     kTrade, {FrontArmholeScooped, BackArmholeFilled}, {{1, "lower", "underarm"}},
     {watch({"front.side", -1.0}, {"back.side", -1.0})}},
    {UnderarmHigher, Armhole, 5, "underarm higher", "underarm lower",
     "the bodice lifts when the arm is raised, slack below the armpit",
     "the underarm point is drawn too low", usually(6).from(3).to(15), doubts(SideLength, 1.0),
     kUsda, {}, {{1, "raise", "underarm"}},
     {watch({"front.side", 1.0}, {"back.side", 1.0})}},
    {FrontArmholeScooped, Armhole, 5, "front armhole scooped", "front armhole filled",
     "the armhole cuts at the front of the arm",
     "the across front is too wide at the pitch, the curve too shallow",
     usually(4).from(2).to(10), doubts(AcrossFront, -2.0), kTrade, {FrontArmholeEdgeTakenIn},
     {{1, "scoop", "front_armhole"}, {-1, "fill", "front_armhole"},
      {1, "narrow", "across_front", PinnedWidth}, {-1, "widen", "across_front", Width}},
     {moves_instead(kAtAcrossFront).at("front_armhole"),
      watch("across_front", -2.0).at("across_front")},
     {.usual_place = "front_armhole"}},
    {BackArmholeFilled, Armhole, 5, "back armhole filled", "back armhole scooped",
     "the armhole strains behind when the arm reaches forward",
     "the across back is narrow, or the back curve too hollow", usually(4).from(2).to(8),
     doubts(AcrossBack, 2.0), kTrade, {BackArmholeEdgeTakenIn},
     {{1, "fill", "back_armhole"}, {-1, "scoop", "back_armhole"}},
     {moves_instead(kAtAcrossBack)}},
    {FrontArmholeEdgeTakenIn, Armhole, 3,
     "front armhole edge taken in", "front armhole edge let out",
     "the front armhole gapes, a fold to the bust",
     "a bust fuller than the dart, or a dart given to the waist alone", usually(6).from(3).to(13),
     {}, kTrade, {FrontNeckEdgeTakenIn, FrontArmholeScooped, DartShorter},
     {{1, "take_in", "front_armhole_edge", Edge}},
     {watch("front.armhole", -1.0)}},
    {BackArmholeEdgeTakenIn, Armhole, 3, "back armhole edge taken in", "back armhole edge let out",
     "the back armhole gapes", "a prominent blade, or the back too long at the armhole",
     usually(5).from(3).to(10), {}, kTrade, {BackShoulderDartWider},
     {{1, "take_in", "back_armhole_edge", Edge}},
     {watch("back.armhole", -1.0)}},
    {ArmholeLarger, Armhole, 5, "armhole larger", "armhole smaller",
     "the armhole is tight all round, the bodice otherwise right",
     "the armscye girth was taken short", usually(4).from(3).to(8), doubts(ArmscyeGirth, 3.6),
     kTrade, {}, {{1, "widen", "armhole"}, {-1, "narrow", "armhole"}},
     {watch({"front.side", -1.0}, {"back.side", -1.0},
      "the armhole changes by 3 to 5 times as much")}},
    // Bust.
    {BustPointHigher, Bust, 3, "bust point higher", "bust point lower",
     "the darts point below (or above) the bust", "the length from the side neck to the bust point",
     usually(13).from(5).to(40), doubts(SideNeckToBustPoint, -1.0), kTrade,
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, FullerBust, SmallerBust, DartShorter,
      FrontShoulderDartWider}, {{1, "raise", "bust_point"}, {-1, "lower", "bust_point"}},
     {watch("bust_point_to_waist", 1.0,
            "bust line and side notches go along: the bust is measured at its new level")}},
    {FullerBust, Bust, 3, "fuller bust", "smaller bust",
     "tight folds radiate from the bust point, the front waist rides up, the armhole gapes",
     "a cup larger than the draft", usually(12.5).from(6).to(20), doubts(BustGirth, 2.0), kHeads,
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, DartShorter, FrontShoulderDartWider,
      LongerBelowBust, FrontWaistLonger, SideSeamBack, WaistTakenIn},
     {{1, "fuller", "bust", Width}},
     {watch("bust_line", 2.0)},
     {.on_one_side = OneBreastFuller}},
    {SmallerBust, Bust, 3, "smaller bust", "fuller bust",
     "loose folds at and under the bust, the dart points bubble", "a cup smaller than the draft",
     usually(6).from(6).to(20), doubts(BustGirth, -2.0), kManual,
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, DartShorter, FrontShoulderDartWider,
      LongerBelowBust, FrontWaistLonger, SideSeamBack, WaistTakenIn},
     {{1, "smaller", "bust", PinnedWidth}},
     {watch("bust_line", -2.0)},
     {.on_one_side = OneBreastFuller}},
    {DartShorter, Bust, 3, "dart shorter", "dart longer",
     "a dart's point pokes: a pucker beyond the bust, or a dimple short of it",
     "the dart is stitched too far (or not far enough)", usually(13).from(6).to(25), {}, kTrade, {},
     {{1, "shorten", "front_shoulder_dart"}, {-1, "lengthen", "front_shoulder_dart"},
      {1, "shorten", "front_waist_dart"}, {-1, "lengthen", "front_waist_dart"},
      {1, "shorten", "back_shoulder_dart"}, {-1, "lengthen", "back_shoulder_dart"},
      {1, "shorten", "back_waist_dart"}, {-1, "lengthen", "back_waist_dart"}},
     {watch("front.shoulder dart point", 1.0).at("front_shoulder_dart"),
      watch("front.waist dart point", 1.0).at("front_waist_dart"),
      watch("back.shoulder dart point", 1.0).at("back_shoulder_dart"),
      watch("back.waist dart point", 1.0).at("back_waist_dart")},
     {.usual_place = "front_waist_dart"}},
    {FrontShoulderDartWider, Bust, 3, "front shoulder dart wider", "front shoulder dart narrower",
     "slack (or strain) round the front shoulder dart only", "its angle is wrong",
     usually(8).from(3).to(25), {}, kTrade,
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, WaistTakenIn},
     {{1, "take_in", "front_shoulder_dart", Dart}, {-1, "let_out", "front_shoulder_dart", Dart}},
     {watch("front.shoulder dart", 1.0,
            "the dart's mouth, and with it the room for the bust; shoulder seam, bust line and "
            "waist stay as long, the across front changes by half as much on each side")}},
    {BustPointsApart, Bust, 3, "bust points apart", "bust points closer",
     "the dart points stand too close (or too far apart)", "the bust point width",
     usually(6).from(3).to(15), doubts(BustPointWidth, 2.0), kTrade, {DartShorter},
     {{1, "widen", "bust_points", Width}, {-1, "narrow", "bust_points", PinnedWidth}},
     {watch("bust_points", 2.0)},
     {.at_centre_line = true}},
    {UnderBustTakenIn, Bust, 4, "hollow under the bust", "fuller under the bust",
     "slack across directly under the bust, the waist fits", "a hollow under the bust",
     usually(8).from(4).to(12), {}, kTrade, {}, {{1, "take_in", "under_bust", Dart}},
     {moves_instead("the legs of the front waist dart, each bowed out by half of the amount "
                    "between bust line and waist; both stay")}},
    // Back.
    {AcrossBackWider, Back, 4, "across back wider", "across back narrower",
     "strain between the blades, the centre back or armhole seam pulls",
     "the across back was taken narrow", usually(6).from(3).to(15), doubts(AcrossBack, 2.0),
     kDressmaker, {BackArmholeFilled, SideSeamForward, BustLetOutAtSide},
     {{1, "widen", "across_back", Width}},
     {watch("across_back", 2.0)}},
    {AcrossBackNarrower, Back, 4, "across back narrower", "across back wider",
     "upright folds along the back armhole; keep a little spare for reach",
     "the across back was taken wide", usually(6).from(3).to(13), doubts(AcrossBack, -2.0), kTrade,
     {BackArmholeFilled, SideSeamForward, BustLetOutAtSide},
     {{1, "narrow", "across_back", PinnedWidth}},
     {watch("across_back", -2.0)}},
    {UpperBackLonger, Back, 1, "upper back longer", "upper back shorter",
     "a rounded upper back: short at the centre back, folds from the blade to the underarm",
     "nape to waist taken too short over the curve", usually(10).from(5).to(25),
     doubts(BackWaistLength, 1.0), kLesson,
     {BackNeckEdgeTakenIn, BackNeckLower, ShoulderPointForward, BackShoulderDartWider,
      AcrossBackWider, OneShoulderLower, OneBreastFuller}, {{1, "lengthen", "upper_back"}},
     {watch("back.centre_back", 1.0)}},
    {BackLongerBelowNape, Back, 1, "back longer below the nape", "back shorter below the nape",
     "a cushion at the nape, the neck tight behind", "a high curve of the back",
     usually(8).from(5).to(20), doubts(BackWaistLength, 1.0), kHeads,
     {BackNeckEdgeTakenIn, BackNeckLower, BackShoulderDartWider}, {{1, "lengthen", "below_nape"}},
     {watch("back.centre_back", 1.0)}},
    {UpperBackShorter, Back, 1, "upper back shorter", "upper back longer",
     "slack across between the blades", "an erect back", usually(8).from(5).to(15),
     doubts(BackWaistLength, -1.0), kUsda,
     {BackNeckEdgeTakenIn, BackNeckLower, BackShoulderDartWider},
     {{1, "shorten", "upper_back", Fold}},
     {watch("back.centre_back", -1.0)}},
    {BackWaistShorter, Back, 1, "back waist shorter", "back waist longer",
     "a fold across just above the waist at the centre back", "a hollow (sway) back",
     usually(8).from(5).to(20), doubts(BackWaistLength, -1.0), kUsda,
     {CentreSeamTakenIn, OneBreastFuller},
     {{1, "shorten", "back_waist", Fold}, {-1, "lengthen", "back_waist"},
      {1, "raise", "back_hem"}, {-1, "lower", "back_hem"}},
     {watch("back.centre_back", -1.0)}},
    // Lengths.
    {LongerBelowBust, Lengths, 1, "longer below the bust", "shorter below the bust",
     "the waist seam lies above the body's waist all round", "the body is longer below the armhole",
     usually(13).from(5).to(40), doubts(SideLength, 1.0), kManual, {BustPointHigher, WaistTakenIn},
     {{1, "lengthen", "below_bust"}, {-1, "shorten", "below_bust", Fold}},
     {watch({"front.centre_front", 1.0}, {"back.centre_back", 1.0})}},
    {LongerAboveBust, Lengths, 1, "longer above the bust", "shorter above the bust",
     "bust point, armhole and neck all sit too high", "the body is longer from shoulder to armhole",
     usually(6).from(3).to(20), doubts(SideNeckToBustPoint, 1.0), kManual,
     {UnderarmLower, UnderarmHigher, FrontArmholeScooped, BackArmholeFilled,
      FrontArmholeEdgeTakenIn, BackArmholeEdgeTakenIn, ArmholeLarger, BustPointHigher},
     {{1, "lengthen", "above_bust"}, {-1, "shorten", "above_bust", Fold}},
     {watch({"front.centre_front", 1.0}, {"back.centre_back", 1.0})}},
    {FrontWaistLonger, Lengths, 1, "front waist longer", "front waist shorter",
     "the waist is level at sides and back and rides up in front", "the front length over the bust",
     usually(8).from(5).to(25), doubts(FrontWaistLength, 1.0), kTrade, {FullerBust},
     {{1, "lengthen", "front_waist"}, {-1, "shorten", "front_waist", Fold},
      {1, "lower", "front_hem"}, {-1, "raise", "front_hem"}},
     {watch("front.centre_front", 1.0)}},
    {SideSeamForward, Lengths, 4, "side seam forward", "side seam back",
     "the side seam swings backwards at the waist", "the back is too narrow, or the front too wide",
     usually(6).from(3).to(13), doubts(FrontBustWidth, -2.0), kTrade,
     {FrontArmholeScooped, BackArmholeFilled, WaistTakenIn}, {{1, "forward", "side_seam"}},
     {watch({"front.waist", -1.0}, {"back.waist", 1.0})}},
    {SideSeamBack, Lengths, 4, "side seam back", "side seam forward",
     "the side seam swings forwards at the waist", "the front is too narrow, or the back long",
     usually(6).from(3).to(13), doubts(FrontBustWidth, 2.0), kTrade, {},
     {{1, "back", "side_seam"}},
     {watch({"front.waist", 1.0}, {"back.waist", -1.0})}},
    // Waist and centre seams.
    {WaistTakenIn, Waist, 4, "waist taken in", "waist let out",
     "the waist is loose (or tight)", "the waist girth", usually(10).from(5).to(30),
     doubts(WaistGirth, -2.0), kTrade, {UnderBustTakenIn, BackWaistShorter},
     {{1, "take_in", "waist", Width}, {-1, "let_out", "waist", Width},
      {1, "take_in", "side_at_waist", Pinned}, {-1, "let_out", "side_at_waist", LetOut},
      {1, "take_in", "waist_darts", Width}, {-1, "let_out", "waist_darts", Width},
      {1, "take_in", "front_waist_dart", Dart}, {-1, "let_out", "front_waist_dart", Dart},
      {1, "take_in", "back_waist_dart", Dart}, {-1, "let_out", "back_waist_dart", Dart}},
     {watch("waist", -2.0,
            "a little goes to the side seams alone, more is shared with the waist darts; the bust "
            "line changes by about a quarter of what the sides do").at("waist"),
      watch("waist", -2.0,
            "all at the side seams, to nothing at the underarm: the bust line changes by about a "
            "quarter as much").at("side_at_waist"),
      watch("waist", -2.0, kAtTheDarts).at("waist_darts").or_back(kRoomUnderBust),
      watch("waist", -2.0, kAtTheDart).at("front_waist_dart").or_back(kRoomUnderBust),
      watch("waist", -2.0, kAtTheDart).at("back_waist_dart").or_back(kRoomUnderBust)},
     {.usual_place = "waist"}},
    {CentreSeamTakenIn, Waist, 4, "centre seam taken in", "centre seam let out",
     "slack down the centre back with blades right, or loose between the breasts",
     "a straight centre cannot follow a hollow", usually(8).from(3).to(15),
     doubts(WaistGirth, -2.0), kTrade, {BackNeckEdgeTakenIn, WaistTakenIn},
     {{1, "take_in", "centre_back", Pinned}, {-1, "let_out", "centre_back", LetOut},
      {1, "take_in", "centre_front", Pinned}, {-1, "let_out", "centre_front", LetOut}},
     {watch("waist", -2.0, "the bust line changes by 0.4 to 0.8 of it").at("centre_back"),
      watch("waist", -2.0, "the bust line changes by two thirds as much").at("centre_front")},
     {.usual_place = "centre_back", .at_centre_line = true}},
    // One side of the body.
    {OneShoulderLower, Shoulder, 8, "one shoulder lower", "one shoulder higher",
     "one shoulder lies lower", "no two sides are alike", usually(8).from(5).to(20), {}, kTrade,
     {UnderarmLower, UnderarmHigher, FrontArmholeScooped, BackArmholeFilled},
     {{1, "lower", "one_shoulder"}, {-1, "raise", "one_shoulder"}},
     {watch({"front.shoulder_drop", 1.0}, {"back.shoulder_drop", 1.0}, kArmholeGoesAlong)}},
    {OneBreastFuller, Bust, 8, "one breast fuller", "one breast smaller",
     "one breast is fuller", "no two sides are alike", usually(6).from(3).to(20), {}, kTrade,
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn},
     {{1, "fuller", "one_breast", OneHalf}, {-1, "smaller", "one_breast", OneHalf}},
     {watch("bust_line", 2.0)}},
    {OneSideOfWaistHigher, Lengths, 8,
     "one side of the waist higher", "one side of the waist lower",
     "one side of the waist lies higher", "no two sides are alike", usually(6).from(3).to(20), {},
     kTrade, {}, {{1, "raise", "one_side_waist"}, {-1, "lower", "one_side_waist"}},
     {watch({"front.side", -1.0}, {"back.side", -1.0})}},
    // Bust girth at the side seam.
    {BustLetOutAtSide, Bust, 4, "bust let out at the side", "bust taken in at the side",
     "tight (or slack) round the bust, the cup right", "the bust girth, or its ease",
     usually(12).from(6).to(40), doubts(BustGirth, 2.0), kTrade,
     {UnderarmLower, UnderarmHigher, WaistTakenIn},
     {{1, "let_out", "side", LetOut}, {-1, "take_in", "side", Pinned},
      {1, "let_out", "side_at_bust", LetOut}, {-1, "take_in", "side_at_bust", Pinned}},
     {watch("bust_line", 2.0, "all at the side seams, to nothing at the waist").at("side_at_bust"),
      watch({"bust_line", 2.0}, {"waist", 2.0}, "all at the side seams").at("side")},
     {.usual_place = "side_at_bust"}},
    // Both shoulder seams.
    {ShouldersTakenUp, Shoulder, 1, "shoulders taken up", "shoulders let down",
     "the bust line lies too low, and all above it with it: cloth is taken in at both shoulders",
     "all lengths from the shoulder down to the bust line are too long (a short upper body)",
     usually(8).from(3).to(20), doubts(SideNeckToBustPoint, -1.0), kTrade,
     {FrontNeckLower, FrontNeckHigher, BackNeckLower, UnderarmLower, UnderarmHigher,
      BustPointHigher, LongerBelowBust, FrontWaistLonger},
     {{1, "take_up", "shoulders", SeamFold}, {-1, "let_down", "shoulders"}},
     {watch({"front.centre_front", -1.0}, {"back.centre_back", -1.0},
            "on the body bust line and waist go up by as much; neck, shoulders and armhole stay as "
            "long, the side seams get shorter by as much")
          .or_back("on the body bust line and waist go down by as much; neck, shoulders and "
                   "armhole stay as long, the side seams get longer by as much")},
     {.along_a_seam = true}},
  }};
}
// NOLINTEND(readability-function-size,readability-identifier-naming)
// clang-format on

inline constexpr std::array<FittingRow, kCorrectionCount> kCorrections = correction_table();

/// True if the i-th row is number i + 1 and has words, amounts, a stage and something watched.
consteval bool is_complete(const std::array<FittingRow, kCorrectionCount>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const FittingRow& row = rows[i];
    if (row.number() != static_cast<int>(i) + 1 || row.words.empty()) return false;
    if (row.name.empty() || row.reverse_name.empty() || row.source.empty()) return false;
    const auto& [usual, least, most] = row.amount;
    if (least > usual || usual > most || row.stage < 1) return false;
    if (row.doubts && row.doubts->per_mm == 0.0) return false;
    for (const Watched& watched : row.watched) {
      if (watched.lengths.empty() && watched.says.empty()) return false;
    }
    if (row.watched.empty()) return false;
  }
  return true;
}
static_assert(is_complete(kCorrections), "each row of corrections is there, in order");

/// All rows, by number.
constexpr const std::array<FittingRow, kCorrectionCount>& fitting_catalogue() {
  return kCorrections;
}
/// Throws std::logic_error if there is no such row.
const FittingRow& fitting_row(CorrectionRow row);

/// What the fitter watches where the row is done at `place`; an empty one means the usual place.
const Watched& watched_at(CorrectionRow row, std::string_view place);

/// The row's name in the direction of `sign`: "bust taken in at the side" for the reverse of 49.
std::string_view row_name(CorrectionRow row, int sign);

/// "lengths and balance" ...: what is judged at a stage. A change at one stage makes every
/// judgement of a later stage void. Order of work: common practice, no source; that the cross
/// grain and the shoulders come first: USDA, "Fitting Dresses", rev. 1946, and H. Roberts,
/// "Garment Fitting", Washington State University E.M. 2246, 1962.
std::string_view stage_name(int stage);

/// Beyond this a measurement is taken again and the block drafted anew: 25 mm of a girth, 13 mm
/// of a length, 4 degrees of slope. Our judgement; common practice, no source.
Measure redraft_limit(MeasurementName name);

}  // namespace blockwright
