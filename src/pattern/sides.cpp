#include "blockwright/pattern/pattern.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

Path mirror_image(const Path& path) { return reversed(placed(path, Placement::mirror())); }

Dart mirror_image(Dart dart) {
  dart = placed(dart, Placement::mirror());
  std::swap(dart.legs[0], dart.legs[1]);
  dart.pressed_to = dart.pressed_to == Leg::First ? Leg::Second : Leg::First;
  return dart;
}

Segment mirror_image(const Segment& line) {
  return {Placement::mirror()(line.a), Placement::mirror()(line.b)};
}

ButtonStand mirror_image(ButtonStand stand) {
  stand.centre = mirror_image(stand.centre);
  for (Point& button : stand.buttons) button = Placement::mirror()(button);
  for (Segment& hole : stand.buttonholes) hole = mirror_image(hole);
  return stand;
}

bool is_on(const std::vector<EdgeOf>& side, const std::set<std::string>& names) {
  return !side.empty() && names.contains(side.front().piece);
}

}  // namespace

SidedName sided_name(std::string_view name) {
  for (const std::string_view ending : {kRightEnding, kLeftEnding}) {
    if (!name.ends_with(ending)) continue;
    const std::size_t whole = name.size() - ending.size();
    return {name.substr(0, whole), name.substr(whole)};
  }
  return {name, {}};
}

bool is_mirrored(const Piece& piece) {
  double sum = 0.0;
  for (const Edge& edge : piece.edges) sum += edge.path.start().x;
  return sum < 0.0;
}

Piece mirrored(const Piece& piece) {
  const Placement mirror = Placement::mirror();
  Piece other = piece;
  std::reverse(other.edges.begin(), other.edges.end());
  for (Edge& edge : other.edges) edge.path = mirror_image(edge.path);
  for (Dart& dart : other.darts) dart = mirror_image(dart);
  const auto from_end = [&](const std::string& edge, double along) {
    return std::max(0.0, length(piece.edge(edge).path) - along);
  };
  for (Notch& notch : other.notches) notch.along = from_end(notch.edge, notch.along);
  for (Fullness& fullness : other.fullness) {
    fullness.from = from_end(fullness.edge, fullness.from);
    fullness.to = from_end(fullness.edge, fullness.to);
    std::swap(fullness.from, fullness.to);
  }
  for (BalanceLine& line : other.balance_lines) line.path = placed(line.path, mirror);
  for (Landmark& landmark : other.landmarks) landmark.at = mirror(landmark.at);
  other.grainline = mirror_image(piece.grainline);
  if (piece.stand) other.stand = mirror_image(*piece.stand);
  return other;
}

Pattern with_mirrored(Pattern pattern, const std::set<std::string>& names) {
  for (Piece& piece : pattern.pieces) {
    if (names.contains(piece.name)) piece = mirrored(piece);
  }
  for (Seam& seam : pattern.seams) {
    const bool a = is_on(seam.a, names), b = is_on(seam.b, names);
    if (a) std::reverse(seam.a.begin(), seam.a.end());
    if (b) std::reverse(seam.b.begin(), seam.b.end());
    if (a != b) seam.b_runs_back = !seam.b_runs_back;
  }
  return pattern;
}

}  // namespace blockwright
