#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/job/job.hpp"
#include "guarded.hpp"
#include "problems_as_json.hpp"
#include "safe_name.hpp"
#include "wishes.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <atomic>
#include <map>
#include <stdexcept>
#include <thread>

namespace blockwright {
namespace {

constexpr int kMostJobs = 64;

/// One client of the folder.
struct Line {
  std::string file;
  JobResult result;
};

/// Outputs are named after the client file's stem; the second of two that share one is refused
/// before anything is written.
std::map<std::string, std::string> collisions(const std::vector<std::string>& clients) {
  std::map<std::string, std::string> first, later;
  for (const std::string& client : clients) {
    const auto [it, is_new] = first.emplace(safe_stem(client), client);
    if (!is_new) later.emplace(client, it->second);
  }
  return later;
}

JobResult one(const Job& each, const std::string& client,
              const std::map<std::string, std::string>& taken, FileStore& files) {
  const auto other = taken.find(client);
  if (other != taken.end()) {
    return failed(client, false,
                  {Severity::Error, "batch.collision", client,
                   "its output would have the same names as that of " + other->second,
                   "rename one of the two client files"},
                  1);
  }
  Job job = each;
  job.client = client;
  job.report = "text";
  try {
    return run_job(job, files);
  } catch (const std::logic_error& error) {  // a bug, which must not stop the others
    return failed(client, false,
                  {Severity::Error, "program.bug", client, error.what(),
                   "please report it with the client file"},
                  1);
  }
}

/// Clients are handed out in order; each result goes to its own place.
std::vector<Line> worked_through(const BatchJob& batch, const std::vector<std::string>& clients,
                                 FileStore& files) {
  const auto taken = collisions(clients);
  std::vector<Line> lines(clients.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < clients.size(); i = next++) {
      lines[i] = {clients[i], one(batch.each, clients[i], taken, files)};
    }
  };
  std::vector<std::thread> others;
  for (int i = 1; i < batch.jobs; ++i) others.emplace_back(work);
  work();
  for (std::thread& other : others) other.join();
  return lines;
}

const Problem* worst(const JobResult& result) {
  const auto error = std::find_if(result.problems.begin(), result.problems.end(),
                                  [](const Problem& p) { return p.severity != Severity::Note; });
  return error == result.problems.end() ? nullptr : &*error;
}

std::string state_of(const JobResult& result) {
  if (result.exit_code != 0) return "failed";
  return worst(result) != nullptr ? "warned" : "done";
}

std::string line_text(const Line& line) {
  const RunSummary& summary = line.result.summary;
  std::string text = fmt::format("{:<7} {}", state_of(line.result), line.file);
  if (!summary.name.empty()) text += ": " + summary.name;
  if (line.result.exit_code == 0) {
    text += "; " + summary.darts + "; back to " + fixed(summary.residual, 2) + " mm; " +
            std::to_string(summary.pages) + " pages, " + std::to_string(line.result.files.size()) +
            " files";
  }
  text += "\n";
  if (const Problem* problem = worst(line.result)) text += "          " + to_text(*problem) + "\n";
  return text;
}

std::string summary_text(const std::vector<Line>& lines) {
  std::string text;
  std::map<std::string, int> counts;
  for (const Line& line : lines) {
    text += line_text(line);
    ++counts[state_of(line.result)];
  }
  return text + fmt::format("{} clients: {} done, {} warned, {} failed\n", lines.size(),
                            counts["done"], counts["warned"], counts["failed"]);
}

std::string summary_json(const std::vector<Line>& lines) {
  using Json = nlohmann::ordered_json;
  Json list = Json::array();
  for (const Line& line : lines) {
    list.push_back({{"file", line.file},
                    {"client", line.result.summary.name},
                    {"state", state_of(line.result)},
                    {"darts", line.result.summary.darts},
                    {"residual_mm", rounded(line.result.summary.residual)},
                    {"pages", line.result.summary.pages},
                    {"files", line.result.files},
                    {"problems", problems_as_json(line.result.problems)}});
  }
  return Json{{"clients", list}}.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// What is wrong for everybody is told once, before anybody is worked on.
void require_sound(const BatchJob& batch, FileStore& files) {
  (void)wishes_of(batch.each);
  if (batch.each.command == Command::Adapt) {
    (void)read_style(files.read(batch.each.style), batch.each.style);
  }
  if (batch.jobs < 1 || batch.jobs > kMostJobs) {
    throw UsageError({Severity::Error, "job.value", "--jobs",
                      std::to_string(batch.jobs) + " is out of range",
                      "use 1 to " + std::to_string(kMostJobs)});
  }
}

JobResult batched(const BatchJob& batch, FileStore& files) {
  require_sound(batch, files);
  const std::vector<std::string> clients = files.list(batch.folder, ".json", batch.subfolders);
  if (clients.empty()) {
    throw UsageError({Severity::Error, "batch.empty", batch.folder,
                      "there is no client file (*.json) in the folder",
                      "name the folder that holds the client files"});
  }
  const std::vector<Line> lines = worked_through(batch, clients, files);
  JobResult result;
  for (const Line& line : lines) {
    if (line.result.exit_code != 0) result.exit_code = 1;
    result.files.insert(result.files.end(), line.result.files.begin(), line.result.files.end());
  }
  result.output = batch.each.report == "json" ? summary_json(lines) : summary_text(lines);
  return result;
}

}  // namespace

JobResult run_batch(const BatchJob& batch, FileStore& files) {
  return guarded(batch.folder, batch.each.report == "json", [&] { return batched(batch, files); });
}

}  // namespace blockwright
