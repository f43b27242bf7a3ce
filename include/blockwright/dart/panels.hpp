#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// A seam led through a piece from edge to edge by way of its darts' apexes; the darts it runs
/// along are sewn into it.
///
///   princess seam: from "front.shoulder" to "front.waist" (or from "front.armhole"): two darts
///   yoke: across the piece, from "front.armhole" to "front.centre_front": one dart at one end
///
/// `from` and `to` name a dart of the piece, or a place on an edge as in PivotMove; at least one of
/// them is a dart. Where two darts have different apexes, the seam runs straight from one to the
/// other.
struct PanelSeam {
  std::string from;
  std::string to;
  /// The panels' names: first the one that keeps the centre waist, then the other. Empty: named
  /// after the piece, "centre_front" and "side_front", or for a yoke "front" and "front_yoke".
  std::string centre_panel;
  std::string side_panel;
  /// How far to the side of the bust point a princess seam passes, in mm, from kLeastBesideBust to
  /// kMostBesideBust; of a back seam from the armhole, how far outside the blade point. Nothing: 7
  /// and 20 mm.
  std::optional<double> beside = {};
  /// Straight legs, rounded over the apex, which a seam that is not plain passes smoothly.
  bool plain = false;
};

/// Bounds of `beside`, in mm. From memory of handbooks.
inline constexpr double kLeastBesideBust = 5.0;
inline constexpr double kMostBesideBust = 10.0;
inline constexpr double kLeastOutsideBlade = 15.0;
inline constexpr double kMostOutsideBlade = 25.0;
/// What is eased in over the bust, and what a seam takes at most, in mm. From memory of handbooks.
inline constexpr double kLeastSeamEase = 3.0;
inline constexpr double kMostSeamEase = 13.0;
/// What is trimmed off the side panel's waist at the seam at most, where it would be more. Ours.
inline constexpr double kMostTrimmed = 10.0;

/// What the seam came out as. Lengths in mm.
struct PanelWalk {
  std::string centre_panel, side_panel;
  std::string edge;    ///< of both panels
  double ease = 0.0;   ///< side less centre between the outer notches; negative: ease the centre
  double bulge = 0.0;  ///< largest distance of a rounded line from the darts' legs; of a smooth one
                       ///< from their points
  double let_down = 0.0;  ///< of the side panel's waist at the seam; negative: trimmed
};

struct Panels {
  Pattern pattern;
  PanelWalk walk;
  Problems remarks;
};

/// Cuts the piece along the seam into two panels with an edge "princess" (or "yoke") each.
///
/// A seam from the waist is one smooth line: it passes beside the bust point (`beside`), bends over
/// some 90 mm to either side and takes up the darts that lie between it and the side on the waist.
/// What the side panel's edge loses on a level, the centre panel's gains. In front the side panel
/// is eased in over the bust: its waist is let down at the seam until it is 4 mm longer. A back
/// seam from the armhole passes 20 mm outside the blade point. Where more than kMostSeamEase would
/// have to be eased in, the side panel's waist is trimmed by kMostTrimmed at most.
///
/// Of a yoke, of a seam that ends on the centre and of one that is `plain` the corners at the
/// apexes are rounded over at most 50 mm to either side. Both lines pass through the apex itself.
///
/// Guarantees: 1. outside the ease zone both panels' edges are equally long within 1e-6 mm, and so
/// are the distances between notches; 2. the widths of both panels together are those of the piece
/// with its darts cut out, within 0.5 mm where the darts in the seam make 50 degrees or less; of a
/// plain seam, on the level of each apex and outside the rounding within 1e-6 mm, inside more by at
/// most the walk's `bulge` on each panel and less by 0.1 mm at most; 3. every dart that is not part
/// of the seam stays as it is, on its panel.
/// Notches: at the apex, and at both ends of the ease zone; double on a back.
///
/// Throws InputError "dart.unknown", "dart.place", "dart.blocked" (the seam would cross a dart or
/// the outline), "dart.panel" (no dart in the seam, a name that a piece already has, or more to
/// ease in than a seam takes).
Panels cut_into_panels(const Pattern& pattern, const PanelSeam& seam);

}  // namespace blockwright
