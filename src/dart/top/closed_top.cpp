#include "closed_top.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kInOne = "top";

bool is_named(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::count(names, name) > 0;
}

void require_no_gathers(const Top& top) {
  const bool in_the_way = std::ranges::any_of(top.open.fullness, [&](const auto& ends) {
    const std::size_t edge = ends[0].edge;
    return top.is_cut(edge) || edge == top.side() || edge == top.centre();
  });
  if (!in_the_way) return;
  refuse(kTopEdgeCode, top.piece(), "gathers lie where the top edge is to be drawn",
         "draw the top edge before them");
}

Path kept_side(const Top& top, const TopCut& cut) {
  Path side = top.upper_side();
  if (cut.under_underarm >= 0.0) {
    return part_before(side, place_at_length(side, length(side) - cut.under_underarm));
  }
  append_line(side, side.end() - cut.under_underarm * end_tangent(side));
  return without_straight_joints(std::move(side));
}

Path kept_centre(const Top& top, const TopCut& cut) {
  const Path& centre = top.upper_centre();
  return part_after(centre, place_at_length(centre, cut.down_centre));
}

void drop_cut_notches(Opened& open, const Top& top, const TopCut& cut) {
  const std::size_t last = top.open.edges[top.side()].stretches.size() - 1;
  const double side_left = length(top.upper_side()) - cut.under_underarm;
  drop_notches(open, [&](const Anchor& at) {
    return top.is_cut(at.edge) ||
           (at.edge == top.side() && at.stretch == last && at.along > side_left) ||
           (at.edge == top.centre() && at.stretch == 0 && at.along < cut.down_centre);
  });
}

// A straight line from the side to the centre: what lies over it.
OpenEdge straight_edge(const Top& top, const TopCut& cut) {
  return {.name = kInOne,
          .role = EdgeRole::FreeEdge,
          .stretches = {Path::through({side_end(top, cut).at, centre_end(top, cut).at})},
          .darts = {}};
}

// An edge of the top, and how far along the line it ends.
struct TopSection {
  std::string_view name;
  BlockEdge part;
  double to;
};

std::vector<TopSection> sections_of(const TopLine& line) {
  const TopSection neckline{"neckline", BlockEdge::Neckline, length(line.path)};
  if (!line.strap) return {neckline};
  std::vector<TopSection> all{{"armhole", BlockEdge::Armhole, line.strap->from}};
  if (line.strap->to > line.strap->from) {
    all.push_back({kStrapEnd, BlockEdge::Shoulder, line.strap->to});
  }
  all.push_back(neckline);
  return all;
}

OpenEdge empty_edge(const TopSection& section) {
  const auto& edge = kBodiceFront.edges[index_of(section.part)];
  const std::string part(edge.name);
  return {.name = std::string(section.name),
          .role = EdgeRole::FreeEdge,
          .stretches = {},
          .darts = {},
          .part = part == section.name ? "" : part};
}

CutDarts cut_darts(const Top& top, const TopCut& cut) {
  const Path kept = flat_outline(put_together(cut_away(top, cut, {straight_edge(top, cut)})));
  const bool front = is_a(top.open.piece, kBodiceFront);
  CutDarts sorted;
  for (std::size_t e = top.armhole; e <= top.neckline(); ++e) {
    for (const Dart& dart : top.open.edges[e].darts) {
      if (front || contains(kept, dart.apex, 0.01)) {
        sorted.crossed.push_back(dart);
      } else {
        sorted.gone.push_back(dart.name);
      }
    }
  }
  return sorted;
}

// Armhole, shoulder and neckline as one edge, without the darts that go.
OpenEdge in_one(const Top& top, const std::vector<std::string>& gone) {
  OpenEdge one{.name = kInOne, .role = EdgeRole::FreeEdge, .stretches = {Path()}, .darts = {}};
  for (std::size_t e = top.armhole; e <= top.neckline(); ++e) {
    const OpenEdge& edge = top.open.edges[e];
    for (std::size_t i = 0; i < edge.stretches.size(); ++i) {
      append(one.stretches.back(), edge.stretches[i]);
      if (i == edge.darts.size()) continue;
      if (is_named(gone, edge.darts[i].name)) {
        append(one.stretches.back(), mouth_path(edge.darts[i]));
        continue;
      }
      one.darts.push_back(edge.darts[i]);
      one.darts.back().edge = kInOne;
      one.stretches.emplace_back();
    }
  }
  return one;
}

Piece in_one_edge(const Top& top, const std::vector<std::string>& gone) {
  Opened all = top.open;
  all.piece.notches.clear();
  all.piece.fullness.clear();
  all.notches.clear();
  all.fullness.clear();
  const auto first = all.edges.begin() + static_cast<std::ptrdiff_t>(top.armhole);
  *first = in_one(top, gone);
  all.edges.erase(first + 1, first + 3);
  return put_together(all);
}

}  // namespace

