#include "blockwright/dart/hem.hpp"

#include "blockwright/dart/folded.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/fair_path.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kCode = "garment.hem";
constexpr const char* kName = "hem";
constexpr double kLengthAsked = 0.01;  // mm, of what is found by trying

// The hem of one piece, in mm above the waist.
struct PieceHem {
  double centre, side;
  double point_drop = 0.0, point_from_centre = 0.0;

  [[nodiscard]] bool has_point() const { return point_drop > 0.0; }
  [[nodiscard]] bool is_waist() const {
    return std::max(centre, side) < kLeastAboveWaist && !has_point();
  }
  // Where it meets the centre line.
  [[nodiscard]] double at_centre() const {
    return has_point() && point_from_centre == 0.0 ? centre - point_drop : centre;
  }
};

// What keeps hem, side and centre together while a piece is cut off.
struct Lower {
  std::size_t hem, side, centre;  // edges of the opened piece
};

Lower lower_edges(const Opened& open) {
  const std::size_t hem = *find_edge(open, part_of(put_together(open), BlockEdge::Waist).name);
  const std::size_t count = open.edges.size();
  return {hem, (hem + 1) % count, (hem + count - 1) % count};
}

// Where the hem meets centre or side, and its way there.
struct HemEnd {
  Point at;
  Vec along;
};

// The centre line down to the hem, led on straight where that lies under the waist.
Path centre_down_to(const Path& centre, double height) {
  if (height >= 0.0) return part_before(centre, place_at_length(centre, length(centre) - height));
  Path longer = centre;
  append(longer, Path::through({centre.end(), centre.end() - height * end_tangent(centre)}));
  return without_straight_joints(std::move(longer));
}

// In the angle that the waist has to the centre: square.
HemEnd at_centre(const Opened& open, const Lower& lower, double height) {
  const Path& centre = open.edges[lower.centre].stretches.back();
  const Angle turn =
      turn_between(end_tangent(centre), start_tangent(open.edges[lower.hem].stretches.front()));
  const Path left = centre_down_to(centre, height);
  return {left.end(), rotated(end_tangent(left), turn)};
}

// In the angle that the waist has to the side, so that it runs on across the seam.
HemEnd at_side(const Opened& open, const Lower& lower, double height) {
  const Path& side = open.edges[lower.side].stretches.front();
  const Angle turn =
      turn_between(start_tangent(side), end_tangent(open.edges[lower.hem].stretches.back()));
  return {point_at_length(side, height), rotated(tangent_at_length(side, height), turn)};
}

// From the centre to the side, half way as far over the waist as at its ends. Led through more
// points it would follow what a wide dart does to the waist.
Path without_point(const Path& waist, const HemEnd& centre, const HemEnd& side,
                   const PieceHem& hem) {
  const double half = 0.5 * length(waist);
  const double height = 0.5 * (hem.centre + hem.side);
  const Point middle =
      point_at_length(waist, half) + height * left_of(tangent_at_length(waist, half));
  const std::array<Through, 3> points{
      {{centre.at, centre.along}, {middle, std::nullopt}, {side.at, side.along}}};
  return fair_path(points);
}

// Where the front has its point.
Point point_of(const HemEnd& centre, const PieceHem& hem) {
  const Vec square = unit(centre.along);
  return centre.at + hem.point_from_centre * square + hem.point_drop * right_of(square);
}

// Straight from the centre to the point, and from there in an arc that meets the hem at `along`.
Path with_point(const Path& hem_without, Point point, double along) {
  const std::array<Through, 2> ends{
      {{point, std::nullopt},
       {point_at_length(hem_without, along), tangent_at_length(hem_without, along)}}};
  Path drawn = fair_path(ends);
  append(drawn, part_after(hem_without, place_at_length(hem_without, along)));
  return drawn;
}

void require_room(const Opened& open, const Lower& lower, const PieceHem& hem) {
  const std::string& piece = open.piece.name;
  const double most = closed_length(open.edges[lower.side]) - kLeastUnderHem;
  if (std::max(hem.centre, hem.side) > most) {
    refuse(
        kCode, piece,
        "a hem " + Length::mm(std::max(hem.centre, hem.side)) +
            " above the waist leaves too little of the side seam",
        "on this block it can lie up to " + Length::mm(std::max(most, 0.0)) + " above the waist");
  }
  if (hem.side >= length(open.edges[lower.side].stretches.front()) ||
      hem.at_centre() >= length(open.edges[lower.centre].stretches.back())) {
    refuse(kCode, piece, "the hem would run into a dart that opens on the side or at the centre",
           "move that dart elsewhere first");
  }
  const bool gathered = std::ranges::any_of(open.fullness, [&](const auto& ends) {
    return ends[0].edge == lower.hem || (ends[0].edge == lower.side && ends[0].stretch == 0);
  });
  if (gathered) {
    refuse(kCode, piece, "gathers lie where the hem is to be drawn", "draw the hem before them");
  }
}

