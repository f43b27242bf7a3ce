// Any list of corrections on a block: applied, or refused by name. What was applied leaves whole
// pieces with numbers for lengths, can be put in the fitter's order, and can be trued.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/order.hpp"
#include "bytes.hpp"
#include "must.hpp"

#include <algorithm>
#include <cmath>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr std::size_t kMostCorrections = 4;
constexpr double kMostAmount = 100.0;  // mm, of client files

AmountAs some_way(Bytes& bytes, const CorrectionWords& words) {
  return bytes.below(16) == 15 ? bytes.one_of(kAmountWays) : bytes.one_of(words.readings);
}

BodySide some_side(Bytes& bytes, const CorrectionWords& words) {
  const BodySide side = bytes.below(4) == 3 ? bytes.one_of(kBodySides) : BodySide::Both;
  return side == BodySide::Both && words.one_sided ? BodySide::Left : side;
}

// Most amounts of a fitting are small.
double some_amount(Bytes& bytes) {
  return bytes.flag() ? bytes.amount(0.0, 15.0) : bytes.amount(0.0, kMostAmount);
}

std::vector<Correction> some_corrections(Bytes& bytes) {
  std::vector<Correction> list;
  while (!bytes.done() && list.size() < kMostCorrections) {
    const CorrectionWords& words = bytes.one_of(correction_words());
    Correction one;
    one.action = words.action;
    one.place = words.place;
    one.by = some_amount(bytes);
    one.as = some_way(bytes, words);
    one.side = some_side(bytes, words);
    one.withdrawn = bytes.below(16) == 15;
    list.push_back(one);
  }
  return list;
}

std::string words_of(const std::vector<Correction>& list) {
  std::string text;
  for (const Correction& one : list) {
    text += one.action + " " + one.place + " " + std::to_string(one.by) + " " +
            std::string(amount_word(one.as)) + " " + std::string(side_word(one.side)) +
            (one.withdrawn ? " withdrawn" : "") + "; ";
  }
  return text;
}

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
  const std::vector<Correction> list = some_corrections(bytes);
  const std::string words = words_of(list);
  order_corrections(list);
  try {
    const FittedPattern fitted = apply_corrections(block, list);
    must_be_whole(fitted.pattern, words.c_str());
    must_have_whole_darts(fitted.pattern, words.c_str());
    for (const Effect& effect : fitted.effects) must_be_finite(effect, words);
    must_be_whole(true_darts(fitted.pattern).pattern, ("trued: " + words).c_str());
  } catch (const InputError& error) {
    must_tell(error.problem(), "", "fit.");
  }
  return 0;
}
