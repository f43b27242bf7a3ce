#include "blockwright/garment/opening.hpp"

#include "blockwright/block/kinds.hpp"
#include "button_stand.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "refusal.hpp"
#include "straps.hpp"
#include "strip_join.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum OpeningPlan::At;

constexpr const char* kOpeningCode = "garment.opening";
// Behind the opening's name: a piece may open at two edges.
constexpr const char* kZipEnd = ".zip_end";

std::string place_name(OpeningPlan::At at) {
  constexpr const char* names[] = {"centre_back", "centre_front", "left_side"};
  return names[static_cast<std::size_t>(at)];
}

bool is_of_half(const Piece& piece, OpeningPlan::At at) {
  if (at == CentreBack) return is_a(piece, kBodiceBack);
  if (at == CentreFront) return is_a(piece, kBodiceFront);
  return sided_name(piece.name).side != kRightEnding;
}

// The edges that the opening parts.
std::vector<EdgeOf> parted_edges(const Pattern& pattern, OpeningPlan::At at) {
  const BlockEdge part = at == LeftSide ? BlockEdge::Side : BlockEdge::Centre;
  std::vector<EdgeOf> edges;
  for (const Piece& piece : pattern.pieces) {
    if (!is_of_half(piece, at)) continue;
    for (const Edge& edge : piece.edges) {
      if (is_part(piece, edge.name, part)) edges.push_back({piece.name, edge.name});
    }
  }
  return edges;
}

[[noreturn]] void refuse_place(OpeningPlan::At at, const Wording& message, const Wording& hint) {
  refuse({kOpeningCode, "at", place_name(at), message, hint});
}

void require_parted(const Pattern& pattern, const OpeningPlan& plan,
                    const std::vector<EdgeOf>& edges) {
  const OpeningPlan::At at = plan.at;
  if (find_named(pattern.openings, place_name(at)) != nullptr) {
    refuse_place(at, "there is an opening already", "leave one of the two steps out");
  }
  for (const EdgeOf& edge : edges) {
    if (plan.with == Closure::Buttons || edge_at(pattern, edge).role != EdgeRole::Fold) continue;
    refuse_place(at, name_of(edge) + " lies on the fold of the cloth",
                 plan.at == CentreFront
                     ? "close it with \"buttons\", make a \"centre_seam\" of it first, or open "
                       "it at \"centre_back\" or \"left_side\""
                     : "open it at \"left_side\"");
  }
  if (edges.empty() || edges.size() > 2 || (at == LeftSide && edges.size() != 2)) {
    refuse_place(at, "there is no seam that runs from the upper to the lower edge",
                 "open it elsewhere, or cut the piece up otherwise");
  }
}

// Sewn, from the upper end.
double along_from_top(const Piece& piece, const Edge& edge, double down) {
  const bool runs_up = edge.path.start().y < edge.path.end().y;
  const double from_start = runs_up ? sewn_length(piece, edge) - down : down;
  return cut_from_closed(piece, edge, from_start);
}

double begin_of(const OpeningPlan& plan) {
  const double begin = plan.from_edge.value_or(plan.at == LeftSide ? kUnderUnderarm : kUnderEdge);
  if (begin < 0.0 || begin > kMostUnderEdge) {
    refuse({kOpeningCode, "from_edge", place_name(plan.at),
            "a zip that begins " + Length::mm(begin) + " below the edge is not meant",
            "write 0 to " + Length::mm(kMostUnderEdge)});
  }
  return begin;
}

double zip_for(OpeningPlan::At at, double length) {
  const auto* zip = std::ranges::find_if(kZipLengths, [&](double one) { return one >= length; });
  if (zip == kZipLengths.end()) {
    refuse_place(at, "the opening is " + Length::mm(length) + " long, and no zip is",
                 "open it elsewhere");
  }
  return *zip;
}

