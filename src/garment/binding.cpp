#include "blockwright/garment/binding.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "refusal.hpp"
#include "straps.hpp"
#include "strip_join.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr const char* kBindingCode = "garment.binding";
// An edge is hollow whose mean depth under its chord is over this share of the chord. Ours.
constexpr double kHollow = 0.03;

void require_bindable(const BindingPlan& plan) {
  if (plan.shows < kLeastBindingWidth || plan.shows > kMostBindingWidth) {
    refuse({kBindingCode, "shows", "shows",
            "a binding that shows " + Length::mm(plan.shows) + " cannot be sewn",
            "write " + Length::mm(kLeastBindingWidth) + " to " + Length::mm(kMostBindingWidth)});
  }
  if (plan.stretch < 0.0 || plan.stretch > kMostStretch) {
    refuse({kBindingCode, "stretch", "stretch",
            "a strip stretched by " + told_number(plan.stretch, 1) + " % puckers or falls off",
            "write 0 to " + told_number(kMostStretch, 0) + ", in percent; 3 to 5 are usual"});
  }
  const auto is_empty = [](const auto& run) { return run.empty(); };
  if (plan.runs.empty() || std::ranges::any_of(plan.runs, is_empty)) {
    refuse({kBindingCode, "runs", "runs", "it does not say which edges are bound",
            R"(write for example "runs": [["neckline"], ["armhole"]])"});
  }
}

void require_free(const Pattern& pattern, const EdgeOf& at) {
  const Edge& edge = edge_at(pattern, at);
  if (edge.finish.how == Finish::Bound) {
    refuse({kBindingCode, "runs", name_of(at), "it is bound already", "name each edge once"});
  }
  if (facing_of(pattern, at) != nullptr) {
    refuse({kBindingCode, "runs", name_of(at), "it is faced", "bind it or face it, not both"});
  }
  if (edge.role == EdgeRole::FreeEdge || edge.role == EdgeRole::Hem) return;
  if (is_strap(pattern.piece(at.piece))) return;
  refuse({kBindingCode, "runs", name_of(at),
          edge.role == EdgeRole::Fold ? "it lies on the fold of the cloth"
                                      : "it is sewn to another edge or opens",
          "bind necklines, armholes and hems"});
}

// A strap is bound as a whole: its layers lie on each other.
void require_whole_strap(const Pattern& pattern, const std::string& name, const EdgeOf& at) {
  if (!is_strap(pattern.piece(at.piece))) return;
  if (name != kStrapPiece) {
    refuse({kBindingCode, "runs", shown(name), "a folded strap is bound as a whole",
            R"(write "strap")"});
  }
  if (!has_flat_straps(pattern)) {
    refuse({kBindingCode, "runs", shown(name), "the straps are too narrow to be bound",
            "leave \"strap\" out, or draw straps of " + Length::mm(kFlatStrap) + " and more"});
  }
}

std::vector<EdgeOf> found_in_run(const Pattern& pattern, const std::string& name) {
  return name == kStrapPiece ? strap_edges(pattern) : edges_named(pattern, name);
}

std::vector<EdgeOf> edges_of_run(const Pattern& pattern, const std::vector<std::string>& run) {
  std::vector<EdgeOf> edges;
  for (const std::string& name : run) {
    const std::vector<EdgeOf> found = found_in_run(pattern, name);
    if (found.empty()) {
      refuse({kBindingCode, "runs", shown(name), "there is no such edge",
              R"(write "neckline", "armhole" or "hem", or one of )" + all_edge_names(pattern)});
    }
    for (const EdgeOf& at : found) require_whole_strap(pattern, name, at);
    edges.insert(edges.end(), found.begin(), found.end());
  }
  return edges;
}

bool is_at_centre(const Piece& piece, const Edge& edge) {
  return edge.role == EdgeRole::Fold || is_part(piece, edge.name, BlockEdge::Centre);
}

// Whether the strip runs on over the centre of the body.
bool reaches_centre(const Pattern& pattern, const std::vector<EdgeOf>& edges) {
  return std::ranges::any_of(edges, [&](const EdgeOf& at) {
    const Piece& piece = pattern.piece(at.piece);
    const std::size_t count = piece.edges.size();
    const auto i = static_cast<std::size_t>(&piece.edge(at.edge) - piece.edges.data());
    return is_at_centre(piece, piece.edges[(i + 1) % count]) ||
           is_at_centre(piece, piece.edges[(i + count - 1) % count]);
  });
}

bool is_hollow(const Path& path) {
  const double chord = distance(path.start(), path.end());
  if (chord <= 0.0) return false;
  Path closed = path;
  append_line(closed, path.start());
  // Anticlockwise outlines have the piece to the left: a hollow edge lies left of its chord.
  return -signed_area(closed) / chord > kHollow * chord;
}

// Of the strip, for the edge as it is sewn.
double strip_for(const Pattern& pattern, const EdgeOf& at, double stretch) {
  const Piece& piece = pattern.piece(at.piece);
  const Edge& edge = piece.edge(at.edge);
  const double sewn = bound_length(piece, edge);
  return is_hollow(edge.path) ? sewn * (1.0 - stretch / 100.0) : sewn;
}

