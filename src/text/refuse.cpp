#include "blockwright/text/refuse.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/text/small_letters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

namespace blockwright {
namespace {

constexpr std::size_t kLongestWord = 40;  // longer ones resemble no key
constexpr std::size_t kShortWord = 4;     // up to here two wrong letters make another word

std::string plain(std::string_view word) {
  std::string text = in_small_letters(word);
  for (char& c : text) {
    if (c == '-' || c == ' ') c = '_';
  }
  return text;
}

// Letters to add, drop or change (Levenshtein). Requires: `b` at most kLongestWord letters.
std::size_t letters_apart(std::string_view a, std::string_view b) {
  std::array<std::size_t, kLongestWord + 1> row{};
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = std::exchange(row[0], i + 1);
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({changed, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row[b.size()];
}

std::size_t most_letters_apart(std::string_view word) {
  return word.size() <= kShortWord ? 1 : std::max<std::size_t>(2, word.size() / 3);
}

std::size_t misfit(const std::string& word, std::string_view candidate) {
  if (candidate.starts_with(word + '_')) return 1;
  return letters_apart(candidate, word);
}

}  // namespace

void refuse(std::string code, std::string where, std::string message, std::string hint,
            std::vector<std::string> options) {
  throw InputError(Problem{.severity = Severity::Error,
                           .code = std::move(code),
                           .where = std::move(where),
                           .message = std::move(message),
                           .hint = std::move(hint),
                           .options = std::move(options)});
}

std::string_view nearest(std::string_view word, std::span<const std::string_view> known) {
  if (word.size() < 2 || word.size() > kLongestWord) return {};
  const std::string typed = plain(word);
  std::string_view best;
  std::size_t least = most_letters_apart(word) + 1;
  for (const std::string_view candidate : known) {
    const std::size_t distance = misfit(typed, candidate);
    if (distance >= least) continue;
    least = distance;
    best = candidate;
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> known) {
  const std::string_view best = nearest(word, known);
  if (!best.empty()) return fmt::format("did you mean \"{}\"?", best);
  return fmt::format("known here: {}", fmt::join(known, ", "));
}

}  // namespace blockwright
