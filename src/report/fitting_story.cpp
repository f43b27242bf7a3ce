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

std::string done_text(const NumberedCorrection& done, Unit unit) {
  const Correction& correction = done.correction;
  std::string text;
  if (!correction.seen.empty()) {
    text = fmt::format("  {:>2}. seen: {}\n      done: ", done.number, printable(correction.seen));
  } else {
    text = fmt::format("  {:>2}. done: ", done.number);
  }
  text += correction_text(correction, unit);
  return text + (correction.withdrawn ? "; withdrawn, not applied\n" : "\n");
}

std::string look_first_text(const Fitting& fitting) {
  const std::vector<std::string> lines = look_first(fitting.corrections);
  if (lines.empty()) return "";
  return fmt::format("  Look at these first on toile {}:\n    {}\n", fitting.toile + 1,
                     fmt::join(lines, "\n    "));
}

/// Tapes to take again: once for each measurement, in the order of work.
std::vector<Doubt> tapes_in_doubt(const FittingReport& report) {
  std::vector<Doubt> doubts;
  for (const FittingLine& line : report.lines) {
    if (!line.doubt || std::ranges::count(doubts, line.doubt->name, &Doubt::name) > 0) continue;
    doubts.push_back(*line.doubt);
  }
  return doubts;
}

std::string tapes_text(const FittingReport& report) {
  std::string text;
  for (const Doubt& doubt : tapes_in_doubt(report)) {
    text += fmt::format("  {}: {} in the session of {}\n", words_of(doubt.name),
                        value_text(doubt.taped, report.unit), report.session);
  }
  return text.empty() ? "" : "\nTake these tapes again\n" + text;
}

Json done_json(std::size_t number, const Correction& correction, Unit unit) {
  Json done = {{"number", number}};
  if (!correction.seen.empty()) done["seen"] = correction.seen;
  done["did"] = correction_text(correction, unit);
  if (correction.withdrawn) done["withdrawn"] = true;
  return done;
}

Json fitting_as_json(const Fitting& fitting, std::size_t before, Unit unit) {
  Json told = {{"toile", fitting.toile}, {"date", fitting.date}};
  if (!fitting.by.empty()) told["by"] = fitting.by;
  if (!fitting.note.empty()) told["note"] = fitting.note;
  told["corrections"] = list_of(fitting.corrections, [&](const Correction& correction) {
    return done_json(++before, correction, unit);
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
    return fitting_as_json(fitting, first, report.unit);
  });
}

Json tapes_again_json(const FittingReport& report) {
  return list_of(tapes_in_doubt(report), [](const Doubt& doubt) { return info(doubt.name).key; });
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
      text += done_text({++number, fitting.date, fitting.toile, correction}, report.unit);
    }
    text += look_first_text(fitting);
  }
  Problems warnings = report.problems;
  std::erase_if(warnings, [](const Problem& p) { return p.severity == Severity::Note; });
  return text + tapes_text(report) + problem_list(warnings);
}

}  // namespace blockwright
