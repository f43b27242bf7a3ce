#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/files/file_store.hpp"
#include "blockwright/text/units.hpp"

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What a run makes.
enum class Command {
  Draft,  ///< the block
  Pivot,  ///< the block with darts moved as `dart`, `to`, `part` and `split` say
  Adapt,  ///< the pieces of a garment, as a style file says
};

/// What is done with the corrections of a client file: added, withdrawn or made active again, then
/// shown in the order of work with what each does.
struct FitJob {
  std::string client;            ///< path of the client file
  std::vector<std::string> add;  ///< "lower front_neck 1.0", amounts in the file's unit as typed
  std::string as;                ///< how the amounts were read: "tuck_depth" ...
  std::string side;              ///< both, left or right; empty: both
  std::string seen;              ///< what was seen, in the fitter's words
  std::string date;              ///< of the fitting; empty: the newest one of the file
  int toile = 0;                 ///< of the fitting; 0: the newest one of the file
  std::string by, note;          ///< who fitted, and a note
  std::vector<int> undo;         ///< numbers of corrections to withdraw
  std::vector<int> redo;         ///< numbers of withdrawn corrections to apply again
  std::string session;           ///< date of the session to draft; empty: the newest
  std::string unit;              ///< cm or in; empty: as the client file
  std::string report = "text";   ///< text or json
  bool list = true;              ///< show them; done in any case
  bool ask = false;              ///< the program asks at its prompt first; run_fit() does not
};

/// Two blocks laid over each other: of two sessions, two toiles, or two clients.
struct CompareJob {
  std::string client;                 ///< path of the client file
  std::string other;                  ///< of another client file; empty: the same
  std::vector<std::string> sessions;  ///< dates: the older and the newer; default: the last two
  std::vector<int> toiles;            ///< numbers; 0 stands for all corrections
  std::string align = "waist";        ///< what lies on what: waist, bust or neck, at the centre
  std::string out = ".";
  std::vector<std::string> write = {"svg", "pdf"};
  std::string paper = "a4";
  std::string unit;
  std::string report = "text";
  double margin = 10.0, overlap = 10.0;
};

/// Everything that a run needs to know. Each member but the command is an option of the commands
/// that use it and a key of a job file under the same name; values are kept as written and judged
/// when the job runs.
struct Job {
  Command command = Command::Draft;
  std::string client;                               ///< path of the client file
  std::string style;                                ///< adapt: path of the style file
  std::vector<std::string> dart;                    ///< pivot: "front.shoulder", one for each move
  std::vector<std::string> to;                      ///< pivot: where each of them goes
  std::vector<double> part;                         ///< pivot: share of each; none: whole
  std::vector<double> angle;                        ///< pivot: degrees of each, in place of parts
  std::vector<std::string> split;                   ///< pivot, after the moves: "front.waist:2"
  std::optional<double> hold_back;                  ///< pivot: mm; none: by place and bust size
  bool overlay = false;                             ///< pivot, adapt: also write before and after
  std::string session;                              ///< date, or empty for the newest
  int toile = 0;                                    ///< only corrections before this toile; 0: all
  std::string out = ".";                            ///< folder for the output
  std::vector<std::string> write = {"svg", "pdf"};  ///< svg, pdf, json
  std::string paper = "a4";
  std::string cut = "toile";        ///< toile, card or net
  std::string unit;                 ///< cm or in; empty: as the client file
  std::string report = "text";      ///< text or json
  std::optional<double> allowance;  ///< mm at the seams of a toile; none: 20, in inches 3/4 in
  double margin = 10.0;             ///< mm at the paper's edge
  double overlap = 10.0;            ///< mm shared by neighbouring tiles
  bool steps = false;               ///< print the draft as instructions
  bool anonymous = false;           ///< leave the client's name off the paper and the report
  std::string stem;                 ///< of the output's names; empty: as the client file. No option
};

/// One run in a line.
struct RunSummary {
  std::string name;       ///< of the client; empty if she could not be read
  std::string darts;      ///< "front waist 16.2°, front shoulder 18.4°", of the block
  double residual = 0.0;  ///< largest of measuring back, mm or degrees, less what gave way
  int pages = 0;          ///< of the PDF
  Unit unit = Unit::Cm;   ///< of the person
};

/// What a job did.
struct JobResult {
  int exit_code = 0;               ///< 0 done; 1 this client failed; 2 could not start
  std::string output;              ///< the report, for standard output
  Problems problems;               ///< everything found, errors first
  std::vector<std::string> files;  ///< written, in order
  RunSummary summary;
};

