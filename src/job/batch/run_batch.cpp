#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/files/stamp.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/text/small_letters.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <utility>
#include <xxhash.h>

namespace blockwright {
namespace {

constexpr const char* kClientEnding = ".json";

Listing listing_of(const BatchJob& batch) {
  return batch.subfolders ? Listing::WithSubfolders : Listing::Folder;
}

/// What the folder has that looks like a client file and is none.
std::vector<NotRead> not_read_of(const BatchJob& batch, FileStore& files) {
  if (batch.folder.empty()) return {};
  return files.not_read(batch.folder, kClientEnding, listing_of(batch));
}

[[noreturn]] void refuse_empty(const BatchJob& batch, FileStore& files) {
  std::string message = "there is no client file (*.json) in the folder";
  const std::vector<NotRead> others = not_read_of(batch, files);
  if (!others.empty()) {
    message += "; not read: " + others[0].path + ", " + others[0].reason;
    if (others.size() > 1) message += ", and " + std::to_string(others.size() - 1) + " more";
  }
  throw UsageError({Severity::Error, "batch.empty", batch.folder, message,
                    "name the folder that holds the client files"});
}

/// Those that are listed, then those of the folder; who is both comes once.
std::vector<std::string> clients_of(const BatchJob& batch, FileStore& files) {
  std::vector<std::string> clients;
  std::set<std::string> seen;
  const auto take = [&](const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
      if (seen.insert(path).second) clients.push_back(path);
    }
  };
  take(batch.clients);
  if (!batch.folder.empty()) take(files.list(batch.folder, kClientEnding, listing_of(batch)));
  if (clients.empty()) refuse_empty(batch, files);
  return clients;
}

/// Every client with every style, in order.
std::vector<BatchTask> tasks_of(const std::vector<std::string>& clients,
                                const std::vector<BatchStyle>& styles) {
  std::vector<BatchTask> tasks;
  tasks.reserve(clients.size() * styles.size());
  for (const std::string& client : clients) {
    for (const BatchStyle& style : styles) tasks.push_back({client, "", false, &style});
  }
  return tasks;
}

/// A client file and a style file.
using MadeFrom = std::pair<std::string, std::string>;

MadeFrom made_from(const BatchTask& task) { return {task.client, task.style->path}; }

/// Outputs are named after the stems of client and style file; the second of two that share one is
/// refused before anything is written. Names that differ only in the case of ASCII letters are the
/// same file on some disks.
std::map<MadeFrom, MadeFrom> collisions(const BatchJob& batch,
                                        const std::vector<BatchTask>& tasks) {
  std::map<std::string, MadeFrom> first;
  std::map<MadeFrom, MadeFrom> later;
  for (const BatchTask& task : tasks) {
    const std::string stem = in_small_letters(output_stem(job_of(batch, task)));
    const auto [it, is_new] = first.emplace(stem, made_from(task));
    if (!is_new) later.emplace(made_from(task), it->second);
  }
  return later;
}

/// Of one that is refused, and the other one that comes before.
Problem collision(const std::pair<const MadeFrom, MadeFrom>& both) {
  const auto& [client, style] = both.second;
  return {Severity::Error, "batch.collision", both.first.first,
          "its output would have the same names as that of " + shown_place(client) +
              (style.empty() ? "" : " in " + shown_place(style)),
          "rename one of the two client files"};
}

/// What lies in the folder of a batch.
struct Present {
  std::vector<std::string> clients;
  std::vector<NotRead> not_read;
};

/// The one of that client: a stamp for each style comes to one.
GoneClient& gone_named(std::vector<GoneClient>& gone, const std::string& client) {
  const auto found = std::ranges::find(gone, client, &GoneClient::client);
  if (found != gone.end()) return *found;
  return gone.emplace_back(GoneClient{client, {}});
}

/// Whose stamps are there, but not their files. A stamp names a file as a summary does.
std::vector<GoneClient> gone_clients(const BatchJob& batch, const Present& there,
                                     FileStore& files) {
  std::set<std::string> present;
  for (const std::string& client : there.clients) present.insert(as_in_line(client));
  for (const NotRead& other : there.not_read) present.insert(as_in_line(other.path));
  std::vector<GoneClient> gone;
  for (const std::string& path :
       files.list(batch.each.out, std::string(kStampEnding), Listing::Hidden)) {
    const auto stamp = read_stamp(files.read(path));
    const auto line = stamp ? read_line(stamp->line) : std::nullopt;
    if (!line || present.contains(line->client) || text_if_there(line->client, files)) continue;
    GoneClient& one = gone_named(gone, line->client);
    for (const Stamp::Output& output : stamp->outputs) one.outputs.push_back(output.name);
  }
  return gone;
}

/// With a separator at the end, whether it was written or not.
std::string as_folder(const std::string& path) {
  return (std::filesystem::path(path) / "").lexically_normal().string();
}

/// Pattern files among the clients would be taken for clients the next time.
void require_own_folder(const BatchJob& batch) {
  const auto& kinds = batch.each.write;
  if (batch.folder.empty() || std::ranges::find(kinds, OutputKind::Json) == kinds.end()) return;
  const std::string from = as_folder(batch.folder), to = as_folder(batch.each.out);
  if (batch.subfolders ? to.starts_with(from) : to == from) {
    refuse_option("--out", "pattern files would lie among the client files",
                  "name another folder for the output");
  }
}

constexpr int kMostShards = 1'000'000;

/// One of several parts of a folder, counted from 1. A file belongs to a part by its name alone, so
/// that files which come or go move no other.
struct Shard {
  int part = 1;
  int of = 1;

