#include "blockwright/base/printable.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/layout/tape_sheet.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/text/units.hpp"
#include "blockwright/write/writers.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <algorithm>
#include <iterator>
#include <sstream>

namespace blockwright {
namespace {

/// "over 1 cm", of a form for either unit "over 1 cm (3/8 in)".
std::string more_than(Length length, const std::vector<Unit>& units) {
  std::string text = "over " + length_text(length, units.front());
  for (std::size_t i = 1; i < units.size(); ++i) text += " (" + length_text(length, units[i]) + ")";
  return text;
}

std::vector<std::string> form_cautions(const std::vector<Unit>& units) {
  return {
      "She wears what she will wear under the garment, no shoes; feet together, arms hanging.",
      "Tie elastic round the waist and let it settle: the natural waist, not where a skirt sits.",
      "Leave it on until all is taken: lengths end at it or begin there.",
      "The tape lies level and snug, not tight. Hold the end with the dot, read at the arrow.",
      "Take each twice, going over the body once, then again; a third time where two girths lie " +
          more_than(usual_spread().girth, units) + " apart, two lengths " +
          more_than(usual_spread().length, units) + ".",
      "The ringed numbers are enough for a first block; what is left out is estimated."};
}

const std::vector<TapeSheetPoint>& points_on_form() {
  static const std::vector<TapeSheetPoint> points = {
      {"nape",
       "the bone that stands out at the back of the neck's base when she bows her head; "
       "mark it, then let her look up again."},
      {"side neck point",
       "where the front edge of the trapezius muscle meets the neck; a fine "
       "chain laid round the neck falls into place there."},
      {"front neck point", "in the hollow between the collar bones."},
      {"shoulder point",
       "the outer end of the shoulder bone. Lift the arm level: a dimple shows "
       "there. Mark it, lower the arm, then measure. Not on the arm."},
      {"bust point", "the fullest point of the breast in its bra."},
      {"underarm point",
       "as high in the armpit as the top edge of a ruler goes that is held level "
       "under the arm, half way between front and back."},
      {"natural waist", "where the tied elastic settles."}};
  return points;
}

/// What a reading looks like in that unit.
std::string unit_on_form(Unit unit) {
  return unit == Unit::Cm ? "Write centimetres, for example 74.5"
                          : "Write inches, to the eighth, for example 29 3/8";
}

/// Her newest session with anything in it; none where there is none.
std::optional<Session> last_session(const TapeForm& form) {
  if (form.is_new_client()) return std::nullopt;
  std::istringstream in(form.text);
  std::vector<Session> all = read_client(in, form.path, Unfinished::Kept).sessions;
  std::erase_if(all, [](const Session& one) { return !one.tape[MeasurementName::BustGirth]; });
  return all.empty() ? std::nullopt : std::optional(all.back());
}

TapeSheetRow row_on_form(MeasurementName name, const std::optional<Session>& last, Unit unit) {
  TapeSheetRow row{.number = tape_number(name),
                   .name = name_text(info(name).key),
                   .how = std::string(info(name).how)};
  row.angle = info(name).kind == MeasurementKind::Angle;
  row.early = row.number <= static_cast<int>(kFirstMeasurements);
  if (last && last->tape[name]) {
    row.last = value_text(last->tape[name]->median(), unit) + " on " + last->date;
  }
  return row;
}

std::vector<TapeSheetGroup> groups_on_form(const std::optional<Session>& last, Unit unit) {
  std::vector<TapeSheetGroup> groups;
  for (const TapeFigure figure : kTapeFigures) {
    TapeSheetGroup& group = groups.emplace_back(TapeSheetGroup{figure, {}});
    for (const MeasurementName name : tapes_on(figure)) {
      group.rows.push_back(row_on_form(name, last, unit));
    }
  }
  return groups;
}

/// In the unit of her file, since the readings go into it.
std::vector<Unit> units_on_form(const TapeJob& job, const TapeForm& form) {
  if (!form.is_new_client()) return {form.unit};
  if (job.unit) return {*job.unit};
  return {Unit::Cm, Unit::Inch};
}

/// Where her files are is nothing for a paper.
std::string name_without_folder(const std::string& path) {
  return shown_place(path.substr(path.find_last_of('/') + 1));
}

TapeSheet sheet_of(const TapeJob& job, const TapeForm& form) {
  const std::optional<Session> last = last_session(form);
  const std::vector<Unit> units = units_on_form(job, form);
  std::vector<std::string> unit_words;
  std::ranges::transform(units, std::back_inserter(unit_words), unit_on_form);
  return {.client = form.name,
          .date = job.date,
          .by = job.by,
          .units = unit_words,
          .cautions = form_cautions(units),
          .points = points_on_form(),
          .groups = groups_on_form(last, form.unit),
          .foot = "Type it in with: blockwright tape " +
                  (job.client.empty() ? "CLIENT" : name_without_folder(job.client)) +
                  ". Form of blockwright " + std::string(version()) + "."};
}

/// An SVG holds one page.
std::vector<NewFile> form_files(const TapeJob& job, const std::string& stem, const PrintPlan& plan,
                                TextFonts& fonts) {
  std::vector<NewFile> files;
  const auto wants = [&](OutputKind kind) {
    return std::ranges::find(job.write, kind) != job.write.end();
  };
  for (const Page& page : plan.pages) {
    if (!wants(OutputKind::Svg)) break;
    std::ostringstream bytes;
    write_svg(bytes, page.furniture, plan.title + ", page " + page.label, fonts);
    files.push_back({stem + "-" + page.label + ".svg", std::move(bytes).str()});
  }
  if (wants(OutputKind::Pdf)) {
    std::ostringstream bytes;
    write_pdf(bytes, plan, fonts);
    files.push_back({stem + ".pdf", std::move(bytes).str()});
  }
  return files;
}

/// What is printed in its place must be what a session takes, or it could not be typed in.
void require_printable(const char* option, const std::string& cure, const auto& take) {
  try {
    take();
  } catch (const InputError& error) {
    refuse_option(option, error.problem().message.plain(), cure);
  }
}

void judge_answers(const TapeJob& job, TapeForm form) {
  if (!job.date.empty()) {
    require_printable("--date", "write for example 2026-03-14",
                      [&] { date_session(form, job.date); });
  }
  if (!job.by.empty()) {
    require_printable("--by", "write a short name", [&] { name_taker(form, job.by); });
  }
}

std::string said_of_missing(const TapeJob& job, const TapeForm& form) {
  if (job.client.empty() || !form.is_new_client()) return "";
  return "There is no " + shown_place(job.client) + " yet: a form without a name.\n";
}

JobResult sheet(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  const PrintOptions print = print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  const TapeForm form = job.client.empty() ? TapeForm() : open_tape(job, files);
  judge_answers(job, form);
  const std::string whose = job.client.empty() ? "" : safe_stem(job.client) + "-";
  TextFonts fonts;
  const PrintPlan plan = tape_sheet(sheet_of(job, form), print, fonts);
  JobResult result;
  result.files = write_outputs(
      form_files(job, joined_path(job.out, whose + "tape-sheet"), plan, fonts), files);
  result.output = said_of_missing(job, form);
  result.summary.pages = static_cast<int>(plan.pages.size());
  for (const std::string& path : result.files)
    result.output += "Written: " + shown_place(path) + "\n";
  result.output += "Print it at any scale; then type it in with `blockwright tape " +
                   (job.client.empty() ? "CLIENT" : shown_place(job.client)) + "`.\n";
  return result;
}

}  // namespace

JobResult run_tape_sheet(const TapeJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return sheet(job, files); });
}

}  // namespace blockwright
