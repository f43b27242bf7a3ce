// Any bytes as a style file: read, or refused by name; every step that was read has its words.
#include "blockwright/base/error.hpp"
#include "blockwright/style/style.hpp"
#include "must.hpp"

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr const char* kFile = "style.json";

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  try {
    const Style style = read_style(std::string(data, data + size), kFile);
    must(!style.name.empty(), "a style has a name");
    for (const StyleStep& step : style.steps) {
      must(!step_name(step).empty() && !words_of(step).empty(), "a step has name and words");
    }
  } catch (const InputError& error) {
    must_tell(error.problem(), kFile, "style.");
  }
  return 0;
}
