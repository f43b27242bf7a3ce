// How a batch behaves under load: time for each person as their number grows, memory, what a second
// thread brings, and where the time goes. Not a test; see docs/performance.md.
//   load [PEOPLE ...]   default: 1000 10000
#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/write/writers.hpp"
#include "in_turn.hpp"
#include "support/client_text.hpp"
#include "support/people.hpp"
#include "support/run_tool.hpp"

#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <functional>
#include <map>
#include <mutex>
#include <set>
#include <sstream>
#include <sys/resource.h>
#include <thread>

namespace {

using namespace blockwright;
using namespace blockwright_benchmarks;

constexpr unsigned kSeed = 10000;

/// Clients in memory; what is written is counted and dropped.
class CountingFiles : public FileStore {
 public:
  std::map<std::string, std::string> clients;
  std::size_t bytes = 0;

  std::string read(const std::string& path) override {
    const auto it = clients.find(path);
    if (it == clients.end()) throw FileError({Severity::Error, "file.read", path, "none", ""});
    return it->second;
  }
  std::vector<std::string> list(const std::string&, const std::string&, Listing which) override {
    std::vector<std::string> paths;
    if (which == Listing::Hidden) return paths;
    for (const auto& [path, text] : clients) paths.push_back(path);
    return paths;
  }
  void write_all(const std::vector<NewFile>& set) override {
    const std::lock_guard lock(mutex_);
    for (const NewFile& file : set) bytes += file.bytes.size();
  }
  FolderLock lock(const std::string&) override { return {}; }

 private:
  std::mutex mutex_;
};

double peak_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

BatchJob batch_of(const std::string& folder, const std::string& out, int jobs) {
  BatchJob batch;
  batch.folder = folder;
  batch.each.out = out;
  batch.jobs = jobs;
  batch.again = true;
  return batch;
}

/// Clients as files, written below `folder`.
std::vector<NewFile> client_files(const std::string& folder, int people) {
  std::vector<NewFile> clients;
  int number = 0;
  for (const Session& session : survey_people(people, kSeed)) {
    ++number;
    clients.push_back(
        {folder + "/p" + std::to_string(number) + ".json", client_text(session, number)});
  }
  return clients;
}

/// Files on disk, with a gate: while it is shut, no client of a batch is begun.
class GatedFiles : public DiskFiles {
 public:
  std::mutex gate;

