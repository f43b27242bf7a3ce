// What the fonts say of themselves.
#include "blockwright/text/text_fonts.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

// Its own name table: `fc-scan --format "%{postscriptname}, %{family}"` of Debian's
// fonts-dejavu-core.
TEST_CASE("A font is named as it names itself, in letters and digits only") {
  const TextFonts fonts;
  CHECK(fonts.typeface(0).name() == "DejaVuSans");
  CHECK(fonts.typeface(0).family() == "DejaVu Sans");
  const auto bold = Typeface::from_file("/usr/share/fonts/truetype/dejavu/DejaVuSansMono-Bold.ttf");
  REQUIRE(bold);
  CHECK(bold->name() == "DejaVuSansMonoBold");  // its table: DejaVuSansMono-Bold
  CHECK(bold->family() == "DejaVu Sans Mono");
}
