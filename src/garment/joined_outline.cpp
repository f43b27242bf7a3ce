#include "joined_outline.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/folded.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// An edge laid where it is sewn: of a line that is walked forwards `at` holds for its start, of one
// that is walked back for its end.
struct LaidEdge {
  OutlineEdge of;
  Placement at;
};

// Requires: no mirror image.
Placement undone(const Placement& placement) {
  const Placement shift = Placement::shift(Point{} - placement(Point{}));
  return shift.then(Placement::turn(-angle_of(placement(Vec{1.0, 0.0}))));
}

std::size_t darts_on(const OutlineEdge& of) {
  return static_cast<std::size_t>(std::ranges::count(of.piece->darts, of.get().name, &Dart::edge));
}

// The edge closed, and how the cloth lies at its other end.
struct WalkedEdge {
  Path path;
  Placement at_end;
};

WalkedEdge forwards(const LaidEdge& edge) {
  const Folded folded(*edge.of.piece, edge.of.get().name);
  return {placed(folded.edge(), edge.at), folded.of_stretch(darts_on(edge.of)).then(edge.at)};
}

WalkedEdge backwards(const LaidEdge& edge) {
  const Folded folded(*edge.of.piece, edge.of.get().name);
  const Placement at_start = undone(folded.of_stretch(darts_on(edge.of))).then(edge.at);
  return {reversed(placed(folded.edge(), at_start)), at_start};
}

bool is_panel_seam(const OutlineEdge& of) { return kind_edge(*of.piece, of.get().name) == nullptr; }

OutlineEdge next_on_piece(const OutlineEdge& of) {
  return {of.piece, (of.edge + 1) % of.piece->edges.size()};
}
OutlineEdge previous_on_piece(const OutlineEdge& of) {
  const std::size_t count = of.piece->edges.size();
  return {of.piece, (of.edge + count - 1) % count};
}

// The edge that a panel's seam is sewn to, where that is one.
std::optional<OutlineEdge> mate_of(const Pattern& pattern, const OutlineEdge& of) {
  for (const Seam& seam : pattern.seams) {
    if (seam.a.size() != 1 || seam.b.size() != 1) continue;
    const bool is_a = seam.a.front() == of.name();
    if (!is_a && seam.b.front() != of.name()) continue;
    const EdgeOf& mate = is_a ? seam.b.front() : seam.a.front();
    const Piece& piece = pattern.piece(mate.piece);
    return OutlineEdge{&piece,
                       static_cast<std::size_t>(&piece.edge(mate.edge) - piece.edges.data())};
  }
  return std::nullopt;
}

// A line on the table, by a point and a direction.
struct Ray {
  Point from;
  Vec along;
};

// Lays the second line on the first.
Placement laid_on(const Ray& first, const Ray& second) {
  return Placement::turn(turn_between(second.along, first.along), second.from)
      .then(Placement::shift(first.from - second.from));
}

// The edge that follows in the joined outline; `at` is how the cloth lies at the end of the one
// before it.
std::optional<LaidEdge> next_edge(const Pattern& pattern, const OutlineEdge& of,
                                  const Placement& at) {
  const OutlineEdge next = next_on_piece(of);
  if (!is_panel_seam(next)) return LaidEdge{next, at};
  const auto mate = mate_of(pattern, next);
  if (!mate) return std::nullopt;
  const Path &here = next.get().path, &there = mate->get().path;
  const Placement laid =
      laid_on({at(here.start()), at(start_tangent(here))}, {there.end(), -end_tangent(there)});
  const OutlineEdge beyond = next_on_piece(*mate);
  if (is_panel_seam(beyond)) return std::nullopt;
  return LaidEdge{beyond, laid};
}

std::optional<LaidEdge> previous_edge(const Pattern& pattern, const OutlineEdge& of,
                                      const Placement& at) {
  const OutlineEdge previous = previous_on_piece(of);
  if (!is_panel_seam(previous)) return LaidEdge{previous, at};
  const auto mate = mate_of(pattern, previous);
  if (!mate) return std::nullopt;
  const Path &here = previous.get().path, &there = mate->get().path;
  const Placement laid =
      laid_on({at(here.end()), at(-end_tangent(here))}, {there.start(), start_tangent(there)});
  const OutlineEdge beyond = previous_on_piece(*mate);
  if (is_panel_seam(beyond)) return std::nullopt;
  return LaidEdge{beyond, laid};
}

