#include "blockwright/figure/tape_figure.hpp"

#include "blockwright/text/units.hpp"
#include "outlines.hpp"
#include "support/each.hpp"
#include "tapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <set>
#include <sstream>

using namespace blockwright;

namespace {

constexpr FigureSize kPrinted{};  // as on the form

Path course_of(MeasurementName name) {
  const Course& course = tape_of(name).course;
  return smooth_through(std::span(course.through).first(course.count), course.ends);
}

bool runs_through(const Path& path, const Box& box) {
  const double whole = length(path);
  for (double s = 0.0; s <= whole; s += 0.05) {
    const Point p = point_at_length(path, s);
    if (p.x > box.left && p.x < box.right && p.y > box.bottom && p.y < box.top) return true;
  }
  return false;
}

std::string text_of(const std::string& file) {
  std::ifstream in(std::string(BLOCKWRIGHT_SOURCE_DIR) + "/" + file);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// What stands under a heading of the page.
std::string chapter(const std::string& page, std::string_view heading) {
  const std::size_t begin = page.find("\n## " + std::string(heading) + "\n");
  REQUIRE(begin != std::string::npos);
  return page.substr(begin, page.find("\n## ", begin + 1) - begin);
}

}  // namespace

TEST_CASE("Each measurement is on one figure, by its number") {
  std::multiset<MeasurementName> shown;
  std::multiset<std::string> numbers;
  for (const TapeFigure figure : kTapeFigures) {
    for (const MeasurementName name : tapes_on(figure)) shown.insert(name);
    for (const FigureNumber& number : drawing_of(figure, kPrinted).numbers) {
      numbers.insert(number.text);
    }
  }
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    CHECK(shown.count(entry.name) == 1);
    CHECK(numbers.count(std::to_string(tape_number(entry.name))) == 1);
  }
  CHECK(shown.size() == kMeasurementCount);
}

TEST_CASE("No number is crossed by a line, and nothing lies outside its figure") {
  for (const TapeFigure figure : kTapeFigures) {
    const FigureDrawing drawing = drawing_of(figure, kPrinted);
    CAPTURE(figure_title(figure));
    Box all;
    for (const FigureLine& line : drawing.lines) all.include(box_of(line.path));
    for (const FigureNumber& number : drawing.numbers) {
      CAPTURE(number.text);
      const Box room = room_of(number, kPrinted);
      all.include(room);
      for (const FigureLine& line : drawing.lines) {
        if (line.ink == FigureInk::Detail) continue;  // pale
        CHECK_FALSE(runs_through(line.path, room));
      }
      for (const FigureNumber& other : drawing.numbers) {
        if (&other != &number) CHECK_FALSE(room.overlaps(room_of(other, kPrinted), 0.3));
      }
    }
    CHECK(all.left >= 0.0);
    CHECK(all.bottom >= 0.0);
    CHECK(all.right <= drawing.width);
    CHECK(all.top <= drawing.height);
  }
}

// Means of the 2,208 women of Gordon et al. 1989, NATICK/TR-89/044, in mm: what lies flat enough in
// its view to be drawn in true length. The armpit there is 5 mm higher than where a tape under the
// arm lies.
TEST_CASE("Tapes that lie flat in their view are as long as the survey's means") {
  struct Mean {
    MeasurementName name;
    double mm;
  };
  using enum MeasurementName;
  for (const auto& [name, mm] : {Mean{Stature, 1629},
                                 {WaistToHip, 218},
                                 {SideLength, 177},
                                 {ScyeDepth, 185},
                                 {ShoulderLength, 145},
                                 {BustPointWidth, 184},
                                 {BackWaistLength, 367}}) {
    CAPTURE(info(name).key);
    CHECK(length(course_of(name)) == Approx(mm).epsilon(0.05));
  }
}

// One tape read twice: it may be drawn beside itself by a finger's breadth, and on one side of her.
TEST_CASE("Both tapes from the side neck begin as one and pass the bust point on the same side") {
  using enum MeasurementName;
  const Path shorter = course_of(SideNeckToBustPoint), longer = course_of(SideNeckToWaist);
  const Point bust_point = course_of(BustPointWidth).end();
  CHECK(shorter.end() == bust_point);
  CHECK(longer.start() == shorter.start());
  CHECK(nearest(longer, bust_point).distance < 15.0);
}

// The usual mistake is a shoulder point out on the arm (docs/tape.md; common practice, no source).
TEST_CASE("The shoulder point is drawn before the outline bends down to the arm") {
  const Path shoulder = course_of(MeasurementName::ShoulderLength);
  const Vec falls = unit(end_tangent(shoulder));
  CHECK(-falls.y / falls.x < std::tan(30.0 * 3.14159265 / 180.0));
  const auto has_point = [&](const BodyLine& line) {
    return std::ranges::find(line.through, shoulder.end()) != line.through.end();
  };
  for (const TapeFigure figure : {TapeFigure::Front, TapeFigure::Back, TapeFigure::Arm}) {
    CHECK(std::ranges::any_of(outline_of(figure), has_point));
  }
}

TEST_CASE("Lengths to the waist end at its level") {
  using enum MeasurementName;
  const double waist = tape_of(WaistGirth).round.centre.y;
  for (const MeasurementName name : {BackWaistLength, FrontWaistLength, SideNeckToWaist, SideLength,
                                     BackShoulderSlant, FrontShoulderSlant}) {
    CAPTURE(info(name).key);
    CHECK(course_of(name).end().y == waist);
  }
  CHECK(course_of(WaistToHip).start().y == waist);
  CHECK(course_of(WaistToHip).end().y == tape_of(HipGirth).round.centre.y);
}

// A sharper bend than a thumb's breadth looks like a kink; nose, heel and toe are as sharp as that.
TEST_CASE("Outlines are smooth, and front and back symmetric") {
  for (const TapeFigure figure : kTapeFigures) {
    CAPTURE(figure_title(figure));
    for (const BodyLine& line : outline_of(figure)) {
      if (line.ink != FigureInk::Body) continue;
      CHECK(least_radius(smooth_through(line.through, line.ends)) > 2.0);
      const bool seen_from_the_side = figure == TapeFigure::Side || figure == TapeFigure::Arm;
      CHECK((line.sides == BodyLine::Sides::Both) != seen_from_the_side);
    }
  }
}

TEST_CASE("docs/tape.md describes each measurement under its figure, by its number") {
  const std::string page = text_of("docs/tape.md");
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    const std::string here = chapter(page, figure_title(figure_of(entry.name)));
    const std::string item =
        "\n- **" + std::to_string(tape_number(entry.name)) + " " + name_text(entry.key) + "**: ";
    CHECK(here.find(item) != std::string::npos);
  }
}
