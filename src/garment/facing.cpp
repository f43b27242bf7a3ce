#include "blockwright/garment/facing.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/opening.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "planned_facing.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace blockwright {
namespace {

constexpr const char* kFacingCode = "garment.facing";
// Of a facing that goes round a front edge, or along neckline and armhole.
constexpr const char* kWholeFacing = "facing";
// The front edge that a facing is sewn to, on the facing.
constexpr const char* kFacingFrontEdge = "front_edge";

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

// Neckline and armhole in one piece.
constexpr FacedPart kInOnePart = {"neckline", kWholeFacing, "", "neckline"};

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
  const bool both = std::ranges::count(plan.edges, "neckline") == 1 &&
                    std::ranges::count(plan.edges, "armhole") == 1 && plan.edges.size() == 2;
  if (plan.in_one && !both) {
    refuse({kFacingCode, "in_one", "in_one",
            "a facing in one piece is that of neckline and armhole",
            R"(write "edges": ["neckline", "armhole"], or leave "in_one" out)"});
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
  if (of.get().role == EdgeRole::Hem) return LineEnd::AtHem;
  return lies_at_centre(of) ? LineEnd::AtOpening : LineEnd::AtSeam;
}

bool has_part(const OutlineEdge& of, BlockEdge part) {
  return is_part(*of.piece, of.get().name, part);
}

// The end of a strap is in its place, and free.
bool is_shoulder(const OutlineEdge& of) {
  return has_part(of, BlockEdge::Shoulder) && of.get().role == EdgeRole::Seam;
}

// From the side to the centre without a shoulder.
bool is_top(const TracedEdge& traced) {
  return (lies_at_centre(traced.after_edge) || is_front_edge(traced.edges.back())) &&
         has_part(traced.before_edge, BlockEdge::Side) &&
         std::ranges::none_of(traced.edges, is_shoulder);
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

FacingRun run_over(const FacedPart& part, const OutlineEdge& of, std::size_t at) {
  using enum FacingRun::Kind;
  const EdgeRange range{at, at + 1};
  if (is_front_edge(of)) return {OnFront, kFacingFrontEdge, range};
  if (is_shoulder(of)) return {Shoulder, of.get().name, range};
  if (!part.edge.empty()) return {Sewn, std::string(part.edge), range};
  return {Sewn, has_part(of, BlockEdge::Armhole) ? "armhole_edge" : "neck_edge", range};
}

// An edge of the facing for each part of the garment, in as many panels as it is cut into.
std::vector<FacingRun> runs_of(const FacedPart& part, const TracedEdge& traced) {
  std::vector<FacingRun> runs;
  for (std::size_t i = 0; i < traced.edges.size(); ++i) {
    FacingRun run = run_over(part, traced.edges[i], i);
    const bool goes_on = !runs.empty() && runs.back().kind == run.kind &&
                         (runs.back().edge == run.edge || run.kind == FacingRun::Kind::Shoulder);
    if (goes_on) {
      runs.back().range.to = i + 1;
    } else {
      runs.push_back(std::move(run));
    }
  }
  return runs;
}

// From a front edge inwards, as wide as one that is cut on.
double front_width_of(const TracedEdge& traced) {
  const OutlineEdge& last = traced.edges.back();
  return is_front_edge(last) ? 2.0 * last.piece->stand->width + kFacingMore : 0.0;
}

PlannedFacing planned_along(const FacedPart& part, TracedEdge traced, double roll) {
  const std::string words =
      is_front_edge(traced.edges.back()) ? kWholeFacing : std::string(part.piece_words);
  const FacingShape shape{end_at(traced.before_edge), end_at(traced.after_edge), 0.0, roll,
                          front_width_of(traced)};
  std::vector<FacingRun> runs = runs_of(part, traced);
  return {words, std::move(traced), std::move(runs), shape};
}

std::vector<PlannedFacing> planned(const Pattern& trued, const std::string& name,
                                   const FacingPlan& plan) {
  const FacedPart& part = plan.in_one ? kInOnePart : part_named(name);
  const Follows follows = plan.in_one ? Follows::ShouldersToo : Follows::FreeEdges;
  std::vector<PlannedFacing> facings;
  std::set<std::string> seen;
  for (const EdgeOf& at : edges_of(trued, name, part)) {
    if (seen.contains(name_of(at))) continue;
    auto traced = traced_edge(trued, on_outline(trued, at), follows);
    if (!traced) {
      refuse_edge(name_of(at), "its panels are joined in a way that a facing cannot follow",
                  "bind it, or cut the piece into fewer panels");
    }
    for (const OutlineEdge& of : traced->edges) seen.insert(name_of(of.name()));
    require_its_part(name, part, *traced);
    require_free(trued, *traced);
    facings.push_back(planned_along(part, std::move(*traced), plan.roll));
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

// --- at the centre ------------------------------------------------------------------------------

// Down the centre, in mm; nothing where it does not end there.
std::optional<double> depth_at_centre(const PlannedFacing& planned) {
  if (planned.shape.after != LineEnd::AtOpening) return std::nullopt;
  const auto lines = facing_lines(planned.traced, planned.runs, planned.shape);
  if (!lines) return std::nullopt;
  return nearest(planned.traced.after, lines->outer.end()).along;
}

// Halves that meet at the centre, of a front or a back, are equally deep there.
void make_halves_meet(std::vector<PlannedFacing>& facings) {
  for (PlannedFacing& one : facings) {
    for (PlannedFacing& other : facings) {
      if (one.traced.after_edge.piece->kind != other.traced.after_edge.piece->kind) continue;
      const auto depth = depth_at_centre(one), others = depth_at_centre(other);
      if (depth && others && *depth > *others) one.shape.depth = others;
    }
  }
}

// --- off the bust point --------------------------------------------------------------------------

// Between its outer edge and the bust point; nothing where it covers that. Facings that cannot be
// drawn are judged when they are.
double clear_of_bust(PlannedFacing planned, double width) {
  double clear = 2.0 * kFacingOffBust;
  planned.shape.width = width;
  const auto lines = facing_lines(planned.traced, planned.runs, planned.shape);
  if (!lines) return clear;
  const Path outline = flat_outline(piece_for(planned, *lines));
  for (std::size_t i = 0; i < planned.traced.edges.size(); ++i) {
    const Landmark* bust = find_landmark(*planned.traced.edges[i].piece, PointUse::Marked);
    if (bust == nullptr) continue;
    const Point at = planned.traced.lies[i](bust->at);
    const bool covered = contains(outline, at, 0.05);
    clear = std::min(clear, covered ? 0.0 : nearest(lines->outer, at).distance);
  }
  return clear;
}

bool is_clear_of_bust(const std::vector<PlannedFacing>& facings, double width) {
  return std::ranges::all_of(facings, [&](const PlannedFacing& one) {
    return clear_of_bust(one, width) >= kFacingOffBust;
  });
}

// Of neckline and armhole in one piece, whose outer edge runs over the bust.
double width_off_bust(const std::vector<PlannedFacing>& facings, const FacingPlan& plan,
                      double wanted, Problems& remarks) {
  double width = wanted;
  while (width >= kLeastFacing && !is_clear_of_bust(facings, width)) width -= 1.0;
  if (width == wanted) return width;
  const Wording why = "it comes nearer than " + Length::mm(kFacingOffBust) + " to the bust point";
  if (width < kLeastFacing) {
    refuse({kFacingCode, "in_one", "front", "a facing in one piece has no room: " + why,
            "draw the neckline higher, or bind neckline and armhole"});
  }
  if (plan.width) {
    refuse({kFacingCode, "width", "front",
            "a facing of " + Length::mm(wanted) + " is too wide: " + why,
            "write at most " + Length::mm(width)});
  }
  remarks.push_back(
      {Severity::Note, kFacingCode, "front",
       "its facing is " + Length::mm(width) + " wide, not " + Length::mm(wanted) + ": wider " + why,
       "nothing to do; understitch it well"});
  return width;
}

// --- on the shoulder -----------------------------------------------------------------------------

// What two facings take of a shoulder that both end at.
struct SharedShoulder {
  EdgeOf of;
  double length = 0.0, taken = 0.0;
};

std::optional<EdgeOf> shoulder_end(const Pattern& pattern, const Facing& facing) {
  for (const EdgeOf& end : {facing.before, facing.after}) {
    if (!end.piece.empty() && is_part(pattern.piece(end.piece), end.edge, BlockEdge::Shoulder)) {
      return end;
    }
  }
  return std::nullopt;
}

// Of one half of the body.
bool shares_piece(const Pattern& pattern, const EdgeOf& a, const EdgeOf& b) {
  return pattern.piece(a.piece).kind == pattern.piece(b.piece).kind &&
         sided_name(a.piece).side == sided_name(b.piece).side;
}

// In as many panels as the piece is cut into.
double shoulder_length(const Pattern& pattern, const EdgeOf& of) {
  double whole = 0.0;
  for (const Piece& one : pattern.pieces) {
    if (!shares_piece(pattern, of, {one.name, ""})) continue;
    for (const Edge& edge : one.edges) {
      if (is_part(one, edge.name, BlockEdge::Shoulder)) whole += sewn_length(one, edge);
    }
  }
  return whole;
}

// A facing before `added` was there before this step.
std::optional<SharedShoulder> overlap_at(const Pattern& pattern, std::size_t added) {
  for (std::size_t i = added; i < pattern.facings.size(); ++i) {
    const Facing& one = pattern.facings[i];
    const auto at = shoulder_end(pattern, one);
    if (!at) continue;
    for (const Facing& other : pattern.facings) {
      const auto end = shoulder_end(pattern, other);
      const bool shared = end && other.piece != one.piece && shares_piece(pattern, *at, *end);
      if (!shared) continue;
      const SharedShoulder on{*at, shoulder_length(pattern, *at), one.width + other.width};
      if (on.taken > on.length) return on;
    }
  }
  return std::nullopt;
}

void warn_of_overlap(const Pattern& pattern, std::size_t added, Problems& remarks) {
  const auto on = overlap_at(pattern, added);
  if (!on) return;
  remarks.push_back({Severity::Warning, kFacingCode, name_of(on->of),
                     "it is " + Length::mm(on->length) +
                         " long, and the facings of neckline and armhole, " +
                         Length::mm(on->taken) + " together, lie over each other on it",
                     R"(face both in one piece with "in_one": true, or write a narrower width)"});
}

// --- sewn on ------------------------------------------------------------------------------------

// The fold of a facing that is cut on becomes an edge like the one that it goes on from.
void finish_front_edge(Pattern& pattern, const PlannedFacing& planned) {
  const FacingRun& last = planned.runs.back();
  if (last.kind != FacingRun::Kind::OnFront) return;
  const auto& edges = planned.traced.edges;
  edge_at(pattern, edges[last.range.from].name()).finish =
      edge_at(pattern, edges[last.range.from - 1].name()).finish;
}

void add_facing(Pattern& pattern, const PlannedFacing& planned, bool interfaced) {
  const auto lines = facing_lines(planned.traced, planned.runs, planned.shape);
  std::optional<Piece> piece;
  if (lines) piece = piece_for(planned, *lines);
  if (!piece || find_problem(*piece)) {
    refuse({kFacingCode, "edges", name_of(planned.traced.edges.front().name()),
            "a facing of " + Length::mm(planned.shape.width) + " cannot follow so sharp an edge",
            "write a narrower width, or bind it"});
  }
  if (interfaced) piece->cut_from.push_back(Material::Interfacing);
  set_notches(pattern, planned, *piece);
  finish_front_edge(pattern, planned);
  add_seams(pattern, planned, *piece);
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

MovedDarts with_facing(const Pattern& pattern, const FacingPlan& plan) {
  require_sewable(plan);
  std::set<std::string> images = image_names(pattern);
  MovedDarts faced{images.empty() ? pattern : with_mirrored(pattern, images), {}};
  const Pattern trued = true_darts(faced.pattern).pattern;
  const std::vector<std::string> names =
      plan.in_one ? std::vector<std::string>{"neckline"} : plan.edges;
  for (const std::string& name : names) {
    std::vector<PlannedFacing> facings = planned(trued, name, plan);
    double width = width_of(facings, plan, faced.remarks);
    if (plan.in_one) width = width_off_bust(facings, plan, width, faced.remarks);
    for (PlannedFacing& one : facings) one.shape.width = width;
    make_halves_meet(facings);
    for (const PlannedFacing& one : facings) {
      for (const OutlineEdge& of : one.traced.edges) {
        if (facing_of(faced.pattern, of.name()) != nullptr) {
          refuse_edge(name_of(of.name()), "it is faced already", "name each edge once");
        }
      }
      add_facing(faced.pattern, one, plan.interfaced);
      if (images.contains(one.traced.edges.front().piece->name)) images.insert(name_for(one));
    }
  }
  warn_of_overlap(faced.pattern, pattern.facings.size(), faced.remarks);
  join_facings(faced.pattern);
  follow_garment(faced.pattern);
  if (!images.empty()) faced.pattern = with_mirrored(std::move(faced.pattern), images);
  return faced;
}

}  // namespace blockwright
