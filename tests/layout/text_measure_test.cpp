#include "text_measure.hpp"

#include "support/each.hpp"

#include <catch2/catch.hpp>
#include <hb-ot.h>
#include <hb.h>

#include <string>
#include <vector>

using namespace blockwright;

namespace {

// The font that the estimate stands for, where Debian's fonts-dejavu-core puts it.
constexpr const char* kFont = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";

double shaped_width(const std::string& text, double height) {
  hb_blob_t* blob = hb_blob_create_from_file(kFont);
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

TEST_CASE("the estimate is never below what the font takes, and not far above for ASCII") {
  for (const std::string text :
       {"Front", "cut 1 on the fold", "session 2026-03-14", "WWWW MMMM @@@@", "iiii llll ....",
        "seam allowance 2 cm at side and shoulder; none at waist, armhole and neckline"}) {
    INFO(text);
    CHECK(text_width(text, 4.0) >= shaped_width(text, 4.0) * 0.999);
    CHECK(text_width(text, 4.0) <= shaped_width(text, 4.0) * 1.06);
  }
  for (const std::string text :
       {"Zażółć gęślą jaźń", "Ωραία Κυρία", "Жужа Щербакова", "Ondřej Dvořák – Řezníček…"}) {
    INFO(text);
    CHECK(text_width(text, 4.0) >= shaped_width(text, 4.0));
  }
}

TEST_CASE("a shortened text fits, ends in an ellipsis and never cuts a letter in two") {
  const std::string name = "Żółtowłosa Ωμέγα Жанна Длинноимённая";
  CHECK(shortened(name, 5.0, 1000.0) == name);
  for (double room = 6.0; room < 150.0; room += 1.0) {
    CAPTURE(room);
    const std::string text = shortened(name, 5.0, room);
    CHECK(text_width(text, 5.0) <= room);
    if (text == name) continue;
    REQUIRE(text.ends_with("…"));
    const std::string kept = text.substr(0, text.size() - std::string("…").size());
    CHECK(name.starts_with(kept));
    // The byte after what was kept begins a letter.
    CHECK((static_cast<unsigned char>(name[kept.size()]) & 0xC0U) != 0x80U);
  }
  CHECK(shortened("abc", 5.0, 0.0) == "…");
}

TEST_CASE("wrapped lines fit and lose no letter") {
  const std::string text =
      "Measure the squares before you cut, antidisestablishmentarianism aside.";
  for (const double room : each({20.0, 35.0, 60.0, 500.0})) {
    std::string joined;
    for (const std::string& line : wrapped(text, 3.0, room)) {
      CHECK(text_width(line, 3.0) <= room);
      CHECK(!line.empty());
      joined += line;
    }
    std::string squeezed, original;
    for (const char c : joined) squeezed += c == ' ' ? "" : std::string(1, c);
    for (const char c : text) original += c == ' ' ? "" : std::string(1, c);
    CHECK(squeezed == original);
  }
  CHECK(wrapped("", 3.0, 50.0).empty());
  CHECK(wrapped("WWW", 3.0, 0.5).size() == 3);
}

TEST_CASE("text on one line has no line ends or control characters") {
  CHECK(on_one_line("a\nb\tc\x01"
                    "d\x7f") == "a b c d ");
  CHECK(on_one_line("Łucja") == "Łucja");
}

TEST_CASE("broken UTF-8 is measured and cut without harm") {
  const std::string broken = "\xC3\x28\xF0\x9F\x92";
  CHECK(text_width(broken, 3.0) > 0.0);
  CHECK(text_width(shortened(broken, 3.0, 3.5), 3.0) <= 3.5);
}