  std::string read(const std::string& path) override {
    { const std::lock_guard passed(gate); }
    return DiskFiles::read(path);
  }
};

/// A batch over `people` clients on disk, stopped at every hundred to do a batch of a hundred
/// others, so that the two meet the same machine.
void load_on_disk(int people) {
  constexpr std::size_t kBeside = 100;
  const blockwright_tests::TempFolder scratch;
  DiskFiles().write_all(client_files(scratch.path("many"), people));
  DiskFiles().write_all(client_files(scratch.path("few"), kBeside));
  std::vector<double> of_many, of_few;
  const auto do_few = [&] {
    DiskFiles files;
    of_few.push_back(seconds_of(
        [&] { run_batch(batch_of(scratch.path("few"), scratch.path("out-few"), 1), files, {}); }));
  };
  do_few();
  GatedFiles files;
  auto start = std::chrono::steady_clock::now();
  BatchWatch watch;
  watch.progress = [&](std::size_t done, std::size_t, std::size_t) {
    if (done % kBeside != 0) return;
    of_many.push_back(
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    const std::lock_guard shut(files.gate);
    do_few();
    start = std::chrono::steady_clock::now();
  };
  run_batch(batch_of(scratch.path("many"), scratch.path("out-many"), 1), files, watch);
  if (of_many.empty()) return;
  fmt::print("{:>6} people on disk: {:.2f} ms each, of 100 people {:.2f}: {:.3f}; peak {:.1f} MB\n",
             people, 1e3 * median(of_many) / kBeside, 1e3 * median(of_few) / kBeside,
             median(to_neighbours(of_many, of_few)), peak_mb());
}

/// A disk that takes its time to flush, as a busy one does; what it holds lies in memory.
class SlowDisk : public SystemCalls {
 public:
  explicit SlowDisk(std::chrono::microseconds each) : each_(each) {}

  int start_flush(int) override { return 0; }
  int flush(int) override {
    std::this_thread::sleep_for(each_);
    return 0;
  }

 private:
  std::chrono::microseconds each_;
};

/// A batch against the same in memory: on the disk, and where each flush takes long.
void disks(int people, int jobs) {
  constexpr int kRounds = 5;
  CountingFiles memory;
  for (const NewFile& client : client_files("people", people)) {
    memory.clients[client.path] = client.bytes;
  }
  const auto in_memory = [&] { run_batch(batch_of("people", "out", jobs), memory, {}); };
  in_memory();
  const auto print_against_memory = [&](const std::string& what, SystemCalls& calls,
                                        const std::filesystem::path& parent) {
    const blockwright_tests::TempFolder scratch(parent);
    DiskFiles files(calls);
    files.write_all(client_files(scratch.path("people"), people));
    const Against on_disk = in_turn(
        kRounds,
        [&] { run_batch(batch_of(scratch.path("people"), scratch.path("out"), jobs), files, {}); },
        in_memory);
    fmt::print("{} people, {} jobs, {}: {:.2f} ms each, {:.2f} times as long as in memory\n",
               people, jobs, what, 1e3 * on_disk.time / people, on_disk.ratio);
  };
  SystemCalls real;
  print_against_memory("on disk", real, std::filesystem::temp_directory_path());
  for (const int ms : {1, 5, 15}) {
    SlowDisk slow{std::chrono::milliseconds(ms)};
    print_against_memory(fmt::format("flushes of {} ms", ms), slow,
                         blockwright_tests::memory_folder());
  }
}

/// Without a disk: what a second thread brings.
void two_jobs(int people) {
  constexpr int kRounds = 9;
  CountingFiles files;
  for (const NewFile& client : client_files("people", people)) {
    files.clients[client.path] = client.bytes;
  }
  const auto run = [&](int jobs) { run_batch(batch_of("people", "out", jobs), files, {}); };
  const Against one = in_turn(
      kRounds, [&] { run(1); }, [&] { run(2); });
  fmt::print("{} people in memory: {:.2f} ms each; two jobs {:.2f} times as fast\n", people,
             1e3 * one.time / people, one.ratio);
}

/// The passes of one run, each timed alone over many people.
void shares(int people) {
  double draft = 0.0, layout = 0.0, svg = 0.0, pdf = 0.0;
  PrintOptions options;
  const SheetNotes notes;
  for (const Session& session : survey_people(people, kSeed)) {
    Pattern pattern;
    draft += seconds_of([&] {
      const Body body = fill_in(session);
      const DraftedBlock block = draft_block(body, Ease::of({}));
      (void)check_block({block.pattern, body, block.ease, block.adjustments});
      pattern = true_darts(block.pattern).pattern;
      (void)check_pattern(pattern);
    });
    TextFonts fonts;
    Sheet sheet;
    PrintPlan plan;
    layout += seconds_of([&] {
      const Layout laid = lay_out(pattern, options, notes);
      sheet = sheet_of(laid, fonts);
      plan = tile(laid, fonts);
    });
    std::ostringstream out;
    svg += seconds_of([&] { write_svg(out, sheet, "p", fonts); });
    pdf += seconds_of([&] { write_pdf(out, plan, fonts); });
  }
  const double all = draft + layout + svg + pdf;
  for (const auto& [name, time] : std::map<std::string, double>{{"1 draft, checks, truing", draft},
                                                                {"2 sheet and pages", layout},
                                                                {"3 SVG", svg},
                                                                {"4 PDF", pdf}}) {
    fmt::print("{:<24} {:6.2f} ms  {:4.1f} %\n", name, 1e3 * time / people, 100.0 * time / all);
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::setvbuf(stdout, nullptr, _IOLBF, BUFSIZ);
  std::vector<int> sizes;
  for (int i = 1; i < argc; ++i) sizes.push_back(std::stoi(argv[i]));
  if (sizes.empty()) sizes = {1000, 10000};
  for (const int people : sizes) load_on_disk(people);
  disks(100, 2);
  two_jobs(200);
  shares(200);
  return 0;
}