Top top_of(const Piece& piece) {
  const Edge* shoulder = find_part(piece, BlockEdge::Shoulder);
  if (shoulder == nullptr || !shoulder->part.empty()) {
    refuse(kTopEdgeCode, piece.name, "its shoulder is cut away already",
           "give one top edge, drawn as the last is");
  }
  Top top{opened(piece), 0};
  top.armhole = *find_edge(top.open, part_of(piece, BlockEdge::Armhole).name);
  require_no_gathers(top);
  return top;
}

TopEnd side_end(const Top& top, const TopCut& cut) {
  const Path side = kept_side(top, cut);
  return {side.end(), end_tangent(side)};
}

TopEnd centre_end(const Top& top, const TopCut& cut) {
  const Path centre = kept_centre(top, cut);
  return {centre.start(), start_tangent(centre)};
}

Opened cut_away(const Top& top, const TopCut& cut, const std::vector<OpenEdge>& edges) {
  Opened open = top.open;
  drop_cut_notches(open, top, cut);
  open.edges[top.side()].stretches.back() = kept_side(top, cut);
  open.edges[top.centre()].stretches.front() = kept_centre(top, cut);
  const auto first = open.edges.begin() + static_cast<std::ptrdiff_t>(top.armhole);
  open.edges.insert(open.edges.erase(first, first + 3), edges.begin(), edges.end());
  change_anchors(open, [&](Anchor& at) {
    if (at.edge == top.centre() && at.stretch == 0) at.along -= cut.down_centre;
    if (at.edge > top.neckline()) at.edge = at.edge + edges.size() - 3;
  });
  return open;
}

// --- the closed top ------------------------------------------------------------------------------

ClosedTop::ClosedTop(const Top& top, const TopCut& cut)
    : piece_(top.piece()),
      darts_(cut_darts(top, cut)),
      folded_(in_one_edge(top, darts_.gone), kInOne) {
  close_shoulder(top);
}

// The shoulder's own darts are all closed, also those that go; it lies next to its stretch at the
// neck.
void ClosedTop::close_shoulder(const Top& top) {
  const OpenEdge& shoulder = top.open.edges[top.shoulder()];
  std::size_t before = 0;
  for (const std::size_t e : {top.armhole, top.shoulder()}) {
    for (const Dart& dart : top.open.edges[e].darts)
      before += is_named(darts_.gone, dart.name) ? 0 : 1;
  }
  const Placement& here = folded_.of_stretch(before);
  Placement closing = here;
  std::vector<Path> stretches;
  for (std::size_t i = shoulder.stretches.size(); i-- > 0;) {
    stretches.push_back(placed(shoulder.stretches[i], closing));
    if (i == 0) break;
    const Dart& dart = shoulder.darts[i - 1];
    const Angle by = turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
    closing = Placement::turn(by, dart.point).then(closing);
  }
  std::ranges::reverse(stretches);
  for (const Path& stretch : stretches) append(shoulder_, stretch);
  middle_ = point_at_length(shoulder_, 0.5 * length(shoulder_));
}

std::vector<double> ClosedTop::crossings(const Path& line) const {
  std::vector<double> all;
  for (std::size_t d = 0; d < darts_.crossed.size(); ++d) {
    const Placement& folding = folded_.of_stretch(d);
    const Point point = folding(darts_.crossed[d].point);
    const auto hits = intersections(line, point, unit(folding(darts_.crossed[d].legs[0]) - point));
    const auto hit = std::ranges::find_if(
        hits, [](const LineCrossing& crossing) { return crossing.along_line > kFromCorner; });
    if (hit == hits.end()) {
      refuse(kTopEdgeCode, piece_,
             "the dart " + darts_.crossed[d].name + " would be cut off at its point",
             "move it first, to the waist or the side, or draw the edge higher");
    }
    all.push_back(length(part_before(line, hit->place)));
  }
  return all;
}

std::vector<OpenEdge> ClosedTop::edges_of(const TopLine& line) const {
  const std::vector<TopSection> sections = sections_of(line);
  const std::vector<Path> parts = folded_.laid_back(line.path);
  require(parts.size() == darts_.crossed.size() + 1, "the top edge crosses its darts");
  std::vector<OpenEdge> edges{empty_edge(sections.front())};
  double at = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Path rest = parts[i];
    const double to = at + length(rest);
    while (edges.size() < sections.size() && sections[edges.size() - 1].to < to) {
      const double corner = sections[edges.size() - 1].to;
      const PathPlace cut = place_at_length(rest, corner - at);
      edges.back().stretches.push_back(without_specks(part_before(rest, cut)));
      rest = without_specks(part_after(rest, cut));
      edges.push_back(empty_edge(sections[edges.size()]));
      at = corner;
    }
    edges.back().stretches.push_back(rest);
    at = to;
    if (i == darts_.crossed.size()) break;
    Dart dart = darts_.crossed[i];
    dart.edge = edges.back().name;
    dart.legs = {parts[i].end(), parts[i + 1].start()};
    edges.back().darts.push_back(dart);
  }
  return edges;
}

}  // namespace blockwright
