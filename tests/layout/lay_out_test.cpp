#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

PrintOptions options_for(CutStyle cut) {
  PrintOptions options;
  options.cut = cut;
  options.paper = paper_named("a4");
  return options;
}

SheetNotes sample_notes() {
  SheetNotes notes;
  notes.client = "Ondine Marsh";
  notes.session = "2026-03-14";
  notes.version = "0.1.0";
  notes.ease = {"bust girth 5 cm"};
  notes.estimated = {"scye depth (± 1.1 cm)", "front shoulder slant (± 1.2 cm)"};
  return notes;
}

Sheet sheet_for(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes) {
  TextFonts fonts;
  return sheet_of(lay_out(pattern, options, notes), fonts);
}

Sheet toile_sheet() {
  return sheet_for(sample_pattern(), options_for(CutStyle::Toile), sample_notes());
}

const Stroke& cut_stroke(const Sheet& sheet, const std::string& piece) {
  const auto found = strokes_of(sheet, LineRole::CutLine, piece);
  REQUIRE(found.size() == 1);
  return *found.front();
}

// How far a piece was moved from its own frame to the sheet: its centre-line stroke tells.
Vec shift_of(const Sheet& sheet, const Piece& piece) {
  const auto dart = strokes_named(sheet, piece.darts.front().name);
  for (const Stroke* stroke : dart) {
    if (stroke->piece == piece.name && stroke->role == LineRole::DartLeg) {
      return stroke->path.start() - piece.darts.front().point;
    }
  }
  FAIL("no dart leg drawn");
  return {};
}

}  // namespace

TEST_CASE("pieces stand apart, inside the margin, on a sheet no larger than they need") {
  for (const CutStyle cut : each({CutStyle::Toile, CutStyle::Card, CutStyle::Net})) {
    const Sheet sheet = sheet_for(sample_pattern(), options_for(cut), sample_notes());
    std::map<std::string, Box> boxes;
    Box all;
    for (const Stroke& stroke : sheet.strokes) {
      boxes[stroke.piece].include(box_of(stroke.path));
      all.include(box_of(stroke.path));
    }
    REQUIRE(boxes.size() == 2);
    CHECK(boxes.at("back").left - boxes.at("front").right >= 10.0 - 1e-9);
    CHECK(all.left == Approx(10.0));
    CHECK(all.bottom == Approx(10.0));
    CHECK(sheet.width - all.right == Approx(10.0));
    CHECK(sheet.height - all.top == Approx(10.0));
  }
}

TEST_CASE("the grain stays upright and keeps its length") {
  const Sheet sheet = toile_sheet();
  for (const Piece& piece : each(sample_pattern().pieces)) {
    for (const Stroke* stroke : strokes_of(sheet, LineRole::Grainline, piece.name)) {
      if (stroke->name != "grain" || stroke->path.curves().size() != 1) continue;
      CHECK(stroke->path.start().x == Approx(stroke->path.end().x));
      CHECK(length(stroke->path) == Approx(distance(piece.grainline.a, piece.grainline.b)));
    }
  }
}

TEST_CASE("one closed cut line a piece, and nothing is drawn outside it") {
  for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
    const Sheet sheet = sheet_for(sample_pattern(), options_for(cut), sample_notes());
    for (const Piece& piece : sample_pattern().pieces) {
      const Stroke& outline = cut_stroke(sheet, piece.name);
      CHECK(outline.closed);
      CHECK(!find_crossing(outline.path, 0.01));
      for (const Stroke& stroke : sheet.strokes) {
        if (stroke.piece != piece.name) continue;
        for (const Point p : flattened(stroke.path, 0.5)) {
          INFO(stroke.name);
          CHECK((contains(outline.path, p, 0.01) || nearest(outline.path, p).distance < 0.02));
        }
      }
    }
  }
}

TEST_CASE("card and net are cut on the stitch line") {
  for (const CutStyle cut : each({CutStyle::Card, CutStyle::Net})) {
    const Sheet sheet = sheet_for(sample_pattern(), options_for(cut), sample_notes());
    for (const Piece& piece : sample_pattern().pieces) {
      const Path expected = placed(flat_outline(piece), Placement::shift(shift_of(sheet, piece)));
      for (const Point p : flattened(cut_stroke(sheet, piece.name).path, 0.1)) {
        CHECK(nearest(expected, p).distance < 1e-9);
      }
    }
    CHECK(strokes_of(sheet, LineRole::StitchLine).empty());
  }
}

