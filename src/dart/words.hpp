#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/opened.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// Throws InputError.
[[noreturn]] void refuse(const char* code, const std::string& where, const Wording& message,
                         const Wording& hint);

/// Whether one of the items has this name.
template <class Items>
bool has_name(const Items& items, std::string_view name) {
  return std::any_of(items.begin(), items.end(),
                     [&](const auto& item) { return item.name == name; });
}

/// `wish`, or with the first number behind it under which it is not taken.
template <class IsTaken>
std::string first_free(const std::string& wish, IsTaken&& is_taken) {
  std::string name = wish;
  for (int number = 2; is_taken(name); ++number) name = wish + "_" + std::to_string(number);
  return name;
}

/// "front.shoulder" taken apart; throws "dart.unknown" if there is no dot or no such piece.
struct PieceWords {
  std::size_t piece = 0;
  std::string name;
};
PieceWords piece_and_name(const Pattern& pattern, std::string_view words);

/// Throws "dart.unknown", naming the darts that there are.
DartSpot dart_named(const Opened& open, std::string_view name);

/// "side", "side:0.25", "side:60mm": a position and where on its edge.
struct PlaceWords {
  std::string name;
  std::optional<double> fraction;
  std::optional<double> distance;  ///< mm
};
/// Throws "dart.place".
PlaceWords place_words(std::string_view words);

/// The position, or throws "dart.unknown", naming the piece's positions.
const DartPosition& position_named(const Opened& open, std::string_view name);

/// The position whose edge the dart opens on; for a side dart in the lower half, the french one.
const DartPosition& position_of(const Opened& open, DartSpot spot);

/// "0.31": the place on the edge as a fraction in the trade's direction.
std::string fraction_text(const OpenEdge& edge, const DartPosition& position, double along);
/// From the trade's end of the edge to mm from the path's start, and back.
double from_trade_end(const DartPosition& position, double whole, double along);

}  // namespace blockwright
