#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/solve.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// A measurement that moved by this share of what a correction asked for, or more, explains it.
// Ours.
constexpr double kLeastShare = 0.5;
constexpr double kMostShare = 1.5;

/// The session that the fitting's toile was drafted from: the newest that is not later.
const Session* session_before(const Client& client, const std::string& date) {
  const Session* found = nullptr;
  for (const Session& session : client.sessions) {
    if (session.date <= date) found = &session;
  }
  return found;
}

std::optional<Measure> taped(const Session& session, MeasurementName name) {
  const auto& readings = session.tape[name];
  return readings ? std::optional(readings->median()) : std::nullopt;
}

/// A measurement that a correction called into doubt, in the session of the fitting and now.
struct Retaped {
  MeasurementName name;
  const Session* before = nullptr;
  Measure was, is;
};

std::optional<Retaped> explaining(const BlockSource& source, const NumberedCorrection& numbered) {
  const RowAmount amount = row_of(numbered.correction);
  const FittingRow& row = fitting_row(amount.row);
  const Session* before = session_before(source.client, numbered.date);
  if (!row.doubts || before == nullptr || before->date >= source.session.date) return std::nullopt;
  const auto was = taped(*before, row.doubts->name), is = taped(source.session, row.doubts->name);
  const Measure asked = row.doubts->change(Length::mm(amount.sign * counted_amount(amount)));
  if (!was || !is || asked.number() == 0.0) return std::nullopt;
  const double share = (*is - *was) / asked;
  if (share < kLeastShare || share > kMostShare) return std::nullopt;
  return Retaped{row.doubts->name, before, *was, *is};
}

/// What both sessions took of the measurement, where the newer one already has what the correction
/// asked for: "the session of 2026-09-20 took ... where that of 2026-03-14 took ...".
std::optional<std::string> tapes_of(const BlockSource& source,
                                    const NumberedCorrection& correction) {
  const auto retaped = explaining(source, correction);
  if (!retaped) return std::nullopt;
  const auto value = [&](Measure v) { return value_text(v, source.unit); };
  return "the session of " + source.session.date + " took " + words_of(retaped->name) + " as " +
         value(retaped->is) + " where that of " + retaped->before->date + " took " +
         value(retaped->was);
}

std::optional<Problem> told(const BlockRun& run, const NumberedCorrection& numbered) {
  if (numbered.correction.on_new_tape == OnNewTape::Keep) return std::nullopt;
  const auto tapes = tapes_of(run, numbered);
  if (!tapes) return std::nullopt;
  const std::string number = std::to_string(numbered.number);
  return Problem{
      Severity::Warning, "fit.explained",
      "correction " + number + ": " + numbered.correction.action + " " + numbered.correction.place,
      *tapes +
          ": the new tape already has what this correction asked for, and both are "
          "applied",
      "withdraw it with `blockwright fit FILE --undo " + number +
          "`, or write \"new_tape\": \"keep\" next to it if the next toile shows the "
          "same again"};
}

/// A whole length of a block by the name that an effect gives it; nothing for those that are not
/// edges or whole edges.
std::optional<double> length_named(const Pattern& pattern, const std::string& name) {
  if (const KindEdge* edge = kind_edge(piece_of(pattern, kBodiceFront), name)) {
    const double whole = edge->part == BlockEdge::Armhole ? 1.0 : 2.0;
    return whole * half_length(pattern, edge->part);
  }
  for (const NamedLength& length : measured_edges(pattern)) {
    if (length.name == name) return length.mm;
  }
  return std::nullopt;
}

bool has_both_halves(const Pattern& pattern) {
  return std::all_of(pattern.pieces.begin(), pattern.pieces.end(),
                     [](const Piece& p) { return p.kind != nullptr && p.name == p.kind->name; });
}

/// The length that the correction moved most and that can be measured on any block.
const MovedLength* telling_length(const BlockRun& run, const Effect& effect) {
  const MovedLength* most = nullptr;
  for (const MovedLength& moved : effect.moved) {
    if (!length_named(run.block.pattern, moved.name)) continue;
    if (most == nullptr || std::abs(moved.change()) > std::abs(most->change())) most = &moved;
  }
  return most;
}

double drafted_length(const BlockRun& run, MeasurementName name, Measure value,
                      const std::string& length) {
  Session session = run.session;
  session.tape[name] = Readings{{value}};
  const DraftedBlock block = draft_block(fill_in(session), Ease::of(run.client));
  return length_named(block.pattern, length).value_or(0.0);
}

std::vector<Explained> explained_in(const BlockSource& source) {
  std::vector<Explained> explained;
  for (const NumberedCorrection& numbered :
       active_corrections(source.client, source.before_toile)) {
    const Correction& correction = numbered.correction;
    if (correction.on_new_tape != OnNewTape::Ask) continue;
    if (const auto tapes = tapes_of(source, numbered)) {
      explained.push_back(
          {static_cast<int>(numbered.number), correction.action + " " + correction.place, *tapes});
    }
  }
  return explained;
}

}  // namespace

bool told_by_new_tape(const BlockSource& source, const NumberedCorrection& correction) {
  return explaining(source, correction).has_value();
}

Problems told_by_new_tape(const BlockRun& run) {
  Problems problems;
  for (const NumberedCorrection& numbered : run.corrections) {
    if (const auto problem = told(run, numbered)) problems.push_back(*problem);
  }
  return problems;
}

std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect) {
  const FittingRow& row = fitting_row(effect.row);
  if (!row.doubts || !run.body.has(row.doubts->name)) return std::nullopt;
  const Measure taped = run.body[row.doubts->name];
  const Measure asked = row.doubts->change(Length::mm(effect.by));
  Doubt doubt{row.doubts->name, taped, taped + asked, true};
  const MovedLength* length = telling_length(run, effect);
  if (length == nullptr || asked.number() == 0.0 || !has_both_halves(run.block.pattern))
    return doubt;
  const double wanted = length->change();
  const double now = *length_named(run.block.pattern, length->name);
  const auto off = [&](double value) {
    return drafted_length(run, doubt.name, measure_of(doubt.name, value), length->name) - now -
           wanted;
  };
  const double low = (taped + kLeastShare * asked).number();
  const double high = (taped + kMostShare * asked).number();
  const auto can_be = [&](double value) {
    return info(doubt.name).allows(measure_of(doubt.name, value));
  };
  if (!can_be(low) || !can_be(high)) return doubt;
  if ((off(low) > 0.0) == (off(high) > 0.0)) return doubt;
  doubt.would_do = measure_of(doubt.name, solve_between(off, {low, high}, 0.05));
  doubt.roughly = false;
  return doubt;
}

std::vector<Explained> explained_corrections(const Job& job, FileStore& files) {
  try {
    return explained_in(block_source(job, files));
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
    text =
        with_new_tape({text, client}, static_cast<std::size_t>(decision.number), decision.answer);
  }
  in_its_place([&] { files.write_all({{client + ".bak", before}, {client, text}}); });
}

}  // namespace blockwright
