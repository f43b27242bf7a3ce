#include "blockwright/garment/facing.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "faced.hpp"
#include "facing_lines.hpp"
#include "named_edges.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace blockwright {
namespace {

constexpr const char* kFacingCode = "garment.facing";
constexpr const char* kOuterEdge = "outer_edge";
// A notch keeps this far off the ends of its edge and of darts, in mm. Common practice, no source.
constexpr double kNotchClear = 10.0;

// What can be faced, as it is named in a style.
struct FacedPart {
  std::string_view name, piece_words, edge;
  std::string_view found_by;  // an edge that is part of it
};
constexpr std::array<FacedPart, 3> kFacedParts = {{
    {"neckline", "neck_facing", "neck_edge", "neckline"},
    {"armhole", "armhole_facing", "armhole_edge", "armhole"},
    {"top_edge", "top_facing", "top_facing_edge", "neckline"},
}};

// A facing before its lines are drawn.
struct PlannedFacing {
  const FacedPart* part = nullptr;
  TracedEdge traced;
  FacingShape shape;
};

[[noreturn]] void refuse_edge(const std::string& where, const Wording& message,
                              const Wording& hint) {
  refuse({kFacingCode, "edges", where, message, hint});
}

void require_sewable(const FacingPlan& plan) {
  if (plan.width && (*plan.width < kLeastFacing || *plan.width > kMostFacing)) {
    refuse({kFacingCode, "width", "width",
            "a facing of " + Length::mm(*plan.width) + " rolls out or is no facing",
            "write " + Length::mm(kLeastFacing) + " to " + Length::mm(kMostFacing)});
  }
  if (plan.roll < kLeastRoll || plan.roll > kMostRoll) {
    refuse({kFacingCode, "roll", "roll", "a seam does not roll inside by " + Length::mm(plan.roll),
            "write " + Length::mm(kLeastRoll) + " for thin cloth to " + Length::mm(kMostRoll) +
                " for thick"});
  }
  if (plan.edges.empty()) {
    refuse_edge("edges", "it does not say which edges are faced",
                R"(write "neckline", "armhole" or "top_edge")");
  }
}

// --- what is faced ------------------------------------------------------------------------------

std::string_view part_words(std::string_view name) {
  const std::size_t dot = name.find('.');
  return dot == std::string_view::npos ? name : name.substr(dot + 1);
}

const FacedPart& part_named(const std::string& name) {
  const FacedPart* part = find_named(kFacedParts, part_words(name));
  if (part == nullptr) {
    refuse_edge(shown(name), "it is none of the edges that are faced",
                R"(write "neckline", "armhole" or "top_edge", or "front.neckline" for one piece)");
  }
  return *part;
}

std::vector<EdgeOf> edges_of(const Pattern& pattern, const std::string& name,
                             const FacedPart& part) {
  const std::string piece = name.substr(0, name.size() - part_words(name).size());
  std::vector<EdgeOf> found = edges_named(pattern, piece + std::string(part.found_by));
  std::erase_if(found, [&](const EdgeOf& at) { return pattern.piece(at.piece).kind == nullptr; });
  if (found.empty()) {
    refuse_edge(shown(name), "there is no such edge",
                R"(write "neckline", "armhole" or "top_edge")");
  }
  return found;
}

OutlineEdge on_outline(const Pattern& pattern, const EdgeOf& at) {
  const Piece& piece = pattern.piece(at.piece);
  return {&piece, static_cast<std::size_t>(&piece.edge(at.edge) - piece.edges.data())};
}

LineEnd end_at(const OutlineEdge& of) {
  if (of.get().role == EdgeRole::Fold) return LineEnd::OnFold;
  return lies_at_centre(of) ? LineEnd::AtOpening : LineEnd::AtSeam;
}

bool is_top(const TracedEdge& traced) {
  return lies_at_centre(traced.after_edge) &&
         is_part(*traced.before_edge.piece, traced.before_edge.get().name, BlockEdge::Side);
}

void require_its_part(const std::string& name, const FacedPart& part, const TracedEdge& traced) {
  const bool asked_top = part.name == "top_edge";
  if (asked_top == is_top(traced)) return;
  refuse_edge(shown(name),
              asked_top ? "neckline and armhole are apart: the piece has a shoulder"
                        : "the upper edge is one from the side to the centre",
              asked_top ? R"(write "neckline" and "armhole")" : R"(write "top_edge")");
}

void require_free(const Pattern& pattern, const TracedEdge& traced) {
  for (const OutlineEdge& of : traced.edges) {
    if (of.get().finish.how == Finish::Bound) {
      refuse_edge(name_of(of.name()), "it is bound", "bind it or face it, not both");
    }
    if (facing_of(pattern, of.name()) != nullptr) {
      refuse_edge(name_of(of.name()), "it is faced already", "name each edge once");
    }
    if (std::ranges::count(of.piece->fullness, of.get().name, &Fullness::edge) > 0) {
      refuse_edge(name_of(of.name()), "it is gathered or eased, and a facing is flat",
                  "bind it, or make its fullness a dart");
    }
  }
}

// A front that is buttoned has its facing cut on: a second one under it would meet its fold.
void require_no_stand(const TracedEdge& traced) {
  for (const OutlineEdge* end : {&traced.before_edge, &traced.after_edge}) {
    if (end->get().finish.how != Finish::FoldedBack) continue;
    refuse_edge(name_of(traced.edges.front().name()),
                "it ends at the buttons, where a facing is cut on to the front", "bind it");
  }
}

std::vector<PlannedFacing> planned(const Pattern& trued, const std::string& name,
                                   const FacingPlan& plan) {
  const FacedPart& part = part_named(name);
  std::vector<PlannedFacing> facings;
  std::set<std::string> seen;
  for (const EdgeOf& at : edges_of(trued, name, part)) {
    if (seen.contains(name_of(at))) continue;
    auto traced = traced_edge(trued, on_outline(trued, at));
    if (!traced) {
      refuse_edge(name_of(at), "its panels are joined in a way that a facing cannot follow",
                  "bind it, or cut the piece into fewer panels");
    }
    for (const OutlineEdge& of : traced->edges) seen.insert(name_of(of.name()));
    require_its_part(name, part, *traced);
    require_free(trued, *traced);
    require_no_stand(*traced);
    const FacingShape shape{end_at(traced->before_edge), end_at(traced->after_edge), 0.0,
                            plan.roll};
    facings.push_back({&part, std::move(*traced), shape});
  }
  return facings;
}

// --- how wide -----------------------------------------------------------------------------------

// The shortest shoulder or side that the facings end at.
struct EndLength {
  double length = 0.0;
  OutlineEdge of;
};

std::optional<EndLength> shortest_end(const std::vector<PlannedFacing>& facings) {
  std::optional<EndLength> shortest;
  const auto take = [&](LineEnd how, const Path& path, const OutlineEdge& of) {
    const double size = length(path);
    if (how == LineEnd::AtSeam && (!shortest || size < shortest->length)) shortest = {size, of};
  };
  for (const PlannedFacing& one : facings) {
    take(one.shape.before, one.traced.before, one.traced.before_edge);
    take(one.shape.after, one.traced.after, one.traced.after_edge);
  }
  return shortest;
}

// The same for all facings of an edge.
double width_of(const std::vector<PlannedFacing>& facings, const FacingPlan& plan,
                Problems& remarks) {
  const double wanted = plan.width.value_or(kUsualFacing);
  const auto end = shortest_end(facings);
  if (!end || wanted <= end->length - kFacingOffEdge) return wanted;
  const double most = std::floor(end->length - kFacingOffEdge);
  const Wording why =
      name_of(end->of.name()) + " is " + Length::mm(end->length) + " long where it ends";
  if (most < kLeastFacing) {
    refuse({kFacingCode, "edges", name_of(facings.front().traced.edges.front().name()),
            "a facing has no room: " + why, "bind the edge, or leave more of the seam"});
  }
  if (plan.width) {
    refuse({kFacingCode, "width", name_of(facings.front().traced.edges.front().name()),
            "a facing of " + Length::mm(wanted) + " is too wide: " + why,
            "write at most " + Length::mm(most)});
  }
  remarks.push_back(
      {Severity::Note, kFacingCode, name_of(facings.front().traced.edges.front().name()),
       "its facing is " + Length::mm(most) + " wide, not " + Length::mm(kUsualFacing) + ": " + why,
       "nothing to do; understitch it well"});
  return most;
}

// --- the piece ----------------------------------------------------------------------------------

// The stretch of a seam or centre between the facing's edge and its outer edge, from the corner
// away.
Path end_stretch(const Path& bound, Point from, Point to) {
  const Path part = sub_path(bound, {nearest(bound, from).along, nearest(bound, to).along});
  return ending_at(starting_at(part, from), to);
}

std::vector<Edge> edges_of(const PlannedFacing& planned, const FacingLines& lines) {
  const TracedEdge& traced = planned.traced;
  const Path before = end_stretch(traced.before, lines.edge.start(), lines.outer.start());
  const Path after = end_stretch(traced.after, lines.edge.end(), lines.outer.end());
  return {{traced.before_edge.get().name, EdgeRole::Seam, reversed(before)},
          {std::string(planned.part->edge), EdgeRole::Seam, lines.edge},
          {traced.after_edge.get().name, EdgeRole::Seam, after},
          {kOuterEdge, EdgeRole::FreeEdge, reversed(lines.outer)}};
}

// Along the grain, where the piece is longest, off its edges.
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
  Segment longest{from, from};
  for (int i = 1; i < places; ++i) {
    const double off = least + (most - least) * i / places;
    std::vector<LineCrossing> hits = intersections(outline, from + off * across, along);
    std::ranges::sort(hits, {}, &LineCrossing::along_line);
    for (std::size_t h = 1; h < hits.size(); ++h) {
      const Segment between_hits{hits[h - 1].point, hits[h].point};
      if (!contains(outline, midpoint(between_hits.a, between_hits.b), 0.05)) continue;
      if (distance(between_hits.a, between_hits.b) > distance(longest.a, longest.b)) {
        longest = between_hits;
      }
    }
  }
  const double end = 0.5 * (1.0 - taken);
  return {between(longest.a, longest.b, end), between(longest.a, longest.b, 1.0 - end)};
}

