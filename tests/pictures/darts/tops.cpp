#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

#include <array>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

struct ShownTop {
  TopShape shape;
  const char* heading;
  const char* words;
};

Piece drawn_front_of(const Person& person, const std::vector<StyleStep>& steps) {
  return true_darts(after(person, steps)).pattern.piece("front");
}

// A top over the piece that it is cut from.
void draw_top(Diagram& d, int column, const std::array<const Piece*, 2>& pieces, const Box& box) {
  const Sketch s = in_column(d, column, box);
  s.piece(*pieces[0], Look::Before);
  s.piece(*pieces[1], Look::New);
}

}  // namespace

void draw_strapped_tops(Diagram& d, const std::string& wardrobe) {
  constexpr std::array<ShownTop, 3> shown = {
      {{TopShape::Straight, "straight", "level from the centre\nto the strap"},
       {TopShape::Curved, "curved", "hollow, square to the\ncentre front"},
       {TopShape::Sweetheart, "sweetheart", "an arc over each bust,\na V at the centre"}}};
  const Person person = person_of(wardrobe, "ondine-marsh");
  const std::vector<StyleStep> side = {PivotMove{"front.shoulder", "front.side", 1.0, {}, {}}};
  const Piece before = drawn_front_of(person, side);
  for (std::size_t i = 0; i < shown.size(); ++i) {
    TopEdgeDesign top;
    top.shape = shown.at(i).shape;
    top.straps = StrapDesign{};
    std::vector<StyleStep> steps = side;
    steps.emplace_back(top);
    const Piece made = drawn_front_of(person, steps);
    const int column = static_cast<int>(i);
    draw_top(d, column, {&before, &made}, box_about({&before}));
    head(d, column, shown.at(i).heading, shown.at(i).words);
  }
}

void draw_strapless_tops(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "odalys-fenn");
  TopEdgeDesign top;
  top.shape = TopShape::Sweetheart;
  const std::vector<StyleStep> one = {OneDart{"front.waist"}};
  std::vector<StyleStep> of_one = one;
  of_one.emplace_back(top);
  const Piece drafted = drawn_front_of(person, {}), turned = drawn_front_of(person, one);
  const Piece first = drawn_front_of(person, {top}), second = drawn_front_of(person, of_one);
  const Pattern both = after(person, of_one);
  const Piece back = true_darts(both).pattern.piece("back"), whole = person.block.piece("back");
  const Box box = box_about({&drafted, &turned, &whole});
  draw_top(d, 0, {&drafted, &first}, box);
  head(d, 0, "the darts as drafted", "the shoulder dart ends\non the edge");
  draw_top(d, 1, {&turned, &second}, box);
  head(d, 1, "all in the waist dart", "the side has turned: the edge\nleaves it square");
  draw_top(d, 2, {&whole, &back}, box);
  head(d, 2, "the back", "as far under the underarm\nat the side seam");
}

}  // namespace blockwright_pictures
