#include "blockwright/dart/top_edge.hpp"

#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/geometry/solve.hpp"
#include "drawn_edges.hpp"
#include "drawn_top.hpp"
#include "moving.hpp"
#include "straps.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kTopEdge = "top edge";

// --- closer --------------------------------------------------------------------------------------

// Common practice, no source: 1 cm of a sweetheart and of a strapless front.
double usual_top_closer(const TopEdgeDesign& design) {
  constexpr double level = 5.0, hollow = 8.0, over_bust = 10.0;
  if (!design.straps || design.shape == TopShape::Sweetheart) return over_bust;
  return design.shape == TopShape::Straight ? level : hollow;
}

// The edges that are cut away closed over themselves next to the centre, by an angle at the dart's
// apex, and the dart opened by it: what lies under the new edge turns in one.
Top turned_top(Top top, const Dart& into, Angle by) {
  constexpr double next_to_centre = 0.98;
  Opened& open = top.open;
  const std::string wedge = free_name(open, "top_wedge");
  const OpenEdge& neckline = open.edges[top.neckline()];
  const std::size_t last = neckline.stretches.size() - 1;
  slit(open, {top.neckline(), last, next_to_centre * length(neckline.stretches[last])}, into.apex,
       wedge);
  hand_over(open, wedge, into.name, by);
  if (const auto closed = find_dart(open, wedge)) join(open, *closed);
  return top;
}

// A front with its edge `closer` mm shorter than as cut flat.
DrawnTop drawn_closer(const DrawnTop& flat, const TopEdgeDesign& design, const Dart& into) {
  constexpr Bounds turns{0.0, 0.35};  // rad
  constexpr double accuracy = 1e-9;   // rad
  const double wanted = length(flat.line.path) - design.closer.value_or(usual_top_closer(design));
  const auto turned = [&](double by) {
    return drawn_front(turned_top(flat.top, into, Angle::radians(by)), design);
  };
  const auto too_long = [&](double by) { return length(turned(by).line.path) - wanted; };
  return turned(solve_between(too_long, turns, accuracy));
}

// --- one front and one back ----------------------------------------------------------------------

// A front as it is drawn, and the dart that took up what its edge lost.
struct CloseFront {
  DrawnTop drawn;
  double closer = 0.0;
  std::optional<Dart> into;
};

// By how much `down` of this piece is more than the mean of its kind's: the two halves of a body
// whose sides differ meet at the centre.
template <class Down>
double under_mean(const Pattern& pattern, const Piece& piece, Down&& down) {
  const std::vector<std::size_t> all = pieces_of(pattern, kind_of(piece));
  double sum = 0.0;
  for (const std::size_t i : all) sum += down(top_of(as_drafted(pattern.pieces[i])));
  return down(top_of(as_drafted(piece))) - sum / static_cast<double>(all.size());
}

TopEdgeDesign level_in_front(const Pattern& pattern, const Piece& front,
                             const TopEdgeDesign& design) {
  const auto down = [&](const Top& top) { return down_centre_front(top, design); };
  const double lower = under_mean(pattern, front, down);
  if (lower == 0.0) return design;
  TopEdgeDesign level = design;
  level.over_bust_level = over_bust_level(top_of(as_drafted(front)), design) + lower;
  level.centre_share.reset();
  return level;
}

TopEdgeDesign level_at_back(const Pattern& pattern, const Piece& back,
                            const TopEdgeDesign& design) {
  TopEdgeDesign level = design;
  level.back_depth -=
      under_mean(pattern, back, [&](const Top& top) { return down_centre_back(top, design); });
  return level;
}

