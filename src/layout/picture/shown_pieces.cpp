#include "shown_pieces.hpp"

#include "blockwright/pattern/pattern.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

// Beside so many that changed one that did not is left out.
constexpr std::ptrdiff_t kEnoughChanged = 2;

void put_halves_in_place(std::vector<ShownChange>& shown) {
  const auto middle = [](const ShownChange& half) { return half.box.left + half.box.right; };
  for (std::size_t i = 0; i + 1 < shown.size(); ++i) {
    const bool halves = shown[i].whole == shown[i + 1].whole;
    if (halves && middle(shown[i]) > middle(shown[i + 1])) std::swap(shown[i], shown[i + 1]);
  }
}

bool changed_on(const std::string& side, const std::vector<ShownChange>& all) {
  return std::ranges::any_of(
      all, [&](const ShownChange& piece) { return piece.changed && piece.side == side; });
}

/// Of two unchanged halves the one stays that is on the side of what changed, or the right one.
bool is_left_out(const ShownChange& piece, const std::vector<ShownChange>& all) {
  if (piece.changed) return false;
  if (std::ranges::count(all, true, &ShownChange::changed) >= kEnoughChanged) return true;
  const auto twin = std::ranges::find_if(all, [&](const ShownChange& other) {
    return other.whole == piece.whole && other.side != piece.side;
  });
  if (twin == all.end()) return false;
  if (twin->changed || changed_on(twin->side, all)) return true;
  return !changed_on(piece.side, all) && piece.side == kLeftEnding;
}

}  // namespace

ShownPieces shown_pieces(const ChangePage& page) {
  std::vector<ShownChange> all = shown_changes(page);
  put_halves_in_place(all);
  ShownPieces pieces;
  for (const ShownChange& piece : all) {
    if (is_left_out(piece, all)) {
      pieces.left_out.push_back(piece.name);
    } else {
      pieces.shown.push_back(piece);
    }
  }
  return pieces;
}

std::vector<std::size_t> begins_of_pieces(const std::vector<ShownChange>& shown) {
  std::vector<std::size_t> begins;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    if (i == 0 || shown[i].whole != shown[i - 1].whole) begins.push_back(i);
  }
  begins.push_back(shown.size());
  return begins;
}

}  // namespace blockwright