TEST_CASE(
    "the toile shows stitch lines, fold, balance lines with their names, and the bust point") {
  const Sheet sheet = toile_sheet();
  CHECK(strokes_of(sheet, LineRole::StitchLine, "front").size() == 5);
  CHECK(strokes_of(sheet, LineRole::FoldLine, "front").size() == 1);
  CHECK(strokes_of(sheet, LineRole::StitchLine, "back").size() == 6);
  CHECK(strokes_of(sheet, LineRole::BalanceLine).size() == 6);
  for (const char* word : {"bust line", "waist line", "across back line", "across front line",
                           "bust point", "place on the fold", "opening", "grain"}) {
    INFO(word);
    CHECK(all_text(sheet).find(word) != std::string::npos);
  }
  const auto bust = strokes_named(sheet, "bust_point");
  REQUIRE(bust.size() == 3);
  const Point apex = sample_front().landmark("bust_point") + shift_of(sheet, sample_front());
  for (const Stroke* stroke : each(bust)) {
    const Box box = box_of(stroke->path);
    CHECK(0.5 * (box.left + box.right) == Approx(apex.x));
    CHECK(0.5 * (box.bottom + box.top) == Approx(apex.y));
  }
}

TEST_CASE("dart legs run to the dart point, which lies short of the apex") {
  const Sheet sheet = toile_sheet();
  const Piece front = sample_front();
  const Vec by = shift_of(sheet, front);
  for (const Dart& dart : each(front.darts)) {
    int legs = 0;
    for (const Stroke* stroke : strokes_of(sheet, LineRole::DartLeg, "front")) {
      if (stroke->name != dart.name) continue;
      CHECK(distance(stroke->path.start(), dart.point + by) < 1e-9);
      CHECK(distance(stroke->path.end(), dart.legs[legs == 0 ? 0 : 1] + by) < 1e-9);
      ++legs;
    }
    CHECK(legs == 2);
  }
}

TEST_CASE("notches stand square to the stitch line, 4 mm deep, from the cut line inwards") {
  // 3 to 4 mm deep, and 20 mm of seam allowance on a toile: common practice, no source.
  const Sheet sheet = toile_sheet();
  for (const Piece& piece : sample_pattern().pieces) {
    const Vec by = shift_of(sheet, piece);
    const Path cut = cut_stroke(sheet, piece.name).path;
    for (const Notch& notch : piece.notches) {
      INFO(piece.name << " " << notch.name);
      const Edge& edge = piece.edge(notch.edge);
      const double allowance = edge.role == EdgeRole::Seam ? 20.0 : 0.0;
      std::vector<const Stroke*> marks;
      for (const Stroke* stroke : strokes_named(sheet, notch.name)) {
        if (stroke->piece == piece.name) marks.push_back(stroke);
      }
      REQUIRE(static_cast<int>(marks.size()) == notch.count);
      Vec middle;
      for (const Stroke* mark : marks) {
        const Path stitch = placed(edge.path, Placement::shift(by));
        CHECK(length(mark->path) == Approx(4.0));
        CHECK(nearest(cut, mark->path.start()).distance < 0.02);
        const NearestOnPath foot = nearest(stitch, mark->path.start());
        CHECK(foot.distance == Approx(allowance).margin(0.02));
        const Vec seam = tangent_at_length(stitch, foot.along);
        CHECK(std::abs(dot(unit(mark->path.end() - mark->path.start()), seam)) < 1e-3);
        middle = middle + (1.0 / notch.count) * Vec{foot.along, 0.0};
      }
      CHECK(middle.x == Approx(notch.along).margin(0.1));
    }
  }
}

