// Files beside a set: their names, and the list that says what a killed run was about to do.
#include "file_set.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

const std::vector<SetEntry> kEntries = {{"a.svg", true}, {"line\nbreak \xFF+-.pdf", false}};

}  // namespace

TEST_CASE("Names beside say whose they are, and no other name is taken for one") {
  const std::string stem = set_stem(4711, 12);
  for (const std::string& name : {list_name(stem), new_name(stem, 0), old_name(stem, 10)}) {
    INFO(name);
    CHECK(name.front() == '.');
    CHECK(set_stem_of(name) == stem);
  }
  for (const char* other : {"",
                            ".",
                            ".blockwright-",
                            ".blockwright-lock",
                            ".blockwright-1",
                            ".blockwright-1-2",
                            ".blockwright-1-2.",
                            ".blockwright-1-2.new",
                            ".blockwright-1-2.x.new",
                            ".blockwright-1-2.3.newer",
                            ".blockwright-1-2.3.bak",
                            ".blockwright--2.set",
                            ".blockwright-1-.set",
                            ".blockwright-a-2.set",
                            ".blockwright-1-2.sets",
                            "blockwright-1-2.set",
                            " .blockwright-1-2.set",
                            ".blockwright-1-2.3.new.json",
                            ".ondine-marsh-toile.blockwright-done",
                            "ondine-marsh-toile.svg"}) {
    INFO(other);
    CHECK_FALSE(set_stem_of(other));
  }
}

TEST_CASE("A list reads back, whatever bytes the names hold") {
  const auto list = set_list_in(set_list_text(kEntries));
  REQUIRE(list);
  CHECK(list->entries == kEntries);
  CHECK_FALSE(list->taken_back);
  const auto back = set_list_in(set_list_text(kEntries) + taken_back_text());
  REQUIRE(back);
  CHECK(back->entries == kEntries);
  CHECK(back->taken_back);
}

TEST_CASE("A list that was cut off is none: nothing had been put in its place yet") {
  const std::string text = set_list_text(kEntries);
  for (std::size_t size = 0; size < text.size(); ++size) {
    CAPTURE(size);
    CHECK_FALSE(set_list_in(text.substr(0, size)));
  }
}

TEST_CASE("A list that names what lies outside its folder is none") {
  for (const char* name : {"../victim", "/etc/passwd", "sub/victim", ".", "..", ""}) {
    INFO(name);
    CHECK_FALSE(set_list_in(set_list_text({{"a.svg", true}, {name, true}})));
    CHECK_FALSE(set_list_in(set_list_text({{name, false}})));
  }
  CHECK_FALSE(set_list_in("not a list"));
}