  /// `name`: of the file, as seen from the folder.
  [[nodiscard]] bool holds(std::string_view name) const {
    const auto parts = static_cast<XXH64_hash_t>(of);
    return XXH3_64bits(name.data(), name.size()) % parts == static_cast<XXH64_hash_t>(part - 1);
  }
};

/// "2/8"; nothing is the whole folder. Throws UsageError "job.value".
Shard shard_named(const std::string& words) {
  if (words.empty()) return {};
  const std::size_t slash = words.find('/');
  const auto part = number_in<int>(std::string_view(words).substr(0, slash));
  const auto of = slash == std::string::npos
                      ? std::nullopt
                      : number_in<int>(std::string_view(words).substr(slash + 1));
  if (!part || !of || *of < 1 || *of > kMostShards || *part < 1 || *part > *of) {
    refuse_option("--shard", "'" + shown(words) + "' is no part of a folder",
                  "write which part of how many, 1/8 to 8/8");
  }
  return {*part, *of};
}

/// "deep/ondine.json" of "people/deep/ondine.json" in the folder "people".
std::string_view below(std::string_view folder, std::string_view path) {
  if (folder.empty() || !path.starts_with(folder)) return path;
  path.remove_prefix(folder.size());
  while (path.starts_with('/')) path.remove_prefix(1);
  return path;
}

JobResult batched(const BatchJob& batch, FileStore& files, const BatchWatch& watch) {
  const BatchWork work(batch, files);
  const Shard shard = shard_named(batch.shard);
  require_own_folder(batch);
  const Present all{clients_of(batch, files), not_read_of(batch, files)};
  const auto taken = collisions(batch, tasks_of(all.clients, work.styles()));
  const auto held = files.lock(batch.each.out);
  Present mine = all;
  const auto is_of_others = [&](const std::string& path) {
    return !shard.holds(below(batch.folder, path));
  };
  std::erase_if(mine.clients, is_of_others);
  std::erase_if(mine.not_read, [&](const NotRead& other) { return is_of_others(other.path); });
  const std::vector<BatchTask> tasks = tasks_of(mine.clients, work.styles());
  BatchSummary summary(watch, batch, {mine.clients.size(), work.styles().size()});
  std::size_t at = 0;
  const auto next = [&]() -> std::optional<BatchTask> {
    return at < tasks.size() ? std::optional(tasks[at++]) : std::nullopt;
  };
  const auto draft = [&](const BatchTask& task) {
    const auto other = taken.find(made_from(task));
    return other == taken.end() ? work.client(task) : refused(task, collision(*other));
  };
  const auto write = [&](BatchDraft drafted) { return work.written(std::move(drafted)); };
  const auto tell = [&](const BatchLine& line) { summary.tell(line); };
  JobResult result = work_in_order(pace_of(batch.jobs), {next, draft, write, tell});
  summary.end({gone_clients(batch, all, files), mine.not_read});
  return result;
}

}  // namespace

JobResult run_batch(const BatchJob& batch, FileStore& files, const BatchWatch& watch) {
  return guarded(batch.folder, batch.each.report, batch.each.places,
                 [&] { return batched(batch, files, watch); });
}

}  // namespace blockwright
