// The stamp beside a set of files: of what it was made, and what it was.
#include "blockwright/files/stamp.hpp"

#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace blockwright;

namespace {

Stamp sample() { return stamp_of("key", {{"out/a.svg", "A"}, {"out/b.pdf", "B"}}, R"({"n":[1]})"); }

}  // namespace

TEST_CASE("A stamp is read as it was written; anything else is no stamp") {
  const auto read = read_stamp(stamp_text(sample()));
  REQUIRE(read);
  CHECK(read->key == "key");
  CHECK(read->line == R"({"n":[1]})");
  REQUIRE(read->outputs.size() == 2);
  CHECK(read->outputs[0].name == "a.svg");
  CHECK(read->outputs[1].hash == content_hash("B"));
  for (const char* text :
       {"", "{}", "[", R"({"format": "blockwright-done-1", "key": 1})",
        R"({"format": "blockwright-done-2", "key": "", "outputs": [], "line": 1})"}) {
    INFO(text);
    CHECK_FALSE(read_stamp(text));
  }
}

TEST_CASE("A stamp holds as long as its files are there as they were written") {
  MemoryFiles files(std::map<std::string, std::string>{{"out/a.svg", "A"}, {"out/b.pdf", "B"}});
  CHECK(is_still_there(sample(), "out", files));
  files.files["out/b.pdf"] = "b";
  CHECK_FALSE(is_still_there(sample(), "out", files));
  files.files.erase("out/b.pdf");
  CHECK_FALSE(is_still_there(sample(), "out", files));
}

TEST_CASE(
    "The key is another one for other parts, for other cuts between them, and in other order") {
  CHECK(stamp_key({"ab", "c"}) == stamp_key({"ab", "c"}));
  CHECK(stamp_key({"ab", "c"}) != stamp_key({"a", "bc"}));
  CHECK(stamp_key({"ab", "c"}) != stamp_key({"c", "ab"}));
  CHECK(stamp_key({"ab", "c"}) != stamp_key({"ab"}));
}

// Vector of XXH3_128bits of nothing, seed 0, in the library's own sanity tests (from memory).
TEST_CASE("The hash of contents is XXH3 of 128 bits in hexadecimal digits") {
  CHECK(content_hash("") == "99aa06d3014798d86001c324468d497f");
  CHECK(stamp_path("out/ondine-toile") == "out/.ondine-toile.blockwright-done");
}
