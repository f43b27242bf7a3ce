#include "blockwright/dart/hem.hpp"

#include "blockwright/dart/folded.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/fair_path.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

constexpr const char* kCode = "garment.hem";
constexpr const char* kName = "hem";

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
  PathPlace place;
  Point at;
  Vec along;
};

// In the angle that the waist has to the centre: square.
HemEnd at_centre(const Opened& open, const Lower& lower, double height) {
  const Path& centre = open.edges[lower.centre].stretches.back();
  const double along = length(centre) - height;
  const Angle turn =
      turn_between(end_tangent(centre), start_tangent(open.edges[lower.hem].stretches.front()));
  const PathPlace place = place_at_length(centre, along);
  return {place, point_at(centre, place), rotated(tangent_at_length(centre, along), turn)};
}

// In the angle that the waist has to the side, so that it runs on across the seam.
HemEnd at_side(const Opened& open, const Lower& lower, double height) {
  const Path& side = open.edges[lower.side].stretches.front();
  const Angle turn =
      turn_between(start_tangent(side), end_tangent(open.edges[lower.hem].stretches.back()));
  const PathPlace place = place_at_length(side, height);
  return {place, point_at(side, place), rotated(tangent_at_length(side, height), turn)};
}

// The hem on the piece with its darts closed: from the centre to the side, half way as far over the
// waist as at its ends. Led through more points it would follow what a wide dart does to the waist.
Path drawn_hem(const Path& waist, const HemEnd& centre, const HemEnd& side,
               const Placement& at_side, double height) {
  const double half = 0.5 * length(waist);
  const Point middle =
      point_at_length(waist, half) + height * left_of(tangent_at_length(waist, half));
  const std::array<Through, 3> points{
      {{centre.at, centre.along}, {middle, std::nullopt}, {at_side(side.at), at_side(side.along)}}};
  return fair_path(points);
}

void require_room(const Opened& open, const Lower& lower, double height) {
  const std::string& piece = open.piece.name;
  const double most = closed_length(open.edges[lower.side]) - kLeastUnderHem;
  if (height > most) {
    refuse(
        kCode, piece,
        "a hem " + Length::mm(height) + " above the waist leaves too little of the side seam",
        "on this block it can lie up to " + Length::mm(std::max(most, 0.0)) + " above the waist");
  }
  const double free = std::min(length(open.edges[lower.side].stretches.front()),
                               length(open.edges[lower.centre].stretches.back()));
  if (height >= free) {
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

Opened cut_off(const Piece& piece, double height) {
  Opened open = opened(piece);
  const Lower lower = lower_edges(open);
  require_room(open, lower, height);
  OpenEdge& hem = open.edges[lower.hem];
  const Folded folded(piece, hem.name);
  const HemEnd centre = at_centre(open, lower, height), side = at_side(open, lower, height);
  const Path drawn = drawn_hem(Folded(true_darts(piece), hem.name).edge(), centre, side,
                               folded.of_stretch(hem.darts.size()), height);
  std::vector<Path> parts = folded.laid_back(drawn);
  require(parts.size() == hem.stretches.size(), "the hem reaches the side");

  Path& centre_line = open.edges[lower.centre].stretches.back();
  Path& side_line = open.edges[lower.side].stretches.front();
  centre_line = part_before(centre_line, centre.place);
  side_line = part_after(side_line, side.place);
  hem.part = hem.part_name();
  hem.name = kName;
  end_darts_on(std::move(parts), hem);
  const double centre_left = length(centre_line);
  const std::size_t last = open.edges[lower.centre].stretches.size() - 1;
  drop_notches(open, [&](const Anchor& at) {
    return at.edge == lower.hem ||
           (at.edge == lower.side && at.stretch == 0 && at.along < height) ||
           (at.edge == lower.centre && at.stretch == last && at.along > centre_left);
  });
  for (Anchor& at : open.notches) {
    if (at.edge == lower.side && at.stretch == 0) at.along -= height;
  }
  const std::vector<Dart> darts = hem.darts;
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

double height_of(const Pattern& pattern, const HemLevel& level) {
  if (level.above_waist.has_value() == level.below_bust_point.has_value()) {
    refuse(kCode, kName, "a hem has one level",
           "give \"above_waist\" or \"below_bust_point\", not both");
  }
  return level.above_waist ? *level.above_waist
                           : waist_under_bust(pattern) - *level.below_bust_point;
}

Problem told_waist(double height) {
  return {Severity::Note, kCode, kName,
          height < 0.0
              ? "it would lie " + Length::mm(-height) +
                    " below the waist, where the block ends; the waist is the hem"
              : "it would lie " + Length::mm(height) + " above the waist; the waist is the hem",
          ""};
}

}  // namespace

MovedDarts draw_hem(const Pattern& pattern, const HemLevel& level) {
  require_whole_bodice(pattern, kCode, kName);
  require_no_hem(pattern);
  const double height = height_of(pattern, level);
  MovedDarts drawn{pattern, {}};
  if (height < kLeastAboveWaist) {
    drawn.remarks.push_back(told_waist(height));
    return drawn;
  }
  for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
    if (!is_bodice(pattern.pieces[i])) continue;
    const bool image = is_mirrored(pattern.pieces[i]);
    Piece& piece = drawn.pattern.pieces[i];
    if (image) piece = mirrored(piece);
    const Opened open = cut_off(piece, height);
    drawn = finished(drawn.pattern, {i, kName, piece.name}, open, std::move(drawn.remarks));
    if (image) drawn.pattern.pieces[i] = mirrored(drawn.pattern.pieces[i]);
  }
  drop_lone_notches(drawn.pattern);
  const double under = waist_under_bust(pattern) - height;
  if (under < kUsualUnderBust) {
    drawn.remarks.push_back({Severity::Warning, kCode, kName,
                             "it lies " + Length::mm(under) +
                                 " under the bust point; nearer than " +
                                 Length::mm(kUsualUnderBust) + " it rides up on the bust",
                             "draw it lower, or try it on a toile"});
  }
  return drawn;
}

}  // namespace blockwright
