#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "text_flow.hpp"
#include "text_placer.hpp"

#include <catch2/catch.hpp>
#include <hb-ot.h>
#include <hb.h>

#include <string>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

// The built-in font and another one, where Debian's fonts-dejavu-core puts them.
constexpr const char* kFont = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";
constexpr const char* kMono = "/usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf";

double shaped_width(const char* file, const std::string& text, double height) {
  hb_blob_t* blob = hb_blob_create_from_file(file);
  hb_face_t* face = hb_face_create(blob, 0);
  hb_font_t* font = hb_font_create(face);
  hb_buffer_t* buffer = hb_buffer_create();
  hb_buffer_add_utf8(buffer, text.data(), static_cast<int>(text.size()), 0, -1);
  hb_buffer_guess_segment_properties(buffer);
  hb_shape(font, buffer, nullptr, 0);
  unsigned count = 0;
  const hb_glyph_position_t* glyphs = hb_buffer_get_glyph_positions(buffer, &count);
  double width = 0.0;
  for (unsigned i = 0; i < count; ++i) width += glyphs[i].x_advance;
  width *= height / hb_face_get_upem(face);
  hb_buffer_destroy(buffer);
  hb_font_destroy(font);
  hb_face_destroy(face);
  hb_blob_destroy(blob);
  return width;
}

}  // namespace

TEST_CASE("a label is measured as the font sets it") {
  TextFonts fonts;
  for (const std::string text :
       {"Front", "cut 1 on the fold", "session 2026-03-14", "WWWW MMMM @@@@", "AVAVA", "office fi",
        "Zażółć gęślą jaźń", "Ωραία Κυρία", "Жужа Щербакова", "Ondřej Dvořák – Řezníček…"}) {
    INFO(text);
    CHECK(fonts.room(text, 4.0).width == Approx(shaped_width(kFont, text, 4.0)));
  }
}

// Each letter of a fixed-width font is as wide as any other.
TEST_CASE("another font is measured by its own metrics") {
  TextFonts mono(Typeface::from_file(kMono).value());
  for (const std::string text : {"iiii llll", "WWWW MMMM", "Zażółć jaźń"}) {
    INFO(text);
    CHECK(mono.room(text, 4.0).width == Approx(shaped_width(kMono, text, 4.0)));
  }
  CHECK(mono.set("iiii").width == Approx(mono.set("WWWW").width));
  Sheet sheet;
  TextDrawing drawing(sheet, mono, "front");
  FreeSpace space({0.0, 0.0, 60.0, 60.0}, 1.0);
  TextPlacer placer(drawing, space);
  CHECK(!placer.block({{"WWWWWWWWWWWWWWWW", 8.0}}, {30.0, 30.0}, 1.0));
  REQUIRE(placer.block({{"iiii", 8.0}}, {30.0, 30.0}, 1.0));
  CHECK(box_of(room_of(sheet.texts.front())).width() == Approx(shaped_width(kMono, "iiii", 8.0)));
}

TEST_CASE("a shortened text fits, ends in an ellipsis and never cuts a letter in two") {
  TextFonts fonts;
  const std::string name = "Żółtowłosa Ωμέγα Жанна Длинноимённая";
  CHECK(shortened(fonts, name, 5.0, 1000.0) == name);
  for (double room = 6.0; room < 150.0; room += 1.0) {
    CAPTURE(room);
    const std::string text = shortened(fonts, name, 5.0, room);
    CHECK(fonts.room(text, 5.0).width <= room);
    if (text == name) continue;
    REQUIRE(text.ends_with("…"));
    const std::string kept = text.substr(0, text.size() - std::string("…").size());
    CHECK(name.starts_with(kept));
    // The byte after what was kept begins a letter.
    CHECK((static_cast<unsigned char>(name[kept.size()]) & 0xC0U) != 0x80U);
  }
  CHECK(shortened(fonts, "abc", 5.0, 0.0) == "…");
}

TEST_CASE("wrapped lines fit and lose no letter") {
  TextFonts fonts;
  const std::string text =
      "Measure the squares before you cut, antidisestablishmentarianism aside.";
  for (const double room : each({20.0, 35.0, 60.0, 500.0})) {
    std::string joined;
    for (const std::string& line : wrapped(fonts, text, 3.0, room)) {
      CHECK(fonts.room(line, 3.0).width <= room);
      CHECK(!line.empty());
      joined += line;
    }
    std::string squeezed, original;
    for (const char c : joined) squeezed += c == ' ' ? "" : std::string(1, c);
    for (const char c : text) original += c == ' ' ? "" : std::string(1, c);
    CHECK(squeezed == original);
  }
  CHECK(wrapped(fonts, "", 3.0, 50.0).empty());
  CHECK(wrapped(fonts, "WWW", 3.0, 0.5).size() == 3);
  CHECK(wrapped(fonts, "WW and W", 3.0, -1.0).size() == 6);
}

TEST_CASE("broken UTF-8 is measured and cut without harm") {
  TextFonts fonts;
  const std::string broken = "\xC3\x28\xF0\x9F\x92";
  CHECK(fonts.room(broken, 3.0).width > 0.0);
  CHECK(fonts.room(shortened(fonts, broken, 3.0, 6.0), 3.0).width <= 6.0);
}

TEST_CASE("right-to-left letters are cut from the end of the word") {
  TextFonts fonts;
  const std::string name = "שולמית";
  const std::string cut = shortened(fonts, name, 5.0, 12.0);
  REQUIRE(cut != name);
  CHECK(name.starts_with(cut.substr(0, cut.size() - std::string("…").size())));
  CHECK(fonts.room(cut, 5.0).width <= 12.0);
}

TEST_CASE("a text reaches as far as it fits, or one letter further") {
  TextFonts fonts;
  const std::string text = "seam allowance 2 cm at shoulder, side; none at AVAVA To WAVE office";
  for (Random& random : each_random(60, 45)) {
    const double most = random.between(0.0, 1.1 * fonts.set(text).width);
    const std::size_t fits = fonts.fitting(text, most), reaches = fonts.reaching(text, most);
    CHECK(fits <= reaches);
    CHECK(reaches <= fits + 1);
    const auto from =
        static_cast<std::size_t>(random.between(0.0, static_cast<double>(text.size())));
    const std::size_t onwards = fonts.reaching(text, most, from);
    const std::size_t alone = from + fonts.reaching(text.substr(from), most);
    CHECK(onwards <= alone + 1);
    CHECK(alone <= onwards + 1);
  }
  CHECK(fonts.reaching(text, fonts.set(text).width + 1e-9) == text.size());
}

TEST_CASE("a heading is never the last of a column: it goes where what it heads begins") {
  TextFonts fonts;
  const auto set_in = [&](double high, double body) {
    Sheet sheet;
    TextDrawing drawing(sheet, fonts, "");
    TextFlow flow({{"before", 3.0, 0.0, false}, {"head", 4.0, 3.0, true}, {"below", body}}, 1.0);
    flow.pour(drawing, {0.0, 0.0, 80.0, high});
    std::vector<std::string> words;
    for (const SheetText& text : sheet.texts) words.push_back(text.text);
    return words;
  };
  using Words = std::vector<std::string>;
  // 1.35 of the letters' height from line to line: 4.05 mm, then 3 + 5.4, then 4.05 or 13.5.
  CHECK(set_in(16.6, 3.0) == Words{"before", "head", "below"});
  CHECK(set_in(16.4, 3.0) == Words{"before"});
  CHECK(set_in(25.8, 10.0) == Words{"before"});
  CHECK(set_in(26.1, 10.0) == Words{"before", "head", "below"});
}
