#include "blockwright/fit/moves.hpp"

#include "blockwright/base/error.hpp"
#include "parts.hpp"

#include <cmath>

namespace blockwright {
namespace {

// A side seam that turns by less leaves the joined armhole smooth.
constexpr Angle kSquareEnough = Angle::degrees(1.4);
// A mouth that stands askew by no more is straight under its apex, in mm.
constexpr double kAskew = 1e-11;

// Where the legs of a dart end, in the direction of travel.
struct LegEnds {
  Point in, out;
  [[nodiscard]] double width() const { return distance(in, out); }
};

LegEnds mouth_of(const Redrawing& work, DartSpot spot) {
  return {work.at(work.leg(spot, 0)), work.at(work.leg(spot, 1))};
}

bool on_shoulder(DartSpot spot) { return spot.edge == index_of(BlockEdge::Shoulder); }

// The shoulder with its dart opened to a mouth.
ClosedShoulder opened_to(ClosedShoulder shoulder, double mouth) {
  shoulder.angle = wedge_angle(mouth, distance(shoulder.apex, shoulder.leg));
  return shoulder;
}

}  // namespace

Opened with_corner_moved(const Opened& open, Corner corner, Vec by) {
  Redrawing work(open);
  work.move(corner, by);
  return work.finished();
}

CubicCurve offset_stroke(const CubicCurve& curve, double by, const Segment& ends) {
  const Vec out = tangent_at(curve, 0.0), in = tangent_at(curve, 1.0);
  const double turning = -turn_between(out, in).radians();
  return with_length(reshaped_neckline(curve, ends.a, out, ends.b, in),
                     length(Curve(curve)) + by * turning);
}

void shift_part(Redrawing& work, Redrawing::Node first, Redrawing::Node last, Vec by) {
  work.place(first, last, Placement::shift(by));
}

void turn_part(Redrawing& work, Redrawing::Node first, Redrawing::Node last, Point about,
               Angle by) {
  work.place(first, last, Placement::turn(by, about), by);
}

Angle wedge_angle(double width, double radius) { return 2.0 * lifting_angle(0.5 * width, radius); }

Angle lifting_angle(double by, double run) {
  if (!(std::abs(by) < run)) {
    refuse_fit("fit.amount", "no part of the piece can turn so far", "give a smaller amount");
  }
  return Angle::radians(std::asin(by / run));
}

void set_mouth(Redrawing& work, DartSpot spot, double width) {
  const Opened& open = work.open();
  const LegEnds mouth = mouth_of(work, spot);
  const Point apex = work.apex(spot);
  if (width < kLeastMouth) {
    refuse_fit("fit.negative_dart",
               "the " + open.piece.name + " " + open.at(spot).name + " dart has only " +
                   Length::mm(mouth.width()) + " to give",
               "take the rest from another dart or seam");
  }
  if (width == mouth.width()) return;
  if (on_shoulder(spot)) {
    put_shoulder(work, opened_to(closed_shoulder(work), width));
    return;
  }
  const double leg = distance(apex, mouth.in);
  const Angle half = 0.5 * (wedge_angle(width, leg) - wedge_angle(mouth.width(), leg));
  work.put(work.leg(spot, 0), rotated_about(mouth.in, apex, -half));
  work.put(work.leg(spot, 1), rotated_about(mouth.out, apex, half));
}

void point_dart(Redrawing& work, DartSpot spot, Point apex) {
  const LegEnds mouth = mouth_of(work, spot);
  if (on_shoulder(spot)) {
    ClosedShoulder shoulder = closed_shoulder(work);
    shoulder.apex = apex;
    put_shoulder(work, opened_to(shoulder, mouth.width()));
    return;
  }
  work.put_apex(spot, apex);
  const Vec chord = unit(mouth.out - mouth.in);
  const double by = dot(apex - midpoint(mouth.in, mouth.out), chord);
  if (std::abs(by) < kAskew) return;
  work.move(work.leg(spot, 0), by * chord);
  work.move(work.leg(spot, 1), by * chord);
}

Opened with_strip(const Opened& open, double by) {
  Redrawing work(open);
  const Vec up{0.0, by};
  const auto centre = work.nodes_of(BlockEdge::Centre);
  const Redrawing::Node last = centre[centre.size() - 2];
  for (Redrawing::Node n = work.corner(Corner::SideWaist) + 1; n <= last; ++n) work.move(n, up);
  for (std::size_t e = 0; e < open.edges.size(); ++e) {
    for (std::size_t d = 0; d < open.edges[e].darts.size(); ++d) {
      const Point apex = open.at({e, d}).apex + up;
      const bool crossed = e == index_of(BlockEdge::Waist);
      crossed ? point_dart(work, {e, d}, apex) : work.put_apex({e, d}, apex);
    }
  }
  work.keep_marks_from_end(BlockEdge::Side);
  hold_armhole(work);
  return work.finished();
}

// width = aside (1 - cos turn) + below sin turn = aside + reach sin(turn - lean), where reach and
// lean are the bust point's distance from the hinge and its direction from straight below.
FullBust full_bust(double width, Vec hinge) {
  const auto [aside, below] = hinge;
  require(below > 0.0 && std::abs(width) < below, "no turn opens such a gap");
  const double reach = std::hypot(aside, below), lean = std::atan2(aside, below);
  const double turn = std::asin(std::fmax((width - aside) / reach, -1.0)) + lean;
  return {Angle::radians(turn), aside * std::sin(turn) - below * (1.0 - std::cos(turn))};
}

void hold_armhole(Redrawing& work) {
  const Redrawing::Node underarm = work.corner(Corner::Underarm);
  const Redrawing::Node below = underarm - 1;
  const Angle turned =
      turn_between(work.was(underarm) - work.was(below), work.at(underarm) - work.at(below));
  const double off = std::abs(turned.radians()) - kSquareEnough.radians();
  work.turn_start(kLowerArmhole,
                  Angle::radians(std::copysign(std::fmax(off, 0.0), turned.radians())));
}

}  // namespace blockwright
