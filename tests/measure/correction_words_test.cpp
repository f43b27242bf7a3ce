// The words of corrections: the whole fitting catalogue of 50 rows can be said in them.
#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <set>
#include <string>

namespace blockwright {
namespace {

constexpr int kRows = kCorrectionCount;

TEST_CASE("each row of the fitting catalogue has a pair of words, and the rows stand together") {
  std::set<int> rows;
  int before = 0;
  for (const CorrectionWords& words : each(correction_words())) {
    CHECK(number_of(words.row) >= before);
    before = number_of(words.row);
    rows.insert(before);
  }
  CHECK(rows.size() == kRows);
  CHECK(*rows.begin() == 1);
  CHECK(*rows.rbegin() == kRows);
}

TEST_CASE("each pair of words stands once and is found") {
  std::set<std::string> pairs;
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << ' ' << words.place);
    CHECK(pairs.insert(std::string(words.action) + ' ' + std::string(words.place)).second);
    CHECK(find_correction_words(words.action, words.place) == &words);
  }
  CHECK(find_correction_words("lower", "across_back") == nullptr);
  CHECK(find_correction_words("front_neck", "lower") == nullptr);
  CHECK(find_correction_words("", "") == nullptr);
}

// Rows that the catalogue writes with both directions in one, common practice, no source.
TEST_CASE("rows of two directions have words for both") {
  for (const int row : {7,  8,  13, 14, 15, 16, 17, 21, 22, 25, 26, 29, 30,
                        31, 38, 39, 40, 41, 44, 45, 46, 47, 48, 49, 50}) {
    INFO(row);
    std::set<int> signs;
    for (const CorrectionWords& words : correction_words()) {
      if (number_of(words.row) == row) signs.insert(words.sign);
    }
    CHECK(signs == std::set<int>{-1, 1});
  }
}

// Two pairs of opposite words at one place are one row with two signs, or two rows that the
// catalogue writes out.
TEST_CASE("what is done and its opposite are never the same row and direction") {
  const std::set<std::set<int>> twins{{1, 2},   {3, 4},   {9, 10},  {11, 12}, {19, 20},
                                      {27, 28}, {33, 34}, {35, 37}, {42, 43}};
  for (const CorrectionWords& words : correction_words()) {
    const CorrectionWords* other =
        find_correction_words(opposite_action(words.action), words.place);
    if (other == nullptr) continue;
    INFO(words.action << ' ' << words.place);
    const bool one_row = words.row == other->row && words.sign == -other->sign;
    CHECK((one_row || twins.contains({number_of(words.row), number_of(other->row)})));
    CHECK(words.one_sided == other->one_sided);
  }
}

TEST_CASE("each action has an opposite, whose opposite it is") {
  for (const std::string_view action : correction_actions()) {
    INFO(action);
    const std::string_view opposite = opposite_action(action);
    CHECK(opposite != action);
    CHECK(std::ranges::count(correction_actions(), opposite) == 1);
    CHECK(opposite_action(opposite) == action);
  }
  CHECK(opposite_action("mend").empty());
}

TEST_CASE("words are plain: small letters with underscores") {
  std::vector<std::string_view> all(correction_actions().begin(), correction_actions().end());
  all.insert(all.end(), correction_places().begin(), correction_places().end());
  CHECK(std::set<std::string_view>(all.begin(), all.end()).size() == all.size());
  for (const std::string_view word : all) {
    INFO(word);
    CHECK(word.find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string_view::npos);
  }
}

bool may_be(const CorrectionWords& words, AmountAs as) {
  return std::ranges::find(words.readings, as) != words.readings.end();
}

