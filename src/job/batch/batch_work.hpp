#pragma once

#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A style that every client is adapted to; without path and text they are drafted.
struct BatchStyle {
  std::string path, text;
  CutStyle cut = CutStyle::Toile;  ///< what the pieces are cut as
};

/// One client and style to be worked on: a client's file, or a line of a stream with its text.
struct BatchTask {
  std::string client;
  std::string text;
  bool endless = false;  ///< the line never ended: it is refused, and nothing is read after it
  const BatchStyle* style = nullptr;  ///< of the batch's; never null where work is to be done
};

/// What a batch tells of one client and style.
struct BatchLine {
  std::string client;  ///< path of the file, or "line 7" of a stream
  JobResult result;
  std::string style = {};    ///< path of the file; empty if she was drafted
  bool unchanged = false;    ///< what was written before still holds
  std::string pattern = {};  ///< of a stream: a JSON text

  /// Nothing was written; the problems say why.
  [[nodiscard]] bool failed() const { return result.exit_code != 0; }
};

/// "failed", "unchanged", "warned" or "done".
std::string state_of(const BatchLine& line);

/// One line for a person, and one more with the worst problem, if there is any.
std::string line_text(const BatchLine& line);

/// The same with all problems.
nlohmann::ordered_json line_json(const BatchLine& line);
/// The line from that JSON, as text. Nothing if it is none.
std::optional<BatchLine> read_line(const std::string& json);

/// JSON on one line, what is not printable escaped; bytes of a name that are not UTF-8 are
/// replaced.
std::string on_one_line(const nlohmann::ordered_json& json);
/// A path as such a line gives it back.
std::string as_in_line(const std::string& path);

/// What was made for a client whose file is not there any more.
struct GoneClient {
  std::string client;                ///< path of the file
  std::vector<std::string> outputs;  ///< names
};

/// What a batch says at its end besides the counts.
struct BatchEnd {
  std::vector<GoneClient> gone;
  std::vector<NotRead> not_read;
};

/// How many a batch works on.
struct BatchSize {
  std::size_t clients = 0;
  std::size_t styles = 1;  ///< 1 for a draft
};

/// Tells each client and style of a batch as they get done, then the counts: text for a person, or
/// one JSON object with a line for each.
class BatchSummary {
 public:
  /// `watch` and `batch` must outlive it.
  BatchSummary(const BatchWatch& watch, const BatchJob& batch, const BatchSize& size);

  void tell(const BatchLine& line);
  void end(const BatchEnd& end);

 private:
  [[nodiscard]] bool is_json() const { return batch_.each.report == ReportKind::Json; }
  void say(const std::string& text) const;
  void end_text(const BatchEnd& end);
  void end_json(const BatchEnd& end);

  const BatchWatch& watch_;
  const BatchJob& batch_;
  BatchSize size_;
  std::size_t done_ = 0;
  std::map<std::string, std::size_t> counts_;  ///< by state
};

/// A client drafted.
struct BatchDraft {
  BatchLine line;
  std::vector<NewFile> set = {};  ///< yet to be written; empty if nothing is to be
};

/// How many clients are in hand at a time.
struct BatchPace {
  int jobs = 1;           ///< drafted at a time
  std::size_t begun = 1;  ///< begun and not yet handed on: those that wait, are drafted or written
};
/// Ahead of a slow client, and while sets wait for the disk, others are begun.
BatchPace pace_of(int jobs);

/// What is done with each task. `next` and `hand_on` are called by the caller's thread alone, the
/// others by several at a time.
struct BatchSteps {
  std::function<std::optional<BatchTask>()> next;  ///< nothing when there are no more
  std::function<BatchDraft(const BatchTask&)> draft;
  std::function<BatchLine(BatchDraft)> write;
  std::function<void(const BatchLine&)> hand_on;
};

/// Drafts tasks, writes each as soon as it is drafted, while others are drafted, and hands their
/// lines on in the order of the tasks. Few are begun at a time, so that memory does not grow with
/// their number. Gives back what all of them wrote, and 1 if one failed. Throws what the steps
/// throw, after the tasks in hand are done.
JobResult work_in_order(const BatchPace& pace, const BatchSteps& steps);

/// The job of one client and style of a batch.
Job job_of(const BatchJob& batch, const BatchTask& task);

/// What is the same for all clients of a batch or a stream. May be used by several threads.
class BatchWork {
 public:
  /// Throws what is wrong for everybody, before anybody is worked on: UsageError of an option or of
  /// two styles whose output would share a name, InputError of a style file. `batch` and `files`
  /// must outlive it.
  BatchWork(const BatchJob& batch, FileStore& files);

  /// In order, each once; for a draft one without path.
  [[nodiscard]] const std::vector<BatchStyle>& styles() const { return styles_; }

  /// One client file to its output and its stamp; where the stamp says that nothing has changed
  /// and the output is still there, nothing is made, unless it is asked for. Throws nothing, and
  /// neither do the others: a bug in one client's run must not stop the others.
  [[nodiscard]] BatchDraft client(const BatchTask& task) const;

  /// The client of a stream's line to a report, and to its output if `out` names a folder; else the
  /// line carries the pattern.
  [[nodiscard]] BatchDraft of_stream(const BatchTask& task) const;

  /// Writes what was drafted.
  [[nodiscard]] BatchLine written(BatchDraft draft) const;

 private:
  const BatchJob& batch_;
  FileStore& files_;
  std::vector<BatchStyle> styles_;
};

/// What a client's output is made of besides the options: the hash of the program's sources, and
/// the texts of style and client file.
struct MadeOf {
  std::string_view sources, style, client;
};
/// A hash of the sources that this program was built of: a program that draws by other rules has
/// another one.
std::string_view sources_hash();
/// The key of the output's stamp.
std::string output_key(Job job, const MadeOf& parts);

/// A client and style that were not worked on.
BatchDraft refused(const BatchTask& task, const Problem& problem);

}  // namespace blockwright
