#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/length.hpp"
#include "blockwright/files/file_store.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/measure/client.hpp"

#include <functional>
#include <iosfwd>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The commands that work on client files.
enum class Command {
  Draft,    ///< the block
  Pivot,    ///< the block with darts moved as `dart`, `to`, `part` and `split` say
  Adapt,    ///< the pieces of a garment, as a style file says
  Batch,    ///< draft or adapt for many clients: BatchJob
  Fit,      ///< the corrections of a client file: FitJob
  Compare,  ///< two blocks laid over each other: CompareJob
  Tape,     ///< a tape session, taken at the prompt or judged: TapeJob
};
inline constexpr std::size_t kCommandCount = static_cast<std::size_t>(Command::Tape) + 1;

/// How a run tells what it found.
enum class ReportKind { Text, Json };

/// What a run writes. Each kind has a row and a writer in src/job/options/output_kinds.cpp.
enum class OutputKind { Svg, Pdf, Json };

/// Where an option stands in the job file that it was read from.
struct OptionPlace {
  std::string whole;               ///< "job.json:3:12 undo"
  std::vector<std::string> items;  ///< of a list: "job.json:3:13 undo[0]" ...
};
/// By the names of the command line: "--undo", "CLIENT". None of what was typed there.
using OptionPlaces = std::map<std::string, OptionPlace>;
/// What a message says of an option, or of an item of its list: its place, or its name.
std::string place_of(const std::string& name, const OptionPlaces& places,
                     std::optional<std::size_t> item = {});

// The members of a job are options: src/job/options/options.cpp has a row for each, from which the
// command line, job files, their schema, the help and the batch's stamp derive.

/// What every run about a client takes.
struct ClientJob {
  std::string client;        ///< path of the client file
  std::optional<Unit> unit;  ///< of the report and the paper; none: as the client file
  ReportKind report = ReportKind::Text;
  bool anonymous = false;  ///< leave the client's name off the paper and the report
  OptionPlaces places;     ///< of what a job file says. No option
  /// Names of the options in the order in which they were typed: "--add", "--as". No option.
  std::vector<std::string> typed;
};

/// What every run that draws takes.
struct DrawingJob : ClientJob {
  std::string out = ".";  ///< folder for the output
  std::vector<OutputKind> write = {OutputKind::Svg, OutputKind::Pdf};
  std::string paper = "a4";           ///< see paper_named()
  Length margin = Length::mm(10.0);   ///< at the paper's edge
  Length overlap = Length::mm(10.0);  ///< shared by neighbouring pages
};

/// What is done with the corrections of a client file: added, withdrawn or made active again, then
/// shown in the order of work with what each does.
struct FitJob : DrawingJob {
  /// Without a folder the picture lies beside the client file, to be written with it as one set;
  /// without a kind it is an SVG where something is added, and none else.
  FitJob() {
    out.clear();
    write.clear();
  }
  /// "lower front_neck 1.0", "take in waist 5/8 in per half": an amount without a unit is in the
  /// file's.
  std::vector<std::string> add;
  // Each belongs to the --add before it where they were typed; else there are as many as `add` has.
  std::vector<std::optional<AmountAs>> as;    ///< how an amount was read
  std::vector<std::optional<BodySide>> side;  ///< none: both
  std::vector<std::string> seen;              ///< what was seen, in the fitter's words
  std::string date;                           ///< of the fitting; empty: the newest one of the file
  std::optional<int> toile;                   ///< of the fitting; none: the newest of the file
  std::string by, note;                       ///< who fitted, and a note: of the fitting
  std::vector<int> undo;                      ///< numbers of corrections to withdraw
  std::vector<int> redo;                      ///< numbers of withdrawn corrections to apply again
  std::string session;                        ///< date of the session to draft; empty: the newest
  bool list = false;                          ///< tell the fittings toile by toile
  /// What is seen: run_fit() says which corrections answer it. Empty: the program asks at its
  /// prompt, run_fit() does not.
  std::optional<std::string> ask;
};

