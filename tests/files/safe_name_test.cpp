// Names of outputs: letters of any script stay, whatever could lead elsewhere or mislead does not.
#include "blockwright/files/safe_name.hpp"

#include "support/each.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

TEST_CASE("A plain name of any script stays as it is") {
  for (const char* name : each({"ondine-marsh", "Odile_2", "Анна", "שרה", "Żółć", "山田花子",
                                "佐々木", "Ngọc", "a.b", "नीना", "José", "Zoe\xCC\x88"})) {
    CHECK(safe_stem(std::string("people/") + name + ".json") == name);
  }
}

TEST_CASE("Odd names are made safe") {
  const std::vector<std::pair<std::string, std::string>> names = {
      {"a b.json", "a-b"},
      {"it's \"Odile\".json", "it-s--Odile-"},
      {"line\nbreak\ttab\x1B[31m.json", "line-break-tab--31m"},
      {"$(rm -r x);`y`|z&.json", "rm--r-x---y--z-"},
      {"back\\slash*?<>:.json", "back-slash-----"},
      {".hidden.json", "hidden"},
      {"...json", "client"},
      {"-o.json", "o"},
      {"--out.json", "out"},
      {"-.-.x.json", "x"},
      {"..", "client"},
      {".", "client"},
      {"people/", "client"},
      {"", "client"},
      {"../../etc/passwd", "passwd"},
      {"..\\..\\x.json", "x"},
      {"\xE2\x88\x95"
       "etc\xE2\x81\x84"
       "x\xEF\xBC\x8F"
       "y.json",
       "etc-x-y"},                                              // strokes
      {"\xEF\xBC\x8E\xEF\xBC\x8E\xE2\x80\xA4.json", "client"},  // full stops
      {"\xE2\x80\xAE"
       "gvs.anna.json",
       "gvs.anna"},                              // turns the writing round
      {"an\xE2\x80\x8Bna.json", "an-na"},        // space of no width
      {"an\xC2\xA0na.json", "an-na"},            // space that does not break
      {"\xE2\x80\x90x\xE2\x80\x91.json", "x-"},  // hyphens
      {"\xFF\xFE"
       "a\x80.json",
       "a-"},  // no UTF-8
      {"\xC0\xAE\xC0\xAE\xC0\xAF"
       "a.json",
       "a"},  // dots and stroke, overlong
      {"\xED\xA0\x80"
       "a.json",
       "a"},                                       // half of a pair
      {"cut\xE5\xB1.json", "cut--"},               // a letter cut off
      {"\xF0\x9F\xA7\xB5thread.json", "thread"}};  // a picture
  for (const auto& [name, stem] : names) {
    INFO(name);
    CHECK(safe_stem(name) == stem);
  }
}

TEST_CASE("A long name is cut between letters") {
  std::string letters(300, 'a');
  CHECK(safe_stem(letters.append(".json")) == std::string(80, 'a'));
  letters.clear();
  for (int i = 0; i < 100; ++i) letters += "\xE5\xB1\xB1";
  CHECK(safe_stem(letters) == letters.substr(0, 78));
}

TEST_CASE("Letters that look alike stay different names") {
  CHECK(safe_stem("anna.json") != safe_stem("\xD0\xB0nna.json"));  // Cyrillic a
}

TEST_CASE("Any bytes give a name that is short, plain to the shell and not hidden") {
  for (Random& random : each_random(20000, 5)) {
    std::string path;
    for (int size = random.whole(0, 300); size > 0; --size) {
      path += static_cast<char>(random.whole(1, 255));
    }
    const std::string stem = safe_stem(path);
    const bool sound = !stem.empty() && stem.size() <= 80 && stem[0] != '.' && stem[0] != '-';
    const bool plain = stem.find_first_of("/\\ \"'`$&|;<>()*?[]{}!#~\n\t\x7F") == std::string::npos;
    if (!sound || !plain) FAIL("from " << path << " came " << stem);
    if (safe_stem(stem + ".json") != stem) FAIL(stem << " does not stay");
  }
  SUCCEED("20000 names");
}
