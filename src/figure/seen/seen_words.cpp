#include "blockwright/base/error.hpp"
#include "blockwright/figure/seen_figure.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

using enum CorrectionRow;

/// What a figure shows where the catalogue's words are of the other direction, or of several
/// places.
struct SeenWords {
  CorrectionRow row;
  int sign;
  std::string_view says;
  std::string_view place = {};  ///< empty: wherever no other line of the table has it
};

// From common practice (docs/fitting.md); the wording is ours.
constexpr std::array kSays = std::to_array<SeenWords>({
    {BackNeckLower, -1, "the back neck sits below the nape"},
    {SideNeckWider, -1, "the neck stands off at the sides"},
    {ShoulderPointForward, -1, "the outer end of the seam lies before the bone"},
    {ShoulderSeamForward, -1, "the whole seam lies too far forward"},
    {FrontShoulderTakenUp, -1, "tight below the neck; the cross grain arches at the centre front"},
    {BackShoulderTakenUp, -1, "tight below the neck; the cross grain arches at the centre back"},
    {BackShoulderDartWider, -1, "puckers at the back shoulder seam"},
    {FrontArmholeScooped, -1, "the front armhole lies too far in on the chest"},
    {BackArmholeFilled, -1, "slack along the back armhole"},
    {ArmholeLarger, -1, "the armhole is loose all round"},
    {BustPointHigher, -1, "the darts point above the bust"},
    {DartShorter, 1, "a pucker beyond the dart's point"},
    {DartShorter, -1, "a dimple: the dart stops short of the fullness"},
    {FrontShoulderDartWider, -1, "strain round the front shoulder dart only"},
    {BustPointsApart, -1, "the dart points stand too far apart"},
    {BackWaistShorter, -1, "the waist rides up at the centre back"},
    {LongerBelowBust, -1, "the waist seam lies below the body's waist all round"},
    {LongerAboveBust, -1, "bust point, armhole and neck all sit too low"},
    {FrontWaistLonger, -1, "the waist is level at sides and back and drops in front"},
    {WaistTakenIn, -1, "the waist is tight"},
    {CentreSeamTakenIn, 1, "loose between the breasts", "centre_front"},
    {CentreSeamTakenIn, 1, "slack down the centre back, the blades right"},
    {CentreSeamTakenIn, -1, "strain between the breasts", "centre_front"},
    {CentreSeamTakenIn, -1, "strain across the back over the waist"},
    {OneShoulderLower, -1, "one shoulder lies higher: folds from its tip"},
    {OneBreastFuller, -1, "one breast is smaller: loose folds"},
    {OneSideOfWaistHigher, -1, "one side of the waist lies lower"},
    {BustLetOutAtSide, -1, "slack round the bust, the cup right"},
    {ShouldersTakenUp, -1, "the bust line lies too high, and all above it is tight"},
});

constexpr bool is_for(const SeenWords& words, const SeenRow& seen) {
  return words.row == seen.row && words.sign == seen.sign &&
         (words.place.empty() || words.place == seen.place);
}

constexpr const SeenWords* own_words(const SeenRow& seen) {
  const auto* const found =
      std::find_if(kSays.begin(), kSays.end(), [&](const SeenWords& w) { return is_for(w, seen); });
  return found == kSays.end() ? nullptr : found;
}

consteval bool every_reverse_is_told() {
  for (const FittingRow& row : kCorrections) {
    for (const RowWords& words : row.words) {
      if (words.sign > 0) continue;
      if (own_words({row.row, words.sign, words.place}) == nullptr) return false;
    }
  }
  return true;
}
static_assert(every_reverse_is_told(), "the fault that a row's reverse mends has no words");

// "tight (or slack) round the bust": the catalogue's words for both directions.
constexpr std::string_view kOrTheOther = " (or ";

}  // namespace

std::string seen_words(const SeenRow& seen) {
  if (const SeenWords* own = own_words(seen)) return std::string(own->says);
  require(seen.sign > 0, "no words for such a fault");
  std::string says(fitting_row(seen.row).seen);
  const std::size_t from = says.find(kOrTheOther);
  if (from != std::string::npos) says.erase(from, says.find(')', from) + 1 - from);
  return says;
}

}  // namespace blockwright
