#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "faced.hpp"
#include "planned_facing.hpp"

#include <algorithm>
#include <iterator>

namespace blockwright {
namespace {

// A notch keeps this far off the ends of its edge and of darts, in mm. Common practice, no source.
constexpr double kNotchClear = 10.0;

// The stretch of a seam or centre between the facing's edge and its outer edge, from the corner
// away.
Path end_stretch(const Path& bound, Point from, Point to) {
  const Path part = sub_path(bound, {nearest(bound, from).along, nearest(bound, to).along});
  return ending_at(starting_at(part, from), to);
}

std::vector<Edge> edges_of(const PlannedFacing& planned, const FacingLines& lines) {
  const TracedEdge& traced = planned.traced;
  const Path before = end_stretch(traced.before, lines.runs.front().start(), lines.outer.start());
  const Path after = end_stretch(traced.after, lines.runs.back().end(), lines.outer.end());
  std::vector<Edge> edges = {{traced.before_edge.get().name, EdgeRole::Seam, reversed(before)}};
  edges.reserve(planned.runs.size() + 3);
  for (std::size_t i = 0; i < planned.runs.size(); ++i) {
    edges.push_back({planned.runs[i].edge, EdgeRole::Seam, lines.runs[i]});
  }
  edges.push_back({traced.after_edge.get().name, EdgeRole::Seam, after});
  edges.push_back({kFacingOuterEdge, EdgeRole::FreeEdge, reversed(lines.outer)});
  return edges;
}

// The longest stretch of the line that lies inside the outline.
Segment longest_inside(const Path& outline, Point on_line, Vec along) {
  Segment longest{on_line, on_line};
  std::vector<LineCrossing> hits = intersections(outline, on_line, along);
  std::ranges::sort(hits, {}, &LineCrossing::along_line);
  for (std::size_t h = 1; h < hits.size(); ++h) {
    const Segment inside{hits[h - 1].point, hits[h].point};
    if (!contains(outline, midpoint(inside.a, inside.b), 0.05)) continue;
    if (distance(inside.a, inside.b) > distance(longest.a, longest.b)) longest = inside;
  }
  return longest;
}

// The middle of those beside the longest that are nearly as long.
Segment middle_of_long(const std::vector<Segment>& lines) {
  constexpr double nearly = 0.75;
  const auto size = [](const Segment& line) { return distance(line.a, line.b); };
  const auto longest = std::ranges::max_element(lines, {}, size);
  const auto is_short = [&](const Segment& line) { return size(line) < nearly * size(*longest); };
  const auto last = std::find_if(longest, lines.end(), is_short);
  const auto first =
      std::find_if(std::make_reverse_iterator(longest), lines.rend(), is_short).base();
  return *(first + (last - first) / 2);
}

// Along the grain, where the piece is long and off its edges.
Segment grain_in(const Piece& piece, Vec along) {
  constexpr int places = 80;
  constexpr double taken = 0.7;  // of the length
  const Path outline = flat_outline(piece);
  const Vec across = right_of(along);
  double least = 0.0, most = 0.0;
  const Point from = outline.start();
  for (const Point p : flattened(outline, 0.5)) {
    least = std::min(least, dot(p - from, across));
    most = std::max(most, dot(p - from, across));
  }
  std::vector<Segment> lines;
  lines.reserve(places);
  for (int i = 1; i < places; ++i) {
    const double off = least + (most - least) * i / places;
    lines.push_back(longest_inside(outline, from + off * across, along));
  }
  const Segment line = middle_of_long(lines);
  const double end = 0.5 * (1.0 - taken);
  return {between(line.a, line.b, end), between(line.a, line.b, 1.0 - end)};
}

CutOn cut_of(const TracedEdge& traced) {
  if (lies_at_centre(traced.after_edge)) return traced.after_edge.piece->cut_on;
  const bool one = std::ranges::any_of(
      traced.edges, [](const OutlineEdge& of) { return of.piece->cut_on == CutOn::One; });
  return one ? CutOn::One : CutOn::Pair;
}

// --- notches ------------------------------------------------------------------------------------

// Where an edge without a notch gets one: near its middle, off darts; in mm of the sewn edge.
std::optional<double> notch_place(const Piece& piece, const Edge& edge) {
  const double whole = sewn_length(piece, edge);
  for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7}) {
    const double along = share * whole;
    if (std::min(along, whole - along) < kNotchClear) continue;
    const bool clear = std::ranges::all_of(mouths_along(piece, edge), [&](const Mouth& mouth) {
      return std::abs(closed_from_cut(piece, edge, mouth.in.along) - along) >= kNotchClear;
    });
    if (clear) return along;
  }
  return std::nullopt;
}

void notch_if_bare(Piece& piece, const Edge& edge) {
  if (std::ranges::count(piece.notches, edge.name, &Notch::edge) > 0) return;
  const auto place = notch_place(piece, edge);
  if (!place) return;
  piece.notches.push_back({edge.name + ".facing",
                           edge.name,
                           cut_from_closed(piece, edge, *place),
                           kind_of(piece).notch_count,
                           {},
                           {}});
}

// Those of one run.
void notch_run(Pattern& pattern, const PlannedFacing& planned, const FacingRun& run,
               Piece& facing) {
  const TracedEdge& traced = planned.traced;
  double whole = 0.0, before = 0.0;
  for (std::size_t i = run.range.from; i < run.range.to; ++i) whole += traced.sewn[i];
  const double per_mm = length(facing.edge(run.edge).path) / whole;
  for (std::size_t i = run.range.from; i < run.range.to; ++i) {
    Piece& piece = *find_named(pattern.pieces, traced.edges[i].piece->name);
    const Edge& of = piece.edge(traced.edges[i].get().name);
    notch_if_bare(piece, of);
    for (Notch& notch : piece.notches) {
      const bool taken = find_named(facing.notches, notch.name) != nullptr;
      if (notch.edge != of.name || !notch.mate_piece.empty() || taken) continue;
      const double along = before + closed_from_cut(piece, of, notch.along);
      notch.mate_piece = facing.name;
      notch.mate_edge = run.edge;
      facing.notches.push_back(
          {notch.name, run.edge, per_mm * along, notch.count, piece.name, of.name});
    }
    before += traced.sewn[i];
  }
}

}  // namespace

std::string name_for(const PlannedFacing& planned) {
  const Piece& piece = *planned.traced.edges.front().piece;
  return std::string(piece.kind->name) + "_" + planned.words +
         std::string(sided_name(piece.name).side);
}

Piece piece_for(const PlannedFacing& planned, const FacingLines& lines) {
  Piece piece;
  piece.name = name_for(planned);
  piece.edges = edges_of(planned, lines);
  piece.grainline = grain_in(piece, planned.traced.grain);
  piece.cut_on = cut_of(planned.traced);
  return piece;
}

void set_notches(Pattern& pattern, const PlannedFacing& planned, Piece& facing) {
  for (const FacingRun& run : planned.runs) {
    if (run.kind != FacingRun::Kind::Shoulder) notch_run(pattern, planned, run, facing);
  }
}

}  // namespace blockwright
