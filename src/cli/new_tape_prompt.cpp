#include "new_tape_prompt.hpp"

#include "blockwright/base/printable.hpp"
#include "prompt.hpp"

#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace blockwright {
namespace {

enum class SumAnswer { Settle, Keep, Drop, Later };

/// Nothing at the end of the input.
std::optional<SumAnswer> settle_keep_or_drop(const Prompt& prompt) {
  while (const auto line =
             prompt.answer("Settle it so (s), keep it as it was (k), or drop it (d)?")) {
    const std::string word = in_small_letters(*line);
    if (word.empty()) return SumAnswer::Later;
    if (ends_questions(word)) return std::nullopt;
    if (word == "s" || word == "settle") return SumAnswer::Settle;
    if (word == "k" || word == "keep") return SumAnswer::Keep;
    if (word == "d" || word == "drop") return SumAnswer::Drop;
    prompt.out() << "  s, k, d, or nothing: settle it so this time, and ask again\n";
  }
  return std::nullopt;
}

AfterNewTape answer_for(const ExplainedDecision& settled, SumAnswer answer) {
  if (answer == SumAnswer::Settle) return settled.answer;
  return {answer == SumAnswer::Keep ? OnNewTape::Keep : OnNewTape::Drop, {}};
}

void write_answer(const std::string& client, const ExplainedSum& explained, SumAnswer answer,
                  FileStore& files) {
  std::vector<ExplainedDecision> decisions;
  for (const ExplainedDecision& settled : explained.settled) {
    decisions.push_back({settled.number, answer_for(settled, answer)});
  }
  decide_explained(client, decisions, files);
}

}  // namespace

bool ask_of_explained(const Job& job, FileStore& files, std::istream& in, std::ostream& out) {
  bool is_written = false, goes_on = true;
  for (const ExplainedSum& explained : explained_sums(job, files)) {
    out << printable(explained.corrections + " " + explained.sum) << ".\n";
    const auto answer = settle_keep_or_drop(Prompt(in, out));
    goes_on = answer.has_value();
    if (!goes_on) break;
    if (*answer == SumAnswer::Later) continue;
    write_answer(job.client, explained, *answer, files);
    is_written = true;
  }
  if (is_written) {
    const std::string client = shown_place(job.client);
    out << "Written into " << client << "; the text before the last answer is " << client
        << ".bak\n\n";
  }
  return goes_on;
}

}  // namespace blockwright
