#include "darts/turning.hpp"

#include "blockwright/geometry/path.hpp"

#include <algorithm>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kOnOutline = 1e-6;  // mm

bool has_dart(const Piece& piece, const std::string& name) {
  return std::any_of(piece.darts.begin(), piece.darts.end(),
                     [&](const Dart& dart) { return dart.name == name; });
}

// Where the receiving dart's legs stand before the move: on one place, where there was none yet.
std::array<Point, 2> receiving_legs(const Piece& before, const Path& outline, const Dart& opened,
                                    bool was_there) {
  if (was_there) return before.dart(opened.name).legs;
  const bool second_stayed = nearest(outline, opened.legs[1]).distance < kOnOutline;
  const Point place = opened.legs[second_stayed ? 1 : 0];
  return {place, place};
}

Path part_with_apex(const Path& outline, Point from, Point to, Point apex) {
  Path part = part_between(outline, nearest(outline, from).place, nearest(outline, to).place);
  append_line(part, apex);
  append_line(part, part.start());
  return part;
}

}  // namespace

Path TurningPart::turned() const { return placed(outline, Placement::turn(by, apex)); }

TurningPart turning_part(const Piece& before, const Piece& after, const std::string& closed,
                         const std::string& opened) {
  const Path outline = sewing_outline(before);
  const Dart& closing = before.dart(closed);
  const Dart& opening = after.dart(opened);
  const bool was_there = closed != opened && has_dart(before, opened);
  const auto legs = receiving_legs(before, outline, opening, was_there);
  const double had = was_there ? before.dart(opened).angle().radians() : 0.0;
  const Angle by = Angle::radians(opening.angle().radians() - had);
  if (nearest(outline, closing.legs[0]).along < nearest(outline, legs[0]).along) {
    return {part_with_apex(outline, closing.legs[1], legs[0], closing.apex), legs[0],
            closing.legs[0], -by, closing.apex};
  }
  return {part_with_apex(outline, legs[1], closing.legs[0], closing.apex), legs[1], closing.legs[1],
          by, closing.apex};
}

}  // namespace blockwright_pictures
