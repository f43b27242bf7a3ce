// Any list of corrections on a block: applied, or refused by name. What was applied leaves whole
// pieces with numbers for lengths, whose seams and notches meet, and can be trued.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "fitting.hpp"
#include "must.hpp"

#include <cmath>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr std::size_t kMostCorrections = 4;

void must_be_finite(const Effect& effect, const std::string& words) {
  for (const MovedLength& moved : effect.moved) {
    must(std::isfinite(moved.before) && std::isfinite(moved.after) &&
             std::isfinite(moved.predicted.value_or(0.0)),
         "lengths are numbers", moved.name + " of " + words);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  const Pattern& block = bytes.one_of(ready_blocks());
  const std::vector<Correction> list = some_corrections(bytes, kMostCorrections);
  const std::string words = words_of(list);
  order_corrections(list);
  try {
    const FittedPattern fitted = apply_corrections(block, list);
    must_pass_checks(fitted.pattern, words.c_str());
    must_have_whole_darts(fitted.pattern, words.c_str());
    for (const Effect& effect : fitted.effects) must_be_finite(effect, words);
    must_be_whole(true_darts(fitted.pattern).pattern, ("trued: " + words).c_str());
  } catch (const InputError& error) {
    must_tell(error.problem(), "", "fit.");
  }
  return 0;
}
