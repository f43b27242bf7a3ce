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

/// One client to be worked on: a file, or a line of a stream with its text.
struct BatchTask {
  std::string client;
  std::string text;
  bool endless = false;  ///< the line never ended: it is refused, and nothing is read after it
};

/// What a batch tells of one client.
struct BatchLine {
  std::string client;  ///< path of the file, or "line 7" of a stream
  JobResult result;
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

/// Tells each client of a batch as she gets done, then the counts: text for a person, or one JSON
/// object with a line for each client.
class BatchSummary {
 public:
  /// `watch` and `batch` must outlive it.
  BatchSummary(const BatchWatch& watch, const BatchJob& batch, std::size_t total);

  void tell(const BatchLine& line);
  void end(const BatchEnd& end);

 private:
  [[nodiscard]] bool is_json() const { return batch_.each.report == ReportKind::Json; }
  void say(const std::string& text) const;
  void end_text(const BatchEnd& end);
  void end_json(const BatchEnd& end);

  const BatchWatch& watch_;
  const BatchJob& batch_;
  std::size_t total_, done_ = 0;
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

/// What is the same for all clients of a batch or a stream. May be used by several threads.
class BatchWork {
 public:
  /// Throws what is wrong for everybody, before anybody is worked on: UsageError of an option,
  /// InputError of the style file. `batch` and `files` must outlive it.
  BatchWork(const BatchJob& batch, FileStore& files);

  /// One client file to its output and its stamp; where the stamp says that nothing has changed
  /// and the output is still there, nothing is made, unless it is asked for. Throws nothing, and
  /// neither do the others: a bug in one client's run must not stop the others.
  [[nodiscard]] BatchDraft client(const std::string& path) const;

  /// The client of a stream's line to a report, and to its output if `out` names a folder; else the
  /// line carries the pattern.
  [[nodiscard]] BatchDraft of_stream(const std::string& place, const std::string& text) const;

  /// Writes what was drafted.
  [[nodiscard]] BatchLine written(BatchDraft draft) const;

 private:
  const BatchJob& batch_;
  std::string style_;  ///< text of the style file
  CutStyle cut_ = CutStyle::Toile;
  FileStore& files_;
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

/// A client that was not worked on.
BatchDraft refused(const std::string& client, const Problem& problem);

}  // namespace blockwright
