#include "words.hpp"

#include "blockwright/base/number_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kMmPerCm = 10.0;

template <class Items, class Name>
std::string names_of(const Items& items, Name&& name) {
  std::string text;
  for (const auto& item : items) {
    const std::string one(name(item));
    if (!one.empty()) text += (text.empty() ? "" : ", ") + one;
  }
  return text;
}

// A panel may keep its piece's name, but not all of its edges.
bool has_edge_of(const Opened& open, const DartPosition& position) {
  return find_edge(open, position.edge).has_value();
}

std::string positions_of(const Opened& open) {
  if (!is_whole(open.piece)) return {};
  return names_of(open.piece.kind->dart_positions, [&](const DartPosition& p) {
    return has_edge_of(open, p) ? open.piece.name + "." + std::string(p.name) : std::string();
  });
}

std::string dart_names(const Opened& open) {
  std::string text;
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      text += (text.empty() ? "" : ", ") + open.piece.name + "." + dart.name;
    }
  }
  return text.empty() ? "none" : text;
}

[[noreturn]] void refuse_place(std::string_view words) {
  refuse("dart.place", std::string(words), "the place on the edge is not a number",
         "write a fraction from 0 to 1, \"side:0.25\", or a distance, \"side:60mm\", \"side:6cm\", "
         "\"side:2.5in\"");
}

// The number at the head of `text`, and what follows it.
std::pair<double, std::string_view> number_and_rest(std::string_view text, std::string_view words) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || !std::isfinite(value)) refuse_place(words);
  return {value, text.substr(static_cast<std::size_t>(end - text.data()))};
}

}  // namespace

void refuse(const char* code, const std::string& where, const Wording& message,
            const Wording& hint) {
  throw InputError({Severity::Error, code, where, message, hint});
}

PieceWords piece_and_name(const Pattern& pattern, std::string_view words) {
  const std::size_t dot = words.find('.');
  const std::string_view name = words.substr(0, dot);
  for (std::size_t i = 0; dot != std::string_view::npos && i < pattern.pieces.size(); ++i) {
    if (pattern.pieces[i].name == name) return {i, std::string(words.substr(dot + 1))};
  }
  refuse("dart.unknown", std::string(words), "the pattern has no piece of that name",
         "name the piece, a dot and the dart or place; the pieces are: " +
             names_of(pattern.pieces, [](const Piece& p) { return p.name; }));
}

DartSpot dart_named(const Opened& open, std::string_view name) {
  if (const auto spot = find_dart(open, name)) return *spot;
  refuse("dart.unknown", open.piece.name + "." + std::string(name), "there is no such dart",
         "its darts are: " + dart_names(open));
}

PlaceWords place_words(std::string_view words) {
  const std::size_t colon = words.find(':');
  PlaceWords place;
  place.name = std::string(words.substr(0, colon));
  if (colon == std::string_view::npos) return place;
  const auto [value, unit] = number_and_rest(words.substr(colon + 1), words);
  if (unit.empty()) {
    place.fraction = value;
  } else if (unit == "mm") {
    place.distance = value;
  } else if (unit == "cm") {
    place.distance = kMmPerCm * value;
  } else if (unit == "in") {
    place.distance = kMmPerInch * value;
  } else {
    refuse_place(words);
  }
  return place;
}

const DartPosition& position_named(const Opened& open, std::string_view name) {
  const DartPosition* position = find_position(open.piece, name);
  if (position != nullptr && has_edge_of(open, *position)) return *position;
  const std::string known = positions_of(open);
  refuse("dart.unknown", open.piece.name + "." + std::string(name),
         "there is no such place for a dart",
         known.empty() ? "no dart can be moved on a panel; move darts before the piece is cut up"
                       : "places are: " + known);
}

const DartPosition& position_of(const Opened& open, DartSpot spot) {
  const OpenEdge& edge = open.edges[spot.edge];
  const double low = closed_along(edge, spot.dart + 1, 0.0);
  if (is_whole(open.piece) && low < 0.5 * closed_length(edge)) {
    for (const DartPosition& position : kind_of(open.piece).dart_positions) {
      if (position.edge == edge.name && position.usual == UsualPlace::OverWaist) return position;
    }
  }
  return position_named(open, edge.name);
}

double from_trade_end(const DartPosition& position, double whole, double along) {
  return position.from_path_end ? whole - along : along;
}

std::string fraction_text(const OpenEdge& edge, const DartPosition& position, double along) {
  const double whole = closed_length(edge);
  return fixed(from_trade_end(position, whole, along) / whole, 2);
}

}  // namespace blockwright
