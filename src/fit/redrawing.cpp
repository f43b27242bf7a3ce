#include "blockwright/fit/redrawing.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/solve.hpp"
#include "parts.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr std::size_t kEdges = index_of(BlockEdge::Other);
// A stroke that becomes shorter than this, in mm, has been used up.
constexpr double kLeastStroke = 2.0;
// An angle of no more than this is a closed dart, not a negative one.
constexpr double kClosed = -1e-12;
// An edge that was only lengthened or shortened has turned by rounding at most, in radians.
constexpr double kNoTurn = 1e-12;

// The across point stays this far above the underarm point, in mm.
constexpr double kLeastArmhole = 10.0;
// How far the across point may move to keep an armhole's length, in mm.
constexpr double kFirstAcross = 1.0;
constexpr double kMostAcross = 16.0;
// More than any lower armhole can give, in mm.
constexpr double kFarther = 500.0;

}  // namespace

Redrawing::Redrawing(const Opened& open) : open_(&open) {
  require(open.edges.size() == kEdges, "only a drafted half piece is fitted");
  nodes_.push_back({});
  for (std::size_t e = 0; e < kEdges; ++e) add_edge(e);
  for (NodeState& node : nodes_) node.now = node.was;
}

void Redrawing::add_edge(std::size_t e) {
  const OpenEdge& edge = open_->edges[e];
  corners_.push_back(e == 0 ? 0 : nodes_.size() - 1);
  Node last = corners_.back();
  for (std::size_t s = 0; s < edge.stretches.size(); ++s) {
    const auto& curves = edge.stretches[s].curves();
    require(!curves.empty(), "an edge of the block is empty");
    if (s > 0) {
      nodes_.push_back({});
      darts_.push_back({{e, s - 1}, {last, nodes_.size() - 1}, edge.darts[s - 1].apex});
      last = nodes_.size() - 1;
    }
    nodes_[last].was = start_of(curves.front());
    for (std::size_t i = 0; i < curves.size(); ++i) {
      const bool closing =
          e + 1 == kEdges && s + 1 == edge.stretches.size() && i + 1 == curves.size();
      if (!closing) nodes_.push_back({end_of(curves[i]), {}});
      const Node to = closing ? 0 : nodes_.size() - 1;
      strokes_.push_back(
          {{static_cast<BlockEdge>(e), s, i}, curves[i], last, to, {}, {}, {}, {}, {}});
      last = to;
    }
  }
}

Redrawing::Node Redrawing::corner(Corner which) const {
  return corners_[static_cast<std::size_t>(which)];
}

Redrawing::Node Redrawing::across() const { return corner(Corner::Underarm) + 1; }

const Redrawing::DartState& Redrawing::dart_at(DartSpot spot) const {
  const auto found = std::ranges::find(darts_, spot, &DartState::spot);
  require(found != darts_.end(), "no such dart");
  return *found;
}

Redrawing::Node Redrawing::leg(DartSpot dart, std::size_t which) const {
  return dart_at(dart).legs[which];
}

Point Redrawing::apex(DartSpot dart) const { return dart_at(dart).apex; }

void Redrawing::put_apex(DartSpot dart, Point to) {
  for (DartState& state : darts_) {
    if (state.spot == dart) state.apex = to;
  }
}

std::vector<Redrawing::Node> Redrawing::nodes_of(BlockEdge edge) const {
  const std::size_t e = index_of(edge);
  std::vector<Node> nodes;
  const Node end = e + 1 < kEdges ? corners_[e + 1] : nodes_.size() - 1;
  for (Node n = corners_[e]; n <= end; ++n) nodes.push_back(n);
  if (e + 1 == kEdges) nodes.push_back(0);
  return nodes;
}

void Redrawing::turn(Node node, Angle by) {
  for (Stroke& stroke : strokes_) {
    if (stroke.from == node) stroke.turn_from = by;
    if (stroke.to == node) stroke.turn_to = by;
  }
}

