#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

#include <array>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

struct Shown {
  NeckShape shape;
  const char* heading;
  const char* words;
};

// The darts out of the way: the bust dart in the side seam, the back's in the armhole.
std::vector<StyleStep> shoulders_freed() {
  return {PivotMove{"front.shoulder", "front.side", 1.0, {}, {}},
          PivotMove{"back.shoulder", "back.armhole", 1.0, {}, {}}};
}

Piece front_of(const Person& person, const std::vector<StyleStep>& steps) {
  return true_darts(after(person, steps)).pattern.piece("front");
}

// Each neckline as it is usual for the shape, over the block's.
void draw_necklines(Diagram& d, const std::string& wardrobe, const std::array<Shown, 3>& shown) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  const Piece before = front_of(person, shoulders_freed());
  const Box box = box_about({&before});
  for (std::size_t i = 0; i < shown.size(); ++i) {
    std::vector<StyleStep> steps = shoulders_freed();
    NecklineDesign neckline;
    neckline.shape = shown.at(i).shape;
    steps.emplace_back(neckline);
    const int column = static_cast<int>(i);
    const Sketch s = in_column(d, column, box);
    s.piece(before, Look::Before);
    s.piece(front_of(person, steps), Look::New);
    head(d, column, shown.at(i).heading, shown.at(i).words);
  }
}

}  // namespace

void draw_curved_necklines(Diagram& d, const std::string& wardrobe) {
  draw_necklines(d, wardrobe,
                 {{{NeckShape::Round, "round", "a little wider and deeper\nthan the block's"},
                   {NeckShape::Scoop, "scoop", "each half 5 mm shorter:\nthe side dart is wider"},
                   {NeckShape::Boat, "boat", "wide and shallow; a point\nover the shoulder"}}});
}

void draw_ruled_necklines(Diagram& d, const std::string& wardrobe) {
  draw_necklines(
      d, wardrobe,
      {{{NeckShape::V, "v", "straight to the centre front;\neach half 8 mm shorter"},
        {NeckShape::Square, "square",
         "its side half way between upright\nand square to the shoulder"},
        {NeckShape::Sweetheart, "sweetheart", "an arc over each bust;\neach half 1 cm shorter"}}});
}

}  // namespace blockwright_pictures
