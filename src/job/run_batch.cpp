#include "batch_line.hpp"
#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "done_record.hpp"
#include "guarded.hpp"
#include "output_stem.hpp"
#include "shard.hpp"
#include "wishes.hpp"
#include "work_in_order.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <set>

namespace blockwright {
namespace {

std::vector<std::string> clients_of(const BatchJob& batch, FileStore& files) {
  std::vector<std::string> clients = batch.clients;
  if (!batch.folder.empty()) {
    const std::vector<std::string> found = files.list(
        batch.folder, ".json", batch.subfolders ? Listing::WithSubfolders : Listing::Folder);
    clients.insert(clients.end(), found.begin(), found.end());
  }
  if (!clients.empty()) return clients;
  throw UsageError({Severity::Error, "batch.empty", batch.folder,
                    "there is no client file (*.json) in the folder",
                    "name the folder that holds the client files"});
}

/// Outputs are named after the client file's stem; the second of two that share one is refused
/// before anything is written. Names that differ only in the case of ASCII letters are the same
/// file on some disks.
std::map<std::string, std::string> collisions(const BatchJob& batch,
                                              const std::vector<std::string>& clients) {
  std::map<std::string, std::string> first, later;
  Job job = batch.each;
  for (const std::string& client : clients) {
    job.client = client;
    std::string stem = output_stem(job);
    std::transform(stem.begin(), stem.end(), stem.begin(), [](char c) {
      return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    const auto [it, is_new] = first.emplace(stem, client);
    if (!is_new) later.emplace(client, it->second);
  }
  return later;
}

Problem collision(const std::string& client, const std::string& other) {
  return {Severity::Error, "batch.collision", client,
          "its output would have the same names as that of " + other,
          "rename one of the two client files"};
}

/// Records of client files that are not there any more.
std::vector<DoneRecord> gone_clients(const BatchJob& batch, const std::vector<std::string>& clients,
                                     FileStore& files) {
  const std::set<std::string> present(clients.begin(), clients.end());
  std::vector<DoneRecord> gone;
  for (const std::string& path :
       files.list(batch.each.out, std::string(kRecordEnding), Listing::Hidden)) {
    auto record = read_record(files.read(path));
    if (!record || present.count(record->client) > 0) continue;
    try {
      (void)files.read(record->client);
    } catch (const FileError&) {
      gone.push_back(std::move(*record));
    }
  }
  return gone;
}

/// Tells each client as she is done, and the counts at the end.
class Telling {
 public:
  Telling(const BatchJob& batch, const BatchWatch& watch, std::size_t total)
      : json_(batch.each.report == "json"), watch_(watch), total_(total) {
    if (json_) say("{\"clients\": [");
  }

  void line(const BatchLine& line) {
    const std::string state = state_of(line);
    ++counts_[state];
    if (json_) {
      say((told_ ? ",\n " : "\n ") +
          line_json(line).dump(-1, ' ', false, Json::error_handler_t::replace));
    } else if (!watch_.quiet || line.failed) {
      say(line_text(line));
    }
    told_ = true;
    ++done_;
    if (watch_.progress) watch_.progress(done_, total_, counts_["failed"]);
  }

  void end(const std::vector<DoneRecord>& gone) { json_ ? end_json(gone) : end_text(gone); }

 private:
  using Json = nlohmann::ordered_json;

  void say(const std::string& text) const {
    if (watch_.say) watch_.say(text);
  }

  void end_text(const std::vector<DoneRecord>& gone) {
    for (const DoneRecord& record : gone) {
      std::string names;
      for (const auto& output : record.outputs) names += " " + output.name;
      say("gone      " + record.client + "; its output stays:" + names + "\n");
    }
    say(fmt::format("{} clients: {} done, {} warned, {} unchanged, {} failed\n", done_,
                    counts_["done"], counts_["warned"], counts_["unchanged"], counts_["failed"]));
  }

  void end_json(const std::vector<DoneRecord>& gone) {
    Json list = Json::array();
    for (const DoneRecord& record : gone) {
      Json names = Json::array();
      for (const auto& output : record.outputs) names.push_back(output.name);
      list.push_back({{"file", record.client}, {"outputs", names}});
    }
    Json counts;
    for (const char* state : {"done", "warned", "unchanged", "failed"}) {
      counts[state] = counts_[state];
    }
    say("\n],\n\"gone\": " + list.dump(-1, ' ', false, Json::error_handler_t::replace) +
        ",\n\"counts\": " + counts.dump() + "}\n");
  }

  bool json_;
  const BatchWatch& watch_;
  std::size_t total_, done_ = 0;
  bool told_ = false;
  std::map<std::string, std::size_t> counts_;
};

/// Output among the clients would be taken for clients the next time.
void require_own_folder(const BatchJob& batch) {
  const bool json = std::count(batch.each.write.begin(), batch.each.write.end(), "json") > 0;
  if (json && batch.folder == batch.each.out) {
    refuse_option("out", "pattern files would lie among the client files",
                  "name another folder for the output");
  }
}

JobResult batched(const BatchJob& batch, FileStore& files, const BatchWatch& watch) {
  const BatchWork work(batch.each, batch.jobs, files);
  const Shard shard = shard_named(batch.shard);
  require_own_folder(batch);
  const std::vector<std::string> all = clients_of(batch, files);
  const std::map<std::string, std::string> taken = collisions(batch, all);
  const auto held = files.lock(batch.each.out);
  std::vector<std::string> clients;
  std::copy_if(all.begin(), all.end(), std::back_inserter(clients),
               [&](const std::string& path) { return shard.holds(below(batch.folder, path)); });
  Telling telling(batch, watch, clients.size());
  JobResult result;
  std::size_t at = 0;
  work_in_order(
      batch.jobs,
      [&]() -> std::optional<BatchTask> {
        return at < clients.size() ? std::optional(BatchTask{clients[at++], ""}) : std::nullopt;
      },
      [&](const BatchTask& task) {
        const auto other = taken.find(task.client);
        if (other != taken.end()) {
          return refused(task.client, collision(task.client, other->second));
        }
        return work.client(task.client, batch.again);
      },
      [&](BatchLine line) {
        if (line.failed) result.exit_code = 1;
        result.files.insert(result.files.end(), line.files.begin(), line.files.end());
        telling.line(line);
      });
  telling.end(gone_clients(batch, all, files));
  return result;
}

}  // namespace

JobResult run_batch(const BatchJob& batch, FileStore& files, const BatchWatch& watch) {
  return guarded(batch.folder, batch.each.report == "json",
                 [&] { return batched(batch, files, watch); });
}

}  // namespace blockwright
