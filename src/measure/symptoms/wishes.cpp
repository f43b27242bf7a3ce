#include "wishes.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum Concept;

/// Each sight of these becomes the one that it mends.
Concepts mended_by(const Concepts& wanted) {
  Concepts seen = wanted;
  for (const Mended& pair : mended_sights()) {
    if (wanted.has(pair.wanted)) seen.remove(pair.wanted);
  }
  for (const Mended& pair : mended_sights()) {
    if (wanted.has(pair.wanted)) seen.add(pair.seen);
  }
  return seen;
}

Concepts concepts_of(const Terms& terms) {
  Concepts all;
  for (const Term& term : terms) all.add(term.concepts);
  return all;
}

/// Darts, and a seam that bears the name of the part: of the bodice, where the other is the body.
bool is_bodice_beside(const Concepts& other, const Concepts& one) {
  const bool is_breast = one.has(Bust) || one.has(BustPoint);
  if (is_breast && other.has(Dart)) return !one.has(Dart);
  if (one.has(Seam) || one.has(Dart)) return false;
  const bool shares_part =
      one.has_any([](Concept part) { return part == Waist || part == Shoulder; });
  return other.has(Whole) || (other.has(Seam) && shares_part);
}

bool is_place(Concept one) { return is_part(one) || is_face(one); }

bool is_sight_of_figure(Concept one) { return one == Full || one == Flat; }

auto speech_at(Terms& terms, Speech speech) {
  return std::ranges::find(terms, speech, &Term::speech);
}

/// One side of the body that is high or low has its own rows, in the words of the body.
bool is_of_one_side(const Terms& terms) {
  const Concepts all = concepts_of(terms);
  return all.has(One) && (all.has(Shoulder) || all.has(Waist) || all.has(Side));
}

/// "Longer dart", and nothing before it.
bool begins_with_wish(const Terms& terms) {
  if (terms.size() < 2 || !terms.front().is_comparative) return false;
  const bool is_sided = terms.size() > 2 && terms[1].concepts.has(One);
  const Term& next = terms[is_sided ? 2 : 1];
  return next.has_part() || next.concepts.has_any(is_face);
}

bool begins_with(const Term& term, std::string_view stem) {
  return !term.words.empty() && term.words.front().stem == stem;
}

/// "Move the darts up", "move the seam back": not "when I move".
bool begins_with_move(const Terms& terms) {
  return !terms.empty() && begins_with(terms.front(), "mov");
}

/// "As long as": the two words and the sight between; `other` is the end if they are not there.
struct Likened {
  Terms::iterator as, sight, other;
};
Likened likened_from(Terms::iterator begin, Terms::iterator end) {
  const auto is_as = [](const Term& term) { return begins_with(term, "as"); };
  const auto as = std::find_if(begin, end, is_as);
  const auto sight = std::find_if(as, end, [](const Term& term) { return term.has_sight(); });
  const auto other = std::find_if(sight, end, is_as);
  const bool is_between = as != end && std::find_if(as + 1, other, is_as) == other;
  return {as, sight, is_between ? other : end};
}

/// "There isn't any room".
bool is_always_wanted(const Term& term) {
  return begins_with(term, "room") || begins_with(term, "spac") || begins_with(term, "eas");
}

bool is_way(Concept one) { return one == Forward || one == Backward; }
bool is_height(Concept one) { return one == High || one == Low; }

/// "Needs to come down".
bool comes_and_goes(const Term& term) {
  const bool is_up_or_down = term.concepts.has(Low) || term.concepts.has(Rides);
  return is_up_or_down && (begins_with(term, "com") || begins_with(term, "go"));
}

bool is_wanted(const Terms& terms, std::size_t i) {
  const Term& term = terms[i];
  if (term.concepts.has_any(is_height) && is_of_one_side(terms)) return false;
  if (i > 0 && terms[i - 1].speech == Speech::Less) return false;
  const bool more = i > 0 && terms[i - 1].speech == Speech::More;
  return more || term.is_comparative || term.concepts.has_any(is_way) || comes_and_goes(term);
}

}  // namespace

void judge_by_first(Terms& terms) {
  const auto than = speech_at(terms, Speech::Than);
  const Terms first(terms.begin(), than);
  if (than == terms.end() || !concepts_of(first).has_any(is_sight)) return;
  const Concepts other = concepts_of({than, terms.end()});
  const Concepts one = concepts_of(first);
  terms = first;
  const bool turns = is_bodice_beside(other, one) && !one.has_any(is_sight_of_figure);
  for (Term& term : terms) {
    if (turns) term.concepts = mended_by(term.concepts);
    term.is_comparative = false;
  }
  const bool names_place = one.has_any(is_part) || one.has_any(is_face);
  if (turns || !names_place) terms.push_back({other.only(is_place), Speech::None, {}});
}

void mend_not_as(Terms& terms) {
  const auto no = speech_at(terms, Speech::Not);
  const Likened likened = likened_from(no, terms.end());
  if (likened.other == terms.end() || no == terms.end()) return;
  likened.sight->concepts = mended_by(likened.sight->concepts);
  terms.erase(likened.other, terms.end());
  terms.erase(no);
}

void mend_not_enough(Terms& terms) {
  const auto no = speech_at(terms, Speech::Not);
  const bool has_enough =
      no < speech_at(terms, Speech::Enough) && speech_at(terms, Speech::Enough) != terms.end();
  const auto sight = std::find_if(no, terms.end(), [&](const Term& term) {
    return has_enough ? term.has_sight() : is_always_wanted(term);
  });
  if (no == terms.end() || sight == terms.end()) return;
  sight->concepts = mended_by(sight->concepts);
  sight->is_comparative = false;
  std::erase_if(terms, [](const Term& term) {
    return term.speech == Speech::Not || term.speech == Speech::Enough;
  });
}

bool is_enough(Terms terms) {
  if (speech_at(terms, Speech::Wish) != terms.end()) return false;
  if (likened_from(terms.begin(), terms.end()).other != terms.end()) return true;
  return speech_at(terms, Speech::Enough) != terms.end() && concepts_of(terms).has_any(is_sight);
}

void mend_wishes(Terms& terms) {
  const bool moves = begins_with_move(terms);
  const bool wishes = moves || speech_at(terms, Speech::Wish) != terms.end();
  if (moves) terms.front().concepts.remove(Reach);
  if (!wishes && !begins_with_wish(terms)) return;
  const std::size_t last = wishes ? terms.size() : 1;
  for (std::size_t i = 0; i < last; ++i) {
    if (is_wanted(terms, i)) terms[i].concepts = mended_by(terms[i].concepts);
  }
}

}  // namespace blockwright
