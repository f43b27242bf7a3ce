#include "blockwright/figure/seen_figure.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "seen_faults.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;

namespace {

constexpr double kScale = 0.1;

std::vector<Path> marks_of(const SeenRow& seen) {
  std::vector<Path> marks;
  for (const FigureLine& line : seen_figure(seen, kScale).lines) {
    if (line.ink == FigureInk::Seen) marks.push_back(line.path);
  }
  return marks;
}

SeenRow seen_of(const CorrectionWords& words) { return {words.row, words.sign, words.place}; }

/// How many of the marks lie in the left and in the right half of the drawing.
struct Sides {
  int left = 0, right = 0;
};
Sides sides_of(const SeenRow& seen) {
  const double middle = 0.5 * seen_figure(seen, kScale).width;
  Sides sides;
  for (const Path& mark : marks_of(seen)) {
    const Box box = box_of(mark);
    (0.5 * (box.left + box.right) < middle ? sides.left : sides.right) += 1;
  }
  return sides;
}

}  // namespace

// More strokes than a hand has fingers, twice, are a scribble (ours).
TEST_CASE("Every row and its reverse has a fault drawn, in few strokes inside the figure") {
  for (const CorrectionWords& words : each(correction_words())) {
    CAPTURE(words.action, words.place);
    const FigureDrawing figure = seen_figure(seen_of(words), kScale);
    const std::vector<Path> marks = marks_of(seen_of(words));
    CHECK_FALSE(marks.empty());
    CHECK(marks.size() <= 16);
    Box all;
    for (const FigureLine& line : figure.lines) all.include(box_of(line.path));
    CHECK(all.left >= 0.0);
    CHECK(all.bottom >= -1e-6);
    CHECK(all.right <= figure.width);
    CHECK(all.top <= figure.height + 1e-6);
  }
}

TEST_CASE("No two faults of a row look the same") {
  for (const FittingRow& row : each(fitting_catalogue())) {
    CAPTURE(row.name);
    std::vector<Path> forwards, reverse;
    for (const RowWords& words : row.words) {
      (words.sign > 0 ? forwards : reverse) = marks_of({row.row, words.sign, words.place});
    }
    CHECK((reverse.empty() || forwards != reverse));
  }
}

// docs/fitting.md, "Read the folds": tight folds point to where cloth is lacking, loose ones lie
// along what is too much; a level one is of a length, an upright one of a width.
TEST_CASE("Folds lie as folds are read") {
  struct Read {
    CorrectionRow row;
    int sign;
    SeenMark::Kind kind;
    bool level;
  };
  using enum CorrectionRow;
  using Kind = SeenMark::Kind;
  for (const Read& read :
       {Read{AcrossBackWider, 1, Kind::Crease, true},    // too narrow
        Read{AcrossBackNarrower, 1, Kind::Fold, false},  // too wide
        Read{UpperBackShorter, 1, Kind::Fold, true},     // too long
        Read{BackWaistShorter, 1, Kind::Fold, true}, Read{WaistTakenIn, 1, Kind::Fold, false},
        Read{WaistTakenIn, -1, Kind::Crease, true}, Read{BustLetOutAtSide, 1, Kind::Crease, true},
        Read{BustLetOutAtSide, -1, Kind::Fold, false},
        Read{UnderBustTakenIn, 1, Kind::Fold, true}}) {
    CAPTURE(fitting_row(read.row).name, read.sign);
    int folds = 0;
    for (const SeenMark& mark : fault_of({read.row, read.sign}).marks) {
      if (mark.kind == Kind::Arrow || mark.kind == Kind::Edge) continue;
      const Vec along = mark.to - mark.from;
      CHECK(mark.kind == read.kind);
      CHECK((std::abs(along.x) > std::abs(along.y)) == read.level);
      ++folds;
    }
    CHECK(folds > 0);
  }
}

// From in front her right is at the left, from behind at the right.
TEST_CASE("A fault of one side is drawn on that side, as she is seen") {
  using enum CorrectionRow;
  const auto only_left = [](Sides sides) { return sides.left > 0 && sides.right == 0; };
  const auto only_right = [](Sides sides) { return sides.right > 0 && sides.left == 0; };
  CHECK(only_left(sides_of({OneBreastFuller, 1, {}, BodySide::Right})));
  CHECK(only_right(sides_of({OneBreastFuller, 1, {}, BodySide::Left})));
  CHECK(only_left(sides_of({UnderarmLower, 1, {}, BodySide::Right})));
  CHECK(only_right(sides_of({AcrossBackNarrower, 1, {}, BodySide::Right})));
  CHECK(only_left(sides_of({AcrossBackNarrower, 1, {}, BodySide::Left})));
  const Sides both = sides_of({UnderarmLower, 1});
  CHECK(both.left == both.right);
}

TEST_CASE("A fault that is not of the catalogue is not drawn") {
  CHECK_THROWS_AS(seen_figure({CorrectionRow::NeckWider, -1}, kScale), std::logic_error);
}

TEST_CASE("A figure's words tell the fault that it shows, not its opposite") {
  for (const CorrectionWords& words : each(correction_words())) {
    CAPTURE(words.action, words.place);
    const std::string says = seen_words(seen_of(words));
    CHECK_FALSE(says.empty());
    CHECK(says.find("(or") == std::string::npos);
    for (const CorrectionWords& other : correction_words()) {
      if (other.row != words.row || other.sign == words.sign) continue;
      CHECK(seen_words(seen_of(other)) != says);
    }
  }
  CHECK(seen_words({CorrectionRow::BustLetOutAtSide, 1}) == "tight round the bust, the cup right");
  CHECK(seen_words({CorrectionRow::BustLetOutAtSide, -1}) == "slack round the bust, the cup right");
}
