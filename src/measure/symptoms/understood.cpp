#include "understood.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum Concept;

/// What gapes between buttons is tight, and what stands out at the blades is the body. Buttons by
/// themselves are no fault.
void read_by_place(Concepts& seen) {
  if (seen.has(Buttons) && seen.has_any(is_sight)) {
    seen.remove(Chest);  // what is buttoned there is the bust
    if (!seen.has_any(is_part)) seen.add(seen.has(Back) ? Centre : Bust);
    if (seen.has(Gapes)) seen.add(Tight);
    if (seen.has(Gapes)) seen.remove(Gapes);
  }
  seen.remove(Buttons);
  if (seen.has(Armhole) && seen.has(Full)) {  // a bigger armhole is looser
    seen.remove(Full);
    seen.add(Loose);
  }
  const bool blades_alone = seen.has(Blades) && !seen.has(Neck) && !seen.has(Armhole);
  if (blades_alone && seen.has(Gapes)) {
    seen.remove(Gapes);
    seen.add(Full);
  }
}

/// "Front and back" is all of it.
void join_faces(Concepts& seen) {
  if (!seen.has(Front) || !seen.has(Back)) return;
  seen.remove(Front);
  seen.remove(Back);
}

Concepts all_concepts(const Terms& terms) {
  Concepts all;
  for (const Term& term : terms) all.add(term.concepts);
  return all;
}

bool holds_all(const Concepts& some, bool (*of_kind)(Concept), const Concepts& others) {
  Concepts all = some;
  all.add(others);
  return all.only(of_kind) == some.only(of_kind);
}

/// Arms that reach forward pull at the back, where no other place is named.
void drop_reach_of_back(Terms& terms) {
  const bool is_front =
      std::ranges::any_of(terms, [](const Term& term) { return term.concepts.has(Front); });
  for (Term& term : terms) {
    if (is_front && term.concepts.has(Reach)) term.concepts.remove(Back);
  }
}

/// The side that was named; of both and of none, both.
class NamedSide {
 public:
  void hear(const Term& term) {
    if (term.words.empty() || !term.concepts.has(One)) return;
    left_ = left_ || term.words.front().stem == "left";
    right_ = right_ || term.words.front().stem == "right";
  }
  [[nodiscard]] BodySide side() const {
    if (left_ == right_) return BodySide::Both;
    return left_ ? BodySide::Left : BodySide::Right;
  }

 private:
  bool left_ = false, right_ = false;
};

BodySide side_in(const Terms& terms) {
  NamedSide side;
  for (const Term& term : terms) side.hear(term);
  return side.side();
}

/// Another part of the body, or something else at another face of it, has a fault of its own.
bool is_another_fault(const Concepts& clause, const Concepts& before) {
  const auto is_place = [](Concept one) { return is_part(one) || is_face(one); };
  const auto is_whole = [&](const Concepts& one) {
    return one.has_any(is_sight) && one.has_any(is_place);
  };
  if (!is_whole(clause) || !is_whole(before)) return false;
  if (!holds_all(before, is_part, clause)) return true;
  if (holds_all(before, is_face, clause)) return false;
  return before.has_any(is_face) || !holds_all(before, is_sight, clause);
}

/// Puts the clauses together that name a fault.
class AllSaid {
 public:
  void add(const Clause& clause) {
    if (clause.of == SaidOf::Fault) {
      add_fault(clause);
    } else if (result_.set_aside == SaidOf::Fault) {
      result_.set_aside = clause.of;
    }
  }

  Understood taken() {
    put_in_order(result_.concepts);
    for (SaidFault& fault : result_.faults) put_in_order(fault.concepts);
    result_.side = side_.side();
    return std::move(result_);
  }

 private:
  static void put_in_order(Concepts& seen) {
    join_faces(seen);
    read_by_place(seen);
  }

  void add_fault(Clause clause) {
    drop_reach_of_back(clause.terms);
    begin_fault(clause.terms);
    result_.stems.emplace_back();  // no words of a correction run over the end of a clause
    result_.faults.back().stems.emplace_back();
    for (const Term& term : clause.terms) add_term(term);
    result_.faults.back().side = fault_side_.side();
    if (clause.places.size() > 1) share_out(clause.places);
  }

  /// Its own, where it is of another place; a place that is not said again is the one before.
  void begin_fault(const Terms& terms) {
    Concepts concepts = all_concepts(terms);
    std::vector<SaidFault>& faults = result_.faults;
    if (faults.empty()) {
      faults.push_back({});
    } else if (is_another_fault(concepts, faults.back().concepts) || is_of_other_side(terms)) {
      const Concepts& before = faults.back().concepts;
      const bool is_of_same =
          !concepts.has_any(is_part) && (!names_subject(terms) || before.has_any(is_face));
      const Concepts parts = is_of_same ? before.only(is_part) : Concepts();
      faults.push_back({parts});
      fault_side_ = {};
    }
  }

  /// "The left dart is too high, the right too low".
  [[nodiscard]] bool is_of_other_side(const Terms& terms) const {
    const BodySide before = fault_side_.side(), side = side_in(terms);
    if (before == BodySide::Both || side == BodySide::Both || before == side) return false;
    const Concepts& fault = result_.faults.back().concepts;
    return fault.has_any(is_sight) && !holds_all(fault, is_sight, all_concepts(terms));
  }

  /// "Waist and bust too tight" is a fault of each.
  void share_out(const std::vector<Concepts>& places) {
    const SaidFault all = result_.faults.back();
    result_.faults.pop_back();
    for (const Concepts& place : places) {
      SaidFault& one = result_.faults.emplace_back(all);
      one.concepts =
          all.concepts.only([](Concept some) { return !is_part(some) && !is_face(some); });
      one.concepts.add(place);
    }
  }

  void add_term(const Term& term) {
    result_.concepts.add(term.concepts);
    result_.faults.back().concepts.add(term.concepts);
    for (const SaidWord& word : term.words) {
      result_.stems.push_back(word.stem);
      result_.faults.back().stems.push_back(word.stem);
    }
    if (term.is_unknown) name(term.words.front().typed);
    side_.hear(term);
    fault_side_.hear(term);
  }

  /// Each word once, and no more than a person reads.
  void name(const std::string& typed) {
    std::vector<std::string>& unknown = result_.unknown;
    const bool is_new = std::ranges::find(unknown, typed) == unknown.end();
    if (is_new && unknown.size() < kMostUnknown) unknown.push_back(typed);
  }

  Understood result_;
  NamedSide side_, fault_side_;
};

}  // namespace

Understood understood(std::string_view said) {
  AllSaid all;
  for (const Clause& clause : clauses_of(said)) all.add(clause);
  return all.taken();
}

Concepts meaning_of(std::string_view saying) {
  Concepts all;
  for (const Term& term : terms_of(saying)) all.add(term.concepts);
  join_faces(all);
  return all;
}

}  // namespace blockwright
