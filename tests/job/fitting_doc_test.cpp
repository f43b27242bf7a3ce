// The table of docs/fitting.md that says what 1 cm of each correction does, and what moves besides,
// computed anew. BLOCKWRIGHT_APPROVE=1 in the environment writes them.
#include "blockwright/base/number_text.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/text/units.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <optional>

using namespace blockwright;

namespace {

const std::string kRoot = BLOCKWRIGHT_SOURCE_DIR;
const std::string kPage = kRoot + "/docs/fitting.md";
constexpr Length kAsked = Length::cm(1.0);
constexpr const char* kHead =
    "| row | correction | what you watch | bust | waist | armhole | neck | shoulder | side | "
    "centre "
    "front | centre back | neck to bust |\n"
    "|---|---|---|---|---|---|---|---|---|---|---|---|\n";
constexpr const char* kColumns[] = {"bust_line",
                                    "waist",
                                    "armhole",
                                    "neckline",
                                    "front.shoulder",
                                    "front.side",
                                    "front.centre_front",
                                    "back.centre_back",
                                    "neck_to_bust"};
constexpr const char* kBesides = "<!-- besides, computed -->\n";

// The demo client's block.
const Pattern& block() {
  static const Pattern drafted = [] {
    const std::string file = kRoot + "/examples/wardrobe/ondine-marsh.json";
    std::ifstream in(file);
    const Client client = read_client(in, file);
    return draft_block(fill_in(session_of(client, "", file)), Ease::of(client)).pattern;
  }();
  return drafted;
}

// The pairs of words that do something of their own: others are the same correction in other words.
std::vector<CorrectionWords> pairs_of_words() {
  std::vector<CorrectionWords> pairs;
  const auto same = [](const CorrectionWords& a, const CorrectionWords& b) {
    const bool by_place = !fitting_row(a.row).traits.usual_place.empty();
    return a.row == b.row && a.sign == b.sign && (!by_place || a.place == b.place);
  };
  for (const CorrectionWords& words : correction_words()) {
    const auto is_same = [&](const CorrectionWords& other) { return same(words, other); };
    if (std::ranges::none_of(pairs, is_same)) pairs.push_back(words);
  }
  return pairs;
}

std::optional<Effect> effect_of(const CorrectionWords& words) {
  const BodySide side = words.one_sided ? BodySide::Right : BodySide::Both;
  try {
    return apply_rows(block(), {{words.row, words.sign, kAsked.mm(), AmountAs::Length, side,
                                 std::string(words.place)}})
        .effects.front();
  } catch (const InputError&) {
    return std::nullopt;
  }
}

std::string cm_of(const Effect& effect, std::string_view name) {
  const auto found = std::ranges::find(effect.moved, name, &MovedLength::name);
  const double cm = found == effect.moved.end() ? 0.0 : found->change() / 10.0;
  if (std::abs(cm) < 0.05) return "-";
  return (cm > 0.0 ? "+" : "") + fixed(cm, 1);
}

std::string watched_text(const CorrectionWords& words, const Effect& effect) {
  std::vector<std::string> lengths;
  for (const LengthMoved& length : watched_at(words.row, words.place).lengths) {
    lengths.push_back(name_text(std::string(length.name)) + " " + cm_of(effect, length.name));
  }
  return lengths.empty() ? "see below" : fmt::format("{}", fmt::join(lengths, ", "));
}

std::string link_to(CorrectionRow row) {
  std::string name(fitting_row(row).name);
  std::ranges::replace(name, ' ', '-');
  return fmt::format("[{0}](#{0}-{1})", number_of(row), name);
}

std::string line_of(const CorrectionWords& words) {
  std::string line = fmt::format("| {} | `{} {}` |", link_to(words.row), words.action, words.place);
  const auto effect = effect_of(words);
  if (!effect) return line + " 1 cm is too much for this block | | | | | | | | | |\n";
  line += " " + watched_text(words, *effect) + " |";
  for (const char* column : kColumns) line += " " + cm_of(*effect, column) + " |";
  return line + "\n";
}

std::string table_computed() {
  std::string table = kHead;
  for (const CorrectionWords& words : pairs_of_words()) table += line_of(words);
  return table;
}

// Each sentence once, with the words it is said of.
std::string besides_computed() {
  std::vector<std::pair<std::string_view, std::vector<std::string>>> said;
  for (const CorrectionWords& words : pairs_of_words()) {
    const std::string_view says = watched_at(words.row, words.place).in_words(words.sign);
    if (says.empty()) continue;
    auto found = std::ranges::find(said, says, &decltype(said)::value_type::first);
    if (found == said.end()) found = said.insert(said.end(), {says, {}});
    found->second.push_back(fmt::format("`{} {}`", words.action, words.place));
  }
  std::string list = kBesides;
  for (const auto& [says, words] : said) {
    list += fmt::format("- {}: {}.\n", fmt::join(words, ", "), says);
  }
  return list;
}

// A block of the page that begins so, up to the next empty line.
void compare_or_write(const std::string& head, const std::string& computed) {
  std::string page = blockwright_tests::read_bytes(kPage);
  const std::size_t from = page.find(head);
  REQUIRE(from != std::string::npos);
  const std::size_t count = std::min(page.find("\n\n", from) + 1, page.size()) - from;
  if (std::getenv("BLOCKWRIGHT_APPROVE") != nullptr) {
    page.replace(from, count, computed);
    std::ofstream(kPage, std::ios::binary) << page;
    return;
  }
  CHECK(page.substr(from, count) == computed);
}

}  // namespace

TEST_CASE("The page on fitting says what 1 cm of each correction does, as computed") {
  compare_or_write(kHead, table_computed());
}

TEST_CASE("The page on fitting says what else moves, in the words of the table of corrections") {
  compare_or_write(kBesides, besides_computed());
}