/// A tape session of a client. What a drawing needs is for the form.
struct TapeJob : DrawingJob {
  std::string date;    ///< of the session; empty: asked for, or with `check` the newest
  std::string by;      ///< who holds the tape; empty: asked for
  bool check = false;  ///< judge the session, ask nothing
  bool all = false;    ///< with `check`: all that is doubted, not the likeliest slip alone
  bool sheet = false;  ///< write a form to print, ask nothing; the client may be left out
  bool blank = false;  ///< write an empty client file, ask nothing
};

/// Two blocks laid over each other: of two sessions, two toiles, or two clients.
struct CompareJob : DrawingJob {
  std::string other;                  ///< path of another client file; empty: the same
  std::vector<std::string> sessions;  ///< dates: the older and the newer; default: the last two
  std::vector<int> toiles;            ///< numbers; 0 stands for all corrections
  Alignment align = Alignment::Still;
};

/// What a person who works in inches leaves round a toile where she asked for nothing: a round
/// fraction near PrintOptions::allowance. Ours.
inline constexpr Length kInchAllowance = Length::inches(0.75);

/// A toile's seams hold no more: what is let out beyond is guessed. Common practice, no source.
inline constexpr Length kMostAllowance = Length::mm(60.0);

/// The block of a client, the block with darts moved, or a garment.
struct Job : DrawingJob {
  Command command = Command::Draft;  ///< Draft, Pivot or Adapt
  std::string style;                 ///< adapt: path of the style file
  std::vector<std::string> dart;     ///< pivot: "front.shoulder", one for each move
  std::vector<std::string> to;       ///< pivot: where each of them goes
  std::vector<double> part;          ///< pivot: share of each; none: whole
  std::vector<Angle> angle;          ///< pivot: of each, in place of parts
  std::vector<std::string> split;    ///< pivot, after the moves: "front.waist:2"
  std::optional<Length> hold_back;   ///< pivot; none: by place and bust size
  bool overlay = false;              ///< pivot, adapt: also write before and after
  bool one_bust_dart = false;        ///< a bust dart too wide to sew in one stays one
  std::string session;               ///< date, or empty for the newest
  int toile = 0;                     ///< only corrections before this toile; 0: all
  std::optional<CutStyle>
      cut;  ///< none: a garment where the style finishes its edges, else a toile
  std::optional<Length> allowance;  ///< of a toile's seams; none: as usual in her unit
  bool bands = false;               ///< draft: also write how far each line could be off
  bool steps = false;               ///< print the draft as instructions
  std::string stem;                 ///< of the output's names; empty: as the client file. No option
};

/// One run in a line.
struct RunSummary {
  std::string name;      ///< of the client; empty if she could not be read
  int taken = 0;         ///< measurements of the session
  int estimated = 0;     ///< from them
  std::string darts;     ///< "front waist 16.2°, front shoulder 18.4°", of the block
  Length residual;       ///< largest length that measuring back is off by, less what gave way
  int pages = 0;         ///< of the PDF
  Unit unit = Unit::Cm;  ///< of the person
};

/// What a job did.
struct JobResult {
  int exit_code = 0;               ///< 0 done; 1 this client failed; 2 could not start
  std::string output;              ///< the report, for standard output
  Problems problems;               ///< everything found, errors first
  std::vector<std::string> files;  ///< written, in order
  RunSummary summary;
};

/// Several clients, each drafted, or adapted to each of several styles, with the same options.
struct BatchJob {
  std::string folder;                ///< with client files (*.json)
  std::vector<std::string> clients;  ///< client files by path, before those of the folder
  /// Style files, or folders of them (*.json), by path; none: the clients are drafted.
  std::vector<std::string> styles;
  Job each;                 ///< options; its command, client and style are ignored
  int jobs = 1;             ///< clients worked on at the same time
  bool subfolders = false;  ///< of the folder, too
  bool again = false;       ///< also those of whom nothing has changed
  std::string shard;        ///< "2/8": the second of eight parts of the folder
  bool jsonl = false;       ///< the program reads a stream: see run_stream()
  bool quiet = false;       ///< in text: only of those that failed, and the counts
};

/// Runs the passes in order: read, fill in, draft, check, divide a wide bust dart, style steps,
/// true the darts, lay out, write. Files are written only
/// when every pass is done and no check found an error. Throws nothing but std::logic_error (a
/// bug).
JobResult run_job(const Job& job, FileStore& files);