void Redrawing::place(Node first, Node last, const Placement& by, Angle turned) {
  for (Node n = first; n <= last; ++n) nodes_[n].now = by(nodes_[n].now);
  for (Stroke& stroke : strokes_) {
    if (stroke.from < first || stroke.to > last || stroke.to < stroke.from) continue;
    stroke.placed = by;
    stroke.turn_from = stroke.turn_to = turned;
  }
  for (DartState& dart : darts_) {
    if (dart.legs[0] >= first && dart.legs[1] <= last) dart.apex = by(dart.apex);
  }
}

std::size_t Redrawing::place_of(StrokeSpot spot) const {
  const auto found = std::ranges::find(strokes_, spot, &Stroke::spot);
  require(found != strokes_.end(), "no such stroke");
  return static_cast<std::size_t>(found - strokes_.begin());
}

void Redrawing::lengthen(StrokeSpot stroke, double by) { stroke_at(stroke).longer = by; }
void Redrawing::draw(StrokeSpot stroke, const CubicCurve& curve) {
  stroke_at(stroke).drawn = curve;
}

Angle Redrawing::turn_of(const Stroke& straight) const {
  if (moved_by(straight.from) == moved_by(straight.to)) return {};
  const Angle turn = turn_between(nodes_[straight.to].was - nodes_[straight.from].was,
                                  nodes_[straight.to].now - nodes_[straight.from].now);
  return std::abs(turn.radians()) < kNoTurn ? Angle() : turn;
}

std::optional<Angle> Redrawing::turn_of_leg(Node node) const {
  for (const DartState& dart : darts_) {
    if (dart.legs[0] != node && dart.legs[1] != node) continue;
    const Point was = open_->at(dart.spot).apex;
    if (moved_by(node) == dart.apex - was) return Angle();
    return turn_between(nodes_[node].was - was, nodes_[node].now - dart.apex);
  }
  return std::nullopt;
}

Angle Redrawing::turn_at(std::size_t stroke, bool at_start) const {
  const Stroke& here = strokes_[stroke];
  if (const auto& asked = at_start ? here.turn_from : here.turn_to) return *asked;
  if (const auto by_leg = turn_of_leg(at_start ? here.from : here.to)) return *by_leg;
  const std::size_t count = strokes_.size();
  const Stroke& next = strokes_[at_start ? (stroke + count - 1) % count : (stroke + 1) % count];
  return std::holds_alternative<Segment>(next.was) ? turn_of(next) : Angle();
}

Curve Redrawing::redrawn(std::size_t stroke) const {
  const Stroke& here = strokes_[stroke];
  const Point from = nodes_[here.from].now, to = nodes_[here.to].now;
  if (distance(from, to) < kLeastStroke) {
    refuse_fit("fit.place",
               "the " + open_->edges[index_of(here.spot.edge)].name + " would be used up",
               "give a smaller amount, or draft anew from new measurements");
  }
  if (std::holds_alternative<Segment>(here.was)) return Segment{from, to};
  const CubicCurve curve = here.drawn ? *here.drawn : bent(stroke);
  return here.longer ? with_length(curve, length(here.was) + *here.longer) : curve;
}

void Redrawing::set_darts(Opened& result) const {
  for (const DartState& state : darts_) {
    const Dart& was = open_->at(state.spot);
    Dart& dart = result.at(state.spot);
    const Point legs[2] = {nodes_[state.legs[0]].now, nodes_[state.legs[1]].now};
    const OpenEdge &before = open_->edges[state.spot.edge], &after = result.edges[state.spot.edge];
    if (legs[0] == was.legs[0] && legs[1] == was.legs[1] && state.apex == was.apex &&
        before.stretches == after.stretches) {
      continue;
    }
    dart.apex = state.apex;
    dart.legs = {legs[0], legs[1]};
    if (turn_between(legs[0] - dart.apex, legs[1] - dart.apex).radians() < kClosed) {
      refuse_fit("fit.negative_dart",
                 "the " + result.piece.name + " " + dart.name + " dart has less than that to give",
                 "give a smaller amount, or take it from another place");
    }
    dart = held_back(dart, distance(was.apex, was.point));
    set_peak(result, dart.name);
  }
}

