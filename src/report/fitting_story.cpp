#include "blockwright/base/printable.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/report/fitting_report.hpp"
#include "report_json.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

std::string fitting_heading(const Fitting& fitting) {
  std::string text = fmt::format("\nToile {}, {}", fitting.toile, fitting.date);
  if (!fitting.by.empty()) text += ", fitted by " + printable(fitting.by);
  text += "\n";
  return fitting.note.empty() ? text : text + "  " + printable(fitting.note) + "\n";
}

/// What a newer tape has left of a correction; nothing where it has none of it.
struct Left {
  Length by;
  bool as_written = false;  ///< the file says so
};
std::optional<Left> left_of(const FittingReport& report, std::size_t number) {
  const auto left = [](const NumberedCorrection& one, Length by) {
    const OnNewTape answer = one.correction.new_tape.answer;
    return Left{by, answer == OnNewTape::Drop || answer == OnNewTape::Change};
  };
  const auto& gone = report.in_the_tape;
  const auto found = std::ranges::find(gone, number, &NumberedCorrection::number);
  if (found != gone.end()) return left(*found, Length());
  for (const FittingLine& line : report.lines) {
    const NumberedCorrection& one = line.correction;
    if (one.number == number && one.before_new_tape) return left(one, one.correction.by);
  }
  return std::nullopt;
}

/// "2.5 cm per half".
std::string amount_left(Correction correction, Length by, Unit unit) {
  correction.by = by;
  correction.given.clear();
  return fmt::format("{}", fmt::join(amount_lines(correction, unit), " "));
}

std::string left_text(const FittingReport& report, std::size_t number,
                      const Correction& correction) {
  const auto left = left_of(report, number);
  if (!left) return "";
  const std::string why = left->as_written ? "as the file says" : "with the newer tape";
  if (left->by == Length()) return fmt::format("; {} nothing of it is left", why);
  return fmt::format("; {} it counts {}", why, amount_left(correction, left->by, report.unit));
}

std::string done_text(const FittingReport& report, std::size_t number,
                      const Correction& correction) {
  std::string text;
  if (!correction.seen.empty()) {
    text = fmt::format("  {:>2}. seen: {}\n      done: ", number, printable(correction.seen));
  } else {
    text = fmt::format("  {:>2}. done: ", number);
  }
  text += correction_text(correction, report.unit);
  if (correction.withdrawn) return text + "; withdrawn, not applied\n";
  return text + left_text(report, number, correction) + "\n";
}

std::string look_first_text(const Fitting& fitting) {
  const std::vector<std::string> lines = look_first(fitting.corrections);
  if (lines.empty()) return "";
  return fmt::format("  Look at these first on toile {}:\n    {}\n", fitting.toile + 1,
                     fmt::join(lines, "\n    "));
}

/// The tapes in doubt, once for each measurement, in the order of work; of two doubts of one the
/// first that a tape would help.
std::vector<Doubt> tapes_in_doubt(const FittingReport& report) {
  std::vector<Doubt> doubts;
  for (const FittingLine& line : report.lines) {
    if (!line.doubt) continue;
    const auto same = std::ranges::find(doubts, line.doubt->name, &Doubt::name);
    if (same == doubts.end()) {
      doubts.push_back(*line.doubt);
    } else if (!is_worth_taping(*same)) {
      *same = *line.doubt;
    }
  }
  return doubts;
}

std::string tape_line(const FittingReport& report, const Doubt& doubt) {
  const std::string value = value_text(doubt.taped, report.unit);
  if (!doubt.estimated) {
    return fmt::format("  {}: {} in the session of {}\n", words_of(doubt.name), value,
                       report.session);
  }
  return fmt::format("  {}: estimated at {}; taping it {}\n", words_of(doubt.name), value,
                     is_worth_taping(doubt) ? "would help" : "would change little");
}

/// Those taped that another tape would help, then those that nobody taped.
std::string tapes_text(const FittingReport& report) {
  std::string again, never;
  for (const Doubt& doubt : tapes_in_doubt(report)) {
    if (doubt.estimated) never += tape_line(report, doubt);
    if (!doubt.estimated && is_worth_taping(doubt)) again += tape_line(report, doubt);
  }
  return (again.empty() ? "" : "\nTake these tapes again\n" + again) +
         (never.empty() ? "" : "\nNever taped\n" + never);
}

Json done_json(const FittingReport& report, std::size_t number, const Correction& correction) {
  Json done = {{"number", number}};
  if (!correction.seen.empty()) done["seen"] = correction.seen;
  done["did"] = correction_text(correction, report.unit);
  if (correction.withdrawn) done["withdrawn"] = true;
  if (const auto left = left_of(report, number)) done["left_mm"] = left->by.mm();
  return done;
}

Json fitting_as_json(const FittingReport& report, const Fitting& fitting, std::size_t before) {
  Json told = {{"toile", fitting.toile}, {"date", fitting.date}};
  if (!fitting.by.empty()) told["by"] = fitting.by;
  if (!fitting.note.empty()) told["note"] = fitting.note;
  told["corrections"] = list_of(fitting.corrections, [&](const Correction& correction) {
    return done_json(report, ++before, correction);
  });
  told["look_at_first"] = look_first(fitting.corrections);
  return told;
}

}  // namespace

Json story_json(const FittingReport& report) {
  std::size_t before = 0;
  return list_of(report.fittings, [&](const Fitting& fitting) {
    const std::size_t first = before;
    before += fitting.corrections.size();
    return fitting_as_json(report, fitting, first);
  });
}

Json tapes_again_json(const FittingReport& report) {
  std::vector<Doubt> doubts = tapes_in_doubt(report);
  std::erase_if(doubts, [](const Doubt& doubt) { return !is_worth_taping(doubt); });
  return list_of(doubts, [](const Doubt& doubt) { return info(doubt.name).key; });
}

std::vector<std::string> look_first(const std::vector<Correction>& corrections) {
  std::vector<CorrectionRow> rows;
  for (const OrderedCorrection& ordered : order_corrections(corrections)) {
    for (const CorrectionRow row : ordered.look_at) {
      if (std::ranges::count(rows, row) == 0) rows.push_back(row);
    }
  }
  std::ranges::stable_sort(rows, {}, [](CorrectionRow row) { return fitting_row(row).stage; });
  rows.resize(std::min(rows.size(), kMostLookedAt));
  std::vector<std::string> lines;
  lines.reserve(rows.size());
  for (const CorrectionRow row : rows) {
    lines.push_back(std::string(fitting_row(row).name) + ": " + std::string(fitting_row(row).seen));
  }
  return lines;
}

std::string story_text(const FittingReport& report) {
  std::string text = fmt::format("{}, fittings toile by toile\n", printable(report.client));
  if (report.fittings.empty()) text += "\nNo fittings.\n" + how_to_begin(report);
  std::size_t number = 0;
  for (const Fitting& fitting : report.fittings) {
    text += fitting_heading(fitting);
    if (fitting.corrections.empty()) text += "  nothing to correct\n";
    for (const Correction& correction : fitting.corrections) {
      text += done_text(report, ++number, correction);
    }
    text += look_first_text(fitting);
  }
  Problems warnings = report.problems;
  std::erase_if(warnings, [](const Problem& p) { return p.severity == Severity::Note; });
  return text + tapes_text(report) + problem_list(warnings);
}

}  // namespace blockwright
