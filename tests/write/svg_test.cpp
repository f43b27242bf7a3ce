#include "support/run_tool.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <regex>
#include <set>
#include <sstream>

using namespace blockwright_tests;

namespace {

/// Half of the last decimal that the drawing is written with.
constexpr double kHalfStep = 0.0005 + 1e-9;

std::vector<std::string> all_matches(const std::string& text, const std::string& pattern) {
  const std::regex regex(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), regex), end; it != end; ++it) {
    found.push_back((*it)[1]);
  }
  return found;
}

/// All coordinates of a `d` attribute, in order; commands are left out.
std::vector<double> coordinates(std::string data) {
  for (char& c : data) {
    if (std::string_view("MLCZ").find(c) != std::string_view::npos) c = ' ';
  }
  std::istringstream in(data);
  in.imbue(std::locale::classic());
  std::vector<double> numbers;
  for (double number = 0.0; in >> number;) numbers.push_back(number);
  return numbers;
}

void append(std::vector<double>& numbers, Point p, double height) {
  numbers.push_back(p.x);
  numbers.push_back(height - p.y);
}

std::vector<double> expected_coordinates(const Path& path, double height) {
  std::vector<double> numbers;
  append(numbers, path.start(), height);
  for (const Curve& curve : path.curves()) {
    if (const auto* cubic = std::get_if<CubicCurve>(&curve)) {
      append(numbers, cubic->p1, height);
      append(numbers, cubic->p2, height);
    }
    append(numbers, end_of(curve), height);
  }
  return numbers;
}

Sheet one_stroke(Stroke stroke) { return {100.0, 100.0, {std::move(stroke)}, {}}; }

}  // namespace

TEST_CASE("an SVG is well-formed, says its size in millimetres and has a title") {
  const TempFolder folder;
  const std::string svg = svg_bytes(sample_sheet(), "Ondine Marsh");
  const ToolResult lint = run_tool("xmllint --noout " + folder.write("sheet.svg", svg));
  CHECK(lint.output.empty());
  CHECK(lint.exit_code == 0);
  CHECK(svg.find("width=\"400mm\" height=\"300mm\" viewBox=\"0 0 400 300\"") != std::string::npos);
  CHECK(svg.find("<title>Ondine Marsh</title>") != std::string::npos);
}

// 25.4 mm are an inch; CSS pixels are 1/96 in (CSS Values and Units 3).
// Check values: facts of print scale, mm to px, rounded up to whole pixels by the tool.
TEST_CASE("an SVG is drawn at true size") {
  struct Scale {
    double mm;
    double px;
  };
  const auto [mm, px] = GENERATE(Scale{100, 377.952756}, Scale{210, 793.700787},
                                 Scale{297, 1122.519685}, Scale{431.8, 1632.0});
  const TempFolder folder;
  const std::string file =
      folder.write("sheet.svg", svg_bytes({mm, 50.0, {}, {label({5, 5}, "x")}}));
  const std::string picture = folder.path("sheet.png");
  REQUIRE(run_tool("rsvg-convert " + file + " -o " + picture).exit_code == 0);
  const std::string png = read_bytes(picture);
  int width = 0;  // a PNG's width: four bytes from byte 16, high byte first (PNG, 11.2.2)
  for (int i = 16; i < 20; ++i) width = 256 * width + static_cast<unsigned char>(png[size_t(i)]);
  CHECK(std::abs(width - px) < 1.0);
}

TEST_CASE("every stroke of the sheet can be read back from the SVG") {
  const Sheet sheet = sample_sheet();
  std::vector<std::string> read = all_matches(svg_bytes(sheet), " d=\"([^\"]*)\"");
  REQUIRE(read.size() == sheet.strokes.size());
  for (const Stroke& stroke : sheet.strokes) {
    const std::vector<double> expected = expected_coordinates(stroke.path, sheet.height);
    const auto same = [&](const std::string& data) {
      const std::vector<double> numbers = coordinates(data);
      return numbers.size() == expected.size() &&
             std::equal(numbers.begin(), numbers.end(), expected.begin(),
                        [](double a, double b) { return std::abs(a - b) <= kHalfStep; }) &&
             (data.back() == 'Z') == stroke.closed;
    };
    const auto found = std::find_if(read.begin(), read.end(), same);
    INFO(stroke.piece << ' ' << stroke.name);
    REQUIRE(found != read.end());
    read.erase(found);
  }
}

