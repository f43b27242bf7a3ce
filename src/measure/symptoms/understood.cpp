#include "understood.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum Concept;

/// What gapes between buttons is tight, and what stands out at the blades is the body.
void read_by_place(Concepts& seen) {
  if (seen.has(Buttons)) {
    if (!seen.has_any(is_part)) seen.add(seen.has(Back) ? Centre : Bust);
    if (seen.has(Gapes)) seen.add(Tight);
    if (seen.has(Gapes)) seen.remove(Gapes);
    seen.remove(Buttons);
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

/// Puts the clauses together that name a fault.
class AllSaid {
 public:
  void add(const Clause& clause) {
    if (clause.of == SaidOf::Fault) {
      for (const Term& term : clause.terms) add_term(term);
    } else if (result_.set_aside == SaidOf::Fault) {
      result_.set_aside = clause.of;
    }
  }

  Understood taken() {
    join_faces(result_.concepts);
    read_by_place(result_.concepts);
    if (left_ != right_) result_.side = left_ ? BodySide::Left : BodySide::Right;
    return std::move(result_);
  }

 private:
  void add_term(const Term& term) {
    result_.concepts.add(term.concepts);
    for (const SaidWord& word : term.words) result_.stems.push_back(word.stem);
    if (term.words.empty()) return;
    if (term.is_unknown) name(term.words.front().typed);
    const bool is_side = term.concepts.has(One);
    left_ = left_ || (is_side && term.words.front().stem == "left");
    right_ = right_ || (is_side && term.words.front().stem == "right");
  }

  /// Each word once, and no more than a person reads.
  void name(const std::string& typed) {
    std::vector<std::string>& unknown = result_.unknown;
    const bool is_new = std::ranges::find(unknown, typed) == unknown.end();
    if (is_new && unknown.size() < kMostUnknown) unknown.push_back(typed);
  }

  Understood result_;
  bool left_ = false, right_ = false;
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