CutOn cut_of(const TracedEdge& traced) {
  if (lies_at_centre(traced.after_edge)) return traced.after_edge.piece->cut_on;
  const bool one = std::ranges::any_of(
      traced.edges, [](const OutlineEdge& of) { return of.piece->cut_on == CutOn::One; });
  return one ? CutOn::One : CutOn::Pair;
}

std::string name_for(const PlannedFacing& planned) {
  const Piece& piece = *planned.traced.edges.front().piece;
  return std::string(piece.kind->name) + "_" + std::string(planned.part->piece_words) +
         std::string(sided_name(piece.name).side);
}

Piece piece_for(const PlannedFacing& planned, const FacingLines& lines, bool interfaced) {
  Piece piece;
  piece.name = name_for(planned);
  piece.edges = edges_of(planned, lines);
  piece.grainline = grain_in(piece, planned.traced.grain);
  piece.cut_on = cut_of(planned.traced);
  if (interfaced) piece.cut_from.push_back(Material::Interfacing);
  return piece;
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

// The notches of the garment's edges on the facing as well; what the roll makes it longer or
// shorter by is spread evenly.
void set_notches(Pattern& pattern, const PlannedFacing& planned, Piece& facing) {
  const TracedEdge& traced = planned.traced;
  const std::string edge_name(planned.part->edge);
  double whole = 0.0, before = 0.0;
  for (const double sewn : traced.sewn) whole += sewn;
  const double per_mm = length(facing.edge(edge_name).path) / whole;
  for (std::size_t i = 0; i < traced.edges.size(); ++i) {
    Piece& piece = *find_named(pattern.pieces, traced.edges[i].piece->name);
    const Edge& of = piece.edge(traced.edges[i].get().name);
    notch_if_bare(piece, of);
    for (Notch& notch : piece.notches) {
      const bool taken = find_named(facing.notches, notch.name) != nullptr;
      if (notch.edge != of.name || !notch.mate_piece.empty() || taken) continue;
      const double along = before + closed_from_cut(piece, of, notch.along);
      notch.mate_piece = facing.name;
      notch.mate_edge = edge_name;
      facing.notches.push_back(
          {notch.name, edge_name, per_mm * along, notch.count, piece.name, of.name});
    }
    before += traced.sewn[i];
  }
}

// --- seams --------------------------------------------------------------------------------------

bool has(const std::vector<EdgeOf>& side, const EdgeOf& edge) {
  return std::ranges::count(side, edge) > 0;
}

// What two facings are joined at, where the garment is: their edges of one seam.
void join_at(Pattern& pattern, const Seam& seam, const Facing& a, const Facing& b) {
  if (a.edge != b.edge) return;
  for (const EdgeOf& end : {a.before, a.after}) {
    for (const EdgeOf& mate : {b.before, b.after}) {
      if (!has(seam.a, end) || !has(seam.b, mate)) continue;
      const std::string name = a.piece + "_" + end.edge;
      if (find_named(pattern.seams, name) != nullptr) continue;
      pattern.seams.push_back(
          {name, {{a.piece, end.edge}}, {{b.piece, mate.edge}}, 0.0, seam.b_runs_back});
    }
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

void add_facing(Pattern& pattern, const PlannedFacing& planned, bool interfaced) {
  const TracedEdge& traced = planned.traced;
  const auto lines = facing_lines(traced, planned.shape);
  std::optional<Piece> piece;
  if (lines) piece = piece_for(planned, *lines, interfaced);
  if (!piece || find_problem(*piece)) {
    refuse({kFacingCode, "edges", name_of(traced.edges.front().name()),
            "a facing of " + Length::mm(planned.shape.width) + " cannot follow so sharp an edge",
            "write a narrower width, or bind it"});
  }
  set_notches(pattern, planned, *piece);
  Facing facing{piece->name,
                std::string(planned.part->edge),
                {},
                traced.before_edge.name(),
                traced.after_edge.name(),
                planned.shape.width,
                planned.shape.roll};
  double sewn = 0.0;
  for (std::size_t i = 0; i < traced.edges.size(); ++i) {
    facing.faced.push_back(traced.edges[i].name());
    sewn += traced.sewn[i];
  }
  pattern.seams.push_back(
      {piece->name, facing.faced, {{piece->name, facing.edge}}, sewn - length(lines->edge), false});
  pattern.facings.push_back(facing);
  pattern.pieces.push_back(std::move(*piece));
}

// The pieces that are mirror images, and what lies under them.
std::set<std::string> image_names(const Pattern& pattern) {
  std::set<std::string> names;
  for (const Piece& piece : pattern.pieces) {
    if (is_mirrored(piece)) names.insert(piece.name);
  }
  return names;
}

}  // namespace

const Facing* facing_of(const Pattern& pattern, const EdgeOf& edge) {
  return first_where(pattern.facings, [&](const Facing& one) { return has(one.faced, edge); });
}

const Facing* facing_named(const Pattern& pattern, std::string_view piece) {
  return first_where(pattern.facings, [&](const Facing& one) { return one.piece == piece; });
}

void follow_garment(Pattern& pattern) {
  for (const Facing& facing : pattern.facings) {
    const EdgeFinish faced = edge_at(pattern, facing.faced.front()).finish;
    edge_at(pattern, {facing.piece, facing.edge}).finish = faced;
    for (const EdgeOf& end : {facing.before, facing.after}) {
      const Edge& under = edge_at(pattern, end);
      Edge& edge = edge_at(pattern, {facing.piece, end.edge});
      edge.role = under.role;
      edge.finish = under.finish;
    }
    edge_at(pattern, {facing.piece, kOuterEdge}).finish =
        faced.how == Finish::NotSaid ? EdgeFinish{} : EdgeFinish{Finish::Turned, kFacingTurn};
  }
}

MovedDarts with_facing(const Pattern& pattern, const FacingPlan& plan) {
  require_sewable(plan);
  std::set<std::string> images = image_names(pattern);
  MovedDarts faced{images.empty() ? pattern : with_mirrored(pattern, images), {}};
  const Pattern trued = true_darts(faced.pattern).pattern;
  for (const std::string& name : plan.edges) {
    std::vector<PlannedFacing> facings = planned(trued, name, plan);
    const double width = width_of(facings, plan, faced.remarks);
    for (PlannedFacing& one : facings) {
      for (const OutlineEdge& of : one.traced.edges) {
        if (facing_of(faced.pattern, of.name()) != nullptr) {
          refuse_edge(name_of(of.name()), "it is faced already", "name each edge once");
        }
      }
      one.shape.width = width;
      add_facing(faced.pattern, one, plan.interfaced);
      if (images.contains(one.traced.edges.front().piece->name)) images.insert(name_for(one));
    }
  }
  join_facings(faced.pattern);
  follow_garment(faced.pattern);
  if (!images.empty()) faced.pattern = with_mirrored(std::move(faced.pattern), images);
  return faced;
}

}  // namespace blockwright
