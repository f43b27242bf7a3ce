#include "blockwright/block/kinds.hpp"
#include "blockwright/style/style.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// An underarm that has moved by less against the bust line has stayed, in mm.
constexpr double kStayed = 0.01;

// How long the side of a front is, and how far down it from the underarm its notch lies, level with
// the bust line.
struct SideOf {
  double whole = 0.0, to_notch = 0.0;
};

SideOf side_of(const Piece& front) {
  const Edge& side = part_of(front, BlockEdge::Side);
  const auto notch = std::ranges::find(front.notches, side.name, &Notch::edge);
  const double whole = sewn_length(front, side);
  const double along = notch == front.notches.end() ? 0.0 : notch->along;
  return {whole, is_mirrored(front) ? along : whole - along};
}

double place_between(const SideOf& drafted, const SideOf& fitted) {
  const double stays = usual_side_place(drafted.whole) + fitted.to_notch - drafted.to_notch;
  const double least = std::fmin(kLeastUnderUnderarm, 0.5 * fitted.whole);
  return std::clamp(stays, least, fitted.whole - least);
}

}  // namespace

SidePlaces side_places(const BlockVersions& block) {
  SidePlaces places;
  const SideOf drafted = side_of(piece_of(block.drafted, kBodiceFront));
  for (const Piece& piece : block.fitted.pieces) {
    if (!is_a(piece, kBodiceFront)) continue;
    const SideOf fitted = side_of(piece);
    if (std::abs(fitted.to_notch - drafted.to_notch) < kStayed) continue;
    places[piece.name] = place_between(drafted, fitted);
  }
  return places;
}

}  // namespace blockwright
