#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <array>
#include <optional>

namespace blockwright {

/// Where a garment opens to let the wearer in, and with what.
struct OpeningPlan {
  enum class At { CentreBack, CentreFront, LeftSide };
  At at = At::CentreBack;
  Closure with = Closure::Zip;
  /// From the upper end of the edge to where the zip begins or the first button sits, in mm;
  /// without it kUnderEdge at a centre, kUnderUnderarm at the side, of buttons as near as they may.
  std::optional<double> from_edge = {};
  std::optional<double> button = {};   ///< diameter, in mm; else kUsualButton
  std::optional<double> spacing = {};  ///< from button to button, in mm; else as fits
};

/// Below the finished edge a zip begins so far, in mm: room for a hook, and under the arm for what
/// would chafe. Common practice, no source: 6 to 10, and 20 to 30.
inline constexpr double kUnderEdge = 8.0;
inline constexpr double kUnderUnderarm = 25.0;
/// The most that an opening begins below the end of its edge, in mm. Ours.
inline constexpr double kMostUnderEdge = 80.0;
/// A zip that does not part ends so far above the lower edge, in mm: the seam below it is sewn
/// first. Ours.
inline constexpr double kOverHem = 20.0;
/// The shortest opening that is worth a zip, in mm. Ours.
inline constexpr double kLeastOpening = 60.0;
/// Lengths in which zips are sold, in mm; a longer one is shortened. Common practice, no source.
inline constexpr std::array<double, 10> kZipLengths = {100, 150, 200, 250, 300,
                                                       350, 400, 500, 550, 600};

/// Diameters of buttons, in mm: usual on a bodice, and what can be sewn through cloth. Common
/// practice, no source: 12 to 15.
inline constexpr double kUsualButton = 15.0;
inline constexpr double kLeastButton = 8.0;
inline constexpr double kMostButton = 30.0;
/// A front reaches beyond its centre line by the button's diameter, and at least so much more than
/// its radius, in mm. Common practice, no source.
inline constexpr double kBeyondButton = 6.0;
/// Between the rim of the first or last button and the edge, in mm. Common practice, no source: 6
/// to 10.
inline constexpr double kButtonFromEdge = 8.0;
inline constexpr double kLeastButtonFromEdge = 6.0;
/// From button to button where it is not said, in mm: common practice, no source. Closer than that
/// or wider apart only where a style asks for it. Ours.
inline constexpr double kCloseButtons = 60.0;
inline constexpr double kWideButtons = 90.0;
inline constexpr double kLeastSpacing = 30.0;
inline constexpr double kMostSpacing = 120.0;
/// A buttonhole is longer than the button is wide by its thickness, and begins so far beyond the
/// centre line, in mm. Common practice, no source.
inline constexpr double kButtonThickness = 3.0;
inline constexpr double kHoleBeyondCentre = 3.0;
/// A cut-on facing is twice as wide as the front reaches beyond its centre line and so much more,
/// in mm. Common practice, no source.
inline constexpr double kFacingMore = 30.0;

/// Opens the centre front with buttons: the only step that finishes an edge and draws it. Each
/// front is led on beyond its centre line to a straight "front_edge", where a facing that is cut on
/// folds back; neckline and lower edge run on as they meet the centre. Buttons sit on the centre
/// line at equal distances, one at the level of the bust point; buttonholes are in the right front.
/// A front on the fold becomes a pair.
///
/// Where no button can be at the bust level a note says so. Throws InputError "garment.opening":
/// not at the centre front, a width that cannot be sewn, no room for two buttons, a dart or gathers
/// at the centre, an edge that runs along the centre.

/// Opens the seam with a zip, down to a notch ("left_side.zip_end") on both edges that it parts, or
/// through the lower edge with a zip that parts in two. An opening of the block elsewhere, such as
/// the centre back, becomes a seam.
///
/// Throws InputError "garment.opening": the edge lies on the fold or is not there, is too short, or
/// has an opening already.
MovedDarts with_opening(const Pattern& pattern, const OpeningPlan& plan);

/// What passes through a garment when it is put on, in mm.
struct WearerSize {
  double bust = 0.0;
  double hip = 0.0;
};

/// Round the head, and how much more it takes to pull an edge over it, in mm. From memory of
/// handbooks: 560 to 580.
inline constexpr double kHeadGirth = 580.0;
/// Girth round both shoulders and arms of a bust of 905 mm, and how it grows with the bust; what
/// folding the arms gives. The first two computed from the survey (residual SD 30 mm); the last
/// from memory: 0.85 to 0.90.
inline constexpr double kShouldersOfBust905 = 1026.0;
inline constexpr double kShouldersByBust = 0.67;
inline constexpr double kFoldedArms = 0.87;

/// Whether the wearer can get in: warnings "garment.get_in", with the girth of a closed edge and
/// what has to pass through it. An opening parts the upper edge where it begins no more than
/// kUnderEdge below it, which a hook closes; further down the seam above it keeps the edge closed.
/// A garment with shoulders or straps is pulled on over the head; a strapless top also goes on over
/// the shoulders or from below over the hips, whichever lacks less. Nothing of a pattern without
/// openings of a style.
Problems getting_in(const Pattern& pattern, const WearerSize& wearer);

}  // namespace blockwright
