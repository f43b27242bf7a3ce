#include "blockwright/dart/one_dart.hpp"

#include "blockwright/block/kinds.hpp"
#include "moving.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace blockwright {
namespace {

constexpr double kOneApex = 1e-6;  // mm

bool is_about(const Dart& dart, Point apex) { return distance(dart.apex, apex) <= kOneApex; }

// The dart that takes the others up; nothing where it is still to be opened.
const Dart* receiving(const Piece& piece, const PlaceWords& into) {
  const bool place_asked = into.fraction || into.distance;
  return place_asked ? nullptr : find_named(piece.darts, into.name);
}

// The bust point or the blade point; null on a panel that has not got it.
const Landmark* apex_mark(const Piece& piece) {
  const auto is_apex = [](const KindLandmark& row) { return row.on == PointOn::Apex; };
  const KindLandmark* row = first_where(kind_of(piece).landmarks, is_apex);
  return row == nullptr ? nullptr : find_named(piece.landmarks, row->name);
}

// What the darts turn about; nothing where it is no point of the piece. Throws "dart.unknown" on a
// panel, and for a place that the piece has not got.
std::optional<Point> apex_of(const Piece& piece, const PlaceWords& into) {
  const Opened open = opened(piece);
  if (const Dart* dart = receiving(piece, into)) {
    (void)position_of(open, dart_named(open, dart->name));
    return dart->apex;
  }
  (void)position_named(open, into.name);
  const Landmark* mark = apex_mark(piece);
  return mark == nullptr ? std::nullopt : std::optional(mark->at);
}

std::vector<std::string> names_about(const Piece& piece, Point apex) {
  std::vector<std::string> names;
  for (const Dart& dart : piece.darts) {
    if (is_about(dart, apex)) names.push_back(dart.name);
  }
  return names;
}

// The nearest dart on the edge of `dart` that may be merged with it; nothing if there is none.
std::optional<std::string> neighbour(const Piece& piece, const Dart& dart) {
  const Opened open = opened(piece);
  const DartSpot spot = dart_named(open, dart.name);
  const OpenEdge& edge = open.edges[spot.edge];
  const Landmark* mark = apex_mark(piece);
  std::optional<std::string> nearest;
  double least = 0.0;
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const bool beside = d + 1 == spot.dart || d == spot.dart + 1;
    if (!beside || (mark != nullptr && is_about(edge.darts[d], mark->at))) continue;
    const double off = std::abs(mouth_along(edge, d) - mouth_along(edge, spot.dart));
    if (nearest && off >= least) continue;
    nearest = edge.darts[d].name;
    least = off;
  }
  return nearest;
}

// After one move comes the next: how wide a dart is matters only in the end.
void go_on(MovedDarts& all, MovedDarts next) {
  std::erase_if(all.remarks, [](const Problem& remark) {
    return remark.code == "dart.wide" || remark.code == "dart.narrow";
  });
  all.pattern = std::move(next.pattern);
  std::ranges::move(next.remarks, std::back_inserter(all.remarks));
}

// A dart about the bust point that took up the one beside it may point off it.
void warn_if_off(Point bust, const Piece& piece, const Dart& dart, Problems& remarks) {
  const double off = distance(dart.apex, bust);
  if (off <= kMostOffBust) return;
  remarks.push_back(
      {Severity::Warning, "dart.off_bust", piece.name + "." + dart.name,
       "as it took up the dart beside it, it points " + Length::mm(off) + " off the bust point",
       "to point it at the bust point pivot the other darts into it, and leave the "
       "dart beside it as a second one"});
}

}  // namespace

MovedDarts one_dart(const Pattern& pattern, const OneDart& move, double cup) {
  const PieceWords words = piece_and_name(pattern, move.into);
  const PlaceWords into = place_words(words.name);
  MovedDarts all{pattern, {}};
  const auto piece = [&]() -> const Piece& { return all.pattern.pieces[words.piece]; };
  const std::optional<Point> apex = apex_of(piece(), into);
  const Dart* there = receiving(piece(), into);
  const std::string stays = there == nullptr ? "" : there->name;
  const auto about = apex ? names_about(piece(), *apex) : std::vector<std::string>{};
  if (about.empty()) {
    refuse("dart.unknown", move.into, "no dart of this piece can be moved there",
           "name one of its darts");
  }
  for (const std::string& other : about) {
    if (other == stays) continue;
    PivotMove turn{.dart = piece().name + "." + other, .to = move.into};
    turn.side_place = move.side_place;
    go_on(all, pivot(all.pattern, turn, cup));
  }
  const std::string one = names_about(piece(), *apex).front();
  while (const auto beside = neighbour(piece(), piece().dart(one))) {
    go_on(all, merge(all.pattern, {piece().name + "." + *beside, piece().name + "." + one}, cup));
  }
  const Landmark* bust = find_landmark(piece(), PointUse::Marked);
  if (bust != nullptr && distance(*apex, bust->at) <= kOneApex) {
    warn_if_off(bust->at, piece(), piece().dart(one), all.remarks);
  }
  return all;
}

}  // namespace blockwright