TEST_CASE("each end of a dart's mouth has a notch on the cut line") {
  const Sheet sheet = toile_sheet();
  for (const Piece& piece : each(sample_pattern().pieces)) {
    const Path cut = cut_stroke(sheet, piece.name).path;
    for (const Dart& dart : piece.darts) {
      int notches = 0;
      for (const Stroke* stroke : strokes_named(sheet, dart.name)) {
        if (stroke->piece != piece.name || stroke->role != LineRole::Notch) continue;
        CHECK(nearest(cut, stroke->path.start()).distance < 1e-6);
        ++notches;
      }
      CHECK(notches == 2);
    }
  }
}

TEST_CASE("a fold has one bracket inside the piece and an arrow head at each of its ends") {
  const Pattern pattern = sample_pattern();
  const Sheet sheet = sheet_for(pattern, options_for(CutStyle::Net), sample_notes());
  int folds = 0;
  for (const Piece& piece : pattern.pieces) {
    const Vec by = shift_of(sheet, piece);
    for (const Edge& edge : piece.edges) {
      if (edge.role != EdgeRole::Fold) continue;
      const Path fold = placed(edge.path, Placement::shift(by));
      std::vector<Point> tips;
      int brackets = 0;
      for (const Stroke* stroke : strokes_named(sheet, "fold")) {
        if (stroke->piece != piece.name) continue;
        if (stroke->path.curves().size() == 3) {
          ++brackets;
          CHECK(nearest(fold, stroke->path.start()).distance < 1e-6);
          CHECK(nearest(fold, stroke->path.end()).distance < 1e-6);
        } else {
          tips.push_back(point_at_length(stroke->path, 0.5 * length(stroke->path)));
          CHECK(nearest(fold, tips.back()).distance < 1e-6);
        }
      }
      CHECK(brackets == 1);
      REQUIRE(tips.size() == 2);
      CHECK(distance(tips[0], tips[1]) > 50.0);
      ++folds;
    }
  }
  CHECK(folds > 0);
}

TEST_CASE("the strokes of a double notch are 5 mm apart along the seam") {
  // Common practice, no source.
  Pattern pattern = sample_pattern();
  int doubles = 0;
  for (Piece& piece : pattern.pieces) {
    for (Notch& notch : piece.notches) notch.count = 2;
  }
  const Sheet sheet = sheet_for(pattern, options_for(CutStyle::Net), sample_notes());
  for (const Piece& piece : pattern.pieces) {
    for (const Notch& notch : piece.notches) {
      INFO(piece.name << " " << notch.name);
      std::vector<Point> feet;
      for (const Stroke* stroke : strokes_named(sheet, notch.name)) {
        if (stroke->piece == piece.name) feet.push_back(stroke->path.start());
      }
      REQUIRE(feet.size() == 2);
      CHECK(distance(feet[0], feet[1]) == Approx(5.0).margin(0.05));
      ++doubles;
    }
  }
  CHECK(doubles > 3);
}

TEST_CASE("a toile's drill mark lies 10 mm short of the dart point, between the legs") {
  // So that the stitching covers the hole: common practice, no source.
  const Sheet sheet = toile_sheet();
  int darts = 0;
  for (const Piece& piece : sample_pattern().pieces) {
    const Vec by = shift_of(sheet, piece);
    for (const Dart& dart : piece.darts) {
      INFO(piece.name << " " << dart.name);
      std::vector<Point> holes;
      for (const Stroke* stroke : strokes_named(sheet, dart.name)) {
        if (stroke->piece != piece.name || stroke->role != LineRole::Hole || !stroke->closed)
          continue;
        const Box box = box_of(stroke->path);
        CHECK(box.width() == Approx(2.0));
        holes.push_back({0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)});
      }
      REQUIRE(holes.size() == 1);
      const Vec off = holes[0] - (dart.point + by);
      CHECK(norm(off) == Approx(10.0));
      CHECK(dot(off, unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point)) > 9.9);
      ++darts;
    }
  }
  CHECK(darts > 2);
}

