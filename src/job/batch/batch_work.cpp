#include "batch_work.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/files/stamp.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/text/small_letters.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "option_words.hpp"
#include "run_client.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <exception>
#include <map>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

Problem bug(const std::string& client, const char* what) {
  return {Severity::Error, "program.bug", client, what, "please report it with the client file"};
}

/// Whatever `work` throws fails this client and style only.
template <class Work>
BatchDraft contained(const BatchTask& task, const Work& work) {
  try {
    return work();
  } catch (const Error& error) {
    return refused(task, error.problem());
  } catch (const std::exception& error) {
    return refused(task, bug(task.client, error.what()));
  }
}

BatchDraft run(const BatchTask& task, const Job& job, FileStore& files) {
  return {{task.client, run_client(job, files), job.style}};
}

/// Lets a run read one text that is at hand already, and holds what it writes back, so that more
/// can be written in the same set.
class HeldFiles : public FileStore {
 public:
  /// `files` must outlive it.
  HeldFiles(FileStore& files, std::string path, std::string text)
      : files_(files), path_(std::move(path)), text_(std::move(text)) {}

  std::string read(const std::string& path) override {
    return path == path_ ? text_ : files_.read(path);
  }
  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                Listing which) override {
    return files_.list(folder, ending, which);
  }
  std::vector<NotRead> not_read(const std::string& folder, const std::string& ending,
                                Listing which) override {
    return files_.not_read(folder, ending, which);
  }
  void write_all(const std::vector<NewFile>& set) override {
    held.insert(held.end(), set.begin(), set.end());
  }
  FolderLock lock(const std::string& folder) override { return files_.lock(folder); }

  std::vector<NewFile> held;

 private:
  FileStore& files_;
  std::string path_, text_;
};

/// Where the stamp of a client's output lies, and what it holds while nothing has changed.
struct OutputStamp {
  std::string path, key;
};

/// What was made of the same contents before, if it is still there.
std::optional<BatchLine> done_before(const Job& job, const OutputStamp& made, FileStore& files) {
  const auto text = text_if_there(made.path, files);
  const auto stamp = text ? read_stamp(*text) : std::nullopt;
  if (!stamp || stamp->key != made.key || !is_still_there(*stamp, job.out, files))
    return std::nullopt;
  std::optional<BatchLine> line = read_line(stamp->line);
  if (!line) return std::nullopt;
  line->client = job.client;
  line->style = job.style;
  line->unchanged = true;
  return line;
}

constexpr const char* kStyleEnding = ".json";

/// The files of a folder of styles; none if it is no folder.
std::vector<std::string> style_folder(const std::string& path, FileStore& files) {
  try {
    return files.list(path, kStyleEnding, Listing::Folder);
  } catch (const FileError&) {
    return {};
  }
}

/// Outputs are named after client and style.
void require_names_of_their_own(const std::vector<std::string>& styles) {
  std::map<std::string, std::string> first;
  for (const std::string& style : styles) {
    const auto [it, is_new] = first.emplace(in_small_letters(safe_stem(style)), style);
    if (is_new) continue;
    refuse_option(
        "--style",
        shown_place(style) + " would give output of the same name as " + shown_place(it->second),
        "rename one of the two style files");
  }
}

/// The style files of a batch, in order; those of a folder in the order of their names, and one
/// that comes twice once.
std::vector<std::string> style_paths(const BatchJob& batch, FileStore& files) {
  std::vector<std::string> paths;
  for (const std::string& named : batch.styles) {
    std::vector<std::string> found = style_folder(named, files);
    if (found.empty()) found.push_back(named);
    for (const std::string& path : found) {
      if (std::ranges::count(paths, path) == 0) paths.push_back(path);
    }
  }
  require_names_of_their_own(paths);
  return paths;
}

/// "12-ondine-marsh" of line 12: names may come twice in a stream.
std::string numbered_stem(const std::string& place, const Client& client, const Job& job) {
  const std::string number = place.substr(place.find_last_of(' ') + 1);
  return job.anonymous ? number : number + "-" + safe_stem(client.name + ".json");
}

}  // namespace

std::string output_key(Job job, const MadeOf& parts) {
  const std::string options = output_key(JobOptions(job)) + "\n" + job.stem;
  return stamp_key({version(), parts.sources, options, parts.style, parts.client});
}

Job job_of(const BatchJob& batch, const BatchTask& task) {
  Job job = batch.each;
  job.client = task.client;
  job.style = task.style->path;
  job.command = job.style.empty() ? Command::Draft : Command::Adapt;
  return job;
}

BatchDraft refused(const BatchTask& task, const Problem& problem) {
  return {{task.client, failed(task.client, ReportKind::Text, problem, 1), task.style->path}};
}

BatchWork::BatchWork(const BatchJob& batch, FileStore& files) : batch_(batch), files_(files) {
  judge(batch);
  (void)print_of(batch.each);
  for (const std::string& path : style_paths(batch, files)) {
    std::string text = files.read(path);
    const bool finished = finishes(read_style(text, path));
    styles_.push_back({path, std::move(text), cut_of(batch.each, finished)});
  }
  if (styles_.empty()) styles_.push_back({"", "", cut_of(batch.each, false)});
}

BatchDraft BatchWork::client(const BatchTask& task) const {
  return contained(task, [&]() -> BatchDraft {
    Job job = job_of(batch_, task);
    job.report = ReportKind::Text;
    const std::string text = files_.read(task.client);
    const OutputStamp made{stamp_path(cut_stem(job, task.style->cut)),
                           output_key(job, {sources_hash(), task.style->text, text})};
    if (!batch_.again) {
      if (auto before = done_before(job, made, files_)) return {*before};
    }
    HeldFiles held(files_, task.client, text);
    BatchDraft draft = run(task, job, held);
    if (draft.line.failed()) return draft;
    draft.set = std::move(held.held);
    const Stamp stamp = stamp_of(made.key, draft.set, on_one_line(line_json(draft.line)));
    draft.set.push_back({made.path, stamp_text(stamp)});
    return draft;
  });
}

BatchDraft BatchWork::of_stream(const BatchTask& task) const {
  const bool writes = !batch_.each.out.empty();
  return contained(task, [&] {
    std::istringstream in(task.text);
    Job job = job_of(batch_, task);
    job.report = ReportKind::Json;
    job.stem = numbered_stem(task.client, read_client(in, task.client), job);
    if (!writes) job.write = {OutputKind::Json};
    HeldFiles held(files_, task.client, task.text);
    BatchDraft draft = run(task, job, held);
    if (draft.line.failed()) return draft;
    if (writes) {
      draft.set = std::move(held.held);
    } else {
      draft.line.pattern = std::move(held.held.front().bytes);
      draft.line.result.files.clear();
    }
    return draft;
  });
}

BatchLine BatchWork::written(BatchDraft draft) const {
  const BatchStyle style{draft.line.style, "", {}};
  const BatchTask task{draft.line.client, "", false, &style};
  return contained(task,
                   [&] {
                     files_.write_all(draft.set);
                     return std::move(draft);
                   })
      .line;
}

}  // namespace blockwright
