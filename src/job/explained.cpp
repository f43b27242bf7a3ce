#include "blockwright/job/explained.hpp"

#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "new_tape.hpp"

namespace blockwright {
namespace {

std::vector<Explained> explained_in(const Client& client, const Session& session, const Job& job) {
  const Unit unit = job.unit.value_or(client.unit);
  std::vector<Explained> explained;
  for (const NumberedCorrection& numbered : active_corrections(client, job.toile)) {
    const Correction& correction = numbered.correction;
    if (correction.on_new_tape != OnNewTape::Ask) continue;
    if (const auto tapes = tapes_of(client, session, unit, numbered)) {
      explained.push_back(
          {static_cast<int>(numbered.number), correction.action + " " + correction.place, *tapes});
    }
  }
  return explained;
}

}  // namespace

std::vector<Explained> explained_corrections(const Job& job, FileStore& files) {
  try {
    const Client client = client_in(files.read(job.client), job.client, job);
    return explained_in(client, session_of(client, job.session, job.client), job);
  } catch (const Error&) {
    return {};
  }
}

void decide_explained(const std::string& client, const std::vector<ExplainedDecision>& decisions,
                      FileStore& files) {
  if (decisions.empty()) return;
  const std::string before = files.read(client);
  std::string text = before;
  for (const ExplainedDecision& decision : decisions) {
    const bool keep = decision.answer == ExplainedAnswer::Keep;
    text = with_new_tape(text, client, static_cast<std::size_t>(decision.number),
                         keep ? OnNewTape::Keep : OnNewTape::Drop);
  }
  files.write_all({{client + ".bak", before}, {client, text}});
}

}  // namespace blockwright