Opening opening_of(const Pattern& pattern, const OpeningPlan& plan,
                   const std::vector<EdgeOf>& edges) {
  const Piece& piece = pattern.piece(edges.front().piece);
  const double whole = sewn_length(piece, piece.edge(edges.front().edge));
  Opening opening{place_name(plan.at), edges, plan.with, begin_of(plan)};
  const double below = plan.with == Closure::OpenZip ? 0.0 : kOverHem;
  opening.length = whole - opening.from_edge - below;
  if (opening.length < kLeastOpening) {
    refuse_place(plan.at,
                 "its seam is " + Length::mm(whole) + " long, which leaves " +
                     Length::mm(std::max(opening.length, 0.0)) + " to open",
                 "open it where at least " + Length::mm(kLeastOpening) + " can open");
  }
  opening.zip = zip_for(plan.at, opening.length);
  return opening;
}

// The mate of a piece that is cut as a pair is its own mirror image.
void mark_end(Pattern& pattern, const Opening& opening) {
  for (std::size_t i = 0; i < opening.edges.size(); ++i) {
    const EdgeOf &at = opening.edges[i], &mate = opening.edges[opening.edges.size() - 1 - i];
    Piece& piece = *find_named(pattern.pieces, at.piece);
    const double along =
        along_from_top(piece, piece.edge(at.edge), opening.from_edge + opening.length);
    piece.notches.push_back({opening.name + kZipEnd, at.edge, along, 1, mate.piece, mate.edge});
  }
}

// The block opens at the centre back, whether or not a style does.
void close_others(Pattern& pattern, const std::vector<EdgeOf>& edges) {
  for (Piece& piece : pattern.pieces) {
    for (Edge& edge : piece.edges) {
      const bool opens = std::ranges::count(edges, EdgeOf{piece.name, edge.name}) > 0;
      const bool of_block = edge.role == EdgeRole::Opening && pattern.openings.empty();
      if (!opens && of_block) edge.role = EdgeRole::Seam;
    }
  }
}

double copies(const Piece& piece) { return piece.cut_on == CutOn::One ? 1.0 : 2.0; }

double girth_of(const Pattern& pattern, BlockEdge part) {
  double girth = 0.0;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      if (is_part(piece, edge.name, part)) girth += copies(piece) * sewn_length(piece, edge);
    }
  }
  return girth;
}

// Between its halves at front and back the neckline runs on along the straps.
double girth_of_straps(const Pattern& pattern) {
  double girth = 0.0;
  for (const EdgeOf& at : strap_edges(pattern)) {
    const Piece& piece = pattern.piece(at.piece);
    girth += copies(piece) * bound_length(piece, piece.edge(at.edge));
  }
  return girth;
}

// An edge that stays closed, and what passes through it.
struct ClosedEdge {
  const char* name;
  double girth, takes;
  const char* hint;

  [[nodiscard]] double lacks() const { return girth > 0.0 ? std::max(takes - girth, 0.0) : 0.0; }
};

// The edges that pass over the wearer when it is put on so.
using WayIn = std::vector<ClosedEdge>;

double lacks(const WayIn& way) {
  double sum = 0.0;
  for (const ClosedEdge& edge : way) sum += edge.lacks();
  return sum;
}

bool is_strapless(const Pattern& pattern) {
  return girth_of(pattern, BlockEdge::Shoulder) == 0.0 && !has_straps(pattern);
}

// A hook closes what little is above a zip.
bool parts_upper_edge(const Opening& opening, bool strapless) {
  if (opening.with == Closure::Buttons) return true;
  return opening.from_edge <= kUnderEdge && (strapless || opening.name != "left_side");
}

// What is closed of both edges; 0 where they part.
struct ClosedGirths {
  double upper = 0.0, lower = 0.0;
};

ClosedGirths closed_girths(const Pattern& pattern) {
  const bool strapless = is_strapless(pattern);
  const auto any = [&](auto&& is) { return std::ranges::any_of(pattern.openings, is); };
  ClosedGirths closed;
  if (!any([](const Opening& one) { return one.with != Closure::Zip; })) {
    closed.lower = girth_of(pattern, BlockEdge::Waist);
  }
  if (!any([&](const Opening& one) { return parts_upper_edge(one, strapless); })) {
    closed.upper = girth_of(pattern, BlockEdge::Neckline) + girth_of_straps(pattern);
    if (strapless) closed.upper += girth_of(pattern, BlockEdge::Armhole);
  }
  return closed;
}

