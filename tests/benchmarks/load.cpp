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

namespace {

using namespace blockwright;

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

double seconds_of(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

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

/// Milliseconds a person takes in a batch over `people` clients on disk.
double each_ms(const std::string& scratch, int people) {
  const std::string folder = scratch + "/people-" + std::to_string(people);
  const std::string out = scratch + "/out-" + std::to_string(people);
  DiskFiles disk;
  int number = 0;
  std::vector<NewFile> clients;
  for (const Session& session : survey_people(people, kSeed)) {
    ++number;
    clients.push_back(
        {folder + "/p" + std::to_string(number) + ".json", client_text(session, number)});
  }
  disk.write_all(clients);
  const double each =
      1e3 * seconds_of([&] { run_batch(batch_of(folder, out, 1), disk, {}); }) / people;
  std::filesystem::remove_all(out);
  std::filesystem::remove_all(folder);
  return each;
}

/// A batch of each size between two of a hundred, so that a machine that drifts does not look like
/// growth: the ratio is to the mean of the two.
void load_on_disk(const std::vector<int>& sizes) {
  constexpr int kBeside = 100;
  const blockwright_tests::TempFolder scratch;
  double before = each_ms(scratch.path(""), kBeside);
  for (const int people : sizes) {
    const double each = each_ms(scratch.path(""), people);
    const double memory = peak_mb();
    const double after = each_ms(scratch.path(""), kBeside);
    fmt::print(
        "{:>6} people on disk: {:.2f} ms each; {} before {:.2f}, after {:.2f} ms: {:.3f} of their "
        "mean; peak {:.1f} MB\n",
        people, each, kBeside, before, after, each / (0.5 * (before + after)), memory);
    before = after;
  }
}

/// Without a disk: what a second thread brings.
void two_jobs(int people) {
  CountingFiles files;
  int number = 0;
  for (const Session& session : survey_people(people, kSeed)) {
    ++number;
    files.clients["people/p" + std::to_string(number) + ".json"] = client_text(session, number);
  }
  const auto run = [&](int jobs) {
    return seconds_of([&] { run_batch(batch_of("people", "out", jobs), files, {}); });
  };
  run(1);
  const double one = run(1), two = run(2), again = run(1);
  fmt::print("{} people in memory: {:.2f} ms each; two jobs {:.2f} times one\n", people,
             1e3 * one / people, 0.5 * (one + again) / two);
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
  std::vector<int> sizes;
  for (int i = 1; i < argc; ++i) sizes.push_back(std::stoi(argv[i]));
  if (sizes.empty()) sizes = {1000, 10000};
  load_on_disk(sizes);
  two_jobs(1000);
  shares(200);
  return 0;
}
