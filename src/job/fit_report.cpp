#include "fit_report.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/fit/order.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "new_tape.hpp"
#include "notes.hpp"
#include "problems_as_json.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// Changes below this are not told, in mm.
constexpr double kSeen = 0.05;

std::string signed_text(double mm, Unit unit) {
  const std::string size = in_unit(std::abs(mm), unit);
  return (mm < 0.0 ? "-" : "+") + size;
}

std::vector<Correction> plain(const BlockRun& run) {
  std::vector<Correction> corrections;
  for (const NumberedCorrection& numbered : run.corrections) {
    corrections.push_back(numbered.correction);
  }
  return corrections;
}

const Effect* effect_of(const BlockRun& run, std::size_t correction) {
  for (const Effect& effect : run.fitted.effects) {
    const auto& all = effect.corrections;
    if (std::find(all.begin(), all.end(), correction) != all.end()) return &effect;
  }
  return nullptr;
}

std::string prediction(const MovedLength& moved, Unit unit) {
  if (!moved.predicted) return "";
  return std::string(moved.sample ? "; about " : "; expected ") +
         signed_text(*moved.predicted, unit);
}

std::string lengths_text(const Effect& effect, Unit unit) {
  std::string text;
  for (const MovedLength& moved : effect.moved) {
    if (std::abs(moved.change()) < kSeen && !moved.predicted) continue;
    text += fmt::format("       {:<24}{:>8} -> {:<8} ({}{})\n", as_words(moved.name),
                        in_unit(moved.before, unit), in_unit(moved.after, unit),
                        signed_text(moved.change(), unit), prediction(moved, unit));
  }
  return text;
}

/// The row's name in the direction of the correction.
std::string_view title_of(const NumberedCorrection& numbered) {
  const RowAmount row = row_of(numbered.correction);
  return row_name(row.row, row.sign);
}

std::string voids_text(const BlockRun& run, const OrderedCorrection& ordered) {
  std::string text;
  for (const std::size_t other : ordered.voids) {
    const NumberedCorrection& numbered = run.corrections[other];
    text += "       makes void what was judged for " + std::to_string(numbered.number) + " (" +
            as_words(numbered.correction.action + " " + numbered.correction.place) +
            "): see it again on the next toile\n";
  }
  return text;
}

std::string doubt_text(const BlockRun& run, const Effect& effect) {
  const auto doubt = doubt_of(run, effect);
  if (!doubt) return "";
  return "       calls into doubt: " + words_of(doubt->name) + ", now " +
         value_text(doubt->name, doubt->taped, run.unit) + "; " +
         (doubt->by_length.empty() ? "about " : "") +
         value_text(doubt->name, doubt->would_do, run.unit) +
         " would have made this correction unnecessary\n";
}

std::string next_toile_text(const std::vector<OrderedCorrection>& order) {
  std::vector<CorrectionRow> rows;
  for (const OrderedCorrection& ordered : order) {
    rows.insert(rows.end(), ordered.look_at.begin(), ordered.look_at.end());
  }
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  if (rows.empty()) return "";
  std::string text = "\nLook for these on the next toile\n";
  for (const CorrectionRow row : rows) {
    text += "  " + std::string(fitting_row(row).name) + ": " + std::string(fitting_row(row).seen) +
            "\n";
  }
  return text;
}

std::string withdrawn_text(const BlockRun& run) {
  std::string text;
  std::size_t number = 0;
  for (const Fitting& fitting : run.client.fittings) {
    for (const Correction& correction : fitting.corrections) {
      ++number;
      if (!correction.withdrawn) continue;
      text += fmt::format("  {:>2}. {} ({}, toile {})\n", number,
                          correction_text(correction, run.unit), fitting.date, fitting.toile);
    }
  }
  return text.empty() ? "" : "\nWithdrawn, not applied\n" + text;
}

std::string problems_text(const BlockRun& run) {
  if (run.problems.empty()) return "";
  std::string text = "\nWhat to look at\n";
  for (const Problem& problem : run.problems) text += "  " + to_text(problem) + "\n";
  return text;
}