CloseFront close_front(const Pattern& pattern, const Piece& one, const TopEdgeDesign& asked) {
  const TopEdgeDesign design = level_in_front(pattern, one, asked);
  const Piece piece = as_drafted(one);
  CloseFront front{drawn_front(top_of(piece), design),
                   design.closer.value_or(usual_top_closer(design)), std::nullopt};
  require_bounded(kTopEdgeCode, piece.name,
                  {"closer", "what its edge is drawn shorter by", front.closer, kMostCloser,
                   "more draws in the chest"});
  if (const Dart* into = widest_dart_about(front.drawn.top.open, apex_point(piece)))
    front.into = *into;
  if (front.closer > 0.0 && front.into) {
    front.drawn = drawn_closer(front.drawn, design, *front.into);
  }
  return front;
}

DrawnTop drawn_back_of(const Pattern& pattern, const Piece& back, const TopEdgeDesign& design) {
  const Piece& front = pattern.pieces[mate_of(pattern, back, kBodiceFront)];
  const CloseFront mate = close_front(pattern, front, design);
  return drawn_back(top_of(as_drafted(back)), level_at_back(pattern, back, design),
                    strap_off_centre(mate.drawn.span));
}

// --- the pieces ----------------------------------------------------------------------------------

// A point of what is cut away is none of the piece any more.
void drop_cut_landmarks(const Path& was, Piece& piece, const Path& is) {
  constexpr double on_line = 0.01;
  const auto is_on = [&](const Path& outline, Point at) {
    return contains(outline, at, on_line) || nearest(outline, at).distance <= on_line;
  };
  std::erase_if(piece.landmarks, [&](const Landmark& landmark) {
    return is_on(was, landmark.at) && !is_on(is, landmark.at);
  });
}

// Where the strap is set.
void mark_strap(Opened& open) {
  const auto end = find_edge(open, kStrapEnd);
  if (!end) return;
  const double middle = 0.5 * closed_length(open.edges[*end]);
  open.piece.notches.push_back(
      {"strap", std::string(kStrapEnd), 0.0, kind_of(open.piece).notch_count, {}, {}});
  open.notches.push_back(anchor_at(open, *end, middle));
}

void require_darts_under(const Opened& open, const Path& outline) {
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      if (contains(outline, dart.point, 0.01)) continue;
      refuse(kTopEdgeCode, open.piece.name,
             "the dart " + dart.name + " would reach over the top edge",
             "draw the edge higher, or hold the dart back more before it");
    }
  }
}

// How far the new edges stand over the armhole that is cut away, in mm.
double over_armhole(const DrawnTop& drawn, const Opened& open) {
  constexpr double every = 5.0;
  const Path was = flat_outline(put_together(drawn.top.open));
  double most = 0.0;
  for (const OpenEdge& edge : open.edges) {
    if (edge.role != EdgeRole::FreeEdge) continue;
    for (const Path& stretch : edge.stretches) {
      for (double at = 0.0; at < length(stretch); at += every) {
        const Point point = point_at_length(stretch, at);
        if (!contains(was, point, 0.01)) most = std::max(most, nearest(was, point).distance);
      }
    }
  }
  return most;
}

void judge_over_armhole(const DrawnTop& drawn, const Opened& open, Problems& remarks) {
  const double over = over_armhole(drawn, open);
  if (over <= kMostRaised + kLengthAccuracy) return;
  remarks.push_back({Severity::Warning, kTopEdgeCode, drawn.top.piece(),
                     "its top edge stands " + Length::mm(over) +
                         " over the armhole of the block; more than " + Length::mm(kMostRaised) +
                         " cuts into the arm",
                     "draw it lower over the bust, or try it on a toile"});
}

Opened put_in_line(const DrawnTop& drawn) {
  Opened open = cut_away(drawn.top, drawn.cut, drawn.closed.edges_of(drawn.line));
  for (const Dart& dart : drawn.closed.darts().crossed) set_peak(open, dart.name);
  const Path was = flat_outline(put_together(drawn.top.open));
  const Path is = flat_outline(put_together(open));
  require_darts_under(open, is);
  mark_strap(open);
  drop_cut_landmarks(was, open.piece, is);
  trim_lines(is, open.piece.balance_lines);
  return open;
}