// How often a strip meets the edge: both halves where it runs over the centre.
double times_in_strip(const Pattern& pattern, const EdgeOf& at, bool over_centre) {
  return over_centre && pattern.piece(at.piece).cut_on != CutOn::One ? 2.0 : 1.0;
}

Binding binding_of(const Pattern& pattern, const std::vector<EdgeOf>& edges,
                   const BindingPlan& plan) {
  const bool over_centre = reaches_centre(pattern, edges);
  Binding binding;
  binding.edges = edges;
  binding.strips = over_centre ? 1 : 2;
  binding.shows = plan.shows;
  binding.cut_width = 4.0 * plan.shows + kTurnOfCloth;
  for (const EdgeOf& at : edges) {
    const double times = times_in_strip(pattern, at, over_centre);
    const Piece& piece = pattern.piece(at.piece);
    binding.edge_length += times * bound_length(piece, piece.edge(at.edge));
    binding.strip_length += times * strip_for(pattern, at, plan.stretch);
  }
  binding.strip_length += 2.0 * kStripEnd;
  binding.joined = join_of(pattern, edges);
  binding.square = square_for({binding.strips * binding.strip_length, binding.cut_width});
  return binding;
}

// Those of the front and those of the back.
std::vector<std::vector<EdgeOf>> by_half(const Pattern& pattern, const std::vector<EdgeOf>& edges) {
  std::vector<std::vector<EdgeOf>> halves;
  for (const PieceKind* half : {&kBodiceFront, &kBodiceBack}) {
    std::vector<EdgeOf> of_it;
    std::ranges::copy_if(edges, std::back_inserter(of_it),
                         [&](const EdgeOf& at) { return is_a(pattern.piece(at.piece), *half); });
    if (!of_it.empty()) halves.push_back(of_it);
  }
  return halves;
}

// Of a body whose sides differ each side has a strip of its own, unless it runs over the centre.
// Between straps front and back have one each.
std::vector<std::vector<EdgeOf>> strips_of(const Pattern& pattern,
                                           const std::vector<EdgeOf>& edges) {
  const auto is_on = [](const EdgeOf& at, std::string_view side) {
    return sided_name(at.piece).side == side;
  };
  const bool sided = std::ranges::any_of(edges, [&](const EdgeOf& e) { return !is_on(e, ""); });
  const bool over_centre = reaches_centre(pattern, edges);
  if (over_centre && ends_at_straps(pattern, edges)) return by_half(pattern, edges);
  if (!sided || over_centre) return {edges};
  std::vector<std::vector<EdgeOf>> strips;
  for (const std::string_view side : {kRightEnding, kLeftEnding}) {
    strips.emplace_back();
    std::ranges::copy_if(edges, std::back_inserter(strips.back()),
                         [&](const EdgeOf& at) { return is_on(at, side) || is_on(at, ""); });
  }
  return strips;
}

}  // namespace

std::string join_of(const Pattern& pattern, const std::vector<EdgeOf>& edges) {
  if (ends_at_straps(pattern, edges)) return "";
  if (!reaches_centre(pattern, edges)) return "the underarm";
  const bool is_hem = std::ranges::any_of(
      edges, [&](const EdgeOf& at) { return edge_at(pattern, at).role == EdgeRole::Hem; });
  const auto parts_it = [&](const Opening& one) {
    return is_hem ? one.with == Closure::OpenZip : one.name != "left_side";
  };
  const bool of_block = std::ranges::any_of(pattern.pieces, [](const Piece& piece) {
    return first_where(piece.edges, [](const Edge& e) { return e.role == EdgeRole::Opening; }) !=
           nullptr;
  });
  const bool opens =
      pattern.openings.empty() ? of_block : std::ranges::any_of(pattern.openings, parts_it);
  return opens ? "" : "the centre back";
}

double square_for(const StripSize& strips) {
  return std::sqrt(kStripWaste * strips.length * strips.width);
}

double square_of_strips(const Pattern& pattern) {
  double area = 0.0;
  for (const Binding& one : pattern.bindings) area += one.square * one.square;
  return std::sqrt(area);
}

MovedDarts with_binding(const Pattern& pattern, const BindingPlan& plan) {
  require_bindable(plan);
  MovedDarts bound{pattern, {}};
  for (const std::vector<std::string>& run : plan.runs) {
    const std::vector<EdgeOf> edges = edges_of_run(bound.pattern, run);
    for (const EdgeOf& at : edges) {
      require_free(bound.pattern, at);
      edge_at(bound.pattern, at).finish = {Finish::Bound, 0.0};
    }
    const std::vector<std::vector<EdgeOf>> strips = strips_of(bound.pattern, edges);
    for (const std::vector<EdgeOf>& strip : strips) {
      Binding binding = binding_of(bound.pattern, strip, plan);
      if (strips.size() > 1) {
        binding.strips = 1;
        binding.square = square_for({binding.strip_length, binding.cut_width});
      }
      bound.pattern.bindings.push_back(binding);
    }
  }
  return bound;
}

}  // namespace blockwright
