#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/opened.hpp"
#include "blockwright/dart/pivot.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// Throws InputError. `key` names the value of the move that is wrong, where it is neither dart nor
/// place: "part".
[[noreturn]] void refuse(const char* code, const std::string& where, const Wording& message,
                         const Wording& hint, const char* key = nullptr);

/// Refuses ("dart.place") an amount in mm that is not within its limits.
struct Limits {
  double least, most;
};
struct Amount {
  const char* key;   ///< "by"
  const char* what;  ///< "a spread"
  double mm;
};
void require_within(Limits limits, const Amount& amount, const std::string& where);

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
  std::string words;  ///< both
};
PieceWords piece_and_name(const Pattern& pattern, const std::string& words);

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

/// True of a place of the closed edge that is kFromCorner off both of its ends.
bool is_off_corners(const OpenEdge& edge, double along);
/// From the trade's end of the edge to mm from the path's start, and back.
double from_trade_end(const DartPosition& position, double whole, double along);

}  // namespace blockwright