// Common practice, no source: a tuck of depth p takes out 2 p, a seam p beyond its line takes p
// from each piece, and both halves take twice that.
TEST_CASE("an amount that can be read in two ways must be said; one that cannot need not") {
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << ' ' << words.place);
    CHECK_FALSE(words.readings.empty());
    // Both shoulder seams: pinned or marked, each piece loses what is read.
    const bool all_the_same = words.place == "shoulders";
    // A side neck point moves by a length, unless both together are said.
    const bool is_mark = words.place == "side_neck";
    CHECK(words.must_say == (words.readings.size() > 1 && !all_the_same && !is_mark));
    const bool of_cloth = words.action == "take_in" || words.action == "let_out";
    if (of_cloth) CHECK(words.must_say);
    if (words.action == "let_out" && !words.place.ends_with("dart")) {
      CHECK_FALSE(may_be(words, AmountAs::TuckDepth));
    }
    if (words.action == "lower" || words.action == "forward") {
      CHECK(words.readings == std::vector<AmountAs>{AmountAs::Length});
    }
  }
}

TEST_CASE("what the fitter watches is said of each pair of words, and of no place without words") {
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << ' ' << words.place);
    const Watched& watched = watched_at(words.row, words.place);
    CHECK((watched.place.empty() || watched.place == words.place));
    CHECK_FALSE((watched.lengths.empty() && watched.says.empty()));
    CHECK_FALSE(watched.says.ends_with('.'));
  }
  for (const FittingRow& row : fitting_catalogue()) {
    INFO(row.number());
    for (const Watched& watched : row.watched) {
      if (watched.place.empty()) continue;
      CHECK(std::ranges::count(row.words, watched.place, &RowWords::place) > 0);
      CHECK(&watched_at(row.row, watched.place) == &watched);
    }
    CHECK(&watched_at(row.row, "") == &watched_at(row.row, row.traits.usual_place));
  }
}

TEST_CASE("corrections of one side are those of the three rows for uneven bodies") {
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << ' ' << words.place);
    const int row = number_of(words.row);
    CHECK(words.one_sided == (row >= 46 && row <= 48));
    if (words.one_sided) CHECK_FALSE(may_be(words, AmountAs::WholeGirth));
  }
}

TEST_CASE("the words for ways and sides are read as they are written") {
  for (const AmountWay& way : kAmountWays) {
    CHECK(amount_named(way.word) == way.as);
    CHECK(&amount_way(way.as) == &way);
    CHECK_FALSE(way.meaning.empty());
  }
  for (const std::string_view word : each(kSideWords)) CHECK(side_word(*side_named(word)) == word);
  CHECK_FALSE(amount_named("Length").has_value());
  CHECK_FALSE(amount_named("").has_value());
  CHECK_FALSE(side_named("centre").has_value());
}

std::vector<std::string> lines_of(const std::string& path) {
  std::ifstream file(path);
  REQUIRE(file.good());
  std::vector<std::string> lines;
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  return lines;
}

bool holds(const std::string& text, std::string_view word) {
  return text.find('`' + std::string(word) + '`') != std::string::npos;
}

/// The line of the table with this pair: place | actions | what it means | ways.
std::string line_of(const std::vector<std::string>& lines, const CorrectionWords& words) {
  for (const std::string& line : lines) {
    const std::size_t place_end = line.find('|', 1);
    if (!line.starts_with("| `") || place_end == std::string::npos) continue;
    const std::string actions = line.substr(place_end, line.find('|', place_end + 1) - place_end);
    if (holds(line.substr(0, place_end), words.place) && holds(actions, words.action)) return line;
  }
  return {};
}

TEST_CASE("docs/fitting.md lists each pair with the ways to read its amount") {
  const auto lines = lines_of(BLOCKWRIGHT_SOURCE_DIR "/docs/fitting.md");
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << ' ' << words.place);
    const std::string line = line_of(lines, words);
    REQUIRE_FALSE(line.empty());
    const std::string ways = line.substr(line.rfind('|', line.size() - 2));
    const bool either = ways.find(" also ") != std::string::npos;
    for (const AmountWay& way : kAmountWays) {
      if (may_be(words, way.as)) CHECK(holds(ways, way.word));
      if (!may_be(words, way.as) && !(either && way.as == AmountAs::TuckDepth)) {
        CHECK_FALSE(holds(ways, way.word));
      }
    }
  }
}

}  // namespace
}  // namespace blockwright
