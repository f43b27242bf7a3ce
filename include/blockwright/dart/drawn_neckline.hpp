#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>

namespace blockwright {

/// The lines that a neckline is drawn by. Round and scoop are drawn as the block's own is, and
/// differ in width and depth.
enum class NeckShape {
  Round,
  Scoop,
  Boat,        ///< flat from shoulder to shoulder, coming to a point over each
  V,           ///< straight from the shoulder to the centre front
  Square,      ///< down the front, then level to the centre
  Sweetheart,  ///< down the front, then an arc over each bust to a V at the centre
};

/// A neckline of a garment, in mm. What is left empty is as usual for the shape. At most one of
/// `from_neck` and `shoulder_share`, and one of the three front depths.
struct NecklineDesign {
  NeckShape shape = NeckShape::Round;
  std::optional<double> from_neck;        ///< along the shoulder, from the side neck point
  std::optional<double> shoulder_share;   ///< of the shoulder's length
  std::optional<double> front_depth;      ///< down the centre front, from the front neck point
  std::optional<double> depth_share;      ///< of the way to the level of the bust point
  std::optional<double> over_bust_point;  ///< up from the level of the bust point
  std::optional<double> back_depth;       ///< down the centre back, from the nape
  /// How much shorter than the flat edge each half of the front edge becomes, so that it lies
  /// close.
  std::optional<double> closer;
};

/// A shoulder keeps at least this length, in mm: a narrower one slips. Common practice, no source
/// ("2.5 cm").
inline constexpr double kLeastShoulderLeft = 25.0;
/// A front neck edge keeps this far off the bust point, in mm, and is warned of where it comes
/// nearer than usual. Common practice, no source ("6 cm, stop at 4").
inline constexpr double kLeastOffBust = 40.0;
inline constexpr double kUsualOffBust = 60.0;
/// Centre front and back keep at least this length, in mm. Ours: less is no bodice.
inline constexpr double kLeastCentreLeft = 60.0;
/// At the shoulder a neckline lies at least this far above its centre, in mm. Ours: less is no
/// hollow that a neck goes through.
inline constexpr double kLeastNeckHollow = 8.0;
/// A front edge becomes at most this much shorter a half, in mm. Common practice, no source: 3 to
/// 13 mm; more draws in the chest.
inline constexpr double kMostCloser = 20.0;

/// Draws the necklines of front and back anew, `design.from_neck` from the neck on both shoulders,
/// which stay equally long, and square to the centre front but for a V or a sweetheart. Over the
/// closed shoulder the back runs on where the front ends, but for a boat.
///
/// So that the front edge lies close, what it becomes shorter (`closer`) is turned into
/// the widest dart of the bust, about its apex; the shoulder comes with it, and a note says how
/// much. A front without such a dart keeps its edge, with a note.
///
/// Throws InputError "garment.neckline": two widths or two depths, an amount off its limits (with
/// the most or least that can be), a piece that is cut into panels, a dart, gathers or the way that
/// the neckline would cut off.
MovedDarts draw_neckline(const Pattern& pattern, const NecklineDesign& design);

}  // namespace blockwright
