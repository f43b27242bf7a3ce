#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/measure/body.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// Keeps the account of what bounds did to measurements while a draft is settled.
class Settlement {
 public:
  /// Notes that a bound changed `name` by `by` on the whole measurement, where that is more than
  /// rounding; else the bound was not reached. A measurement that met two bounds has two entries.
  void adjust(MeasurementName name, Measure by, const Wording& why);
  [[nodiscard]] const Adjustments& adjustments() const { return adjustments_; }

 private:
  Adjustments adjustments_;
};

/// What the half pieces must measure: body plus ease, in mm on the half body, angles as Angle.
struct Targets {
  double neck = 0.0;          ///< half the neck base girth: back plus front neckline
  double back_length = 0.0;   ///< nape to waist
  double front_length = 0.0;  ///< front neck point to waist
  double neck_to_bust = 0.0;  ///< side neck point to bust point
  double under_bust = 0.0;    ///< bust point to waist
  double bust_point_x = 0.0;  ///< half the bust point width
  double shoulder = 0.0;      ///< shoulder length
  std::optional<double> front_slant, back_slant;
  Angle slope;  ///< finished shoulder slope where no slant closes it
  bool slope_is_taped = false;
  double across_back = 0.0;
  double across_front = 0.0;
  double upper_chest = 0.0;
  double bust = 0.0;
  double waist = 0.0;
  double armhole = 0.0;      ///< front plus back armhole: not halved, one arm
  double side_length = 0.0;  ///< armpit to waist on the body, before the underarm drop
  double scye_depth = 0.0;   ///< nape to armpit level on the body
  double cup = 0.0;          ///< bust less underbust on the whole body, without ease
  std::optional<double> front_bust;
  bool across_front_is_taped = false;
  bool over_bust_is_taped = false;
  bool front_length_is_taped = false;
};

/// Body plus ease. Lengths that contradict each other so far that no bodice could be drawn are
/// brought within bounds here.
Targets targets_for(const Body& body, const Ease& ease, Settlement& settlement);

}  // namespace blockwright
