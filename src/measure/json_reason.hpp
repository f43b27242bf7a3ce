#pragma once

#include <string>
#include <string_view>

namespace blockwright {

struct Reason {
  std::string message;
  std::string hint;
};

/// Why the text is not JSON, in words that help someone who never heard of JSON: judged from the
/// token at byte `at`, the first that the parser could not take, and what stands before it.
/// `complete`: the file's one value was already closed.
Reason why_not_json(std::string_view text, std::size_t at, bool complete);

}  // namespace blockwright
