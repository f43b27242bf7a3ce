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
#include <cstdio>
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
  double start = seconds_by(Clock::Wall);
  BatchWatch watch;
  watch.progress = [&](std::size_t done, std::size_t, std::size_t) {
    if (done % kBeside != 0) return;
    of_many.push_back(seconds_by(Clock::Wall) - start);
    const std::lock_guard shut(files.gate);
    do_few();
    start = seconds_by(Clock::Wall);
  };
  run_batch(batch_of(scratch.path("many"), scratch.path("out-many"), 1), files, watch);
  std::vector<Round> rounds;
  for (std::size_t i = 0; i < of_many.size(); ++i) {
    rounds.push_back({of_many[i], 0.5 * (of_few[i] + of_few[i + 1])});
  }
  if (rounds.empty()) return;
  const auto [many, few, ratio] = quietest(std::move(rounds));
  fmt::print("{:>6} people on disk: {:.2f} ms each, of 100 people {:.2f}: {:.3f}; peak {:.1f} MB\n",
             people, 1e3 * many / kBeside, 1e3 * few / kBeside, ratio, peak_mb());
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

/// A batch over clients in a folder of its own.
class BatchOnDisk {
 public:
  BatchOnDisk(const std::filesystem::path& parent, SystemCalls& calls, int people)
      : scratch_(parent), files_(calls) {
    DiskFiles().write_all(client_files(scratch_.path("people"), people));
  }
  void run(int jobs) {
    run_batch(batch_of(scratch_.path("people"), scratch_.path("out"), jobs), files_, {});
  }

 private:
  blockwright_tests::TempFolder scratch_;
  DiskFiles files_;
};

/// A batch in memory.
class BatchInMemory {
 public:
  explicit BatchInMemory(int people) {
    for (const NewFile& client : client_files("people", people)) {
      files_.clients[client.path] = client.bytes;
    }
  }
  void run(int jobs) { run_batch(batch_of("people", "out", jobs), files_, {}); }

 private:
  CountingFiles files_;
};

/// What disks cost two jobs, and what the second of them brings where there is no disk.
void disks_and_jobs(int people) {
  constexpr int kRounds = 9, kJobs = 2;
  using std::chrono::milliseconds;
  SystemCalls real;
  SlowDisk quick{milliseconds(1)}, busy{milliseconds(5)}, very_busy{milliseconds(15)};
  const auto memory_folder = blockwright_tests::memory_folder();
  BatchInMemory memory(people);
  BatchOnDisk disk(std::filesystem::temp_directory_path(), real, people);
  BatchOnDisk on_quick(memory_folder, quick, people), on_busy(memory_folder, busy, people),
      on_very_busy(memory_folder, very_busy, people);
  const auto in_memory = [&] { memory.run(kJobs); };
  const std::vector<Against> results = in_turn(kRounds, Clock::Wall,
                                               {{[&] { memory.run(1); }, in_memory},
                                                {[&] { disk.run(kJobs); }, in_memory},
                                                {[&] { on_quick.run(kJobs); }, in_memory},
                                                {[&] { on_busy.run(kJobs); }, in_memory},
                                                {[&] { on_very_busy.run(kJobs); }, in_memory}});
  const char* const names[] = {"one job, in memory", "two jobs, on disk",
                               "two jobs, flushes of 1 ms", "two jobs, flushes of 5 ms",
                               "two jobs, flushes of 15 ms"};
  for (std::size_t i = 0; i < results.size(); ++i) {
    fmt::print("{} people, {}: {:.2f} ms each, {:.2f} times as long as two jobs in memory\n",
               people, names[i], 1e3 * results[i].work / people, results[i].ratio);
  }
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
  disks_and_jobs(100);
  shares(200);
  return 0;
}
