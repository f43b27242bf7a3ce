#include "blockwright/measure/symptom_search.hpp"

#include "blockwright/base/error.hpp"
#include "symptom_rank.hpp"
#include "symptom_table.hpp"
#include "understood.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

std::vector<std::string> stems_of(const std::vector<SaidWord>& words) {
  std::vector<std::string> stems;
  stems.reserve(words.size());
  for (const SaidWord& word : words) stems.push_back(word.stem);
  return stems;
}

struct Entry {
  FoundCorrection correction;
  std::vector<Concepts> sayings;
  std::vector<std::string> own_words;
};

std::vector<Entry> made_entries() {
  std::vector<Entry> entries;
  for (const auto& parts : {upper_symptoms(), lower_symptoms()}) {
    for (const SymptomPart& part : parts) {
      for (const SymptomEntry& symptom : part.entries) {
        const CorrectionWords* words = find_correction_words(symptom.action, symptom.place);
        if (words == nullptr) continue;
        Entry entry{{words, symptom.cure, BodySide::Both}, {}, {}};
        for (const auto saying : listed(symptom.sayings)) {
          entry.sayings.push_back(meaning_of(saying));
        }
        entry.own_words =
            stems_of(said_words(std::string(symptom.action) + " " + std::string(symptom.place)));
        entries.push_back(std::move(entry));
      }
    }
  }
  return entries;
}

const std::vector<Entry>& entries() {
  static const std::vector<Entry> made = made_entries();
  return made;
}

/// "lower the front neck" has the words of lower front_neck; the most of them count.
Rank rank_of_own_words(const std::vector<std::string>& said, const Entry& entry) {
  const std::vector<std::string>& own = entry.own_words;
  const auto at = std::search(said.begin(), said.end(), own.begin(), own.end());
  if (at == said.end()) return {};
  if (at != said.begin() && *(at - 1) == "too") return {};  // "too narrow across the front"
  return {3, static_cast<int>(entry.own_words.size())};
}

/// "Shoulder shorter", and nothing else, is the name of shorten shoulder; of corrections of one
/// name the usual comes first.
Rank rank_of_name(const std::vector<SaidWord>& said, const Entry& entry) {
  const CorrectionWords& words = *entry.correction.words;
  const std::vector<SaidWord> name = plain_words(row_name(words.row, words.sign));
  if (!std::ranges::equal(said, name, {}, &SaidWord::stem, &SaidWord::stem)) return {};
  const bool is_usual = words.place == fitting_row(words.row).traits.usual_place;
  return {3, static_cast<int>(name.size()) + (is_usual ? 1 : 0)};
}

struct Ranked {
  Rank rank;
  const Entry* entry = nullptr;
};

std::vector<Ranked> ranked(const Concepts& said, const std::vector<std::string>& stems,
                           const std::vector<SaidWord>& whole = {}) {
  std::vector<Ranked> all;
  for (const Entry& entry : entries()) {
    Rank rank = std::max(rank_of_own_words(stems, entry), rank_of_name(whole, entry));
    for (const Concepts& saying : entry.sayings) rank = std::max(rank, rank_of(said, saying));
    if (rank.likeness > 0) all.push_back({rank, &entry});
  }
  std::ranges::stable_sort(all, std::ranges::greater(), &Ranked::rank);
  return all;
}

bool says_which_way(const Concepts& said) {
  return said.has_any(is_sight) || said.has(Concept::Above) || said.has(Concept::Below);
}

bool has_own_words(const std::vector<Ranked>& all) {
  return !all.empty() && all.front().rank.place == 3;
}

/// What is much less like what she said than the best is no answer.
bool is_far_behind(const Ranked& one, const Ranked& best) {
  constexpr int least = 300;
  if (one.rank.place == 3) return false;
  if (one.rank.likeness < least) return true;
  if (one.rank.is_elsewhere && !best.rank.is_elsewhere) return true;
  return best.rank.place != 3 && 2 * one.rank.likeness < best.rank.likeness;
}

struct OppositeActions {
  std::string_view one, other;
};
constexpr OppositeActions kOppositeActions[] = {
    {"raise", "lower"},  {"widen", "narrow"},   {"take_in", "let_out"}, {"shorten", "lengthen"},
    {"forward", "back"}, {"fuller", "smaller"}, {"scoop", "fill"},      {"take_up", "let_down"},
};

/// The same place or the same row the other way; of a row for one side, the same part of the body.
bool are_opposites(const CorrectionWords& one, const CorrectionWords& other) {
  if (one.row == other.row) return one.sign != other.sign;
  const bool same_part = fitting_row(one.row).part == fitting_row(other.row).part;
  const bool same_place =
      one.place == other.place || (same_part && one.one_sided != other.one_sided);
  const auto undoes = [&](const OppositeActions& pair) {
    return (pair.one == one.action && pair.other == other.action) ||
           (pair.one == other.action && pair.other == one.action);
  };
  return same_place && std::ranges::any_of(kOppositeActions, undoes);
}