/// Who is told how a batch goes on; called by one thread at a time.
struct BatchWatch {
  std::function<void(std::string_view)> say;  ///< the summary, as the clients get done
  std::function<void(std::size_t done, std::size_t total, std::size_t failed)> progress;
};

/// Runs every client file in the order of their names, and with each its styles in order. One
/// failure never stops the others: the summary has a line for each client and style, the exit code
/// is 1 if any failed. What looks like a client file and is none is named with its reason, and
/// counted. Of two whose output would have the same name the later one is refused
/// ("batch.collision"). Each client and style gives what run_job() gives alone, byte for byte.
/// Those of whom nothing has changed (client file, style, options, the program's sources) and whose
/// output is still there are left as they are. Output of clients whose file is gone is told, never
/// deleted. The same summary and bytes for any number of jobs. The output folder is held while it
/// runs ("file.busy"). Throws nothing but std::logic_error.
JobResult run_batch(const BatchJob& batch, FileStore& files, const BatchWatch& watch);

/// Reads a client object from each line and says a report object in a line for each client and
/// style, in the same order: what a batch tells, the report of a single run, and the pattern where
/// no files are written, since `out` is empty. Files are named by the number of the line and the
/// client's name. Throws nothing but std::logic_error.
JobResult run_stream(const BatchJob& batch, std::istream& in, FileStore& files,
                     const BatchWatch& watch);

/// Adds, withdraws and shows corrections, and draws them on one page. A changed client file is
/// written whole, the text before it beside it with ".bak" behind its name, both or none; the page
/// with them where it lies in the same folder. Throws nothing but std::logic_error.
JobResult run_fit(const FitJob& job, FileStore& files);

/// Judges a tape session, without asking anything: how many measurements were taken and how many
/// are estimated, the likeliest slip of the tape or with `all` each, and what changed since the
/// session before; where judging doubts nothing, what a draft would. Writes nothing; the exit code
/// is 0 whatever it doubts, and 1 where no block can be drawn. Throws nothing but std::logic_error.
JobResult run_tape(const TapeJob& job, FileStore& files);

/// Writes a form for a tape session: the figures with every tape, and places for readings. With a
/// client her name and the last values are on it. Throws nothing but std::logic_error.
JobResult run_tape_sheet(const TapeJob& job, FileStore& files);

/// Writes a client file with the key of every measurement and null in the place of its value, of
/// `date`, which must be given. A file that is there is left as it is. Throws nothing but
/// std::logic_error.
JobResult run_tape_blank(const TapeJob& job, FileStore& files);

/// Compares two blocks and writes the overlay. Throws nothing but std::logic_error.
JobResult run_compare(const CompareJob& job, FileStore& files);

/// What becomes of a correction, now that a newer tape session has some of what it asked for.
struct ExplainedDecision {
  int number = 0;  ///< of the correction, in the client file, counted from 1
  AfterNewTape answer;
};

/// The corrections that ask for a change of one measurement which a newer tape session has some of,
/// and of which it is not settled what becomes of them.
struct ExplainedSum {
  std::string corrections;  ///< "corrections 2 and 5"
  std::string sum;  ///< what they asked for, what the tape has of it, what remains: one sentence
  std::vector<ExplainedDecision> settled;  ///< what that sum leaves of each
};

/// The sums that a run of the job would warn of with "fit.explained", in the order of the
/// measurements. None where the client cannot be read: the run itself tells why.
std::vector<ExplainedSum> explained_sums(const Job& job, FileStore& files);

/// Writes answers into the client file, as "new_tape" beside their corrections; the text before it
/// is kept with ".bak" behind its name. Nothing is written without an answer. Throws as reading the
/// client, and FileError "file.write".
void decide_explained(const std::string& client, const std::vector<ExplainedDecision>& decisions,
                      FileStore& files);

/// The JSON Schema of a file kind: "client", "job", "pattern", "report" or "style". Throws
/// UsageError "schema.unknown".
std::string schema_named(std::string_view name);

/// Cause and cure of a problem code, for a person. Throws UsageError "explain.unknown", naming the
/// nearest codes.
std::string explanation_of(std::string_view code);

}  // namespace blockwright
