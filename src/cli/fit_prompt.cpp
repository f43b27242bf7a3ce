#include "fit_prompt.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "new_tape_prompt.hpp"
#include "prompt.hpp"

#include <algorithm>
#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace blockwright {
namespace {

/// The symptom whose row the fitter names.
const Symptom* chosen_symptom(const Prompt& prompt, const std::vector<Symptom>& symptoms) {
  std::string_view stage;
  for (const Symptom& symptom : symptoms) {
    if (symptom.stage != stage) prompt.out() << "\n" << symptom.stage << "\n";
    stage = symptom.stage;
    prompt.show(static_cast<std::size_t>(symptom.row), symptom.seen);
  }
  const auto row = prompt.choice("What is seen? (nothing: done)", symptoms.size());
  if (!row) return nullptr;
  const auto found = std::ranges::find(symptoms, static_cast<int>(*row) + 1, &Symptom::row);
  return found == symptoms.end() ? nullptr : &*found;
}

std::string words_of(const CorrectionWords& correction) {
  return std::string(correction.action) + " " + std::string(correction.place);
}

const CorrectionWords* chosen_answer(const Prompt& prompt, const Symptom& seen) {
  prompt.out() << "Often because: " << seen.cause << "\nUsual amount: " << seen.usual << "\n";
  for (std::size_t i = 0; i < seen.answers.size(); ++i) {
    prompt.show(i + 1, words_of(seen.answers[i]));
  }
  if (seen.answers.size() == 1) return &seen.answers[0];
  const auto which = prompt.choice("Which correction?", seen.answers.size());
  return which ? &seen.answers[*which] : nullptr;
}

struct Answered {
  std::string words;
  std::optional<AmountAs> as = {};
  std::optional<BodySide> side = {};
};

/// Asks how the amount was read, where that must be said; false if the fitter leaves.
bool ask_way(const Prompt& prompt, const CorrectionWords& correction, Answered& answered) {
  if (!correction.must_say) return true;
  const std::vector<AmountAs>& ways = correction.readings;
  for (std::size_t i = 0; i < ways.size(); ++i) prompt.show(i + 1, amount_way(ways[i]).meaning);
  const auto way = prompt.choice("How was it read?", ways.size());
  if (way) answered.as = ways[*way];
  return way.has_value();
}

std::optional<Answered> one_correction(const Prompt& prompt, const std::vector<Symptom>& symptoms,
                                       Unit unit) {
  const Symptom* seen = chosen_symptom(prompt, symptoms);
  const CorrectionWords* correction = seen == nullptr ? nullptr : chosen_answer(prompt, *seen);
  if (correction == nullptr) return std::nullopt;
  const auto amount = prompt.answer(words_of(*correction) + " by how much, in " +
                                    std::string(unit_name(unit)) + "?");
  if (!amount || amount->empty()) return std::nullopt;
  Answered answered{words_of(*correction) + " " + *amount};
  if (!ask_way(prompt, *correction, answered)) return std::nullopt;
  if (correction->one_sided) {
    const auto side = prompt.choice("On which side? 1 left, 2 right", 2);
    if (!side) return std::nullopt;
    answered.side = *side == 0 ? BodySide::Left : BodySide::Right;
  }
  return answered;
}

}  // namespace

void ask_for_corrections(FitJob& job, FileStore& files, std::istream& in, std::ostream& out) {
  Job drafted;
  drafted.client = job.client;
  drafted.session = job.session;
  drafted.unit = job.unit;
  ask_of_explained(drafted, files, in, out);
  const Unit unit = unit_of_client(job.client, files);
  const std::vector<Symptom> symptoms = fitting_symptoms(unit);
  while (const auto answered = one_correction(Prompt(in, out), symptoms, unit)) {
    FitJob one = job;
    one.add = {answered->words};
    one.undo = one.redo = {};
    one.as = answered->as;
    one.side = answered->side;
    one.report = ReportKind::Text;
    const JobResult result = run_fit(one, files);
    if (result.exit_code == 0) {
      out << "Added: " << shown(answered->words) << "\n";
    } else {
      for (const Problem& problem : result.problems) out << to_text(problem) << "\n";
    }
  }
  out << "\n";
}

}  // namespace blockwright
