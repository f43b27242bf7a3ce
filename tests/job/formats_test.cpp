#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <string>

namespace blockwright {
namespace {

std::string formats_page() {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/docs/formats.md");
  REQUIRE(file.good());
  return {std::istreambuf_iterator<char>(file), {}};
}

/// "60 to 160 cm", "5 to 45 degrees".
std::string limits_of(const MeasurementInfo& entry) {
  const bool angle = entry.kind == MeasurementKind::Angle;
  const double unit = angle ? 1.0 : 10.0;
  return trimmed(entry.least.number() / unit, 1) + " to " + trimmed(entry.most.number() / unit, 1) +
         (angle ? " degrees" : " cm");
}

/// What the page says of one measurement: from its bullet to the end of the paragraph's two lines.
std::string bullet_of(const std::string& page, const MeasurementInfo& entry) {
  const std::size_t begin = page.find("- **`" + std::string(entry.key) + "`**: ");
  if (begin == std::string::npos) return {};
  const std::size_t first_end = page.find('\n', begin);
  return page.substr(begin, page.find('\n', first_end + 1) - begin);
}

bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("docs/formats.md tells of every measurement in the words and limits of the catalogue") {
  const std::string page = formats_page();
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.key);
    const std::string bullet = bullet_of(page, entry);
    CHECK(contains(bullet, entry.iso_term));
    CHECK(contains(bullet, entry.how));
    CHECK(contains(bullet, "*Closes:* "));
    CHECK(contains(bullet, "*Limits:* " + limits_of(entry) + "."));
  }
}

TEST_CASE("docs/formats.md tells the default ease of every measurement that has one") {
  const std::string page = formats_page();
  const Ease ease = Ease::of_toile();
  int told = 0;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (ease[entry.name].number() == 0.0) continue;
    INFO(entry.key);
    const std::string cell = "| `" + std::string(entry.key) + "` | ";
    if (entry.name == MeasurementName::FrontBustWidth) {
      CHECK(contains(page, cell + "half the bust ease |"));
      CHECK(ease[entry.name] == 0.5 * ease[MeasurementName::BustGirth]);
    } else {
      const char* unit = entry.kind == MeasurementKind::Angle ? " degrees" : "";
      CHECK(contains(page, cell + trimmed(ease[entry.name].number(), 1) + unit + " |"));
    }
    ++told;
  }
  CHECK(told > 10);
}

}  // namespace
}  // namespace blockwright
