#include "blockwright/measure/tape_changes.hpp"

#include "blockwright/text/units.hpp"
#include "slips.hpp"
#include "tape_error.hpp"

#include <algorithm>
#include <optional>

namespace blockwright {
namespace {

// A level that was taken elsewhere by less moves nothing that a draft shows. Ours.
constexpr Length kLeastLevelMove = Length::mm(15);

std::optional<Measure> change_of(MeasurementName name, const Session& earlier,
                                 const Session& session) {
  const auto &before = earlier.tape[name], &now = session.tape[name];
  if (!before || !now) return std::nullopt;
  return now->median() - before->median();
}

// Common causes that would explain a change: how far each of its measurements says that the level
// moved, mm.
std::vector<double> level_moves(const CommonCause& cause, const Session& earlier,
                                const Session& session) {
  std::vector<double> moves;
  for (const auto& [name, per_mm, may_stay] : cause.parts) {
    const auto change = change_of(name, earlier, session);
    const bool stayed = change && may_stay && tapes_differ_so({name, *change});
    if (change && !stayed) moves.push_back(change->number() / per_mm);
  }
  return moves;
}

// A common cause and how far it went, mm.
struct LevelMove {
  const CommonCause* cause = nullptr;
  std::size_t told_by = 0;
  double by = 0.0;
};

std::optional<LevelMove> level_move(const CommonCause& cause, const Session& earlier,
                                    const Session& session) {
  const std::vector<double> moves = level_moves(cause, earlier, session);
  if (moves.size() < 2) return std::nullopt;
  const auto [least, most] = std::ranges::minmax(moves);
  const double by = 0.5 * (least + most);
  const bool together = most - least <= 2.0 * kUsualSpread.length.mm() + kRounding;
  if (!together || std::abs(by) < kLeastLevelMove.mm()) return std::nullopt;
  if ((by > 0.0 ? cause.more : cause.less).empty()) return std::nullopt;
  return LevelMove{&cause, moves.size(), by};
}

// The one that most measurements tell.
std::optional<LevelMove> likeliest_move(const Session& earlier, const Session& session) {
  std::optional<LevelMove> best;
  for (const CommonCause& cause : common_causes()) {
    const auto move = level_move(cause, earlier, session);
    if (move && (!best || move->told_by > best->told_by)) best = move;
  }
  return best;
}

Wording list_of_changes(const std::vector<TapeChange>& changes) {
  Wording list;
  for (const auto& [name, by] : changes) {
    list += std::string(list.empty() ? "" : ", ") + name_text(info(name).key) + " ";
    list += Wording(abs(by)) + (by.number() > 0.0 ? " more" : " less");
  }
  return list;
}

Wording cause_words(const LevelMove& move) {
  const bool more = move.by > 0.0;
  const std::string now(more ? move.cause->more : move.cause->less);
  const std::string then(more ? move.cause->less : move.cause->more);
  return ". It looks as if this time " + now + ", by about " + Length::mm(std::abs(move.by)) +
         (then.empty() ? "" : ", or that time " + then);
}

}  // namespace

bool tapes_differ_so(const TapeChange& change) {
  return abs(change.by).number() <= kUsualSpread.of(change.name).number() + kRounding;
}

const Session* session_taken_before(const Client& client, const Session& session) {
  const Session* found = nullptr;
  for (const Session& other : client.sessions) {
    if (other.date < session.date) found = &other;
  }
  return found;
}

std::vector<TapeChange> changes_since(const Session& earlier, const Session& session) {
  std::vector<TapeChange> changes;
  for (const MeasurementInfo& entry : kMeasurements) {
    const auto by = change_of(entry.name, earlier, session);
    if (by && !tapes_differ_so({entry.name, *by})) changes.push_back({entry.name, *by});
  }
  return changes;
}

Problems judge_changes(const Session& earlier, const Session& session) {
  const std::vector<TapeChange> changes = changes_since(earlier, session);
  if (changes.empty()) return {};
  const auto move = likeliest_move(earlier, session);
  Problem problem{.severity = move ? Severity::Warning : Severity::Note,
                  .code = "measure.changed",
                  .where = "since " + earlier.date,
                  .message = list_of_changes(changes) + " than then; tapes differ by less",
                  .hint = "where the body is the same, take it again"};
  if (move) {
    problem.message += cause_words(*move);
    problem.hint = std::string(move->cause->cure);
  }
  for (const TapeChange& change : changes) {
    problem.measurements.emplace_back(info(change.name).key);
  }
  return {problem};
}

}  // namespace blockwright
