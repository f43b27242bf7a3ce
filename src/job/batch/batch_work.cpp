#include "batch_work.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/files/stamp.hpp"
#include "blockwright/job/options.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "run_client.hpp"

#include <nlohmann/json.hpp>

#include <exception>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

Problem bug(const std::string& client, const char* what) {
  return {Severity::Error, "program.bug", client, what, "please report it with the client file"};
}

/// Whatever `work` throws fails this client only.
template <class Work>
BatchDraft contained(const std::string& client, const Work& work) {
  try {
    return work();
  } catch (const Error& error) {
    return refused(client, error.problem());
  } catch (const std::exception& error) {
    return refused(client, bug(client, error.what()));
  }
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
  line->unchanged = true;
  return line;
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

BatchDraft refused(const std::string& client, const Problem& problem) {
  return {{client, failed(client, ReportKind::Text, problem, 1)}};
}

BatchWork::BatchWork(const BatchJob& batch, FileStore& files) : batch_(batch), files_(files) {
  judge(batch);
  (void)print_of(batch.each);
  bool finished = false;
  if (batch.each.command == Command::Adapt) {
    style_ = files.read(batch.each.style);
    finished = finishes(read_style(style_, batch.each.style));
  }
  cut_ = cut_of(batch.each, finished);
}

BatchDraft BatchWork::client(const std::string& path) const {
  return contained(path, [&]() -> BatchDraft {
    Job job = batch_.each;
    job.client = path;
    job.report = ReportKind::Text;
    const std::string text = files_.read(path);
    const OutputStamp made{stamp_path(cut_stem(job, cut_)),
                           output_key(job, {sources_hash(), style_, text})};
    if (!batch_.again) {
      if (auto before = done_before(job, made, files_)) return {*before};
    }
    HeldFiles held(files_, path, text);
    BatchDraft draft{{path, run_client(job, held)}};
    if (draft.line.failed()) return draft;
    draft.set = std::move(held.held);
    const Stamp stamp = stamp_of(made.key, draft.set, on_one_line(line_json(draft.line)));
    draft.set.push_back({made.path, stamp_text(stamp)});
    return draft;
  });
}

BatchDraft BatchWork::of_stream(const std::string& place, const std::string& text) const {
  const bool writes = !batch_.each.out.empty();
  return contained(place, [&] {
    std::istringstream in(text);
    Job job = batch_.each;
    job.client = place;
    job.report = ReportKind::Json;
    job.stem = numbered_stem(place, read_client(in, place), job);
    if (!writes) job.write = {OutputKind::Json};
    HeldFiles held(files_, place, text);
    BatchDraft draft{{place, run_client(job, held)}};
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
  const std::string client = draft.line.client;
  return contained(client,
                   [&] {
                     files_.write_all(draft.set);
                     return std::move(draft);
                   })
      .line;
}

}  // namespace blockwright
