#include "blockwright/job/options.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/text/units.hpp"
#include "option_values.hpp"

namespace blockwright {
namespace {

using enum Command;

constexpr std::string_view kPapers = "^(a[0-4]|letter|legal|tabloid|roll:[0-9.]+|[0-9.]+x[0-9.]+)$";
constexpr auto kOutput = Changes::Output, kNothing = Changes::Nothing;
const std::vector<Command> kOneClient = {Draft, Pivot, Adapt, Fit, Compare};
const std::vector<Command> kPieces = {Draft, Pivot, Adapt, Batch};
const std::vector<Command> kDrawings = {Draft, Pivot, Adapt, Batch, Compare};
const std::vector<Command> kPapered = {Draft, Pivot, Adapt, Batch, Fit, Compare};
const std::vector<Command> kAll = {Draft, Pivot, Adapt, Batch, Fit, Compare};

/// A comparison has no pattern of its own.
Option sheets_only(Option option) {
  std::erase_if(option.shape.words, [](const OptionWord& word) {
    const auto rows = output_kinds();
    return std::ranges::find(rows, word.word, &OutputRow::word)->of != OutputOf::Sheet;
  });
  return option;
}

std::vector<Option> file_options() {
  return {
      option("client", kOneClient, &Job::client, kNothing, "Path of the client file",
             {.argument = true, .required = "client file"}),
      option("client", {Tape}, &TapeJob::client, kNothing, "Path of the client file",
             {.otherwise = "with --sheet an empty form", .argument = true}),
      option("style", {Adapt}, &Job::style, kNothing, "Path of the style file",
             {.argument = true, .required = "style file"}),
      option("other", {Compare}, &CompareJob::other, kNothing, "Path of another client file",
             {.otherwise = "the same client", .argument = true}),
  };
}

std::vector<Option> batch_options() {
  return {
      option("folder", {Batch}, &BatchJob::folder, kNothing,
             "Folder with client files (*.json; none whose name begins with a dot)",
             {.argument = true}),
      option("clients", {Batch}, &BatchJob::clients, kNothing,
             "Path of a client file, taken before those of the folder; may be repeated"),
      option("style", {Batch}, &BatchJob::styles, kNothing,
             "Path of a style file, or of a folder of them: adapt each client to each; may be "
             "repeated",
             {.otherwise = "draft each", .or_one = true}),
      option("jobs", {Batch}, &BatchJob::jobs, kNothing, "Clients worked on at the same time",
             {.limits = {1, 64}}),
      option("subfolders", {Batch}, &BatchJob::subfolders, kNothing,
             "Take the files of subfolders too"),
      option("again", {Batch}, &BatchJob::again, kNothing,
             "Make the output anew even where nothing has changed since the last time"),
      option("shard", {Batch}, &BatchJob::shard, kNothing,
             "Only this part of the folder of so many, e.g. 2/8; a file is always in the same part",
             {.otherwise = "all", .pattern = "^([1-9][0-9]*/[1-9][0-9]*)?$"}),
      option("jsonl", {Batch}, &BatchJob::jsonl, kNothing,
             "Read client objects, one in a line, from standard input and print a report object in "
             "a line for each; files are written only with --out"),
      option("quiet", {Batch}, &BatchJob::quiet, kNothing, "Print only who failed, and the counts"),
  };
}

std::vector<Option> pivot_options() {
  return {
      option("dart", {Pivot}, &Job::dart, kOutput,
             "Dart to move, e.g. front.shoulder; may be repeated"),
      option(
          "to", {Pivot}, &Job::to, kOutput,
          "Where it goes: front.neck, front.shoulder, front.armhole, front.side, front.french, "
          "front.waist, front.centre_front; back.neck, back.shoulder, back.armhole, back.waist, "
          "back.centre_back; with a fraction of the edge or a distance where not the usual place "
          "is meant: front.side:0.25, front.side:6cm"),
      option("part", {Pivot}, &Job::part, kOutput, "Share of the dart that moves",
             {.otherwise = "1", .limits = {.least = 0, .most = 1, .above = true}}),
      option("angle", {Pivot}, &Job::angle, kOutput,
             "Angle of the dart that moves, in place of a share",
             {.limits = {.least = 0, .above = true}}),
      option("split", {Pivot}, &Job::split, kOutput,
             "Dart to make two or more of after the moves, side by side, e.g. front.waist:2"),
      option("hold_back", {Pivot}, &Job::hold_back, kOutput,
             "How far the stitching of moved darts ends short of the apex",
             {.otherwise = "by place and bust size"}),
      option("overlay", {Pivot, Adapt, Batch}, &Job::overlay, kOutput,
             "Also write the pieces over the block that they were made from"),
  };
}

std::vector<Option> fit_options() {
  return {
      option(
          "add", {Fit}, &FitJob::add, kOutput,
          "Correction in words, with its amount and how that was read: \"lower front_neck 1.0\", "
          "\"take in waist 5/8 in per half\"; in the file's unit where none is named; --ask finds "
          "the words; may be repeated"),
      option("as", {Fit}, &FitJob::as, kOutput,
             "How the amount of the --add before it was read; in a job file one for each",
             {.otherwise = "where only one way makes sense, that", .or_one = true}),
      option("side", {Fit}, &FitJob::side, kOutput,
             "Side of the body, as she has it, of the --add before it; in a job file one for each",
             {.otherwise = "both", .or_one = true}),
      option("seen", {Fit}, &FitJob::seen, kOutput,
             "What was seen on the body, in your own words, for the --add before it; in a job file "
             "one for each",
             {.or_one = true}),
      option("date", {Fit}, &FitJob::date, kOutput, "Date of the fitting",
             {.otherwise = "the file's newest, if no tape session came after it"}),
      option("toile", {Fit}, &FitJob::toile, kOutput, "Number of the toile",
             {.otherwise = "the file's newest, if no tape session came after it",
              .limits = {.least = 1}}),
      option("by", {Fit}, &FitJob::by, kOutput, "Who fitted"),
      option("note", {Fit}, &FitJob::note, kOutput,
             "A note on the fitting, with or without a correction"),
      option("undo", {Fit}, &FitJob::undo, kOutput,
             "Number of a correction to withdraw; it stays in the file", {.limits = {.least = 1}}),
      option("redo", {Fit}, &FitJob::redo, kOutput,
             "Number of a withdrawn correction to apply again", {.limits = {.least = 1}}),
      option("out", {Fit}, &FitJob::out, kNothing, "Folder for the picture; made if missing",
             {.otherwise = "beside the client file"}),
      sheets_only(option("write", {Fit}, &FitJob::write, kOutput,
                         "Draw before and after on one page, with arrows",
                         {.otherwise = "svg where something is added, else none"})),
      option(
          "list", {Fit}, &FitJob::list, kNothing,
          "Tell the fittings toile by toile: what was seen, what was done, what to look at first "
          "on the next toile, which tape to take again"),
      flag_or_text(
          "ask", {Fit}, &FitJob::ask,
          "Find the corrections that answer what is seen, \"armhole digs in\"; at a terminal "
          "the prompt goes on from there, and asks without words what is seen"),
  };
}

std::vector<Option> tape_options() {
  return {
      option("date", {Tape}, &TapeJob::date, kNothing, "Date of the session, e.g. 2026-03-14",
             {.otherwise =
                  "asked for; with --check the newest, with --blank today, on a form left open"}),
      option("by", {Tape}, &TapeJob::by, kNothing, "Who holds the tape",
             {.otherwise = "asked for"}),
      option("check", {Tape}, &TapeJob::check, kNothing,
             "Judge a session of the file, without asking anything"),
      option("all", {Tape}, &TapeJob::all, kNothing,
             "With --check: all that is doubted, not the likeliest slip alone"),
      option("sheet", {Tape}, &TapeJob::sheet, kNothing,
             "Write a form to print, with figures of every tape and places for readings; "
             "as svg one file a page"),
      option("blank", {Tape}, &TapeJob::blank, kNothing,
             "Write a client file with every key and no value, to be filled in with an editor"),
      option("unit", {Tape}, &Job::unit, kNothing,
             "Unit of a new client's tape, of an empty form or file; with --check of what is said",
             {.otherwise = "asked for, on a form ticked, in an empty file cm; with --check as the "
                           "client file"}),
      option("out", {Tape}, &TapeJob::out, kNothing, "Folder for the form; made if missing",
             {.otherwise = "the current one"}),
      sheets_only(option("write", {Tape}, &TapeJob::write, kNothing, "What to write of the form")),
      option("paper", {Tape}, &TapeJob::paper, kNothing,
             "Paper of the form: a4, letter, a3, WIDTHxHEIGHT in mm, roll:WIDTH",
             {.pattern = kPapers}),
  };
}

std::vector<Option> block_options() {
  return {
      option("session", kPieces, &Job::session, kOutput, "Date of the session, e.g. 2026-03-14",
             {.otherwise = "the newest"}),
      option("session", {Fit}, &FitJob::session, kOutput, "Date of the session to draft",
             {.otherwise = "the newest"}),
      option("session", {Compare}, &CompareJob::sessions, kOutput,
             "Date of the older, then of the newer session",
             {.otherwise = "the last two", .most_items = 2}),
      option("toile", kPieces, &Job::toile, kOutput,
             "Apply only the corrections of the toiles before this one; 0: all",
             {.otherwise = "all", .limits = {.least = 0}}),
      option("toile", {Compare}, &CompareJob::toiles, kOutput,
             "Number of the older, then of the newer toile, each from its own tape; 0: with all "
             "corrections",
             {.otherwise = "0", .limits = {.least = 0}, .most_items = 2}),
      option("one_bust_dart", kPieces, &Job::one_bust_dart, kOutput,
             "Leave the bust dart in one where it is too wide to sew in one; without this what is "
             "too much goes to the side seam"),
      option("align", {Compare}, &CompareJob::align, kOutput, "What lies on what at the centre"),
  };
}

std::string usual_allowances() {
  return trimmed(PrintOptions{}.allowance.mm(), 1) + ", or " +
         length_text(kInchAllowance, Unit::Inch) + " for a person who works in inches";
}

std::vector<Option> drawing_options() {
  return {
      option("out", kDrawings, &Job::out, kNothing, "Folder for the output; made if missing",
             {.otherwise = "the current one"}),
      option("write", kPieces, &Job::write, kOutput, "What to write"),
      sheets_only(option("write", {Compare}, &CompareJob::write, kOutput, "What to write")),
      option("paper", kPapered, &Job::paper, kOutput,
             "a4, letter, a3, legal, tabloid, a2, a1, WIDTHxHEIGHT in mm; one page: a0, roll:WIDTH",
             {.pattern = kPapers}),
      option("cut", kPieces, &Job::cut, kOutput, "What the pieces are cut as",
             {.otherwise = "toile; garment where the style says the allowances"}),
      option("unit", kAll, &Job::unit, kOutput, "Unit of the report and the paper",
             {.otherwise = "as the client file"}),
      option("report", kAll, &Job::report, kNothing, "How the report is printed"),
      option("report", {Tape}, &Job::report, kNothing, "How a session is told that --check judges"),
      option("allowance", kPieces, &Job::allowance, kOutput, "Seam allowance of a toile",
             {.otherwise = usual_allowances(), .limits = {0, kMostAllowance.mm()}}),
      option("margin", kPapered, &Job::margin, kOutput, "Unprinted edge of the paper",
             {.limits = {7, 40}}),
      option("overlap", kDrawings, &Job::overlap, kOutput, "What neighbouring pages share",
             {.limits = {0, 40}}),
      option("anonymous", kAll, &Job::anonymous, kOutput,
             "Leave the client's name off the paper and out of the report; files are named after "
             "the client file"),
      option("bands", {Draft}, &Job::bands, kOutput,
             "Also write how far each line could be off, for what the tape errs by and what was "
             "estimated, and say what to take again first"),
      option("steps", {Draft}, &Job::steps, kNothing,
             "Print the draft as steps for pencil, ruler and compass"),
  };
}

std::vector<Option> all_options() {
  std::vector<Option> all;
  for (const auto& options : {file_options(), batch_options(), pivot_options(), fit_options(),
                              tape_options(), block_options(), drawing_options()}) {
    all.insert(all.end(), options.begin(), options.end());
  }
  return all;
}

}  // namespace

const std::vector<Option>& option_table() {
  static const std::vector<Option> table = all_options();
  return table;
}

}  // namespace blockwright