// From centre to side it may rise or fall by so much.
void require_slope(const Opened& open, const Lower& lower, const PieceHem& hem) {
  const double most = kMostHemSlope * closed_length(open.edges[lower.hem]);
  const double lowest = std::max(hem.centre - most, 0.0);
  if (hem.side >= lowest && hem.side <= hem.centre + most) return;
  refuse(kCode, open.piece.name,
         "the hem lies " + Length::mm(hem.centre) + " above the waist at the centre and " +
             Length::mm(hem.side) + " at the side: too steep",
         "on this block the side can lie " + Length::mm(lowest) + " to " +
             Length::mm(hem.centre + most) + " above the waist");
}

// A folded dart lies under the hem as far as half of its mouth: there the hem has no corner.
void require_point_beside_darts(const Opened& open, const Lower& lower, const PieceHem& hem) {
  const OpenEdge& edge = open.edges[lower.hem];
  const bool has_dart = !edge.darts.empty();
  const double beside =
      has_dart ? kLeastBesidePoint + 0.5 * edge.darts.front().intake() : 0.5 * closed_length(edge);
  require_bounded(
      kCode, open.piece.name,
      {.key = "point_from_centre",
       .what = "how far its point lies from the centre",
       .value = hem.point_from_centre,
       .most = length(edge.stretches.front()) - beside,
       .why = has_dart ? "it keeps " + Length::mm(beside) + " off " + edge.darts.front().name +
                             ", so that it lies free of the folded dart"
                       : Wording("further out it is a point of the side")});
}

// How far the darts would be led on straight under the waist.
double under_waist_at_darts(const OpenEdge& edge, const std::vector<Path>& parts) {
  double most = 0.0;
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const Dart& dart = edge.darts[d];
    most =
        std::max(most, distance(dart.point, parts[d].end()) - distance(dart.point, dart.legs[0]));
  }
  return most;
}

// The hem of a front with a point: its arc meets the hem at the side, or as near to it as darts
// allow.
class PointedHem {
 public:
  PointedHem(const OpenEdge& edge, const Folded& folded, Path without, const HemEnd& centre)
      : edge_(edge), folded_(folded), without_(std::move(without)), centre_(centre) {
    first_ = edge.darts.empty() ? length(without_) : length(folded.laid_back(without_).front());
  }

  [[nodiscard]] std::vector<Path> parts(const PieceHem& hem) const {
    const Point point = point_of(centre_, hem);
    std::vector<Path> parts = folded_.laid_back(drawn(point, meets_at(point)));
    if (hem.point_from_centre > 0.0) {
      Path straight = Path::through({centre_.at, point});
      append(straight, parts.front());
      parts.front() = std::move(straight);
    }
    return parts;
  }
  [[nodiscard]] const Path& without() const { return without_; }
  // How steeply it rises from the point.
  [[nodiscard]] Angle steepness(const PieceHem& hem) const {
    const Point point = point_of(centre_, hem);
    return turn_between(centre_.along, start_tangent(drawn(point, meets_at(point))));
  }

 private:
  [[nodiscard]] Path drawn(Point point, double along) const {
    return with_point(without_, point, along);
  }
  [[nodiscard]] bool may_meet_at(Point point, double along) const {
    return under_waist_at_darts(edge_, folded_.laid_back(drawn(point, along))) <= kMostUnderWaist;
  }
  [[nodiscard]] double meets_at(Point point) const {
    double near = first_, far = length(without_);
    if (may_meet_at(point, far)) return far;
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (near + far);
      (may_meet_at(point, middle) ? near : far) = middle;
    }
    return near;
  }

  static constexpr int kHalvings = 40;
  const OpenEdge& edge_;
  const Folded& folded_;
  Path without_;
  HemEnd centre_;
  double first_ = 0.0;  // along it, the first dart
};

