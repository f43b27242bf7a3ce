#pragma once

#include <cstddef>
#include <string_view>

namespace blockwright {

/// Walks over the tokens of a JSON text in step with the parser's events, which do not tell places.
class TokenCursor {
 public:
  struct Span {
    std::size_t begin = 0;
    std::size_t end = 0;
  };

  explicit TokenCursor(std::string_view text) : text_(text) {}

  /// The next token. Requires: the parser has found it well-formed.
  Span next();
  /// Where the next token begins (the text's size at its end).
  [[nodiscard]] std::size_t next_begin() const;
  /// Where the last token ended; 0 before the first.
  [[nodiscard]] std::size_t end() const { return at_; }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace blockwright