/// Several clients, each drafted or adapted with the same options.
struct BatchJob {
  std::string folder;                ///< with client files (*.json)
  std::vector<std::string> clients;  ///< client files by path, before those of the folder
  Job each;                          ///< command, style and options; its client is ignored
  int jobs = 1;                      ///< clients worked on at the same time, 1 to 64
  bool subfolders = false;           ///< of the folder, too
  bool again = false;                ///< also those of whom nothing has changed
  std::string shard;                 ///< "2/8": the second of eight parts of the folder
};

/// Reads a job file (format "blockwright-job-1", docs/formats.md) over what is in `job`: the
/// options of its command by the names that they have at the command line, with underscores. Throws
/// InputError "job.syntax", "job.format", "job.key" (names the keys that the command has),
/// "job.type".
Job read_job(const std::string& text, std::string_view file, Job job);
FitJob read_fit_job(const std::string& text, std::string_view file, FitJob job);
CompareJob read_compare_job(const std::string& text, std::string_view file, CompareJob job);
BatchJob read_batch_job(const std::string& text, std::string_view file, BatchJob job);

/// Runs the passes in order: read, fill in, draft, check, style steps, true the darts, lay out,
/// write. Files are written only
/// when every pass is done and no check found an error. Throws nothing but std::logic_error (a
/// bug).
JobResult run_job(const Job& job, FileStore& files);

/// Client objects, one in a line of a stream.
struct StreamJob {
  Job each;  ///< command, style and options; its client is ignored
  int jobs = 1;
  bool writes = false;  ///< the output too; else the report objects carry the pattern
};

/// Who is told how a batch goes on; called by one thread at a time.
struct BatchWatch {
  std::function<void(std::string_view)> say;  ///< the summary, as the clients get done
  std::function<void(std::size_t done, std::size_t total, std::size_t failed)> progress;
  bool quiet = false;  ///< in text: only of those that failed, and the counts
};

/// Runs every client file in the order of their names. One client's failure never stops the others:
/// the summary has a line for each, the exit code is 1 if any failed. Two clients whose output
/// would have the same name are refused, the later one ("batch.collision"). Those of whom nothing
/// has changed (client file, style, options, program) and whose output is still there are left as
/// they are. Output of clients whose file is gone is listed, never deleted. The same summary and
/// bytes for any number of jobs. The output folder is held while it runs ("file.busy"). Throws
/// nothing but std::logic_error.
JobResult run_batch(const BatchJob& batch, FileStore& files, const BatchWatch& watch);

/// Reads a client object from each line and says a report object in a line for each, in the same
/// order: what a batch tells, the report of a single run, and the pattern unless files are written.
/// Files are named by the number of the line and the client's name. Throws nothing but
/// std::logic_error.
JobResult run_stream(const StreamJob& stream, std::istream& in, FileStore& files,
                     const BatchWatch& watch);

/// Adds, withdraws and shows corrections. A changed client file is written whole, the text before
/// it beside it with ".bak" behind its name, both or none. Throws nothing but std::logic_error.
JobResult run_fit(const FitJob& job, FileStore& files);

/// Compares two blocks and writes the overlay. Throws nothing but std::logic_error.
JobResult run_compare(const CompareJob& job, FileStore& files);

/// A fault as it is seen on the body, and the words of the corrections that answer it.
struct Symptom {
  int row = 0;        ///< of the fitting catalogue
  std::string stage;  ///< "shoulder and neck base"
  std::string seen;
  std::string cause;
  struct Answer {
    std::string words;               ///< "lower front_neck"
    std::vector<std::string> as;     ///< ways of reading the amount; none: only one makes sense
    std::vector<std::string> means;  ///< what each way means
    bool one_sided = false;
  };
  std::vector<Answer> answers;
  std::string usual;  ///< "0.6 cm (0.3 to 1.5)" in the unit asked for
};
/// The whole fitting catalogue, in the order of work. `unit`: "cm" or "in".
std::vector<Symptom> fitting_symptoms(const std::string& unit);
/// The unit of a client file, "cm" or "in". Throws as reading it.
std::string unit_of_client(const std::string& path, FileStore& files);

/// The JSON Schema of a file kind: "client", "job", "pattern", "report" or "style". Throws
/// UsageError "schema.unknown".
std::string schema_named(std::string_view name);

/// Cause and cure of a problem code, for a person. Throws UsageError "explain.unknown", naming the
/// nearest codes.
std::string explanation_of(std::string_view code);

}  // namespace blockwright