TEST_CASE("ids say piece, edge and layer, and each is used once") {
  const std::string svg = svg_bytes(sample_sheet());
  const std::vector<std::string> ids = all_matches(svg, " id=\"([^\"]*)\"");
  const std::set<std::string> unique(ids.begin(), ids.end());
  CHECK(unique.size() == ids.size());
  for (const char* id : {"front", "back", "front-cut", "front-armhole-stitch", "back-centre-stitch",
                         "front-waist-dart-stitch", "front-waist-dart-stitch-2"}) {
    INFO(id);
    CHECK(unique.contains(id));
  }
}

TEST_CASE("a stroke's role gives its class, width and dashes") {
  const LineRole role =
      GENERATE(LineRole::CutLine, LineRole::StitchLine, LineRole::FoldLine, LineRole::DartLeg,
               LineRole::BalanceLine, LineRole::Grainline, LineRole::Notch, LineRole::Hole,
               LineRole::TestSquare, LineRole::Frame);
  const Stroke stroke = line({1, 1}, {9, 9}, role, SheetLayer::Marks);
  const std::string svg = svg_bytes(one_stroke(stroke));
  const auto classes = all_matches(svg, "<path[^>]* class=\"([^\"]*)\"");
  REQUIRE(classes.size() == 1);
  CHECK(classes[0] == line_role_name(role));
  const LineStyle style = style_of(stroke);
  const auto widths = all_matches(svg, " stroke-width=\"([^\"]*)\"");
  REQUIRE(widths.size() == 1);
  CHECK(coordinates(widths[0]) == std::vector<double>{style.width});
  const auto dashes = all_matches(svg, " stroke-dasharray=\"([^\"]*)\"");
  CHECK(dashes.size() == (style.dashes.empty() ? 0 : 1));
  if (!dashes.empty()) CHECK(coordinates(dashes[0]) == style.dashes);
}

TEST_CASE("letters stay text, upright, and are turned about their own place") {
  Sheet sheet{100, 200, {}, {label({30, 50}, "Étoile & toile")}};
  CHECK(svg_bytes(sheet).find("<text x=\"30\" y=\"150\" font-size=\"5\"") != std::string::npos);
  CHECK(svg_bytes(sheet).find(">Étoile &amp; toile</text>") != std::string::npos);
  CHECK(svg_bytes(sheet).find("scale(") == std::string::npos);
  sheet.texts[0].turn = Angle::degrees(90);
  sheet.texts[0].anchor = TextAnchor::Middle;
  const std::string turned = svg_bytes(sheet);
  CHECK(turned.find("transform=\"rotate(-90 30 150)\"") != std::string::npos);
  CHECK(turned.find("text-anchor=\"middle\"") != std::string::npos);
}

TEST_CASE("the previous version is hidden in an SVG until it is switched on") {
  const std::string svg = svg_bytes(sample_sheet());
  CHECK(all_matches(svg, "<g id=\"([^\"]*)\" class=\"previous\" display=\"none\">") ==
        std::vector<std::string>{"front-previous"});
  CHECK(all_matches(svg, "(display)").size() == 1);
}

TEST_CASE("a number with no place on paper is refused") {
  const double bad =
      GENERATE(std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN());
  CHECK_THROWS_AS(svg_bytes(one_stroke(line({1, 1}, {bad, 9}, LineRole::CutLine, SheetLayer::Cut))),
                  std::logic_error);
}

TEST_CASE("A stroke of which no line is left is not drawn, in SVG or PDF") {
  const Sheet plain = one_stroke(line({1, 1}, {9, 9}, LineRole::CutLine, SheetLayer::Cut));
  Sheet sheet = plain;
  sheet.strokes.push_back({SheetLayer::Cut, LineRole::CutLine, {}, {}, {}, false});
  CHECK(svg_bytes(sheet) == svg_bytes(plain));
  CHECK(pdf_bytes(whole_plan(sheet)) == pdf_bytes(whole_plan(plain)));
  CHECK(svg_bytes(plain).find(" d=\"M1 99 L9 91\"") != std::string::npos);
}
