#include "blockwright/report/fitting_report.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "report_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// Changes below this are not shown.
constexpr Length kSeen = Length::mm(0.05);

std::string prediction(const LengthChange& moved, Unit unit) {
  if (!moved.predicted) return "";
  return (moved.roughly ? "; about " : "; expected ") + change_text(*moved.predicted, unit);
}

bool has_moved(const LengthChange& moved) {
  const Length by = *moved.after - *moved.before;
  return by >= kSeen || -by >= kSeen;
}

std::string length_line(const LengthChange& moved, Unit unit) {
  if (!has_moved(moved) && !moved.predicted) return "";
  const Length printed = as_printed(*moved.after, unit) - as_printed(*moved.before, unit);
  return fmt::format("       {:<24}{:>8} -> {:<8} ({}{})\n", name_text(moved.name),
                     number_text(*moved.before, unit), number_text(*moved.after, unit),
                     change_text(printed, unit), prediction(moved, unit));
}

const Watched& watched_by(const FittingLine& line) {
  return watched_at(line.order.row, line.correction.correction.place);
}

bool is_watched(const FittingLine& line, const LengthChange& moved) {
  return std::ranges::count(watched_by(line).lengths, moved.name, &LengthMoved::name) > 0;
}

// What the fitter watches comes first.
std::string lengths_text(const FittingLine& line, Unit unit) {
  std::string first, others;
  for (const LengthChange& moved : line.change->lengths) {
    (is_watched(line, moved) ? first : others) += length_line(moved, unit);
  }
  return first + others;
}

std::string_view says(const FittingLine& line) {
  const Watched& watched = watched_by(line);
  const bool is_so = watched.says_with.empty() || !line.change ||
                     std::ranges::any_of(line.change->lengths, [&](const LengthChange& moved) {
                       return moved.name.starts_with(watched.says_with) && has_moved(moved);
                     });
  return is_so ? watched.in_words(row_of(line.correction.correction).sign) : std::string_view();
}

/// "0.4 cm less", or "nothing more".
std::string more_or_less(Length change, Unit unit) {
  if (change == Length()) return "nothing more";
  const bool less = change < Length();
  return fmt::format("{} {} {}", number_text(less ? -change : change, unit), unit_name(unit),
                     less ? "less" : "more");
}

std::string would_do_text(const Doubt& doubt, Unit unit) {
  const std::string value = value_text(doubt.would_do, unit);
  if (!doubt.instead) return "about " + value + " would have made this correction unnecessary";
  if (doubt.instead->same) return value + " would have made this correction unnecessary";
  const std::string drafted =
      fmt::format("drafted with {} the {} would have {}", value, name_text(doubt.instead->length),
                  more_or_less(doubt.instead->drafted, unit));
  if (!is_worth_taping(doubt)) return drafted + ", so that another tape would help little";
  return drafted + "; this correction makes " + more_or_less(doubt.instead->corrected, unit);
}

std::string doubt_text(const FittingLine& line, Unit unit) {
  if (!line.doubt) return "";
  const Doubt& doubt = *line.doubt;
  return fmt::format("       {}: {}, {} {}; {}\n",
                     is_worth_taping(doubt) ? "calls into doubt" : "not mended by a tape",
                     words_of(doubt.name), doubt.estimated ? "never taped, estimated at" : "now",
                     value_text(doubt.taped, unit), would_do_text(doubt, unit));
}

std::string voids_text(const FittingLine& line) {
  std::string text;
  for (const NumberedCorrection& other : line.voids) {
    text += fmt::format(
        "       makes void what was judged for {} ({} {}): judge it again on the next toile\n",
        other.number, name_text(other.correction.action), name_text(other.correction.place));
  }
  return text;
}

/// Of one side alone nothing is said of both, and "each" is the one.
std::string of_one_side(std::string_view said) {
  constexpr std::string_view between = "; ", each = "each ";
  std::string text;
  for (std::size_t at = 0; at < said.size();) {
    const std::size_t end = std::min(said.find(between, at), said.size());
    std::string clause(said.substr(at, end - at));
    at = end + between.size();
    if (clause.find("both ") != clause.npos) continue;
    if (clause.starts_with(each)) clause.replace(0, each.size(), "the ");
    text += (text.empty() ? "" : std::string(between)) + clause;
  }
  return text;
}

std::string said_of_sides(const FittingLine& line) {
  const bool is_of_both = line.correction.correction.side == BodySide::Both;
  return is_of_both ? std::string(says(line)) : of_one_side(says(line));
}

