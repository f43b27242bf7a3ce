#include "batch_work.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/files/held_files.hpp"
#include "blockwright/files/safe_name.hpp"
#include "done_record.hpp"
#include "wishes.hpp"

#include <algorithm>
#include <exception>
#include <optional>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

constexpr int kMostJobs = 64;

Problem bug(const std::string& client, const char* what) {
  return {Severity::Error, "program.bug", client, what, "please report it with the client file"};
}

/// Whatever `work` throws fails this client only.
template <class Work>
BatchLine contained(const std::string& client, const Work& work) {
  try {
    return work();
  } catch (const Error& error) {
    return refused(client, error.problem());
  } catch (const std::exception& error) {
    return refused(client, bug(client, error.what()));
  }
}

std::optional<std::string> text_if_there(FileStore& files, const std::string& path) {
  try {
    return files.read(path);
  } catch (const FileError&) {
    return std::nullopt;
  }
}

bool is_still_there(const DoneRecord& record, const std::string& folder, FileStore& files) {
  return std::all_of(record.outputs.begin(), record.outputs.end(),
                     [&](const DoneRecord::Output& output) {
                       const auto bytes = text_if_there(files, joined_path(folder, output.name));
                       return bytes && content_hash(*bytes) == output.hash;
                     });
}

/// What was made of the same contents before, if it is still there.
std::optional<BatchLine> done_before(const Job& job, const std::string& key, FileStore& files) {
  const auto text = text_if_there(files, record_path(job));
  if (!text) return std::nullopt;
  std::optional<DoneRecord> record = read_record(*text);
  if (!record || record->key != key || !is_still_there(*record, job.out, files)) {
    return std::nullopt;
  }
  record->line.client = job.client;
  record->line.unchanged = true;
  return record->line;
}

/// "12-ondine-marsh" of line 12: names may come twice in a stream.
std::string numbered_stem(const std::string& place, const std::string& name, bool anonymous) {
  const std::string number = place.substr(place.find_last_of(' ') + 1);
  return anonymous ? number : number + "-" + safe_stem(name + ".json");
}

}  // namespace

BatchLine refused(const std::string& client, Problem problem) {
  BatchLine line;
  line.client = client;
  line.failed = true;
  line.problems = {std::move(problem)};
  return line;
}

BatchWork::BatchWork(const Job& each, int jobs, FileStore& files) : each_(each), files_(files) {
  (void)wishes_of(each);
  if (each.command == Command::Adapt) {
    style_ = files.read(each.style);
    (void)read_style(style_, each.style);
  }
  if (jobs < 1 || jobs > kMostJobs) {
    refuse_option("jobs", std::to_string(jobs) + " is out of range",
                  "use 1 to " + std::to_string(kMostJobs));
  }
}

BatchLine BatchWork::client(const std::string& path, bool again) const {
  return contained(path, [&] {
    Job job = each_;
    job.client = path;
    job.report = "text";
    const std::string text = files_.read(path);
    const std::string key = content_key(job, style_, text);
    if (!again) {
      if (auto before = done_before(job, key, files_)) return *before;
    }
    return made(job, text, key);
  });
}

BatchLine BatchWork::made(const Job& job, const std::string& text, const std::string& key) const {
  HeldFiles held(files_, job.client, text);
  BatchLine line = line_of(job.client, run_job(job, held));
  if (line.failed) return line;
  std::vector<NewFile> set = std::move(held.held);
  set.push_back({record_path(job), record_text(record_of(key, line, set))});
  files_.write_all(set);
  return line;
}

BatchLine BatchWork::of_stream(const std::string& place, const std::string& text,
                               bool writes) const {
  return contained(place, [&] {
    std::istringstream in(text);
    Job job = each_;
    job.client = place;
    job.report = "json";
    job.stem = numbered_stem(place, read_client(in, place).name, job.anonymous);
    if (!writes) job.write = {"json"};
    HeldFiles held(files_, place, text);
    JobResult result = run_job(job, held);
    std::string report = std::move(result.output);
    BatchLine line = line_of(place, std::move(result));
    line.report = std::move(report);
    if (line.failed) return line;
    if (writes) {
      files_.write_all(held.held);
    } else {
      line.pattern = std::move(held.held.front().bytes);
      line.files.clear();
    }
    return line;
  });
}

}  // namespace blockwright
