#include "blockwright/base/error.hpp"

#include <utility>

namespace blockwright {

Error::Error(Problem problem)
    : std::runtime_error(to_text(problem)), problem_(std::move(problem)) {}

void require(bool condition, const char* text) {
  if (!condition) throw std::logic_error(std::string("internal error: ") + text);
}

}  // namespace blockwright
