#include "blockwright/base/printable.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/layout/tape_sheet.hpp"
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

const std::vector<std::string>& form_cautions() {
  static const std::vector<std::string> lines = {
      "She wears what she will wear under the garment, no shoes; feet together, arms hanging.",
      "Tie elastic round the waist and let it settle: the natural waist, not where a skirt sits.",
      "Leave it tied to the end: lengths end at it or begin there.",
      "The tape lies level and snug, not tight. Hold the end with the dot, read at the arrow.",
      "Take each twice, going over the body once, then again; where two lie apart, a third time.",
      "The ringed numbers are enough for a first block; what is left out is estimated."};
  return lines;
}

/// What a reading looks like in that unit.
std::string unit_on_form(Unit unit) {
  return unit == Unit::Cm ? "in centimetres: 74.5" : "in inches, to the eighth: 29 3/8";
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
std::vector<std::string> units_on_form(const TapeJob& job, const TapeForm& form) {
  if (!form.is_new_client()) return {unit_on_form(form.unit)};
  if (job.unit) return {unit_on_form(*job.unit)};
  return {unit_on_form(Unit::Cm), unit_on_form(Unit::Inch)};
}

/// Where her files are is nothing for a paper.
std::string name_without_folder(const std::string& path) {
  return shown_place(path.substr(path.find_last_of('/') + 1));
}

TapeSheet sheet_of(const TapeJob& job, const TapeForm& form) {
  const std::optional<Session> last = last_session(form);
  return {.client = form.name,
          .date = job.date,
          .by = job.by,
          .units = units_on_form(job, form),
          .cautions = form_cautions(),
          .groups = groups_on_form(last, form.unit),
          .foot = "Typed in with: blockwright tape " +
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

void require_unit(const TapeJob& job, const TapeForm& form) {
  if (form.is_new_client() || !job.unit || *job.unit == form.unit) return;
  refuse_option("--unit",
                "her file is in " + std::string(unit_word(form.unit)) +
                    ", and what is on the form is typed into it",
                "leave it out");
}

JobResult sheet(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  const PrintOptions print = print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  const TapeForm form = job.client.empty() ? TapeForm() : open_tape(job, files);
  require_unit(job, form);
  const std::string whose = job.client.empty() ? "" : safe_stem(job.client) + "-";
  TextFonts fonts;
  const PrintPlan plan = tape_sheet(sheet_of(job, form), print, fonts);
  JobResult result;
  result.files = write_outputs(
      form_files(job, joined_path(job.out, whose + "tape-sheet"), plan, fonts), files);
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
