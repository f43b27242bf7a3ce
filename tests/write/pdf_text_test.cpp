#include "blockwright/layout/tape_sheet.hpp"
#include "blockwright/text/text_fonts.hpp"
#include "blockwright/text/units.hpp"
#include "support/each.hpp"
#include "support/picture.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <regex>

using namespace blockwright_tests;

namespace {

PrintPlan plan_of_text(const std::string& text) {
  return whole_plan({300, 30, {}, {label({10, 10}, text)}});
}

/// What a reader finds in the file, without the line and page end.
std::string extracted(const PdfFile& file) {
  const ToolResult text = run_tool("pdftotext -layout " + file.path() + " -");
  REQUIRE(text.exit_code == 0);
  std::string found = text.output;
  while (!found.empty() && (found.back() == '\n' || found.back() == '\f')) found.pop_back();
  found.erase(0, found.find_first_not_of(" \n"));
  return found;
}

/// Where mutool finds the letters of the first page, from left to right: mm from the page's edge.
std::vector<double> letter_places(const PdfFile& file) {
  const ToolResult read = run_tool("mutool draw -q -F stext -o - " + file.path());
  REQUIRE(read.exit_code == 0);
  const std::regex letter("<char [^>]* x=\"([0-9.]+)\"");
  std::vector<double> places;
  for (std::sregex_iterator at(read.output.begin(), read.output.end(), letter), end; at != end;
       ++at) {
    places.push_back(std::stod((*at)[1]) * 25.4 / 72.0);
  }
  return places;
}

/// A table from codes to letters in the file: how many entries each of its blocks announces and how
/// many follow.
struct LetterBlock {
  std::size_t announced = 0, entries = 0;
};
std::vector<LetterBlock> letter_blocks(const PdfFile& file) {
  const ToolResult read = run_tool("qpdf --qdf --object-streams=disable " + file.path() + " -");
  REQUIRE(read.exit_code == 0);
  const std::regex block("([0-9]+) beginbfchar\n((<[0-9A-F]+> <[0-9A-F]+>\n)*)endbfchar");
  std::vector<LetterBlock> blocks;
  for (std::sregex_iterator at(read.output.begin(), read.output.end(), block), end; at != end;
       ++at) {
    const std::string entries = (*at)[2];
    blocks.push_back(
        {std::stoul((*at)[1]), static_cast<std::size_t>(std::ranges::count(entries, '\n'))});
  }
  return blocks;
}

/// All letters from the first to the last code in lines of 32.
std::vector<SheetText> lines_of_letters(char16_t first, char16_t last) {
  std::vector<SheetText> lines;
  for (char16_t letter = first; letter <= last; ++letter) {
    const int number = letter - first;
    if (number % 32 == 0) lines.push_back(label({10, 10 + 10.0 * (number / 32)}, ""));
    lines.back().text += static_cast<char>(0xC0 | (letter >> 6));
    lines.back().text += static_cast<char>(0x80 | (letter & 0x3F));
  }
  return lines;
}

bool cjk_font_is_installed() {
  return std::filesystem::exists("/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf") ||
         std::filesystem::exists("/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc");
}

}  // namespace

TEST_CASE("text can be searched in Polish, Greek, Cyrillic and with ligatures and kerning") {
  const std::string text =
      GENERATE("Zażółć gęślą jaźń ŁÓDŹ", "Εμπρός, Ονδίνη, στήθος", "Перёд, линия груди, Ґ Ѓ Љ",
               "office fi ffl AVATAR To. Ty", "½ × 36 1/2 in ≈ 927 mm — ±0.1°",
               "naïve Ñandú Ærø Þór", "(brackets) \\ <angle> [square] {x}");
  CHECK(extracted(PdfFile(plan_of_text(text))) == text);
}

// Pairs such as A and V move together; the letters after them follow.
TEST_CASE("each letter is where the font sets it, also in pairs that move together") {
  const std::string text = "AVAVA To. Ty office H";
  const std::vector<double> places = letter_places(PdfFile(plan_of_text(text)));
  TextFonts fonts;
  std::vector<double> expected;
  double at = 10.0;
  for (const GlyphRun& run : fonts.set(text).runs) {
    for (const ShapedGlyph& glyph : run.glyphs) {
      for (std::size_t i = 0; i < glyph.letters.size(); ++i) expected.push_back(at);
      at += 5.0 * glyph.advance;
    }
  }
  double side_by_side = 0.0;
  for (const char letter : text) side_by_side += fonts.room(std::string(1, letter), 5.0).width;
  REQUIRE(side_by_side > fonts.room(text, 5.0).width + 2.0);
  REQUIRE(places.size() == expected.size());
  // Of letters that are one glyph the reader spreads all but the first.
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i > 0 && expected[i] == expected[i - 1]) continue;
    CAPTURE(i);
    CHECK(places[i] == Approx(expected[i]).margin(0.01));
  }
}

// At most 100 entries in a block: Adobe Technical Note 5411, 1.4.1 (from memory).
TEST_CASE("the table for searching says how many letters follow, with more than 100 of them, too") {
  const PdfFile file(whole_plan({300, 100, {}, lines_of_letters(0x0400, 0x04FF)}));
  std::size_t letters = 0;
  const std::vector<LetterBlock> blocks = letter_blocks(file);
  for (const LetterBlock& block : each(blocks)) {
    CHECK(block.announced == block.entries);
    CHECK(block.entries <= 100);
    letters += block.entries;
  }
  CHECK(blocks.size() == 3);
  CHECK(letters == 256);
}

