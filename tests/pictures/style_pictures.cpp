// Draws the pictures of docs/styles.md: what each example style that ends in a garment makes of a
// block.
//
//   style_pictures EXAMPLES FOLDER
//
// reads the styles of EXAMPLES/styles and a client of EXAMPLES/wardrobe, and writes
// style-<name>.svg into FOLDER.
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/style/style.hpp"
#include "darts/sketch.hpp"
#include "darts/wardrobe.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

using namespace blockwright;
using namespace blockwright_pictures;
namespace fs = std::filesystem;

constexpr double kSheetWide = 640.0, kSheetHigh = 330.0, kGap = 14.0;  // on the diagram
constexpr double kShownWide = 900.0;                                   // pixels
constexpr const char* kShownPerson = "ondine-marsh";

using Pieces = std::vector<const Piece*>;

// Drawn over each other, as they lie on the block, or alone.
struct Group {
  const Piece* block = nullptr;
  Pieces pieces;

  [[nodiscard]] Box box() const {
    Pieces all = pieces;
    if (block != nullptr) all.push_back(block);
    return box_about(all);
  }
};

Group made_of(const Pattern& block, const Pattern& garment, const PieceKind& kind) {
  Group group{&piece_of(block, kind), {}};
  for (const Piece& piece : garment.pieces) {
    if (is_a(piece, kind)) group.pieces.push_back(&piece);
  }
  return group;
}

std::vector<Group> groups_of(const Pattern& block, const Pattern& garment) {
  std::vector<Group> groups = {made_of(block, garment, kBodiceFront),
                               made_of(block, garment, kBodiceBack)};
  for (const Piece& piece : garment.pieces) {
    if (!is_a(piece, kBodiceFront) && !is_a(piece, kBodiceBack)) {
      groups.push_back({nullptr, {&piece}});
    }
  }
  return groups;
}

double scale_for(const std::vector<Group>& groups) {
  double width = 0.0, height = 0.0;
  for (const Group& group : groups) {
    width += group.box().width();
    height = std::max(height, group.box().height());
  }
  const double gaps = kGap * static_cast<double>(groups.size() + 1);
  return std::min((kSheetWide - gaps) / width, (kSheetHigh - 2.0 * kGap) / height);
}

void draw(Diagram& diagram, const std::vector<Group>& groups) {
  const double scale = scale_for(groups);
  double left = kGap;
  for (const Group& group : groups) {
    const Box box = group.box();
    const Sketch sketch(diagram, scale, {left, kGap}, {box.left, box.bottom});
    if (group.block != nullptr) sketch.piece(*group.block, Look::Before);
    for (const Piece* piece : group.pieces) sketch.piece(*piece, Look::New);
    left += scale * box.width() + kGap;
  }
}

Style style_in(const fs::path& file) {
  std::ifstream in(file);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  return read_style(text, file.filename().string());
}

Pattern garment_of(const Person& person, const Style& style) {
  const Pattern worn =
      style.wearing_ease
          ? with_wearing_ease(person.block, {}, *style.wearing_ease, person.body).pattern
          : person.block;
  return true_darts(apply_style(worn, style, person.cup).pattern).pattern;
}

void write_all(const fs::path& examples, const fs::path& folder) {
  const Person person = person_of((examples / "wardrobe").string(), kShownPerson);
  for (const auto& entry : fs::directory_iterator(examples / "styles")) {
    const Style style = style_in(entry.path());
    if (!finishes(style)) continue;
    const Pattern garment = garment_of(person, style);
    const std::vector<Group> groups = groups_of(person.block, garment);
    Diagram diagram(kSheetWide, kSheetHigh);
    diagram.show_at(kShownWide);
    draw(diagram, groups);
    diagram.write(style.name,
                  (folder / ("style-" + entry.path().stem().string() + ".svg")).string());
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "call: style_pictures EXAMPLES FOLDER\n";
    return 2;
  }
  try {
    write_all(argv[1], argv[2]);
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  return 0;
}
