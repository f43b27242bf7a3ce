#include "blockwright/measure/symptom_search.hpp"

#include "blockwright/base/error.hpp"
#include "symptom_table.hpp"
#include "understood.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

using enum Concept;

/// How near two meanings are, in hundredths. Ours, tried on the sayings of the tests.
struct Kin {
  Concept one, other;
  int nearness;
};
constexpr Kin kKin[] = {
    {Armhole, Underarm, 60}, {Bust, BustPoint, 60}, {Bust, UnderBust, 40}, {Bust, Chest, 30},
    {Dart, BustPoint, 50},   {Waist, Hem, 60},      {Blades, Back, 60},    {Loose, Wide, 70},
    {Loose, Gapes, 60},      {Loose, Sags, 40},     {Loose, Fold, 40},     {Loose, Bubbles, 50},
    {Gapes, Fold, 30},       {Gapes, Bubbles, 40},  {Gapes, Wide, 50},     {Tight, Narrow, 70},
    {Tight, Cuts, 70},       {Tight, Short, 30},    {Cuts, High, 40},      {Cuts, Narrow, 40},
    {Short, Rides, 60},      {High, Rides, 60},     {High, Short, 50},     {Long, Sags, 60},
    {Low, Sags, 60},         {Low, Long, 50},       {Long, Loose, 30},     {Falls, Wide, 50},
    {Falls, Long, 40},       {Falls, Sags, 40},     {Fold, Bubbles, 40},   {Hollow, Loose, 40},
    {Full, Tight, 40},       {Full, Round, 50},     {Flat, Loose, 40},     {Petite, Long, 50},
    {Dimple, Bubbles, 30},   {Sloping, Low, 40},    {Square, High, 40},    {Whole, AllRound, 50},
};

struct Opposite {
  Concept one, other;
};
constexpr Opposite kOpposedConcepts[] = {
    {Loose, Tight}, {Loose, Narrow},  {Loose, Cuts},       {Wide, Tight},  {Wide, Narrow},
    {Gapes, Tight}, {Gapes, Cuts},    {High, Low},         {High, Sags},   {Long, Short},
    {Long, Rides},  {Rides, Sags},    {Rides, Low},        {Short, Sags},  {Low, Short},
    {Apart, Close}, {Full, Flat},     {Forward, Backward}, {Above, Below}, {Sloping, Square},
    {High, Long},   {Bubbles, Tight}, {Round, Erect},      {Wide, Close},
};

constexpr int weight_of(Concept one) {
  if (is_part(one)) return 10;
  if (is_sight(one)) return 8;
  return is_face(one) ? 6 : 4;
}

int nearness(Concept one, Concept other) {
  if (one == other) return 100;
  for (const Kin& kin : kKin) {
    const bool found =
        (kin.one == one && kin.other == other) || (kin.one == other && kin.other == one);
    if (found) return kin.nearness;
  }
  return 0;
}

int nearest_in(Concept one, const Concepts& all) {
  int best = 0;
  for (unsigned i = 0; i < kConceptCount; ++i) {
    if (all.has(Concept{i})) best = std::max(best, nearness(one, Concept{i}));
  }
  return best;
}

/// A fold that pulls, or "drag lines", is no fold of too much cloth.
bool is_loose_fold(const Concepts& saying) {
  constexpr Concept lacking[] = {Tight, Cuts, Narrow, Short, Full, High, Rides};
  return saying.has(Fold) &&
         std::ranges::none_of(lacking, [&](Concept one) { return saying.has(one); });
}

/// What is said of the front answers nothing of the back, "tight" nothing that is loose, and of
/// both sides nothing of one.
bool contradicts(const Concepts& said, const Concepts& saying) {
  if (saying.has(One) && !said.has(One)) return true;
  if (said.has(Front) && saying.has(Back) && !saying.has(Front)) return true;
  if (said.has(Back) && saying.has(Front) && !saying.has(Back)) return true;
  if (said.has(Tight) && is_loose_fold(saying)) return true;
  return std::ranges::any_of(kOpposedConcepts, [&](const Opposite& pair) {
    return (said.has(pair.one) && saying.has(pair.other) && !saying.has(pair.one)) ||
           (said.has(pair.other) && saying.has(pair.one) && !saying.has(pair.other));
  });
}

/// The likeness of what was said to a saying, in thousandths: weights that they share over those
/// and what either has alone; what the fitter did not say counts half.
int likeness(const Concepts& said, const Concepts& saying) {
  int shared = 0, said_alone = 0, saying_alone = 0;
  for (unsigned i = 0; i < kConceptCount; ++i) {
    const Concept one{i};
    if (said.has(one)) {
      const int near = nearest_in(one, saying);
      shared += weight_of(one) * near;
      said_alone += weight_of(one) * (100 - near);
    }
    if (saying.has(one)) saying_alone += weight_of(one) * (100 - nearest_in(one, said));
  }
  const int all = shared + said_alone + saying_alone / 2;
  return all == 0 ? 0 : 1000 * shared / all;
}