// What the list of lengths does not tell: where they move, what stays, or what moves instead.
std::string besides_text(const FittingLine& line) {
  const std::string said = said_of_sides(line);
  if (said.empty()) return "";
  return fmt::format("       {}: {}\n", watched_by(line).lengths.empty() ? "what moves" : "besides",
                     said);
}

std::string line_text(const FittingLine& line, Unit unit) {
  std::string text = fmt::format("  {}: {}\n", numbered_text(line.correction, unit),
                                 row_name(line.order.row, row_of(line.correction.correction).sign));
  if (line.counted_with != 0) {
    text += fmt::format("       counted together with {}\n", line.counted_with);
  } else if (line.change) {
    text += lengths_text(line, unit) + besides_text(line) + doubt_text(line, unit);
  }
  return text + voids_text(line);
}

std::string list_text(const char* title, const std::vector<std::string>& lines) {
  return lines.empty() ? "" : fmt::format("\n{}\n  {}\n", title, fmt::join(lines, "\n  "));
}

Json instead_json(const DraftedInstead& instead) {
  return {{"length", instead.length},
          {"corrected_mm", instead.corrected.mm()},
          {"drafted_mm", instead.drafted.mm()}};
}

Json line_json(const FittingLine& line) {
  const NumberedCorrection& numbered = line.correction;
  const Json voids =
      list_of(line.voids, [](const NumberedCorrection& other) { return other.number; });
  Json row = {
      {"number", numbered.number},
      {"date", numbered.date},
      {"toile", numbered.toile},
      {"correction", name_text(numbered.correction.action + " " + numbered.correction.place)},
      {"by_mm", numbered.correction.by.mm()},
      {"row", number_of(line.order.row)},
      {"stage", line.order.stage},
      {"voids", voids},
      {"look_at_rows", line.order.look_at}};
  if (const std::string said = said_of_sides(line); !said.empty()) row["says"] = said;
  if (!line.change) return row;
  row["moved"] = list_of(line.change->lengths, change_json);
  if (line.doubt) {
    row["doubts"] = {{"name", info(line.doubt->name).key},
                     {"value", line.doubt->taped.number()},
                     {"estimated", line.doubt->estimated},
                     {"would_do", std::round(line.doubt->would_do.number() * 10.0) / 10.0}};
    if (line.doubt->instead) row["doubts"]["instead"] = instead_json(*line.doubt->instead);
  }
  return row;
}

}  // namespace

bool is_worth_taping(const Doubt& doubt) {
  if (!doubt.instead || doubt.instead->corrected == Length()) return true;
  return doubt.instead->drafted / doubt.instead->corrected >= kLeastHelp;
}

std::string how_to_begin(const FittingReport& report) {
  if (report.ask_command.empty()) return "";
  return "Say what you see on the body, and the corrections for it are found: " +
         report.ask_command + "\n";
}

std::string fitting_text(const FittingReport& report) {
  std::string text = fmt::format("{}, corrections in the order of work, session {}, {}\n",
                                 printable(report.client), report.session, unit_name(report.unit));
  if (report.lines.empty()) text += "\nNo corrections.\n" + how_to_begin(report);
  int stage = -1;
  for (const FittingLine& line : report.lines) {
    if (line.order.stage != stage) text += fmt::format("\n{}\n", stage_name(line.order.stage));
    stage = line.order.stage;
    text += line_text(line, report.unit);
  }
  const auto texts = [&](const std::vector<NumberedCorrection>& corrections) {
    std::vector<std::string> lines;
    lines.reserve(corrections.size());
    for (const auto& one : corrections) lines.push_back(numbered_text(one, report.unit));
    return lines;
  };
  return text + list_text("Look for these on the next toile", report.next_toile) +
         list_text("Left out after the newer tape", texts(report.in_the_tape)) +
         list_text("Withdrawn, not applied", texts(report.withdrawn)) +
         problem_list(report.problems) + (report.files.empty() ? "" : written_text(report.files)) +
         "\nSew the next toile before good cloth; where the eye on the body disagrees, the eye is "
         "right.\n";
}

std::string fitting_json(const FittingReport& report) {
  return text_of(Json{{"client", report.client},
                      {"session", report.session},
                      {"corrections", list_of(report.lines, line_json)},
                      {"fittings", story_json(report)},
                      {"take_again", tapes_again_json(report)},
                      {"problems", problems_as_json(report.problems)},
                      {"files", report.files}});
}

}  // namespace blockwright
