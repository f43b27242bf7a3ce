#include "words.hpp"

#include "blockwright/base/printable.hpp"

#include <charconv>
#include <cmath>

namespace blockwright {
namespace {

template <class Items>
std::string names_of(const Items& items, const std::string& piece = {}) {
  std::string text;
  for (const auto& item : items) {
    text += (text.empty() ? "" : ", ") + piece + std::string(item.name);
  }
  return text;
}

// A panel may keep its piece's name, but not all of its edges.
bool has_edge_of(const Opened& open, const DartPosition& position) {
  return find_edge(open, position.edge).has_value();
}

}  // namespace

void refuse(const char* code, const std::string& where, const Wording& message, const Wording& hint,
            const char* key) {
  Problem problem{Severity::Error, code, shown(where), message, hint};
  if (key != nullptr) problem.options = {key};
  throw InputError(problem);
}

void require_within(Limits limits, const Amount& amount, const std::string& where) {
  if (amount.mm >= limits.least && amount.mm <= limits.most) return;
  refuse("dart.place", where,
         std::string(amount.what) + " of " + Length::mm(amount.mm) + " is out of range",
         "use " + Length::mm(limits.least) + " to " + Length::mm(limits.most), amount.key);
}

PieceWords piece_and_name(const Pattern& pattern, const std::string& words) {
  const std::size_t dot = words.find('.');
  const Piece* piece = find_named(pattern.pieces, words.substr(0, dot));
  if (dot != std::string::npos && piece != nullptr) {
    return {static_cast<std::size_t>(piece - pattern.pieces.data()), words.substr(dot + 1), words};
  }
  refuse(
      "dart.unknown", words, "the pattern has no piece of that name",
      "name the piece, a dot and the dart or place; the pieces are: " + names_of(pattern.pieces));
}

DartSpot dart_named(const Opened& open, std::string_view name) {
  if (const auto spot = find_dart(open, name)) return *spot;
  const std::string known = names_of(put_together(open).darts, open.piece.name + ".");
  refuse("dart.unknown", open.piece.name + "." + std::string(name), "there is no such dart",
         "its darts are: " + (known.empty() ? "none" : known));
}

PlaceWords place_words(std::string_view words) {
  constexpr std::pair<std::string_view, double> units[] = {{"mm", 1.0}, {"cm", 10.0}, {"in", 25.4}};
  const std::size_t colon = words.find(':');
  PlaceWords place;
  place.name = std::string(words.substr(0, colon));
  if (colon == std::string_view::npos) return place;
  double value = 0.0;
  const char* const last = words.data() + words.size();
  const auto [end, error] = std::from_chars(words.data() + colon + 1, last, value);
  const std::string_view unit(end, last);
  const auto* known = first_where(units, [&](const auto& row) { return row.first == unit; });
  if (error != std::errc() || !std::isfinite(value) || (known == nullptr && !unit.empty())) {
    refuse(
        "dart.place", std::string(words), "the place on the edge is not a number",
        "write a fraction from 0 to 1, \"side:0.25\", or a distance, \"side:60mm\", \"side:6cm\", "
        "\"side:2.5in\"");
  }
  if (unit.empty()) place.fraction = value;
  if (known != nullptr) place.distance = known->second * value;
  return place;
}

const DartPosition& position_named(const Opened& open, std::string_view name) {
  const DartPosition* position = find_position(open.piece, name);
  if (position != nullptr && has_edge_of(open, *position)) return *position;
  std::vector<DartPosition> known;
  for (const DartPosition& row : kind_of(open.piece).dart_positions) {
    if (is_whole(open.piece) && has_edge_of(open, row)) known.push_back(row);
  }
  refuse("dart.unknown", open.piece.name + "." + std::string(name),
         "there is no such place for a dart",
         known.empty() ? "no dart can be moved on a panel; move darts before the piece is cut up"
                       : "places are: " + names_of(known, open.piece.name + "."));
}

const DartPosition& position_of(const Opened& open, DartSpot spot) {
  const OpenEdge& edge = open.edges[spot.edge];
  if (is_whole(open.piece) && mouth_along(edge, spot.dart) < 0.5 * closed_length(edge)) {
    for (const DartPosition& position : kind_of(open.piece).dart_positions) {
      if (position.edge == edge.part_name() && position.usual == UsualPlace::OverWaist)
        return position;
    }
  }
  return position_named(open, edge.part_name());
}

bool is_off_corners(const OpenEdge& edge, double along) {
  return along >= kFromCorner && along <= closed_length(edge) - kFromCorner;
}

double from_trade_end(const DartPosition& position, double whole, double along) {
  return position.from_path_end ? whole - along : along;
}

}  // namespace blockwright
