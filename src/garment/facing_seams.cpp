#include "blockwright/block/kinds.hpp"
#include "blockwright/garment/facing.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "planned_facing.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool has(const std::vector<EdgeOf>& side, const EdgeOf& edge) {
  return std::ranges::count(side, edge) > 0;
}

// An end of a facing, and the edge of the garment that is faced up to there.
struct FacingEnd {
  const EdgeOf& end;
  const EdgeOf& faced;
};
std::vector<FacingEnd> ends_of(const Facing& facing) {
  return {{facing.before, facing.faced.front()}, {facing.after, facing.faced.back()}};
}

// Necklines are faced on, and so are armholes.
bool runs_on(const Pattern& pattern, const EdgeOf& one, const EdgeOf& other) {
  return edge_at(pattern, one).part_name() == edge_at(pattern, other).part_name();
}

// What two facings are joined at, where the garment is: their edges of one seam.
void join_at(Pattern& pattern, const Seam& seam, const Facing& a, const Facing& b) {
  for (const FacingEnd& one : ends_of(a)) {
    for (const FacingEnd& mate : ends_of(b)) {
      if (!has(seam.a, one.end) || !has(seam.b, mate.end)) continue;
      if (!runs_on(pattern, one.faced, mate.faced)) continue;
      const std::string name = a.piece + "_" + one.end.edge;
      if (find_named(pattern.seams, name) != nullptr) continue;
      pattern.seams.push_back(
          {name, {{a.piece, one.end.edge}}, {{b.piece, mate.end.edge}}, 0.0, seam.b_runs_back});
    }
  }
}

// Beyond a run the facing ends, runs on along a shoulder, or turns a corner of the garment.
EdgeOf end_before(const PlannedFacing& planned, std::size_t run) {
  if (run == 0) return planned.traced.before_edge.name();
  const FacingRun& last = planned.runs[run - 1];
  if (last.kind != FacingRun::Kind::Shoulder) return {};
  return planned.traced.edges[last.range.from].name();
}
EdgeOf end_after(const PlannedFacing& planned, std::size_t run) {
  if (run + 1 == planned.runs.size()) return planned.traced.after_edge.name();
  const FacingRun& next = planned.runs[run + 1];
  if (next.kind != FacingRun::Kind::Shoulder) return {};
  return planned.traced.edges[next.range.from].name();
}

void add_seam(Pattern& pattern, const PlannedFacing& planned, std::size_t index,
              const Piece& piece) {
  const FacingRun& run = planned.runs[index];
  const bool on_front = run.kind == FacingRun::Kind::OnFront;
  Facing facing{piece.name,
                run.edge,
                {},
                end_before(planned, index),
                end_after(planned, index),
                on_front ? planned.shape.front_width : planned.shape.width,
                planned.shape.roll};
  double sewn = 0.0;
  for (std::size_t i = run.range.from; i < run.range.to; ++i) {
    facing.faced.push_back(planned.traced.edges[i].name());
    sewn += planned.traced.sewn[i];
  }
  const std::string name = planned.runs.size() == 1 ? piece.name : piece.name + "_" + run.edge;
  const double ease = sewn - length(piece.edge(run.edge).path);
  pattern.seams.push_back({name, facing.faced, {{piece.name, run.edge}}, ease, false});
  pattern.facings.push_back(facing);
}

void follow_end(Pattern& pattern, const Facing& facing, const EdgeOf& end) {
  if (end.piece.empty()) return;
  const Edge& under = edge_at(pattern, end);
  Edge& edge = edge_at(pattern, {facing.piece, end.edge});
  edge.role = under.role;
  edge.finish = under.finish;
}

}  // namespace

const Facing* facing_of(const Pattern& pattern, const EdgeOf& edge) {
  return first_where(pattern.facings, [&](const Facing& one) { return has(one.faced, edge); });
}

const Facing* facing_named(const Pattern& pattern, std::string_view piece) {
  return first_where(pattern.facings, [&](const Facing& one) { return one.piece == piece; });
}

void add_seams(Pattern& pattern, const PlannedFacing& planned, const Piece& facing) {
  for (std::size_t i = 0; i < planned.runs.size(); ++i) {
    if (planned.runs[i].kind != FacingRun::Kind::Shoulder) add_seam(pattern, planned, i, facing);
  }
}

void join_facings(Pattern& pattern) {
  const std::vector<Seam> seams = pattern.seams;
  for (const Seam& seam : seams) {
    for (const Facing& a : pattern.facings) {
      for (const Facing& b : pattern.facings) join_at(pattern, seam, a, b);
    }
  }
}

void follow_garment(Pattern& pattern) {
  for (const Facing& facing : pattern.facings) {
    const EdgeFinish faced = edge_at(pattern, facing.faced.front()).finish;
    edge_at(pattern, {facing.piece, facing.edge}).finish = faced;
    follow_end(pattern, facing, facing.before);
    follow_end(pattern, facing, facing.after);
    edge_at(pattern, {facing.piece, kFacingOuterEdge}).finish =
        faced.how == Finish::NotSaid ? EdgeFinish{} : EdgeFinish{Finish::Turned, kFacingTurn};
  }
}

}  // namespace blockwright
