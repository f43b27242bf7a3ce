// The protections that .ci/hardening.cmake asks for are in the program (ELF, as readelf shows it).
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <string>

namespace {

std::string readelf(const std::string& what) {
  const auto result =
      blockwright_tests::run_tool("readelf --wide " + what + " " + blockwright_tests::kProgramFile);
  REQUIRE(result.exit_code == 0);
  return result.output;
}

bool holds(const std::string& text, const std::string& word) {
  return text.find(word) != std::string::npos;
}

}  // namespace

TEST_CASE("The program is built with the linker's and the compiler's protections") {
  CHECK(holds(readelf("--file-header"), "DYN"));  // may be loaded at any address
  const std::string segments = readelf("--segments");
  CHECK(holds(segments, "GNU_RELRO"));  // tables of addresses end up read only
  CHECK(
      holds(segments,
            "GNU_STACK      0x000000 0x0000000000000000 0x0000000000000000 0x000000 0x000000 RW "));
  CHECK(holds(readelf("--dynamic"), "NOW"));  // and are complete from the start
  const std::string symbols = readelf("--dyn-syms");
  CHECK(holds(symbols, "__stack_chk_fail"));       // -fstack-protector-strong
  CHECK(holds(symbols, "__glibcxx_assert_fail"));  // -D_GLIBCXX_ASSERTIONS
}