// A ring with a dot in it: a cross would pass for a mark that pages are joined by.
TEST_CASE("the card has a ring with a dot at each dart point and at the bust point, and no cross") {
  const Sheet sheet = sheet_for(sample_pattern(), options_for(CutStyle::Card), sample_notes());
  std::vector<Point> rings, dots;
  for (const Stroke* stroke : each(strokes_of(sheet, LineRole::Hole))) {
    INFO(stroke->name);
    CHECK(stroke->closed);
    const Box box = box_of(stroke->path);
    const Point middle = {0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)};
    (box.width() > 2.0 ? rings : dots).push_back(middle);
    CHECK(box.width() == Approx(box.width() > 2.0 ? 4.0 : 0.5));
  }
  REQUIRE(rings.size() == 2 + 1 + 3);
  REQUIRE(dots.size() == rings.size());
  for (std::size_t i = 0; i < rings.size(); ++i) CHECK(distance(rings[i], dots[i]) < 1e-9);
  CHECK(strokes_of(sheet, LineRole::BalanceLine).empty());
}

TEST_CASE("every piece says what it is, whose, of when, and how to cut it") {
  const std::map<CutStyle, std::string> styles = {{CutStyle::Toile, "toile, seam allowance 2 cm"},
                                                  {CutStyle::Card, "card, no seam allowance"},
                                                  {CutStyle::Net, "net, no seam allowance"}};
  for (const auto& [cut, words] : styles) {
    const Sheet sheet = sheet_for(sample_pattern(), options_for(cut), sample_notes());
    const std::string text = all_text(sheet);
    for (const std::string& said :
         {std::string("Front"), std::string("Back"), std::string("Ondine Marsh"),
          std::string("session 2026-03-14"), std::string("cut 1 on the fold"),
          std::string("cut 2, a pair"), words, std::string("estimated: scye depth")}) {
      INFO(said);
      CHECK(text.find(said) != std::string::npos);
    }
  }
}

TEST_CASE("lengths are printed in the person's unit") {
  SheetNotes notes = sample_notes();
  notes.unit = Unit::Inch;
  PrintOptions options = options_for(CutStyle::Toile);
  options.allowance = Length::inches(0.75);
  CHECK(all_text(sheet_for(sample_pattern(), options, notes)).find("seam allowance 3/4 in") !=
        std::string::npos);
}

TEST_CASE("texts stand free: on no line, on no other text, inside the stitch lines") {
  SheetNotes long_notes = sample_notes();
  long_notes.client = std::string(300, 'W');
  for (int i = 0; i < 40; ++i) long_notes.estimated.push_back("measurement " + std::to_string(i));
  for (const SheetNotes& notes : {sample_notes(), long_notes}) {
    for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
      for (const double size : {0.35, 0.6, 0.8, 1.0, 1.3}) {
        const Pattern pattern = scaled(sample_pattern(), size);
        const Sheet sheet = sheet_for(pattern, options_for(cut), notes);
        INFO("size " << size);
        CHECK(text_in_the_way(sheet) == "");
        for (const Piece& piece : pattern.pieces) {
          const Path outline =
              placed(flat_outline(piece), Placement::shift(shift_of(sheet, piece)));
          bool titled = false;
          for (const SheetText& text : sheet.texts) {
            if (text.piece != piece.name) continue;
            titled = titled || text.text == (piece.name == "front" ? "Front" : "Back");
            CHECK(contains(outline, room_of(text).start(), 0.1));
            CHECK(intersections(outline, room_of(text)).empty());
          }
          CHECK(titled);
        }
      }
    }
  }
}

TEST_CASE("a name too long for the piece is shortened with an ellipsis") {
  SheetNotes notes = sample_notes();
  notes.client = std::string(300, 'n');
  const std::string text =
      all_text(sheet_for(sample_pattern(), options_for(CutStyle::Card), notes));
  CHECK(text.find("nnnn…") != std::string::npos);
  CHECK(text.find(notes.client) == std::string::npos);
}

TEST_CASE("labels keep 15 mm off every edge of a piece that is wide enough") {
  for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
    for (const double size : {0.8, 1.0, 1.3}) {
      const Pattern pattern = scaled(sample_pattern(), size);
      const Sheet sheet = sheet_for(pattern, options_for(cut), sample_notes());
      for (const Piece& piece : pattern.pieces) {
        const Path outline = placed(flat_outline(piece), Placement::shift(shift_of(sheet, piece)));
        for (const SheetText& text : sheet.texts) {
          const bool label = text.text == (piece.name == "front" ? "Front" : "Back") ||
                             text.text.starts_with("Ondine") || text.text.starts_with("session");
          if (text.piece != piece.name || !label) continue;
          INFO("size " << size << ", " << piece.name << ": " << text.text);
          for (const Point p : flattened(room_of(text), 1.0)) {
            CHECK(nearest(outline, p).distance >= 15.0);
          }
        }
      }
    }
  }
}