double arms_of(const WearerSize& wearer) {
  return kFoldedArms * (kShouldersOfBust905 + kShouldersByBust * (wearer.bust - 905.0));
}

std::vector<WayIn> ways_in(const Pattern& pattern, const WearerSize& wearer) {
  constexpr const char* part_hem = "close it with \"open_zip\", so that the lower edge parts";
  constexpr const char* open_top =
      "let the zip begin at the edge, \"from_edge\": 0, or open it at the centre back";
  const ClosedGirths closed = closed_girths(pattern);
  const double arms = arms_of(wearer);
  const ClosedEdge hem{"hem", closed.lower, std::max(wearer.bust, arms), part_hem};
  if (!is_strapless(pattern)) {
    return {{hem,
             {"neckline", closed.upper, kHeadGirth,
              "open it at the centre back, from the edge on, or draw a wider neckline"}}};
  }
  return {{hem, {"top_edge", closed.upper, std::max(kHeadGirth, arms), open_top}},
          {{"hem", closed.lower, wearer.hip, part_hem},
           {"top_edge", closed.upper, std::max(wearer.hip, wearer.bust), open_top}}};
}

void warn_if_narrow(const ClosedEdge& edge, Problems& problems) {
  if (edge.lacks() <= 0.0) return;
  problems.push_back({Severity::Warning, "garment.get_in", edge.name,
                      "closed it is " + Length::mm(edge.girth) +
                          " round, and what passes through it when the garment is put on takes " +
                          Length::mm(edge.takes),
                      edge.hint});
}

void require_means(const OpeningPlan& plan) {
  if (plan.with == Closure::Buttons && plan.at != CentreFront) {
    refuse({kOpeningCode, "with", place_name(plan.at), "buttons close the centre front alone",
            "write \"at\": \"centre_front\", or close it with a zip"});
  }
  if (plan.with == Closure::Buttons || (!plan.button && !plan.spacing)) return;
  const char* key = plan.button ? "button" : "spacing";
  refuse({kOpeningCode, key, place_name(plan.at), "a zip has no buttons",
          "leave it out, or write \"with\": \"buttons\""});
}

MovedDarts zipped(const Pattern& pattern, const OpeningPlan& plan,
                  const std::vector<EdgeOf>& edges) {
  const Opening opening = opening_of(pattern, plan, edges);
  MovedDarts opened{pattern, {}};
  close_others(opened.pattern, edges);
  if (plan.at != LeftSide) {
    for (const EdgeOf& edge : edges) edge_at(opened.pattern, edge).role = EdgeRole::Opening;
  }
  if (plan.with == Closure::Zip) mark_end(opened.pattern, opening);
  opened.pattern.openings.push_back(opening);
  return opened;
}

MovedDarts buttoned(Pattern pattern, const OpeningPlan& plan, const std::vector<EdgeOf>& edges) {
  close_others(pattern, edges);
  return with_buttons(pattern, plan, edges, place_name(plan.at));
}

}  // namespace

MovedDarts with_opening(const Pattern& pattern, const OpeningPlan& plan) {
  require_means(plan);
  const std::vector<EdgeOf> edges = parted_edges(pattern, plan.at);
  require_parted(pattern, plan, edges);
  MovedDarts opened =
      plan.with == Closure::Buttons ? buttoned(pattern, plan, edges) : zipped(pattern, plan, edges);
  follow_garment(opened.pattern);
  for (Binding& one : opened.pattern.bindings) one.joined = join_of(opened.pattern, one.edges);
  return opened;
}

Problems getting_in(const Pattern& pattern, const WearerSize& wearer) {
  Problems problems;
  if (pattern.openings.empty()) return problems;
  const std::vector<WayIn> ways = ways_in(pattern, wearer);
  for (const ClosedEdge& edge : *std::ranges::min_element(ways, {}, lacks)) {
    warn_if_narrow(edge, problems);
  }
  return problems;
}

}  // namespace blockwright