void Redrawing::set_marks(Opened& result) const {
  for (Anchor& anchor : result.notches) {
    const auto& was = open_->edges[anchor.edge].stretches[anchor.stretch];
    const auto& is = result.edges[anchor.edge].stretches[anchor.stretch];
    const auto edge = static_cast<BlockEdge>(anchor.edge);
    if (edge == marks_from_end_) anchor.along += length(is) - length(was);
    if (edge == BlockEdge::Armhole)
      anchor.along = notch_share(*open_->piece.kind, edge) * length(is);
    anchor.along = std::clamp(anchor.along, 0.0, length(is));
  }
}

double Redrawing::armhole_length() const {
  double sum = 0.0;
  for (std::size_t i = 0; i < strokes_.size(); ++i) {
    if (strokes_[i].spot.edge == BlockEdge::Armhole) sum += length(redrawn(i));
  }
  return sum;
}

// The same with its lower armhole so much fuller or flatter that the whole becomes that long, or as
// nearly as that goes.
Redrawing Redrawing::with_lower_armhole_fitted(double armhole) const {
  Redrawing work = *this;
  const double lower = length(redrawn(place_of(kLowerArmhole)));
  const double was = length(work.stroke_at(kLowerArmhole).was);
  work.lengthen(kLowerArmhole, lower + armhole - armhole_length() - was);
  return work;
}

Opened Redrawing::finished() const {
  if (!armhole_longer_) return drawn();
  const double wanted =
      closed_length(open_->edges[index_of(BlockEdge::Armhole)]) + *armhole_longer_;
  const auto across_moved = [&](double by) {
    Redrawing work = *this;
    work.armhole_longer_ = std::nullopt;
    work.move(across(), {by, 0.0});
    return work;
  };
  const Redrawing here = across_moved(0.0);
  const double farthest = wanted > here.armhole_length() ? kFarther : -kFarther;
  const auto fitted = [&](double by, double armhole) {
    return across_moved(by).with_lower_armhole_fitted(armhole);
  };
  // How much too short or long the armhole is where the lower one has given all that it can.
  const auto missing = [&](double by) {
    return std::copysign(1.0, farthest) * (wanted - fitted(by, wanted + farthest).armhole_length());
  };
  if (missing(0.0) <= 0.0) return fitted(0.0, wanted).drawn();
  for (double most = kFirstAcross; most <= kMostAcross; most *= 2.0) {
    const double to = std::copysign(most, -farthest);
    if (missing(to) > 0.0) continue;
    const Bounds between{std::fmin(to, 0.0), std::fmax(to, 0.0)};
    return fitted(solve_between(missing, between, 1e-10), wanted).drawn();
  }
  return fitted(std::copysign(kMostAcross, -farthest), wanted).drawn();
}

void Redrawing::require_armhole() const {
  const auto height = [&](Point NodeState::*at) {
    return (nodes_[across()].*at).y - (nodes_[corner(Corner::Underarm)].*at).y;
  };
  const double is = height(&NodeState::now);
  if (is >= kLeastArmhole || is >= height(&NodeState::was)) return;
  refuse_fit("fit.place", "the lower armhole of the " + open_->piece.name + " would be used up",
             "give a smaller amount, or draft anew from new measurements");
}

Opened Redrawing::drawn() const {
  require_armhole();
  Opened result{open_->piece, {}, open_->notches, open_->fullness};
  result.edges.reserve(kEdges);
  for (const OpenEdge& edge : open_->edges) {
    result.edges.push_back({edge.name, edge.role, std::vector<Path>(edge.stretches.size()),
                            edge.darts, edge.part, edge.finish});
  }
  for (std::size_t i = 0; i < strokes_.size(); ++i) {
    const StrokeSpot& spot = strokes_[i].spot;
    result.edges[index_of(spot.edge)].stretches[spot.stretch].add(redrawn(i));
  }
  set_darts(result);
  set_marks(result);
  return result;
}

}  // namespace blockwright
