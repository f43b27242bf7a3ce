#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

struct ShownPiece {
  const char* piece;
  const char* dart_to;  ///< where its shoulder dart is moved before
  const char* heading;
  const char* words;
};

Piece piece_after(const Person& person, const ShownPiece& shown,
                  const std::vector<StyleStep>& more) {
  const std::string piece = shown.piece;
  std::vector<StyleStep> steps{
      PivotMove{piece + ".shoulder", piece + "." + shown.dart_to, 1.0, {}, {}}};
  steps.insert(steps.end(), more.begin(), more.end());
  return true_darts(after(person, steps)).pattern.piece(piece);
}

}  // namespace

void draw_armholes(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  constexpr ShownPiece shown[] = {
      {"front", "side", "front", "the shoulder point 3 cm in,\nthe underarm 1 cm up"},
      {"back", "neck", "back", "the across point comes in\nas far as it must"},
      {"front", "armhole", "a dart on it", "drawn across the dart\nas it is sewn"}};
  ArmholeDesign armhole;
  armhole.shoulder_in = 30.0;
  armhole.raise = 10.0;
  int column = 0;
  for (const ShownPiece& one : shown) {
    const Piece before = piece_after(person, one, {});
    const Sketch s = in_column(d, column, box_about({&before}));
    s.piece(before, Look::Before);
    s.piece(piece_after(person, one, {armhole}), Look::New);
    head(d, column++, one.heading, one.words);
  }
}

}  // namespace blockwright_pictures