/// How many of the parts and sights that she named the saying has: all, some kin, or none.
struct Compared {
  const Concepts& said;
  const Concepts& saying;
};
struct Named {
  bool any = false, has_some = false, has_all = true;
};
Named named(const Compared& compared, bool (*of_kind)(Concept)) {
  Named result;
  for (unsigned i = 0; i < kConceptCount; ++i) {
    const Concept one{i};
    if (!of_kind(one) || !compared.said.has(one)) continue;
    result.any = true;
    const int near = nearest_in(one, compared.saying);
    result.has_some = result.has_some || near > 0;
    result.has_all = result.has_all && near == 100;
  }
  return result;
}

/// The place that she named comes first, then what is seen there.
struct Rank {
  int place = 0;  ///< 3: own words; 2: each part that she named; 1: some; 0: none
  int likeness = 0;
  bool is_elsewhere = false;  ///< of another part of the body
  friend bool operator==(const Rank&, const Rank&) = default;
  friend auto operator<=>(const Rank& a, const Rank& b) {
    return std::pair(a.place, a.likeness) <=> std::pair(b.place, b.likeness);
  }
};

/// "Neck side" and "centre front" are of the neck and the front; a side alone is a part.
bool is_main_part(Concept one) { return is_part(one) && one != Side && one != Centre; }

/// Of "the front" alone any length of the front may be meant, but its neck or darts would be named.
bool is_always_named(Concept one) { return one == Neck || one == Dart; }

/// All of them, or their kin.
bool holds(const Concepts& all, const Concepts& parts) {
  for (unsigned i = 0; i < kConceptCount; ++i) {
    if (parts.has(Concept{i}) && nearest_in(Concept{i}, all) == 0) return false;
  }
  return true;
}

/// A part that she named is missing, or another is there.
bool is_of_other_part(const Concepts& said, const Concepts& saying) {
  const bool has_part = said.has_any(is_part), has_face = said.has_any(is_face);
  if (!has_part && !has_face && !said.has(One)) return false;
  const bool is_face_alone = has_face && !has_part;
  return !holds(saying, said.only(is_main_part)) ||
         !holds(said, saying.only(is_face_alone ? is_always_named : is_main_part));
}

Rank rank_of(const Concepts& said, const Concepts& saying) {
  if (contradicts(said, saying)) return {};
  const Named parts = named({said, saying}, is_part), sights = named({said, saying}, is_sight);
  if (parts.any && !parts.has_some) return {};
  if (sights.any && !sights.has_some) return {};
  const int place = !parts.any || parts.has_all ? 2 : 1;
  const bool is_elsewhere = is_of_other_part(said, saying);
  const int like = likeness(said, saying);
  return {place, is_elsewhere ? like * 3 / 4 : like, is_elsewhere};
}

std::vector<std::string> stems_of(const std::vector<SaidWord>& words) {
  std::vector<std::string> stems;
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
        Entry entry{{words, symptom.cure}, {}, {}};
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
  if (std::ranges::search(said, entry.own_words).empty()) return {};
  return {3, static_cast<int>(entry.own_words.size())};
}

struct Ranked {
  Rank rank;
  const Entry* entry = nullptr;
};

std::vector<Ranked> ranked(const Understood& said) {
  std::vector<Ranked> all;
  for (const Entry& entry : entries()) {
    Rank rank = rank_of_own_words(said.stems, entry);
    for (const Concepts& saying : entry.sayings) {
      rank = std::max(rank, rank_of(said.concepts, saying));
    }
    if (rank.likeness > 0) all.push_back({rank, &entry});
  }
  std::ranges::stable_sort(all, std::ranges::greater(), &Ranked::rank);
  return all;
}

bool says_which_way(const Concepts& said) {
  return said.has_any(is_sight) || said.has(Above) || said.has(Below);
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
        if (words != nullptr) parts.back().corrections.push_back({words, symptom.cure});
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

}  // namespace

FoundCorrections find_corrections(std::string_view seen) {
  const Understood said = understood(seen);
  FoundCorrections found{{}, said.unknown, said.side, is_whole(said.concepts), said.set_aside};
  if (said.concepts.empty()) return found;
  const std::vector<Ranked> all = ranked(said);
  const bool has_way = says_which_way(said.concepts) || has_own_words(all);
  for (const Ranked& one : all) {
    if (found.best.size() == kMostFound) break;
    if (is_far_behind(one, all.front())) continue;
    if (has_way && is_opposed(one.entry->correction, found.best)) continue;
    found.best.push_back(one.entry->correction);
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
