#include "clauses.hpp"

#include "wishes.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool has_speech(const Terms& terms, Speech speech) {
  return std::ranges::count(terms, speech, &Term::speech) > 0;
}

bool has_sight(const Terms& terms) { return std::ranges::any_of(terms, &Term::has_sight); }

bool has_part(const Terms& terms) { return std::ranges::any_of(terms, &Term::has_part); }

bool has_place(const Terms& terms) {
  return has_part(terms) || std::ranges::any_of(terms, [](const Term& term) {
           return term.concepts.has_any(is_face);
         });
}

}  // namespace

bool names_subject(const Terms& terms) {
  const auto sight = std::ranges::find_if(terms, &Term::has_sight);
  return has_part(terms) || has_place({terms.begin(), sight});
}

namespace {

/// Whether something is said of a place, good or bad.
bool says_something(const Terms& terms) {
  return has_sight(terms) || has_speech(terms, Speech::Not) || has_speech(terms, Speech::Fine) ||
         has_speech(terms, Speech::Trouble);
}

/// A clause before it is understood, and the word that it began with.
struct RawClause {
  Terms terms;
  Speech begun_by = Speech::None;     ///< And, But, or a pause
  std::vector<Concepts> places = {};  ///< of its pieces, if each names a part
};

Concepts place_in(const Terms& terms) {
  Concepts all;
  for (const Term& term : terms) all.add(term.concepts);
  return all.only([](Concept one) { return is_part(one) || is_face(one); });
}

bool contrasts(Speech joint) { return joint == Speech::But || joint == Speech::Except; }

bool is_joint(const Term& term) { return term.speech == Speech::And || contrasts(term.speech); }

/// "Between the neck and the bust" is one place.
bool is_within_between(const Term& term, const Terms& before) {
  if (term.speech != Speech::And) return false;
  const auto is_between = [](const Term& one) {
    return std::ranges::any_of(one.words,
                               [](const SaidWord& word) { return word.stem == "between"; });
  };
  const auto last = std::find_if(before.rbegin(), before.rend(), is_between);
  const auto places = std::count_if(before.rbegin(), last, [](const Term& one) {
    return one.concepts.has_any([](Concept of) { return is_part(of) || is_face(of); });
  });
  return last != before.rend() && places == 1;
}

std::vector<RawClause> cut_at_joints(const Terms& terms) {
  std::vector<RawClause> clauses(1);
  for (const Term& term : terms) {
    if (is_within_between(term, clauses.back().terms)) continue;
    if (!clauses.back().terms.empty() && (is_joint(term) || term.after_pause())) {
      clauses.push_back({});
    }
    if (is_joint(term)) {
      clauses.back().begun_by = term.speech;
    } else {
      clauses.back().terms.push_back(term);
    }
  }
  return clauses;
}

/// "Waist", and "bust too tight".
void append(RawClause& clause, const RawClause& more) {
  if (clause.places.empty() && has_part(clause.terms)) clause.places = {place_in(clause.terms)};
  if (has_part(more.terms)) clause.places.push_back(place_in(more.terms));
  clause.terms.insert(clause.terms.end(), more.terms.begin(), more.terms.end());
}

/// What follows is where it is seen instead: "not loose at the back, only at the front".
bool denies_a_sight(const Terms& terms) {
  return has_speech(terms, Speech::Not) && has_sight(terms);
}

/// "Bust, neck and armhole all too high" is one; what stands behind the last fault is of it.
std::vector<RawClause> with_their_places(const std::vector<RawClause>& cut) {
  std::vector<RawClause> clauses;
  bool waits = false;
  for (const RawClause& clause : cut) {
    if (waits && !contrasts(clause.begun_by)) {
      append(clauses.back(), clause);
    } else {
      clauses.push_back(clause);
    }
    waits = !says_something(clauses.back().terms);
  }
  const bool ends = waits && clauses.size() > 1 && !contrasts(clauses.back().begun_by);
  if (ends && !denies_a_sight((clauses.end() - 2)->terms)) {
    append(*(clauses.end() - 2), clauses.back());
    clauses.pop_back();
  }
  return clauses;
}

/// Side seams and hems are of a sleeve and of a skirt, too.
bool is_of_bodice_alone(Concept one) {
  return is_part(one) && one != Concept::Side && one != Concept::Hem && one != Concept::Centre;
}

SaidOf said_elsewhere(const Terms& terms) {
  const bool here = std::ranges::any_of(
      terms, [](const Term& term) { return term.concepts.has_any(is_of_bodice_alone); });
  if (here) return SaidOf::Fault;
  if (has_speech(terms, Speech::Sleeve)) return SaidOf::Sleeve;
  return has_speech(terms, Speech::BelowWaist) ? SaidOf::BelowWaist : SaidOf::Fault;
}

/// "Not right", "does not fit": something is wrong.
bool is_trouble(const Terms& behind) {
  return has_speech(behind, Speech::Fine) && !has_sight(behind);
}

/// "Nothing wrong", "the back doesn't", "not at the sides"; but "the seam doesn't sit on my
/// shoulder" is trouble.
bool denies_a_place(const Terms& before, const Terms& behind) {
  if (has_speech(behind, Speech::Trouble)) return true;
  if (has_place(behind)) return !has_place(before);
  return has_place(before) && std::ranges::none_of(behind, &Term::is_unknown);
}

/// "Fine", "long enough": where nothing else is said.
bool says_fine(const Terms& terms) {
  const bool is_doubted =
      has_speech(terms, Speech::Trouble) || has_speech(terms, Speech::Wish) || has_sight(terms);
  return (has_speech(terms, Speech::Fine) && !is_doubted) || is_enough(terms);
}

/// Without what is said not to be there; true where nothing is left of a fault.
bool deny(Terms& terms) {
  const auto at = std::ranges::find(terms, Speech::Not, &Term::speech);
  if (at == terms.end()) return says_fine(terms);
  const Terms before(terms.begin(), at), behind(at + 1, terms.end());
  if (is_trouble(behind)) return false;
  if (!has_sight(before) && !has_sight(behind)) return denies_a_place(before, behind);
  terms = before;
  return !has_sight(before);
}

/// What is not said of a clause is taken from the one before it.
void complete(Terms& terms, const Terms& before, bool (*of_kind)(Concept)) {
  Term added;
  for (const Term& term : before) added.concepts.add(term.concepts.only(of_kind));
  if (!added.concepts.empty()) terms.push_back(added);
}

/// Understands one clause after the other.
class ClauseReader {
 public:
  Clause read(const RawClause& raw) {
    Clause clause{raw.terms, SaidOf::Fault, raw.places};
    if (goes_on(raw)) {
      clause.of = last_;
    } else if (is_left_out(raw)) {
      clause.of = SaidOf::NoFault;
    } else {
      take_over(clause, raw.begun_by);
    }
    last_ = clause.of;
    last_terms_ = raw.terms;
    return clause;
  }

