#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/text/input_line.hpp"
#include "guarded.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <istream>
#include <optional>
#include <string>
#include <utility>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// A client has a mebibyte at most: of a longer line this is kept, and the reader refuses it by its
// size.
constexpr std::size_t kKeptOfLine = (std::size_t{1} << 20) + 1;
constexpr std::size_t kEndlessMib = 16;
constexpr std::size_t kEndless = kEndlessMib << 20;  // no line of a stream is as long

/// 12 of "line 12".
int number_of(const std::string& place) {
  return std::stoi(place.substr(place.find_last_of(' ') + 1));
}

/// The report object of one line, in one line.
std::string object_text(const BatchLine& line) {
  Json object = line_json(line);
  object.erase("file");
  Json whole = {{"line", number_of(line.client)}};
  whole.update(object);
  if (!line.failed()) whole["report"] = Json::parse(line.result.output);
  if (!line.pattern.empty()) whole["pattern"] = Json::parse(line.pattern);
  return on_one_line(whole) + "\n";
}

bool is_blank_line(const std::string& text) {
  return text.find_first_not_of(" \t\r") == std::string::npos;
}

/// The lines of a stream that hold anything, as tasks, each once with every style. One that is too
/// long for a client is cut; one without an end is the last.
class ClientLines {
 public:
  /// `in` and `styles` must outlive it.
  ClientLines(std::istream& in, const std::vector<BatchStyle>& styles) : in_(in), styles_(styles) {}

  std::optional<BatchTask> next() {
    if (style_ == 0) task_ = next_client();
    if (!task_) return std::nullopt;
    task_->style = &styles_[style_];
    style_ = (style_ + 1) % styles_.size();
    return task_;
  }

 private:
  std::optional<BatchTask> next_client() {
    while (!endless_) {
      const auto line = next_line(in_, kKeptOfLine);
      if (!line) break;
      ++number_;
      endless_ = !line->is_whole && !reaches_end_of_line();
      if (!endless_ && is_blank_line(line->text)) continue;
      return BatchTask{"line " + std::to_string(number_), line->text, endless_};
    }
    return std::nullopt;
  }

  /// Skips the rest of a line, as far as lines go.
  bool reaches_end_of_line() {
    for (std::size_t at = kKeptOfLine; at < kEndless;) {
      const auto part = next_line(in_, std::min(kKeptOfLine, kEndless - at));
      if (!part || part->is_whole) return true;
      at += part->text.size();
    }
    return false;
  }

  std::istream& in_;
  const std::vector<BatchStyle>& styles_;
  std::optional<BatchTask> task_;
  std::size_t number_ = 0, style_ = 0;  ///< of the task, and the style of the next
  bool endless_ = false;
};

Problem endless_line(const std::string& place) {
  return {Severity::Error, "input.line", place,
          "the line is longer than " + std::to_string(kEndlessMib) +
              " MiB; neither it nor what follows is read",
          "end each client's line with a line break"};
}

JobResult streamed(const BatchJob& batch, std::istream& in, FileStore& files,
                   const BatchWatch& watch) {
  const BatchWork work(batch, files);
  const auto held = batch.each.out.empty() ? FolderLock() : files.lock(batch.each.out);
  ClientLines lines(in, work.styles());
  const auto next = [&] { return lines.next(); };
  const auto draft = [&](const BatchTask& task) {
    return task.endless ? refused(task, endless_line(task.client)) : work.of_stream(task);
  };
  const auto write = [&](BatchDraft drafted) { return work.written(std::move(drafted)); };
  const auto tell = [&](const BatchLine& done) {
    if (watch.say) watch.say(object_text(done));
  };
  // With one job, who waits for her line before sending the next gets it.
  const BatchPace pace = batch.jobs == 1 ? BatchPace() : pace_of(batch.jobs);
  return work_in_order(pace, {next, draft, write, tell});
}

}  // namespace

JobResult run_stream(const BatchJob& batch, std::istream& in, FileStore& files,
                     const BatchWatch& watch) {
  return guarded("standard input", ReportKind::Json, batch.each.places,
                 [&] { return streamed(batch, in, files, watch); });
}

}  // namespace blockwright
