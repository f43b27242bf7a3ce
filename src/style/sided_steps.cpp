#include "sided_steps.hpp"

#include "blockwright/pattern/sides.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>

namespace blockwright {
namespace {

// The places that a step names: "front.shoulder".
std::vector<std::string*> places_of(StyleStep& step) {
  return std::visit(
      [](auto& move) -> std::vector<std::string*> {
        using Move = std::decay_t<decltype(move)>;
        if constexpr (std::is_same_v<Move, PivotMove>) return {&move.dart, &move.to};
        if constexpr (std::is_same_v<Move, MergeMove>) return {&move.dart, &move.into};
        if constexpr (std::is_same_v<Move, SpreadMove>) return {&move.from, &move.to};
        if constexpr (std::is_same_v<Move, PanelSeam>) return {&move.from, &move.to};
        if constexpr (std::is_same_v<Move, SplitMove> || std::is_same_v<Move, PointMove> ||
                      std::is_same_v<Move, PressMove> || std::is_same_v<Move, GatherMove>) {
          return {&move.dart};
        }
      },
      step);
}

std::string piece_of(std::string_view place) {
  return std::string(place.substr(0, place.find('.')));
}

bool has_piece(const Pattern& pattern, const std::string& name) {
  return std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                     [&](const Piece& piece) { return piece.name == name; });
}

std::string on_side(const std::string& name, std::string_view ending) {
  return name + std::string(ending);
}

bool is_unfolded(const Pattern& pattern, const std::string& name) {
  return !has_piece(pattern, name) && has_piece(pattern, on_side(name, kRightEnding)) &&
         has_piece(pattern, on_side(name, kLeftEnding));
}

StyleStep step_on_side(const Pattern& pattern, StyleStep step, std::string_view ending) {
  for (std::string* place : places_of(step)) {
    const std::string piece = piece_of(*place);
    if (is_unfolded(pattern, piece)) place->insert(piece.size(), ending);
  }
  if (auto* seam = std::get_if<PanelSeam>(&step)) {
    for (std::string* panel : {&seam->centre_panel, &seam->side_panel}) {
      if (!panel->empty()) panel->append(ending);
    }
  }
  return step;
}

// A piece and those that lie beside it along the seams: the panels that it was cut into run one
// way.
std::set<std::string> side_by_side(const Pattern& pattern, const std::string& name) {
  std::set<std::string> names = {name};
  const auto is_among = [&](const EdgeOf& edge) { return names.contains(edge.piece); };
  std::size_t before = 0;
  while (before != names.size()) {
    before = names.size();
    for (const Seam& seam : pattern.seams) {
      for (const auto* side : {&seam.a, &seam.b}) {
        if (std::none_of(side->begin(), side->end(), is_among)) continue;
        for (const EdgeOf& edge : *side) names.insert(edge.piece);
      }
    }
  }
  return names;
}

}  // namespace

std::vector<StyleStep> steps_for_sides(const Pattern& pattern, const StyleStep& step) {
  StyleStep named = step;
  if (!is_unfolded(pattern, piece_of(*places_of(named).front()))) return {step};
  return {step_on_side(pattern, step, kRightEnding), step_on_side(pattern, step, kLeftEnding)};
}

MovedDarts done_as_drafted(const Pattern& pattern, const StyleStep& step,
                           const std::function<MovedDarts(const Pattern&)>& done) {
  StyleStep named = step;
  const std::string name = piece_of(*places_of(named).front());
  if (!has_piece(pattern, name) || !is_mirrored(pattern.piece(name))) return done(pattern);
  std::set<std::string> images = side_by_side(pattern, name);
  MovedDarts moved = done(with_mirrored(pattern, images));
  for (const Piece& piece : moved.pattern.pieces) {
    if (!has_piece(pattern, piece.name)) images.insert(piece.name);
  }
  moved.pattern = with_mirrored(std::move(moved.pattern), images);
  return moved;
}

}  // namespace blockwright
