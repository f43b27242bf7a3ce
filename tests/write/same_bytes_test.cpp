#include "blockwright/write/writers.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

#include <clocale>
#include <cstdlib>
#include <locale>
#include <optional>
#include <sstream>

using namespace blockwright_tests;

namespace {

/// Puts the process under Polish rules (decimal comma, grouped thousands) and back again. The
/// locale is compiled for the test where the machine has none ready.
class PolishLocale {
 public:
  PolishLocale() {
    if (!set()) {
      run_tool("localedef -i pl_PL -f UTF-8 " + folder_.path("pl_PL.UTF-8"));
      setenv("LOCPATH", folder_.path("").c_str(), 1);
      set();
    }
  }
  ~PolishLocale() {
    std::locale::global(std::locale::classic());
    unsetenv("LOCPATH");
  }
  PolishLocale(const PolishLocale&) = delete;
  PolishLocale& operator=(const PolishLocale&) = delete;
  [[nodiscard]] bool ready() const { return ready_; }

 private:
  bool set() {
    try {
      std::locale::global(std::locale("pl_PL.UTF-8"));
      ready_ = true;
    } catch (const std::runtime_error&) {
      ready_ = false;
    }
    return ready_;
  }
  TempFolder folder_;
  bool ready_ = false;
};

Pattern sample_pattern() {
  Piece piece{"front",
              {{"waist", EdgeRole::Hem, Path::through({{0, 0}, {1234.5678, 0.1}})}},
              {},
              {},
              {},
              {{"nape", {1234567.25, 0.5}}},
              {{1.5, 2.5}, {3.5, 4.5}},
              CutOn::Fold};
  return {{piece}, {}};
}

std::string all_formats() {
  std::ostringstream json;
  write_pattern_json(json, sample_pattern());
  return pdf_bytes(sample_plan()) + svg_bytes(sample_sheet()) + json.str();
}

}  // namespace

TEST_CASE("the same drawing gives the same bytes twice in one process") {
  const std::string first = all_formats();
  pdf_bytes(whole_plan({100, 100, {}, {label({5, 5}, "something else, ещё")}}));
  CHECK(all_formats() == first);
}

TEST_CASE("a locale with decimal commas changes no byte") {
  const std::string plain = all_formats();
  const PolishLocale polish;
  if (!polish.ready()) {
    WARN("skipped: no pl_PL.UTF-8 locale and none could be made (package locales)");
    return;
  }
  REQUIRE(std::string(std::localeconv()->decimal_point) == ",");
  std::ostringstream number;
  number << 1234.5;
  REQUIRE(number.str() != "1234.5");
  CHECK(all_formats() == plain);
}

TEST_CASE("the file's id comes from its content") {
  PrintPlan plan = sample_plan();
  const std::string first = pdf_bytes(plan);
  plan.sheet.strokes.pop_back();
  const std::string second = pdf_bytes(plan);
  const auto id_of = [](const std::string& bytes) {
    const std::size_t at = bytes.rfind("/ID");
    REQUIRE(at != std::string::npos);
    return bytes.substr(at, 40);
  };
  CHECK(id_of(first) != id_of(second));
}
