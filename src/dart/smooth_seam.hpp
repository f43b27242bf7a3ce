#pragma once

#include "blending.hpp"
#include "blockwright/pattern/piece.hpp"

#include <vector>

namespace blockwright {

/// A dart beside the seam, between it and the side, that is taken up in the seam.
struct TakenUp {
  Point apex;
  Point mouth;  ///< the middle of its mouth
  Vec by;       ///< from the seam's side of its mouth to the other
};

/// What a smooth panel seam is drawn from. It starts at the waist; the side panel lies to the
/// right.
struct SeamCourse {
  Dart first, second;           ///< of one apex or of two
  double aside_first = 0.0;     ///< how far to the side of the first apex the seam passes, mm
  double aside_second = 0.0;    ///< ... of the second; the same where there is one apex
  bool upright = false;         ///< the levels of both panels are still those of the body
  bool round_second = false;    ///< passes the second apex in one wide bend
  std::vector<TakenUp> others;  ///< beside the first
  double let_down = 0.0;        ///< of the side panel's waist end, mm; negative: trimmed
};

/// Both lines smooth, each point of one opposite a point of the other where the darts are closed
/// along the seam: what one panel loses, the other gains, within 0.5 mm. Beside each apex they turn
/// by the darts' angle within a few millimetres; about 45 mm before and behind both bend likewise,
/// so that each is one line.
SeamLines smooth_seam(const SeamCourse& course);

}  // namespace blockwright