/// What digs in behind wants filling where she reaches, and hollowing where she stands still.
bool goes_either_way(const FoundCorrection& one, const Concepts& said) {
  return one.words->place == "back_armhole" && said.has(Concept::Cuts);
}

bool is_opposed(const FoundCorrection& one, const std::vector<FoundCorrection>& better) {
  return std::ranges::any_of(better, [&](const FoundCorrection& other) {
    return are_opposites(*one.words, *other.words);
  });
}

std::vector<FittingPart> made_parts() {
  std::vector<FittingPart> parts;
  for (const auto& list : {upper_symptoms(), lower_symptoms()}) {
    for (const SymptomPart& part : list) {
      parts.push_back({part.name, {}});
      for (const SymptomEntry& symptom : part.entries) {
        const CorrectionWords* words = find_correction_words(symptom.action, symptom.place);
        if (words != nullptr)
          parts.back().corrections.push_back({words, symptom.cure, BodySide::Both});
      }
    }
  }
  return parts;
}

bool is_called(const SymptomPart& part, const std::vector<SaidWord>& words) {
  const auto is_name = [&](std::string_view name) {
    return std::ranges::equal(said_words(name), words, {}, &SaidWord::stem, &SaidWord::stem);
  };
  return is_name(part.name) || std::ranges::any_of(listed(part.also), is_name);
}

bool is_whole(const Concepts& said) { return said.has_any(is_part) && said.has_any(is_sight); }

bool is_nowhere(const Concepts& said) {
  return said.has_any(is_sight) && !said.has_any([](Concept one) { return !is_sight(one); });
}

std::vector<FoundCorrection> answers_in(const std::vector<Ranked>& all, const Concepts& said,
                                        BodySide side) {
  const bool has_way = says_which_way(said) || has_own_words(all);
  std::vector<FoundCorrection> best;
  for (const Ranked& one : all) {
    if (best.size() == kMostFound) break;
    if (is_far_behind(one, all.front())) continue;
    const FoundCorrection& correction = one.entry->correction;
    if (has_way && !goes_either_way(correction, said) && is_opposed(correction, best)) continue;
    best.push_back(one.entry->correction);
    best.back().side = side;
  }
  return best;
}

/// Two faults with one cause: "bust tight, front rides up".
bool answers_all(const std::vector<Ranked>& all) {
  return !all.empty() && all.front().rank.has_all;
}

using Answers = std::vector<FoundCorrection>;

std::vector<Answers> answers_to_each(const std::vector<SaidFault>& faults) {
  std::vector<Answers> answers;
  answers.reserve(faults.size());
  for (const SaidFault& fault : faults) {
    answers.push_back(answers_in(ranked(fault.concepts, fault.stems), fault.concepts, fault.side));
  }
  return answers;
}

bool is_same(const FoundCorrection& one, const FoundCorrection& other) {
  return one.words == other.words && one.side == other.side;
}

/// The best of each, then the second of each; each correction of a side once.
Answers in_turn(const std::vector<Answers>& lists) {
  Answers best;
  for (std::size_t place = 0; place < kMostFound; ++place) {
    for (const Answers& list : lists) {
      if (place >= list.size() || best.size() == kMostFound) continue;
      const bool is_needless = std::ranges::any_of(best, [&](const FoundCorrection& other) {
        const bool undone =
            other.side == list[place].side && are_opposites(*other.words, *list[place].words);
        return undone || is_same(other, list[place]);
      });
      if (!is_needless) best.push_back(list[place]);
    }
  }
  return best;
}

}  // namespace

FoundCorrections find_corrections(std::string_view seen) {
  const Understood said = understood(seen);
  FoundCorrections found{{},    said.unknown,  said.side, is_whole(said.concepts),
                         false, said.set_aside};
  if (said.concepts.empty()) return found;
  const std::vector<Ranked> all = ranked(said.concepts, said.stems, plain_words(seen));
  const bool is_one = said.faults.size() == 1;
  found.is_nowhere = is_one && is_nowhere(said.concepts) && !has_own_words(all);
  if (is_one || answers_all(all)) {
    found.best = answers_in(all, said.concepts, said.side);
  } else {
    found.best = in_turn(answers_to_each(said.faults));
  }
  return found;
}

std::span<const FittingPart> fitting_parts() {
  static const std::vector<FittingPart> parts = made_parts();
  return parts;
}

const FittingPart* fitting_part(std::string_view name) {
  const std::vector<SaidWord> words = plain_words(name);
  std::size_t number = 0;
  for (const auto& list : {upper_symptoms(), lower_symptoms()}) {
    for (const SymptomPart& part : list) {
      if (is_called(part, words)) return &fitting_parts()[number];
      ++number;
    }
  }
  return nullptr;
}

std::string_view cure_of(const CorrectionWords& words) {
  for (const Entry& entry : entries()) {
    if (entry.correction.words == &words) return entry.correction.cure;
  }
  require(false, "each correction has its cure in the table of symptoms");
  return {};
}

}  // namespace blockwright
