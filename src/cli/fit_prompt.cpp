#include "fit_prompt.hpp"

#include "blockwright/job/explained.hpp"

#include <algorithm>
#include <charconv>
#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace blockwright {
namespace {

/// One line of an answer; nothing at the end of the input.
std::optional<std::string> answer(std::istream& in, std::ostream& out,
                                  const std::string& question) {
  out << question << " > " << std::flush;
  std::string line;
  if (!std::getline(in, line)) return std::nullopt;
  return line;
}

/// A number from 1 to `count`; nothing for an empty line or the end.
std::optional<std::size_t> choice(std::istream& in, std::ostream& out, const std::string& question,
                                  std::size_t count) {
  while (const auto line = answer(in, out, question)) {
    if (line->empty()) return std::nullopt;
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(line->data(), line->data() + line->size(), number);
    const bool whole = error == std::errc() && end == line->data() + line->size();
    if (whole && number >= 1 && number <= count) return number - 1;
    out << "  a number from 1 to " << count << ", or nothing to leave\n";
  }
  return std::nullopt;
}

void show_symptoms(std::ostream& out, const std::vector<Symptom>& symptoms) {
  std::string stage;
  for (const Symptom& symptom : symptoms) {
    if (symptom.stage != stage) out << "\n" << symptom.stage << "\n";
    stage = symptom.stage;
    out << "  " << symptom.row << ". " << symptom.seen << "\n";
  }
}

/// The symptom whose row the fitter names.
const Symptom* chosen_symptom(std::istream& in, std::ostream& out,
                              const std::vector<Symptom>& symptoms) {
  const auto row = choice(in, out, "What is seen? (nothing: done)", symptoms.size());
  if (!row) return nullptr;
  const auto found = std::find_if(symptoms.begin(), symptoms.end(), [&](const Symptom& symptom) {
    return symptom.row == static_cast<int>(*row) + 1;
  });
  return found == symptoms.end() ? nullptr : &*found;
}

std::optional<std::size_t> chosen_answer(std::istream& in, std::ostream& out, const Symptom& seen) {
  out << "Often because: " << seen.cause << "\nUsual amount: " << seen.usual << "\n";
  for (std::size_t i = 0; i < seen.answers.size(); ++i) {
    out << "  " << i + 1 << ". " << seen.answers[i].words << "\n";
  }
  if (seen.answers.size() == 1) return 0;
  return choice(in, out, "Which correction?", seen.answers.size());
}

struct Answered {
  std::string words;
  std::optional<AmountAs> as = {};
  std::optional<BodySide> side = {};
};

/// Asks how the amount was read, where that must be said; false if the fitter leaves.
bool ask_way(std::istream& in, std::ostream& out, const Symptom::Answer& correction,
             Answered& answered) {
  if (correction.as.empty()) return true;
  for (std::size_t i = 0; i < correction.as.size(); ++i) {
    out << "  " << i + 1 << ". " << amount_meaning(correction.as[i]) << "\n";
  }
  const auto way = choice(in, out, "How was it read?", correction.as.size());
  if (way) answered.as = correction.as[*way];
  return way.has_value();
}

std::optional<Answered> one_correction(std::istream& in, std::ostream& out,
                                       const std::vector<Symptom>& symptoms, Unit unit) {
  show_symptoms(out, symptoms);
  const Symptom* seen = chosen_symptom(in, out, symptoms);
  if (seen == nullptr) return std::nullopt;
  const auto which = chosen_answer(in, out, *seen);
  if (!which) return std::nullopt;
  const Symptom::Answer& correction = seen->answers[*which];
  const auto amount = answer(
      in, out, correction.words + " by how much, in " + (unit == Unit::Cm ? "cm" : "in") + "?");
  if (!amount || amount->empty()) return std::nullopt;
  Answered answered{correction.words + " " + *amount};
  if (!ask_way(in, out, correction, answered)) return std::nullopt;
  if (correction.one_sided) {
    const auto side = choice(in, out, "On which side? 1 left, 2 right", 2);
    if (!side) return std::nullopt;
    answered.side = *side == 0 ? BodySide::Left : BodySide::Right;
  }
  return answered;
}

/// Keep or drop; nothing for an empty line or the end.
std::optional<ExplainedAnswer> keep_or_drop(std::istream& in, std::ostream& out) {
  while (const auto line = answer(in, out, "Keep it all the same (k) or drop it (d)?")) {
    if (line->empty()) return std::nullopt;
    if (*line == "k" || *line == "keep") return ExplainedAnswer::Keep;
    if (*line == "d" || *line == "drop") return ExplainedAnswer::Drop;
    out << "  k, d, or nothing: keep it this time, and ask again\n";
  }
  return std::nullopt;
}

}  // namespace

void ask_of_explained(const Job& job, FileStore& files, std::istream& in, std::ostream& out) {
  std::vector<ExplainedDecision> decisions;
  for (const Explained& explained : explained_corrections(job, files)) {
    out << "Correction " << explained.number << ", " << explained.correction << ": "
        << explained.tapes << ". The new tape already has what this correction asked for.\n";
    const auto answered = keep_or_drop(in, out);
    if (answered) decisions.push_back({explained.number, *answered});
  }
  decide_explained(job.client, decisions, files);
  if (!decisions.empty()) {
    out << "Written into " << job.client << "; the text before it is " << job.client << ".bak\n\n";
  }
}

void ask_for_corrections(FitJob& job, FileStore& files, std::istream& in, std::ostream& out) {
  Job drafted;
  drafted.client = job.client;
  drafted.session = job.session;
  drafted.unit = job.unit;
  ask_of_explained(drafted, files, in, out);
  const Unit unit = unit_of_client(job.client, files);
  const std::vector<Symptom> symptoms = fitting_symptoms(unit);
  while (const auto answered = one_correction(in, out, symptoms, unit)) {
    FitJob one = job;
    one.add = {answered->words};
    one.undo = one.redo = {};
    one.as = answered->as;
    one.side = answered->side;
    one.report = ReportKind::Text;
    const JobResult result = run_fit(one, files);
    if (result.exit_code == 0) {
      out << "Added: " << answered->words << "\n";
    } else {
      for (const Problem& problem : result.problems) out << to_text(problem) << "\n";
    }
  }
  out << "\n";
}

}  // namespace blockwright
