#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// What lies on what when two versions are laid over each other; always centre line on centre line.
enum class Alignment {
  Still,  ///< the point whose height leaves most of the outline where it was
  Waist,  ///< the centre waist
  Bust,   ///< the bust line at the centre
  Neck,   ///< front neck point or nape
};

/// The height of a piece that the alignment lays on the same height of another version, in mm;
/// nothing if the piece has not got it, and for Alignment::Still, which takes both versions.
std::optional<double> alignment_level(const Piece& piece, Alignment alignment);

/// The piece of an earlier pattern that this one is a version of, or was cut from; null if none.
const Piece* earlier_version(const Piece& piece, const Pattern& earlier);

/// Where an earlier version of a piece is laid. The height of Alignment::Still is one of those that
/// lay a named point on itself, or none: what makes most of the outline lie on the old one, counted
/// in places 6 mm apart, each the more the nearer it lies. Cost: about a draft.
Placement laid_under(const Piece& piece, const Piece& earlier, Alignment alignment);

/// Where each piece and its earlier version are laid together: "Back laid together at the nape".
/// One for each piece; of a piece that is new nothing.
std::vector<std::string> laid_together_words(const Pattern& now, Alignment alignment,
                                             const Pattern& earlier);

/// An older version to lay under the pieces.
struct PreviousVersion {
  Pattern pattern;
  Alignment alignment = Alignment::Waist;
  /// It is to be compared with, and nothing is cut by the sheet.
  bool compared = false;
};

/// Smaller moves of a named point are not told: the width of a soft pencil's line, mm. Ours.
inline constexpr double kToldMove = 1.0;

/// A named point that lies elsewhere than in the previous version.
struct MovedPoint {
  std::string name;
  Point was, is;
};

}  // namespace blockwright
