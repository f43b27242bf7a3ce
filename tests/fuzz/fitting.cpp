#include "fitting.hpp"

namespace blockwright_fuzz {

using namespace blockwright;

namespace {

constexpr double kMostAmount = 100.0;  // mm, of client files

AmountAs some_way(Bytes& bytes, const CorrectionWords& words) {
  return bytes.below(16) == 15 ? bytes.one_of(kAmountWays).as : bytes.one_of(words.readings);
}

BodySide some_side(Bytes& bytes, const CorrectionWords& words) {
  const BodySide side =
      bytes.below(4) == 3 ? *side_named(bytes.one_of(kSideWords)) : BodySide::Both;
  return side == BodySide::Both && words.one_sided ? BodySide::Left : side;
}

// Most amounts of a fitting are small.
double some_amount(Bytes& bytes) {
  return bytes.flag() ? bytes.amount(0.0, 15.0) : bytes.amount(0.0, kMostAmount);
}

}  // namespace

std::vector<Correction> some_corrections(Bytes& bytes, std::size_t most) {
  std::vector<Correction> list;
  while (!bytes.done() && list.size() < most) {
    const CorrectionWords& words = bytes.one_of(correction_words());
    Correction one;
    one.action = words.action;
    one.place = words.place;
    one.by = Length::mm(some_amount(bytes));
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
    text += one.action + " " + one.place + " " + std::to_string(one.by.mm()) + " " +
            std::string(amount_way(one.as).word) + " " + std::string(side_word(one.side)) +
            (one.withdrawn ? " withdrawn" : "") + "; ";
  }
  return text;
}

}  // namespace blockwright_fuzz