void require_not_steep(const PointedHem& drawn, const std::string& piece, const PieceHem& hem) {
  // The way to the side is shorter than the hem: no drop of that is less steep.
  const double far = length(drawn.without());
  const auto is_steep = [&](double drop) {
    PieceHem tried = hem;
    tried.point_drop = drop;
    return drop >= far || drawn.steepness(tried) > kSteepestPoint;
  };
  if (!is_steep(hem.point_drop)) return;
  double most = 0.0, refused = std::min(hem.point_drop, far);
  while (refused - most > kLengthAsked) {
    const double middle = 0.5 * (most + refused);
    (is_steep(middle) ? refused : most) = middle;
  }
  require_bounded(kCode, piece,
                  {.key = "point_drop",
                   .what = "how far its point lies under the level at the centre",
                   .value = hem.point_drop,
                   .most = most,
                   .why = "from there to the first dart, where it may lie " +
                          Length::mm(kMostUnderWaist) + " under the waist, it would be too steep"});
}

// The hem's new line, laid back between the darts.
std::vector<Path> drawn_parts(const Piece& piece, const Opened& open, const Lower& lower,
                              const PieceHem& hem) {
  const OpenEdge& edge = open.edges[lower.hem];
  if (hem.is_waist()) return edge.stretches;
  const Folded folded(piece, edge.name);
  const Placement& turned = folded.of_stretch(edge.darts.size());
  const HemEnd centre = at_centre(open, lower, hem.centre);
  const HemEnd on_piece = at_side(open, lower, hem.side);
  const HemEnd side{turned(on_piece.at), turned(on_piece.along)};
  Path without = without_point(Folded(true_darts(piece), edge.name).edge(), centre, side, hem);
  if (!hem.has_point()) {
    std::vector<Path> parts = folded.laid_back(without);
    require(parts.size() == edge.stretches.size(), "the hem reaches the side");
    return parts;
  }
  const PointedHem pointed(edge, folded, std::move(without), centre);
  require_not_steep(pointed, piece.name, hem);
  return pointed.parts(hem);
}

// What lay under the hem goes, with its marks.
void cut_side_and_centre(Opened& open, const Lower& lower, const PieceHem& hem, Path centre) {
  Path& side = open.edges[lower.side].stretches.front();
  side = part_after(side, place_at_length(side, std::max(hem.side, 0.0)));
  Path& centre_line = open.edges[lower.centre].stretches.back();
  centre_line = std::move(centre);
  const double centre_left = length(centre_line);
  const std::size_t last = open.edges[lower.centre].stretches.size() - 1;
  drop_notches(open, [&](const Anchor& at) {
    return at.edge == lower.hem ||
           (at.edge == lower.side && at.stretch == 0 && at.along < hem.side) ||
           (at.edge == lower.centre && at.stretch == last && at.along > centre_left);
  });
  for (Anchor& at : open.notches) {
    if (at.edge == lower.side && at.stretch == 0) at.along -= hem.side;
  }
}

Opened cut_off(const Piece& piece, PieceHem hem) {
  Opened open = opened(piece);
  const Lower lower = lower_edges(open);
  if (hem.is_waist()) hem = {0.0, 0.0};
  require_room(open, lower, hem);
  require_slope(open, lower, hem);
  if (hem.has_point()) require_point_beside_darts(open, lower, hem);
  Path centre_line = centre_down_to(open.edges[lower.centre].stretches.back(), hem.at_centre());
  std::vector<Path> parts = drawn_parts(piece, open, lower, hem);

  cut_side_and_centre(open, lower, hem, std::move(centre_line));
  OpenEdge& edge = open.edges[lower.hem];
  edge.part = edge.part_name();
  edge.name = kName;
  end_darts_on(std::move(parts), edge);
  const std::vector<Dart> darts = edge.darts;
  for (const Dart& dart : darts) set_peak(open, dart.name);
  trim_lines(flat_outline(put_together(open)), open.piece.balance_lines);
  return open;
}

void require_no_hem(const Pattern& pattern) {
  for (const Piece& piece : pattern.pieces) {
    if (!is_bodice(piece) || find_named(piece.edges, kName) == nullptr) continue;
    refuse(kCode, piece.name, "a hem is drawn already", "give one hem, at the level of the last");
  }
}

double waist_under_bust(const Pattern& pattern) {
  const Piece& front = piece_of(pattern, kBodiceFront);
  return apex_point(front).y - corner_point(front, Corner::CentreWaist).y;
}

