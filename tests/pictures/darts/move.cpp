#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"
#include "darts/turning.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr Point kOnCentre{0.0, 60.0};  // a place on the centre front below any dart

std::string size_of(const Dart& dart) {
  return degrees(dart.angle()) + ", mouth " + cm(dart.intake()) + ", leg " + cm(dart.leg());
}

// A move as it is drawn: the pieces to show have their darts trued.
struct Move {
  Piece before, after;
  TurningPart part;
  std::string before_size, after_size;
};

Move made(const Person& person, const MovePicture& move) {
  const std::string piece = move.piece;
  const PivotMove pivot{piece + '.' + move.dart, piece + '.' + move.to, move.part, {}, {}};
  const Pattern moved = after(person, {pivot});
  const Piece& before = person.block.piece(piece);
  const Piece& result = moved.piece(piece);
  return {true_darts(person.block).pattern.piece(piece), true_darts(moved).pattern.piece(piece),
          turning_part(before, result, move.dart, move.opened), size_of(before.dart(move.dart)),
          size_of(result.dart(move.opened))};
}

void draw_before(Diagram& d, const Sketch& s, const Move& move) {
  s.hatch(move.part.outline);
  s.piece(move.before, Look::New);
  s.line(move.part.apex, move.part.place, Look::Compass);
  head(d, 0, "Before", move.before_size + "\ndashed: cut; hatched: what turns");
}

void draw_after(Diagram& d, const Sketch& s, const Move& move) {
  const Angle by = move.part.by;
  s.hatch(move.part.turned(), by);
  s.line(move.part.apex, move.part.closed_at, Look::Guide);
  s.piece(move.after, Look::New);
  head(d, 1, "After",
       move.after_size + "\nthe hatched part has turned by " +
           degrees(by.radians() < 0.0 ? -by : by));
}

void draw_overlay(Diagram& d, const Sketch& s, const Move& move) {
  s.piece(move.before, Look::Compass);
  s.piece(move.after, Look::New);
  head(d, 2, "Overlay", "dashed: before");
}

}  // namespace

void draw_move(Diagram& d, const Person& person, const MovePicture& picture) {
  const Move move = made(person, picture);
  const Box box = box_about({&move.before, &move.after});
  const Sketch first = in_column(d, 0, box), second = in_column(d, 1, box);
  draw_before(d, first, move);
  draw_after(d, second, move);
  draw_overlay(d, in_column(d, 2, box), move);
  if (move.before.cut_on == CutOn::Fold && move.after.cut_on == CutOn::Pair) {
    first.label(kOnCentre, {-4.0, 0.0}, "fold");
    second.label(kOnCentre, {-4.0, 0.0}, "seam");
  }
}

}  // namespace blockwright_pictures