bool is_followed(const OutlineEdge& of, Follows follows) {
  if (of.get().role == EdgeRole::FreeEdge || is_front_edge(of)) return true;
  return follows == Follows::ShouldersToo && is_part(*of.piece, of.get().name, BlockEdge::Shoulder);
}

const std::string& part_of(const OutlineEdge& of) { return of.get().part_name(); }

using Step = std::optional<LaidEdge> (*)(const Pattern&, const OutlineEdge&, const Placement&);

// A shoulder, side or centre, in as many panels as it is cut into.
Path walked_part(const Pattern& pattern, LaidEdge edge, WalkedEdge (*walk)(const LaidEdge&),
                 Step step) {
  WalkedEdge walked = walk(edge);
  Path path = walked.path;
  for (auto next = step(pattern, edge.of, walked.at_end);
       next && part_of(next->of) == part_of(edge.of);
       next = step(pattern, next->of, walked.at_end)) {
    walked = walk(*next);
    append(path, walked.path);
  }
  return path;
}

// The first edge of the run.
std::optional<OutlineEdge> first_of_run(const Pattern& pattern, const OutlineEdge& from,
                                        Follows follows) {
  OutlineEdge first = from;
  while (true) {
    const auto previous = previous_edge(pattern, first, {});
    if (!previous) return std::nullopt;
    if (!is_followed(previous->of, follows)) return first;
    first = previous->of;
  }
}

void lay(TracedEdge& traced, const Placement& at) {
  for (Path* path : {&traced.before, &traced.after}) *path = placed(*path, at);
  for (Path& line : traced.lines) line = placed(line, at);
  for (Placement& lies : traced.lies) lies = lies.then(at);
}

// Where the part with the centre is cut, and how the cloth lies there; else the first part.
void lay_by_centre(TracedEdge& traced, const Placement& at_end) {
  const bool opens = is_front_edge(traced.edges.back());
  const bool to_centre = opens || lies_at_centre(traced.after_edge);
  const OutlineEdge& part = opens       ? traced.edges.back()
                            : to_centre ? traced.after_edge
                                        : traced.edges.front();
  const Segment& grain = part.piece->grainline;
  traced.grain = unit(grain.b - grain.a);
  if (to_centre) lay(traced, undone(at_end));
}

}  // namespace

bool lies_at_centre(const OutlineEdge& of) {
  return is_part(*of.piece, of.get().name, BlockEdge::Centre);
}

bool is_front_edge(const OutlineEdge& of) { return of.piece->stand && lies_at_centre(of); }

Path line_of(const TracedEdge& traced, EdgeRange range) {
  Path line = traced.lines[range.from];
  for (std::size_t i = range.from + 1; i < range.to; ++i) append(line, traced.lines[i]);
  return line;
}

std::optional<TracedEdge> traced_edge(const Pattern& trued, const OutlineEdge& from,
                                      Follows follows) {
  const auto first = first_of_run(trued, from, follows);
  if (!first) return std::nullopt;
  TracedEdge traced;
  const auto before = previous_edge(trued, *first, {});
  traced.before_edge = before->of;
  traced.before = walked_part(trued, *before, backwards, previous_edge);
  std::optional<LaidEdge> edge = LaidEdge{*first, {}};
  while (edge && is_followed(edge->of, follows)) {
    const WalkedEdge walked = forwards(*edge);
    traced.edges.push_back(edge->of);
    traced.sewn.push_back(length(walked.path));
    traced.lines.push_back(walked.path);
    traced.lies.push_back(edge->at);
    edge = next_edge(trued, edge->of, walked.at_end);
  }
  if (!edge) return std::nullopt;
  traced.after_edge = edge->of;
  traced.after = walked_part(trued, *edge, forwards, next_edge);
  lay_by_centre(traced, edge->at);
  return traced;
}

}  // namespace blockwright
