#pragma once

#include "blockwright/block/armhole.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/block/neckline.hpp"
#include "blockwright/block/reshape.hpp"
#include "blockwright/dart/opened.hpp"

#include <optional>
#include <vector>

namespace blockwright {

/// A stroke of a piece: which edge, which stretch of it between darts, which stroke of that.
struct StrokeSpot {
  BlockEdge edge = BlockEdge::Waist;
  std::size_t stretch = 0;
  std::size_t stroke = 0;
  friend bool operator==(const StrokeSpot&, const StrokeSpot&) = default;
};
/// The armhole below and above the across point, and the neckline of a piece without a neck dart.
inline constexpr StrokeSpot kLowerArmhole{BlockEdge::Armhole, 0, 0};
inline constexpr StrokeSpot kUpperArmhole{BlockEdge::Armhole, 0, 1};
inline constexpr StrokeSpot kNeckline{BlockEdge::Neckline, 0, 0};

/// A neckline drawn parallel, or a lower armhole, turns nowhere within less than this, in mm, as
/// far as it can be drawn so: 15, or what it had. Ours: a sharper one is hard to face or bind flat.
double round_enough(const CubicCurve& was);

/// A half piece in the course of being redrawn: points are moved first; then `finished()` draws
/// every stroke anew between its ends.
///
/// 1. Straight strokes stay straight. 2. A curve keeps its angle to the straight edge or dart leg
/// that it meets: it is still square where it was square. 3. A joint of two curves stays smooth.
/// 4. Strokes whose ends and directions did not change are the same to the last bit.
/// 5. The armhole is drawn anew as a whole, as it is drafted through its new points, and the front
/// neckline gives up its right angle at the shoulder as far as it must to turn one way, as it is
/// drafted.
/// 6. Darts keep how far their stitching stops short of the apex; peaks are drawn anew.
/// Requires: the six edges of a drafted half piece in their order, none of them empty.
class Redrawing {
 public:
  using Node = std::size_t;

  /// `open` must stay as it is for as long as it is redrawn.
  explicit Redrawing(const Opened& open);
  explicit Redrawing(Opened&&) = delete;

  /// The piece as it was.
  [[nodiscard]] const Opened& open() const { return *open_; }
  [[nodiscard]] Node corner(Corner which) const;
  /// The across point, where the armhole's two strokes meet.
  [[nodiscard]] Node across() const;
  [[nodiscard]] Node leg(DartSpot dart, std::size_t which) const;
  /// All nodes of an edge in the order of travel, both corners included.
  [[nodiscard]] std::vector<Node> nodes_of(BlockEdge edge) const;

  /// Where a node lies by now.
  [[nodiscard]] Point at(Node node) const { return nodes_[node].now; }
  [[nodiscard]] Point at(Corner which) const { return at(corner(which)); }
  /// Where it lay before.
  [[nodiscard]] Point was(Node node) const { return nodes_[node].was; }
  [[nodiscard]] Point apex(DartSpot dart) const;

  void put(Node node, Point to) { nodes_[node].now = to; }
  void move(Node node, Vec by) { nodes_[node].now = nodes_[node].now + by; }
  void move(Corner which, Vec by) { move(corner(which), by); }
  /// The across point comes in with the shoulder point, as far as the armhole needs it: see
  /// across_in(). Returns by how much, in mm.
  double bring_across_in();
  /// Turns the directions of the curves that meet at a node, in place of rule 2.
  void turn(Node node, Angle by);
  /// Turns the direction in which a stroke starts or ends, in place of rule 2.
  void turn_start(StrokeSpot stroke, Angle by) { stroke_at(stroke).turn_from = by; }
  void turn_end(StrokeSpot stroke, Angle by) { stroke_at(stroke).turn_to = by; }
  /// Places all nodes from `first` to `last` along the outline as one, with the strokes between
  /// them and the darts that have both legs there.
  void place(Node first, Node last, const Placement& by, Angle turned = {});
  void put_apex(DartSpot dart, Point to);
  /// The stroke is to be drawn `by` mm longer than it was.
  void lengthen(StrokeSpot stroke, double by);
  /// The armhole is to become `by` mm longer: the lower armhole is drawn fuller or flatter; where
  /// that is not enough, the across point moves level, by at most 16 mm.
  void lengthen_armhole(double by) { armhole_longer_ = by; }
  /// The stroke is to be this curve. Requires: its ends are where its nodes are put.
  void draw(StrokeSpot stroke, const CubicCurve& curve);
  /// Marks of the edge keep their distance from its far end.
  void keep_marks_from_end(BlockEdge edge) { marks_from_end_ = edge; }

  /// Throws InputError "fit.negative_dart" if a dart's legs have come to cross, "fit.place" if a
  /// stroke has shrunk to nothing.
  [[nodiscard]] Opened finished() const;

 private:
  struct NodeState {
    Point was, now;
  };
  struct Stroke {
    StrokeSpot spot;
    Curve was;
    Node from = 0, to = 0;
    std::optional<Angle> turn_from, turn_to;
    std::optional<double> longer;
    std::optional<CubicCurve> drawn;
    std::optional<Placement> placed;
  };
  struct DartState {
    DartSpot spot;
    Node legs[2] = {0, 0};
    Point apex;
  };

  void add_edge(std::size_t edge);
  [[nodiscard]] std::size_t place_of(StrokeSpot spot) const;
  Stroke& stroke_at(StrokeSpot spot) { return strokes_[place_of(spot)]; }
  [[nodiscard]] const DartState& dart_at(DartSpot spot) const;
  [[nodiscard]] Vec moved_by(Node node) const { return nodes_[node].now - nodes_[node].was; }
  [[nodiscard]] Angle turn_of(const Stroke& straight) const;
  [[nodiscard]] std::optional<Angle> turn_of_leg(Node node) const;
  [[nodiscard]] Angle turn_at(std::size_t stroke, bool at_start) const;
  [[nodiscard]] Curve redrawn(std::size_t stroke) const;
  struct ArmholeLines {
    ArmholeLine was, is;
  };
  [[nodiscard]] ArmholeLines armhole_lines() const;
  [[nodiscard]] ArmholeStrokes redrawn_armhole() const;
  [[nodiscard]] double armhole_length() const;
  [[nodiscard]] Redrawing with_lower_armhole_fitted(double armhole) const;
  [[nodiscard]] Vec neck_leaving(const Stroke& neck) const;
  [[nodiscard]] Vec neck_kept(const Stroke& neck, Vec leaving) const;
  // How a stroke's directions turn at its ends.
  struct EndTurns {
    Angle from, to;
  };
  [[nodiscard]] CubicCurve bent_neckline(const Stroke& neck, const EndTurns& turns) const;
  void require_armhole() const;
  [[nodiscard]] Opened drawn() const;
  [[nodiscard]] CubicCurve bent(std::size_t stroke) const;
  void set_darts(Opened& result) const;
  void set_marks(Opened& result) const;

  const Opened* open_;
  std::vector<NodeState> nodes_;
  std::vector<Stroke> strokes_;
  std::vector<DartState> darts_;
  std::vector<Node> corners_;
  std::optional<BlockEdge> marks_from_end_;
  std::optional<double> armhole_longer_;
};

}  // namespace blockwright