nlohmann::ordered_json moved_json(const Effect& effect) {
  auto list = nlohmann::ordered_json::array();
  for (const MovedLength& moved : effect.moved) {
    nlohmann::ordered_json row = {{"name", moved.name},
                                  {"before_mm", rounded(moved.before)},
                                  {"after_mm", rounded(moved.after)}};
    if (moved.predicted) row["predicted_mm"] = rounded(*moved.predicted);
    list.push_back(row);
  }
  return list;
}

}  // namespace

std::string correction_text(const Correction& correction, Unit unit) {
  std::string text = as_words(correction.action + " " + correction.place) + " " +
                     in_unit(correction.by.mm(), unit) + " " + unit_name(unit);
  if (correction.as != AmountAs::Length) {
    text += " (" + as_words(std::string(amount_word(correction.as))) + ")";
  }
  if (correction.side != BodySide::Both) {
    text += ", " + std::string(side_word(correction.side)) + " side";
  }
  return text;
}

std::string fit_text(const BlockRun& run) {
  std::string text = run.client.name + ", corrections in the order of work, session " +
                     run.session.date + ", " + unit_name(run.unit) + "\n";
  if (run.corrections.empty()) text += "\nThere are none.\n";
  const std::vector<OrderedCorrection> order = order_corrections(plain(run));
  int stage = -1;
  for (const OrderedCorrection& ordered : order) {
    const NumberedCorrection& numbered = run.corrections[ordered.correction];
    if (ordered.stage != stage) text += "\n" + std::string(stage_name(ordered.stage)) + "\n";
    stage = ordered.stage;
    text += fmt::format("  {:>2}. {} ({}, toile {}): {}\n", numbered.number,
                        correction_text(numbered.correction, run.unit), numbered.date,
                        numbered.toile, title_of(numbered));
    const Effect* effect = effect_of(run, ordered.correction);
    if (effect != nullptr && effect->corrections.front() == ordered.correction) {
      text += lengths_text(*effect, run.unit) + doubt_text(run, *effect);
    } else if (effect != nullptr) {
      text += "       counted together with " +
              std::to_string(run.corrections[effect->corrections.front()].number) + "\n";
    }
    text += voids_text(run, ordered);
  }
  return text + next_toile_text(order) + withdrawn_text(run) + problems_text(run) +
         "\nSew the next toile before good cloth; where the eye on the body disagrees, the eye is "
         "right.\n";
}

std::string fit_json(const BlockRun& run) {
  Json list = Json::array();
  for (const OrderedCorrection& ordered : order_corrections(plain(run))) {
    const NumberedCorrection& numbered = run.corrections[ordered.correction];
    Json row = {
        {"number", numbered.number},
        {"date", numbered.date},
        {"toile", numbered.toile},
        {"correction", as_words(numbered.correction.action + " " + numbered.correction.place)},
        {"by_mm", numbered.correction.by.mm()},
        {"row", number_of(ordered.row)},
        {"stage", ordered.stage}};
    Json voids = Json::array();
    for (const std::size_t other : ordered.voids) voids.push_back(run.corrections[other].number);
    row["voids"] = voids;
    row["look_at_rows"] = ordered.look_at;
    if (const Effect* effect = effect_of(run, ordered.correction)) {
      row["moved"] = moved_json(*effect);
      if (const auto doubt = doubt_of(run, *effect)) {
        row["doubts"] = {{"name", info(doubt->name).key},
                         {"value", doubt->taped},
                         {"would_do", std::round(doubt->would_do * 10.0) / 10.0}};
      }
    }
    list.push_back(row);
  }
  return Json{{"client", run.client.name},
              {"session", run.session.date},
              {"corrections", list},
              {"problems", problems_as_json(run.problems)}}
             .dump(2, ' ', false, Json::error_handler_t::replace) +
         "\n";
}

}  // namespace blockwright
