#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/fit/moves.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <functional>
#include <initializer_list>
#include <optional>

namespace blockwright {

/// Throws InputError. `where` is left to apply_rows(), which knows the row; `again` are the
/// measurements that the hint says to take again.
[[noreturn]] inline void refuse_fit(const char* code, const Wording& message, const Wording& hint,
                                    std::initializer_list<MeasurementName> again = {}) {
  Problem problem{Severity::Error, code, "", message, hint};
  for (const MeasurementName name : again) problem.measurements.emplace_back(info(name).key);
  throw InputError(problem);
}

/// What several rows read of a half piece, and what they do to a part of it.

const Curve& stroke_of(const Opened& open, StrokeSpot spot);
/// Half way along a stroke.
Point middle_of(const Curve& stroke);
Point corner_of(const Opened& open, Corner corner);
/// Where the armhole's two strokes meet.
Point across_of(const Opened& open);
/// The same with the shoulder dart closed.
Point closed_across_of(const Opened& open);
/// Unit vectors up the side seam at the waist, and at the underarm point: a side that turns in
/// above the bust line has a joint there.
Vec up_the_side(const Opened& open);
Vec up_to_the_underarm(const Opened& open);
/// Where the first straight part of the side ends: the joint, or the underarm point.
Point side_joint(const Opened& open);
/// The piece as it is; but with its side straight, going on as it does below the joint and as long
/// as it was, where an underarm point lowered by `by` would use up what lies above the joint.
Opened with_side_to_lower(const Opened& open, double by);
/// Unit vector down the shoulder at the side neck point, and at the shoulder point.
Vec shoulder_at_neck(const Opened& open);
Vec shoulder_at_tip(const Opened& open);
DartSpot shoulder_dart(const Opened& open);
/// The bust point or the blade point: the shoulder dart's apex.
Point apex_of(const Opened& open);
/// The first waist dart from the centre.
std::optional<DartSpot> waist_dart(const Opened& open);
/// The same. Throws InputError "fit.place" where there is none.
DartSpot the_waist_dart(const Opened& open);
/// All darts on the waist.
std::vector<DartSpot> waist_darts(const Opened& open);
double closed_length(const Opened& open, BlockEdge edge);
/// mm from the side waist point to the side notch, and the point itself.
double side_notch(const Opened& open);
Point side_notch_point(const Opened& open);
/// The height of the marked bust line at a place across the piece: on a front level as far as the
/// bust point, and from there to the side notch, which a fuller bust lowers.
double bust_line_at(const Opened& open, double x);
/// mm of the marked bust line across the piece, less what the stitched waist darts take out of it.
double bust_line_width(const Opened& open);
/// x of the centre edge at a height.
double centre_at(const Opened& open, double y);

/// Cloth to be folded out of a gaping edge: so much at `fold` on the edge, to nothing at `apex`.
struct Wedge {
  BlockEdge edge;
  Point fold, apex;
  double by = 0.0;  ///< mm
};
/// The piece with the wedge closed, as far as makes the edge shorter by its width: a fold that lies
/// askew to its edge takes more or less of it. `close` turns a part of the piece about the apex.
Opened with_wedge_closed(const Opened& open, const Wedge& wedge,
                         const std::function<void(Redrawing&, Angle)>& close);

/// The shoulder of a half piece with its shoulder dart closed: a straight line from the side neck
/// point to the shoulder point, which the dart's inner leg meets.
struct ClosedShoulder {
  Point side_neck;
  Point leg;  ///< where both legs end
  Point shoulder_point;
  Point apex;
  Angle angle;  ///< of the dart

  [[nodiscard]] double length() const { return distance(side_neck, shoulder_point); }
  [[nodiscard]] double mouth() const;
};

/// Takes the shoulder as `work` has it by now.
ClosedShoulder closed_shoulder(const Redrawing& work);
/// Puts its points back with the dart open.
void put_shoulder(Redrawing& work, const ClosedShoulder& shoulder);

/// The shoulder between other ends: the dart keeps its lines and its angle, and they end at the new
/// shoulder line.
struct ShoulderEnds {
  Point side_neck, shoulder_point;
};
ClosedShoulder with_ends(const ClosedShoulder& shoulder, const ShoulderEnds& ends);
/// Turned about its side neck point, or about its shoulder point, until the other end stands `rise`
/// mm higher; its length is kept. Throws InputError "fit.amount" where it is too short for that.
ClosedShoulder tip_raised(const ClosedShoulder& shoulder, double rise);
ClosedShoulder neck_end_raised(const ClosedShoulder& shoulder, double rise);
/// All placed as one but the apex; the mouth keeps its width, so that the angle follows the leg.
ClosedShoulder moved_off_apex(const ClosedShoulder& shoulder, const Placement& by);

Opened with_dart_widened(const Opened& open, DartSpot dart, double by);
/// The half piece with its side waist point turned about the underarm point, so that the side seam
/// keeps its length, until the sewn waist is `by` mm longer than it is. Throws InputError
/// "fit.amount" where the side would slant by more than a third.
Opened with_waist_let_out_at_side(const Opened& open, double by);

/// The half piece with its side turned about the side waist point, until the bust line is `by` mm
/// longer than it is. Throws InputError "fit.amount" where the side would slant by more than half.
Opened with_bust_let_out_at_side(const Opened& open, double by);

/// The waist edge moved up by `by` at its one end and not at all at the other, square at both, with
/// everything between moved by a smooth share. Moves no other point; works on what `work` has.
enum class WaistEnd { Centre, Side };
void raise_waist(Redrawing& work, WaistEnd end, double by);
Opened with_centre_waist_raised(const Opened& open, double by);

}  // namespace blockwright
