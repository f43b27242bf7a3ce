#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/text/input_line.hpp"
#include "blockwright/text/small_letters.hpp"

#include <algorithm>
#include <array>
#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

namespace blockwright {

/// Words that end the questions, in small letters: as people type them at any prompt.
inline bool ends_questions(std::string_view word) {
  constexpr std::array words{"done", "end", "exit", "q", "quit", "save"};
  return std::ranges::find(words, word) != words.end();
}

/// Asks the person at the terminal.
class Prompt {
 public:
  Prompt(std::istream& in, std::ostream& out) : in_(in), out_(out) {}

  [[nodiscard]] std::ostream& out() const { return out_; }

  /// One line of an answer; nothing at the end of the input. Throws UsageError "input.line".
  [[nodiscard]] std::optional<std::string> answer(const std::string& question) const {
    out_ << question << " > " << std::flush;
    const auto line = next_line(in_, kLongestAnswer);
    if (!line) return std::nullopt;
    if (line->is_whole) return line->text;
    throw UsageError({Severity::Error, "input.line", "standard input",
                      "the answer is longer than " + std::to_string(kLongestAnswer) + " bytes",
                      "answer in one short line; what was added before is kept"});
  }

  /// A number from 1 to `count`, counted from 0; nothing for an empty line or the end.
  [[nodiscard]] std::optional<std::size_t> choice(const std::string& question,
                                                  std::size_t count) const {
    while (const auto line = answer(question)) {
      if (line->empty()) return std::nullopt;
      const auto number = number_in<std::size_t>(*line);
      if (number && *number >= 1 && *number <= count) return *number - 1;
      out_ << "  a number from 1 to " << count << ", or nothing to leave\n";
    }
    return std::nullopt;
  }

  void show(std::size_t number, std::string_view text) const {
    out_ << "  " << number << ". " << text << "\n";
  }

 private:
  static constexpr std::size_t kLongestAnswer = 1000;  // bytes: far more than any answer needs

  std::istream& in_;
  std::ostream& out_;
};

}  // namespace blockwright