void require_one_level(const HemDesign& design) {
  const bool none = !design.above_waist && !design.below_bust_point && !design.side_above_waist &&
                    !design.back_above_waist && design.point_drop == 0.0;
  if (!none && !(design.above_waist && design.below_bust_point)) return;
  refuse(kCode, kName, "a hem has one level",
         "give \"above_waist\" or \"below_bust_point\", not both");
}

void require_amounts(const HemDesign& design) {
  const auto not_negative = [](const char* key, const char* what, const std::optional<double>& mm) {
    if (!mm || *mm >= 0.0) return;
    refuse(kCode, kName, what + (" is " + Length::mm(*mm)), "give 0 or more", key);
  };
  not_negative("side_above_waist", "its height at the side", design.side_above_waist);
  not_negative("back_above_waist", "its height at the centre back", design.back_above_waist);
  not_negative("point_drop", "how far its point lies under the level at the centre",
               design.point_drop);
  const auto not_too_little = [](const char* key, const char* what, double mm) {
    if (mm <= 0.0 || mm >= kLeastPoint) return;
    refuse(kCode, kName, what + (" is " + Length::mm(mm)),
           "give 0 or at least " + Length::mm(kLeastPoint), key);
  };
  not_too_little("point_drop", "how far its point lies under the level at the centre",
                 design.point_drop);
  not_too_little("point_from_centre", "how far its point lies from the centre",
                 design.point_from_centre);
  if (design.point_from_centre != 0.0 && design.point_drop == 0.0) {
    refuse(kCode, kName, "its point has a place and no depth", "give \"point_drop\", too",
           "point_from_centre");
  }
}

// Of front and back.
struct Hems {
  PieceHem front, back;

  [[nodiscard]] const PieceHem& of(const Piece& piece) const {
    return is_a(piece, kBodiceFront) ? front : back;
  }
};

Hems hems_of(const HemDesign& design, double level) {
  const double height = std::max(level, 0.0);
  const double side = design.side_above_waist.value_or(height);
  return {{height, side, design.point_drop, design.point_from_centre},
          {design.back_above_waist.value_or(height), side}};
}

double level_of(const Pattern& pattern, const HemDesign& design) {
  return design.below_bust_point ? waist_under_bust(pattern) - *design.below_bust_point
                                 : design.above_waist.value_or(0.0);
}

Problem told_waist(double height) {
  return {Severity::Note, kCode, kName,
          height < 0.0
              ? "it would lie " + Length::mm(-height) +
                    " below the waist, where the block ends; the waist is the hem"
              : "it would lie " + Length::mm(height) + " above the waist; the waist is the hem",
          ""};
}

// Under the bust point it lies about half way between centre and side.
void judge_under_bust(const Pattern& pattern, const PieceHem& front, Problems& remarks) {
  const double under = waist_under_bust(pattern) - 0.5 * (front.centre + front.side);
  if (under >= kUsualUnderBust) return;
  remarks.push_back({Severity::Warning, kCode, kName,
                     "it lies " + Length::mm(under) + " under the bust point; nearer than " +
                         Length::mm(kUsualUnderBust) + " it rides up on the bust",
                     "draw it lower, or try it on a toile"});
}

}  // namespace

MovedDarts draw_hem(const Pattern& pattern, const HemDesign& design) {
  require_whole_bodice(pattern, kCode, kName);
  require_no_hem(pattern);
  require_one_level(design);
  require_amounts(design);
  const double level = level_of(pattern, design);
  const Hems hems = hems_of(design, level);
  MovedDarts drawn{pattern, {}};
  if (level < 0.0 || (hems.front.is_waist() && hems.back.is_waist())) {
    drawn.remarks.push_back(told_waist(level));
  }
  if (hems.front.is_waist() && hems.back.is_waist()) return drawn;
  for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
    if (!is_bodice(pattern.pieces[i])) continue;
    const bool image = is_mirrored(pattern.pieces[i]);
    Piece& piece = drawn.pattern.pieces[i];
    if (image) piece = mirrored(piece);
    const Opened open = cut_off(piece, hems.of(piece));
    drawn = finished(drawn.pattern, {i, kName, piece.name}, open, std::move(drawn.remarks));
    if (image) drawn.pattern.pieces[i] = mirrored(drawn.pattern.pieces[i]);
  }
  drop_lone_notches(drawn.pattern);
  judge_under_bust(pattern, hems.front, drawn.remarks);
  return drawn;
}

}  // namespace blockwright