TEST_CASE("right-to-left words are shaped and can be searched") {
  const std::string text = GENERATE("שלום עולם", "مرحبا");
  const std::string found = extracted(PdfFile(plan_of_text(text)));
  CHECK(found.find(text) != std::string::npos);
}

TEST_CASE("all fonts are embedded as subsets with a table for searching") {
  const PdfFile file(sample_plan());
  const std::string fonts = run_tool("pdffonts " + file.path()).output;
  INFO(fonts);
  CHECK(fonts.find("+DejaVuSans") != std::string::npos);
  CHECK(fonts.find("CID TrueType") != std::string::npos);
  CHECK(fonts.find("Identity-H") != std::string::npos);
  CHECK(fonts.find("yes yes yes") != std::string::npos);
  CHECK(fonts.find(" no ") == std::string::npos);
}

// The private use area: no font of this kind has letters there.
TEST_CASE("a letter that no font has is drawn as a box and can still be searched") {
  const std::string missing = "\xEE\x80\x80";  // U+E000
  const PdfFile file(plan_of_text("a" + missing + "b"));
  CHECK(extracted(file) == "a" + missing + "b");
  const PdfFile alone(plan_of_text(missing));
  CHECK(page_picture(alone.path(), 1, 150, 30).ink() > 0.5);
}

TEST_CASE("Chinese, Japanese and Korean letters come from a font of the machine, or as boxes") {
  const std::string text = "日本語の名前";
  const PdfFile file(plan_of_text(text));
  CHECK(extracted(file) == text);
  CHECK(page_picture(file.path(), 1, 150, 30).ink() > 1.0);
  const std::string fonts = run_tool("pdffonts " + file.path()).output;
  const bool set_in_builtin = fonts.find("+DejaVuSans") != std::string::npos;
  CHECK(set_in_builtin != cjk_font_is_installed());
}

// An em of 5 mm; the width of "HHHH" is four times 1540 of 2048 units in the built-in font's own
// table, so the anchors differ by known amounts.
TEST_CASE("text starts, is centred or ends where its anchor says, in true size") {
  const double width = 4 * 5.0 * 1540.0 / 2048.0;
  const auto centre_of = [](TextAnchor anchor) {
    SheetText text = label({50, 10}, "HHHH");
    text.anchor = anchor;
    const PdfFile file(whole_plan({100, 30, {}, {text}}));
    return page_picture(file.path(), 1, 600, 30).dark_centre({0, 0, 100, 30}).x;
  };
  CHECK(centre_of(TextAnchor::Start) == Approx(50 + width / 2).margin(0.05));
  CHECK(centre_of(TextAnchor::Middle) == Approx(50).margin(0.05));
  CHECK(centre_of(TextAnchor::End) == Approx(50 - width / 2).margin(0.05));
}

TEST_CASE("a mark over a letter moves no letter after it") {
  const auto centre_of_last = [](const std::string& text) {
    const PdfFile file(plan_of_text(text));
    return page_picture(file.path(), 1, 600, 30).dark_centre({20, 5, 60, 25});
  };
  const std::string x_with_hat = "x\xCC\x82";  // no letter of its own in Unicode: U+0302 is placed
  const Point plain = centre_of_last("Hxx    H");
  const Point marked = centre_of_last("H" + x_with_hat + x_with_hat + "    H");
  CHECK(distance(plain, marked) < 0.01);
  CHECK(extracted(PdfFile(plan_of_text(x_with_hat))) == x_with_hat);
}

TEST_CASE("text is turned anticlockwise about its place") {
  SheetText text = label({50, 50}, "HHHH");
  text.anchor = TextAnchor::Start;
  text.turn = Angle::degrees(90);
  const PdfFile file(whole_plan({100, 100, {}, {text}}));
  const Picture picture = page_picture(file.path(), 1, 150, 100);
  const Point centre = picture.dark_centre({0, 0, 100, 100});
  CHECK(centre.y > 54.0);  // reads upwards
  CHECK(centre.x < 50.0);  // letters stand to the left of the baseline
  CHECK(centre.x > 45.0);
}

TEST_CASE("pdftotext finds each measurement of a tape session's form, on pages without a window") {
  TapeSheet form{.units = {"Write centimetres, for example 74.5"},
                 .cautions = {"The tape lies level."}};
  for (const TapeFigure figure : kTapeFigures) {
    TapeSheetGroup group{figure, {}};
    for (const MeasurementName name : tapes_on(figure)) {
      group.rows.push_back({tape_number(name), name_text(info(name).key), "Level."});
    }
    form.groups.push_back(std::move(group));
  }
  TextFonts fonts;
  PrintOptions options;
  options.paper = paper_named("letter");
  const PdfFile file(tape_sheet(form, options, fonts));
  CHECK(file.page_labels() == std::vector<std::string>{"1", "2", "3"});
  const std::string text = extracted(file);
  CHECK(text.find("Taken by") != std::string::npos);
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    CHECK(text.find(name_text(entry.key)) != std::string::npos);
  }
  const ToolResult sizes = run_tool("pdfinfo -f 1 -l 3 " + file.path());
  CHECK(sizes.output.find("612 x 792 pts") != std::string::npos);  // letter: 8.5 x 11 in
}