 private:
  /// "The sleeve is too tight and too short", "the neck isn't tight and high".
  [[nodiscard]] bool goes_on(const RawClause& raw) const {
    const bool was_denied = last_ == SaidOf::NoFault && denies_a_sight(last_terms_);
    const bool is_denied_too = was_denied && raw.begun_by == Speech::And;
    const bool is_elsewhere = last_ == SaidOf::Sleeve || last_ == SaidOf::BelowWaist;
    return (is_denied_too || is_elsewhere) && !names_subject(raw.terms);
  }

  /// "Too tight, except at the neck".
  [[nodiscard]] bool is_left_out(const RawClause& raw) const {
    return raw.begun_by == Speech::Except && last_ == SaidOf::Fault && !last_terms_.empty() &&
           !says_something(raw.terms);
  }

  void take_over(Clause& clause, Speech begun_by) const {
    const Terms said = clause.terms;
    clause.of = said_elsewhere(said);
    if (clause.of != SaidOf::Fault) return;
    judge_by_first(clause.terms);
    mend_not_as(clause.terms);
    mend_not_enough(clause.terms);
    mend_wishes(clause.terms);
    if (deny(clause.terms)) {
      clause.of = SaidOf::NoFault;
    } else if (last_ == SaidOf::NoFault) {
      if (!has_part(said)) complete(clause.terms, last_terms_, is_part);
      const bool is_contrast = contrasts(begun_by) || denies_a_sight(last_terms_);
      if (!says_something(said) && is_contrast) complete(clause.terms, last_terms_, is_sight);
    }
  }

  SaidOf last_ = SaidOf::Fault;
  Terms last_terms_;
};

}  // namespace

std::vector<Clause> clauses_of(std::string_view said) {
  std::vector<Clause> clauses;
  ClauseReader reader;
  for (const RawClause& raw : with_their_places(cut_at_joints(terms_of(said)))) {
    clauses.push_back(reader.read(raw));
  }
  return clauses;
}

}  // namespace blockwright
