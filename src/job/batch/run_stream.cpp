#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "guarded.hpp"

#include <nlohmann/json.hpp>

#include <istream>
#include <optional>
#include <string>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kLongestLine = std::size_t{4} << 20;  // a client file has a mebibyte at most

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

/// What is far too long for a client is cut, so that a stream without line ends cannot fill the
/// memory; the client reader refuses it by its size.
std::string line_in(std::istream& in) {
  std::string text;
  for (char c = 0; in.get(c) && c != '\n';) {
    if (text.size() < kLongestLine) text += c;
  }
  return text;
}

/// The next line that holds anything, with its number as a place. `number` is that of the line
/// before.
std::optional<BatchTask> next_task(std::istream& in, std::size_t& number) {
  while (in.peek() != std::istream::traits_type::eof()) {
    const std::string text = line_in(in);
    ++number;
    if (!is_blank_line(text)) return BatchTask{"line " + std::to_string(number), text};
  }
  return std::nullopt;
}

JobResult streamed(const BatchJob& batch, std::istream& in, FileStore& files,
                   const BatchWatch& watch) {
  const BatchWork work(batch, files);
  const auto held = batch.each.out.empty() ? FolderLock() : files.lock(batch.each.out);
  std::size_t line = 0;
  return work_in_order(
      batch.jobs, [&] { return next_task(in, line); },
      [&](const BatchTask& task) { return work.of_stream(task.client, task.text); },
      [&](const BatchLine& done) {
        if (watch.say) watch.say(object_text(done));
      });
}

}  // namespace

JobResult run_stream(const BatchJob& batch, std::istream& in, FileStore& files,
                     const BatchWatch& watch) {
  return guarded("standard input", ReportKind::Json,
                 [&] { return streamed(batch, in, files, watch); });
}

}  // namespace blockwright