void tell_of_darts(const DrawnTop& drawn, Problems& remarks) {
  for (const std::string& gone : drawn.closed.darts().gone) {
    remarks.push_back(
        {Severity::Note, kTopEdgeCode, drawn.top.piece(),
         "the dart " + gone + " lies over the top edge and goes with what is cut away", ""});
  }
  if (drawn.moved_out == 0.0) return;
  remarks.push_back({Severity::Note, kTopEdgeCode, drawn.top.piece(),
                     "its strap is set " + Length::mm(drawn.moved_out) +
                         " further out, beside the dart that ends there",
                     "to have it over the bust point move the dart elsewhere first"});
}

void put_top_in(MovedDarts& all, std::size_t i, const Opened& open) {
  const bool image = is_mirrored(all.pattern.pieces[i]);
  all = finished(all.pattern, {i, kTopEdge, open.piece.name}, open, std::move(all.remarks));
  Piece& piece = all.pattern.pieces[i];
  if (is_a(piece, kBodiceFront)) {
    for (const char* name : {"armhole", "neckline"}) {
      const Edge* edge = find_named(piece.edges, name);
      if (edge != nullptr) judge_off_bust(kTopEdgeCode, piece, *edge, all.remarks);
    }
  }
  if (image) piece = mirrored(piece);
}

// One for each side of a body whose sides differ.
void add_straps(const Pattern& block, const TopEdgeDesign& design, Pattern& made) {
  const std::vector<std::size_t> fronts = pieces_of(block, kBodiceFront);
  const std::vector<std::size_t> backs = pieces_of(block, kBodiceBack);
  for (const std::size_t i : backs.size() > fronts.size() ? backs : fronts) {
    const Piece& piece = block.pieces[i];
    const Piece& front = block.pieces[mate_of(block, piece, kBodiceFront)];
    const Piece& back = block.pieces[mate_of(block, piece, kBodiceBack)];
    const CloseFront close = close_front(block, front, design);
    made.pieces.push_back(strap_piece(*design.straps,
                                      {close.drawn, drawn_back_of(block, back, design)},
                                      sided_name(piece.name).side));
  }
}

bool is_there(const Pattern& pattern, const std::vector<EdgeOf>& side) {
  return std::ranges::all_of(side, [&](const EdgeOf& edge) {
    return find_named(pattern.piece(edge.piece).edges, edge.edge) != nullptr;
  });
}

void drop_cut_seams(Pattern& pattern) {
  std::erase_if(pattern.seams, [&](const Seam& seam) {
    return !is_there(pattern, seam.a) || !is_there(pattern, seam.b);
  });
}

}  // namespace

MovedDarts draw_top_edge(const Pattern& pattern, const TopEdgeDesign& design) {
  require_top_design(design);
  require_whole_bodice(pattern, kTopEdgeCode, kTopEdge);
  MovedDarts all{pattern, {}};
  for (const std::size_t i : pieces_of(pattern, kBodiceFront)) {
    const CloseFront front = close_front(pattern, pattern.pieces[i], design);
    Opened open = put_in_line(front.drawn);
    tell_of_darts(front.drawn, all.remarks);
    judge_over_armhole(front.drawn, open, all.remarks);
    if (front.closer > 0.0) {
      if (front.into) set_peak(open, front.into->name);
      all.remarks.push_back(
          told_closer(kTopEdgeCode, pattern.pieces[i].name,
                      {"top edge", front.closer, front.into ? &*front.into : nullptr}));
    }
    put_top_in(all, i, open);
  }
  for (const std::size_t i : pieces_of(pattern, kBodiceBack)) {
    const DrawnTop back = drawn_back_of(pattern, pattern.pieces[i], design);
    tell_of_darts(back, all.remarks);
    put_top_in(all, i, put_in_line(back));
  }
  drop_cut_seams(all.pattern);
  drop_lone_notches(all.pattern);
  if (design.straps) add_straps(pattern, design, all.pattern);
  return all;
}

}  // namespace blockwright
