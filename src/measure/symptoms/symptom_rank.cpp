#include "symptom_rank.hpp"

#include <algorithm>

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

}  // namespace

Rank rank_of(const Concepts& said, const Concepts& saying) {
  if (contradicts(said, saying)) return {};
  const Named parts = named({said, saying}, is_part), sights = named({said, saying}, is_sight);
  if (parts.any && !parts.has_some) return {};
  if (sights.any && !sights.has_some) return {};
  const int place = !parts.any || parts.has_all ? 2 : 1;
  const bool is_elsewhere = is_of_other_part(said, saying);
  const int like = likeness(said, saying);
  return {place, is_elsewhere ? like * 3 / 4 : like, is_elsewhere, parts.has_all && sights.has_all};
}

}  // namespace blockwright
