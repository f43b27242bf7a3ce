#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "guarded.hpp"
#include "work_in_order.hpp"

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
  if (!line.report.empty() && !line.failed) whole["report"] = Json::parse(line.report);
  if (!line.pattern.empty()) whole["pattern"] = Json::parse(line.pattern);
  return whole.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

bool is_blank_line(const std::string& text) {
  return text.find_first_not_of(" \t\r") == std::string::npos;
}

/// The next line that holds anything, with its number as a place.
class Lines {
 public:
  explicit Lines(std::istream& in) : in_(in) {}

  std::optional<BatchTask> next() {
    while (in_.peek() != std::istream::traits_type::eof()) {
      std::string text = line();
      ++number_;
      if (!is_blank_line(text)) return BatchTask{"line " + std::to_string(number_), text};
    }
    return std::nullopt;
  }

 private:
  /// What is far too long for a client is cut, so that a stream without line ends cannot fill the
  /// memory; the client reader refuses it by its size.
  std::string line() {
    std::string text;
    for (char c = 0; in_.get(c) && c != '\n';) {
      if (text.size() < kLongestLine) text += c;
    }
    return text;
  }

  std::istream& in_;
  std::size_t number_ = 0;
};

JobResult streamed(const BatchJob& batch, std::istream& in, FileStore& files,
                   const BatchWatch& watch) {
  const BatchWork work(batch, files);
  const auto held = batch.each.out.empty() ? nullptr : files.lock(batch.each.out);
  Lines lines(in);
  JobResult result;
  work_in_order(
      batch.jobs, [&] { return lines.next(); },
      [&](const BatchTask& task) { return work.of_stream(task.client, task.text); },
      [&](const BatchLine& line) {
        if (line.failed) result.exit_code = 1;
        result.files.insert(result.files.end(), line.files.begin(), line.files.end());
        if (watch.say) watch.say(object_text(line));
      });
  return result;
}

}  // namespace

JobResult run_stream(const BatchJob& batch, std::istream& in, FileStore& files,
                     const BatchWatch& watch) {
  return guarded("standard input", ReportKind::Json,
                 [&] { return streamed(batch, in, files, watch); });
}

}  // namespace blockwright