TEST_CASE("the seam of a panel is called a seam on the paper") {
  Pattern pattern = sample_pattern();
  Piece& front = pattern.pieces.front();
  front.kind = &kBodiceFront;
  front.edges.front().name = "princess_2";
  front.edges.front().role = EdgeRole::Seam;
  std::erase_if(front.darts, [](const Dart& dart) { return dart.edge == "waist"; });
  std::erase_if(front.notches, [](const Notch& notch) { return notch.edge == "waist"; });
  const std::string text =
      all_text(sheet_for(pattern, options_for(CutStyle::Toile), sample_notes()));
  CHECK(text.find("the princess 2 seam") != std::string::npos);
}

TEST_CASE("A band is a line to either side of its edge, as far off as it says, on its own piece") {
  const Pattern pattern = sample_pattern();
  const Piece& back = pattern.piece("back");
  const EdgeBand band{
      "back",
      "side",
      {{{10.0, 20.0}, {-1.0, 0.0}, {3.0, 0.0}}, {{12.0, 120.0}, {-1.0, 0.0}, {5.0, 1.0}}}};
  TextFonts fonts;
  const Sheet sheet = sheet_of(
      lay_out(pattern, options_for(CutStyle::Net), sample_notes(), nullptr, std::span(&band, 1)),
      fonts);
  CHECK(strokes_of(sheet, LineRole::Band, "front").empty());
  const auto lines = strokes_of(sheet, LineRole::Band, "back");
  REQUIRE(lines.size() == 2);
  const Vec shift = shift_of(sheet, back);
  CHECK(distance(lines[0]->path.start(), Point{13.0, 20.0} + shift) < 1e-9);
  CHECK(distance(lines[0]->path.end(), Point{17.0, 121.0} + shift) < 1e-9);
  CHECK(distance(lines[1]->path.start(), Point{7.0, 20.0} + shift) < 1e-9);
  CHECK(distance(lines[1]->path.end(), Point{7.0, 119.0} + shift) < 1e-9);
  CHECK(lines[0]->layer == SheetLayer::Marks);
}

// Down, round a bend of 5 mm radius, and to the right; its left edge 9 mm off would go round a loop
// there and crosses itself at (9, 4).
EdgeBand band_round_a_bend() {
  EdgeBand band{"back", "side", {}};
  const auto add = [&](Point at, Vec left) { band.places.push_back({at, left, 9.0 * left}); };
  for (int i = 20; i >= 1; --i) add({0.0, 3.0 * i}, {1.0, 0.0});
  for (int i = 0; i <= 6; ++i) {
    const double turned = Angle::degrees(15.0 * i).radians();
    const Vec left{std::cos(turned), std::sin(turned)};
    add(Point{5.0, 0.0} + -5.0 * left, left);
  }
  for (int i = 1; i <= 20; ++i) add({5.0 + 3.0 * i, -5.0}, {0.0, 1.0});
  return band;
}

TEST_CASE("A band that is wider than a bend is tight does not cross itself") {
  const EdgeBand band = band_round_a_bend();
  TextFonts fonts;
  const Sheet sheet = sheet_of(lay_out(sample_pattern(), options_for(CutStyle::Net), sample_notes(),
                                       nullptr, std::span(&band, 1)),
                               fonts);
  const auto lines = strokes_of(sheet, LineRole::Band, "back");
  REQUIRE(lines.size() == 2);
  for (const Stroke* line : lines) {
    const std::vector<Curve>& strokes = line->path.curves();
    REQUIRE(strokes.size() > 4);
    for (std::size_t i = 0; i < strokes.size(); ++i) {
      for (std::size_t j = i + 2; j < strokes.size(); ++j) {
        CHECK(intersections(Path({strokes[i]}), Path({strokes[j]})).empty());
      }
    }
  }
}
