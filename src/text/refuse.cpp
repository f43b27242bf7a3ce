#include "blockwright/text/refuse.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/text/utf8.hpp"

#include <utility>

namespace blockwright {
namespace {

constexpr std::size_t kMostShown = 40;

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

std::string shown(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_at(text, at);
    if (at + character.size > kMostShown) return result + "...";
    result += is_control(character.code) ? std::string("?") : text.substr(at, character.size);
    at += character.size;
  }
  return result;
}

}  // namespace blockwright
