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

enum class SumAnswer { Settle, Keep, Drop };

/// Nothing for an empty line or the end.
std::optional<SumAnswer> settle_keep_or_drop(const Prompt& prompt) {
  while (const auto line =
             prompt.answer("Settle it so (s), keep it as it was (k), or drop it (d)?")) {
    if (line->empty()) return std::nullopt;
    if (*line == "s" || *line == "settle") return SumAnswer::Settle;
    if (*line == "k" || *line == "keep") return SumAnswer::Keep;
    if (*line == "d" || *line == "drop") return SumAnswer::Drop;
    prompt.out() << "  s, k, d, or nothing: settle it so this time, and ask again\n";
  }
  return std::nullopt;
}

AfterNewTape answer_for(const ExplainedDecision& settled, SumAnswer answer) {
  if (answer == SumAnswer::Settle) return settled.answer;
  return {answer == SumAnswer::Keep ? OnNewTape::Keep : OnNewTape::Drop, {}};
}

}  // namespace

void ask_of_explained(const Job& job, FileStore& files, std::istream& in, std::ostream& out) {
  std::vector<ExplainedDecision> decisions;
  for (const ExplainedSum& explained : explained_sums(job, files)) {
    out << printable(explained.corrections + " " + explained.sum) << ".\n";
    const auto answer = settle_keep_or_drop(Prompt(in, out));
    if (!answer) continue;
    for (const ExplainedDecision& settled : explained.settled) {
      decisions.push_back({settled.number, answer_for(settled, *answer)});
    }
  }
  decide_explained(job.client, decisions, files);
  if (!decisions.empty()) {
    const std::string client = shown_place(job.client);
    out << "Written into " << client << "; the text before it is " << client << ".bak\n\n";
  }
}

}  // namespace blockwright
