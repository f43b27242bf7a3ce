// A batch may be killed at any moment, and two may want the same folder: nothing is lost, nothing
// is left, and the next run ends as if nothing had happened.
#include "support/each.hpp"
#include "support/folder_contents.hpp"
#include "support/people.hpp"
#include "support/process.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <memory>
#include <set>
#include <sys/file.h>
#include <thread>
#include <unistd.h>

using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

using Microseconds = std::chrono::microseconds;

/// Client files of so many people, and folders for output.
class Workshop {
 public:
  explicit Workshop(int people) : folder_(memory_folder()) {
    fs::create_directory(folder_.path("people"));
    for (int i = 0; i < people; ++i) {
      const std::string number = std::to_string(i);
      (void)folder_.write("people/player-" + number + ".json",
                          R"({"format": "blockwright-client-1", "name": "Player )" + number +
                              R"(", "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": )" +
                              R"({"bust_girth": )" + std::to_string(86 + i % 20) + "}}]}");
    }
  }

  [[nodiscard]] std::string path(const std::string& name) const { return folder_.path(name); }
  [[nodiscard]] std::string printed(const std::string& out) const {
    return read_bytes(path(out + ".txt"));
  }

  /// A batch into the folder `out`.
  [[nodiscard]] std::vector<std::string> command(const std::string& out,
                                                 const std::string& allowance) const {
    return {kProgram, "batch", path("people"), "--out",  path(out), "--write", "svg,json",
            "--jobs", "2",     "--allowance",  allowance};
  }
  /// The same, beside the test; what it prints goes to `told`.
  [[nodiscard]] Process batch(const std::string& out, const std::string& allowance,
                              const std::string& told) const {
    return {command(out, allowance), told};
  }
  [[nodiscard]] Process batch(const std::string& out, const std::string& allowance) const {
    return batch(out, allowance, path(out + ".txt"));
  }
  /// A batch to its end.
  void run(const std::string& out, const std::string& allowance) const {
    Process whole = batch(out, allowance);
    const int exit_code = whole.wait();
    INFO(printed(out));
    REQUIRE(exit_code == 0);
  }

 private:
  TempFolder folder_;
};

std::set<std::string> names_of(const Contents& contents) {
  std::set<std::string> names;
  for (const auto& [name, bytes] : contents) names.insert(name);
  return names;
}

/// Outputs byte for byte; of hidden files, which tell what was made of what, that there are as
/// many.
void require_same(const Contents& found, const Contents& expected) {
  CHECK(names_of(found) == names_of(expected));
  CHECK(without_hidden(found) == without_hidden(expected));
}

/// How long a whole batch takes here and now: the shortest of three.
Microseconds duration_of(const Workshop& workshop, const std::string& out) {
  Microseconds shortest = Microseconds::max();
  for (int i = 0; i < 3; ++i) {
    fs::remove_all(workshop.path(out));
    const auto start = std::chrono::steady_clock::now();
    workshop.run(out, "20");
    const auto end = std::chrono::steady_clock::now();
    shortest = std::min(shortest, std::chrono::duration_cast<Microseconds>(end - start));
  }
  return shortest;
}

/// True while a process holds the lock: its file is there a moment before it is locked.
bool is_held(const std::string& lock) {
  const int file = ::open(lock.c_str(), O_RDWR | O_CLOEXEC);
  if (file < 0) return false;
  const bool held = ::flock(file, LOCK_EX | LOCK_NB) != 0;
  (void)::close(file);
  return held;
}

/// A batch that was stopped while it held its folder; nothing if it had ended before, or had not
/// yet taken hold.
std::unique_ptr<Process> stopped_batch(const Workshop& workshop, const std::string& out) {
  auto batch = std::make_unique<Process>(workshop.command(out, "20"), workshop.path(out + ".txt"));
  const std::string lock = workshop.path(out + "/.blockwright-lock");
  while (!fs::exists(lock)) {
    if (batch->has_ended()) return nullptr;
  }
  return batch->stop() && is_held(lock) ? std::move(batch) : nullptr;
}

}  // namespace

TEST_CASE("A batch killed at any moment and run again ends in the same files, byte for byte") {
  const Workshop workshop(2);
  workshop.run("older", "15");
  const Contents older = contents_of(workshop.path("older"));
  const Microseconds whole = duration_of(workshop, "new");
  const Contents expected = contents_of(workshop.path("new"));
  REQUIRE(without_hidden(expected).size() == 4);
  REQUIRE(without_hidden(expected) != without_hidden(older));
  int killed_ones = 0;
  const int times = blockwright::people(100);
  for (blockwright::RandomCase& random : blockwright::each_random(times, 9)) {
    const std::string out = "out-" + std::to_string(random.number);
    const bool has_older = random.number % 2 == 0;
    if (has_older) fs::copy(workshop.path("older"), workshop.path(out));
    {
      Process batch = workshop.batch(out, "20");
      std::this_thread::sleep_for(random.between(0.0, 1.0) * whole);
      batch.send(SIGKILL);
      if (batch.wait() == -1) ++killed_ones;
    }
    for (const auto& [name, bytes] : without_hidden(contents_of(workshop.path(out)))) {
      INFO(name);
      const bool is_older = has_older && bytes == older.at(name);
      CHECK((is_older || bytes == expected.at(name)));
    }
    workshop.run(out, "20");
    require_same(contents_of(workshop.path(out)), expected);
  }
  CHECK(killed_ones > times / 5);
}

TEST_CASE("A second batch into a folder is refused while the first is at work, which ends well") {
  const Workshop workshop(12);
  workshop.run("alone", "20");
  std::string out = "out";
  std::unique_ptr<Process> first;
  for (int tries = 0; first == nullptr && tries < 20; ++tries) {
    out = "out-" + std::to_string(tries);
    first = stopped_batch(workshop, out);
  }
  REQUIRE(first != nullptr);
  const std::string second = workshop.path("second.txt");
  CHECK(workshop.batch(out, "20", second).wait() == 2);
  CHECK(read_bytes(second).find("[file.busy] " + workshop.path(out)) != std::string::npos);
  CHECK(read_bytes(second).find("run again") != std::string::npos);
  first->send(SIGCONT);
  CHECK(first->wait() == 0);
  require_same(contents_of(workshop.path(out)), contents_of(workshop.path("alone")));
}

TEST_CASE("Two batches started at once: each ends well or is refused, and the files are right") {
  const Workshop workshop(2);
  workshop.run("alone", "20");
  for (int i = 0; i < 10; ++i) {
    const std::string out = "out-" + std::to_string(i);
    Process one = workshop.batch(out, "20");
    Process other = workshop.batch(out, "20", workshop.path("other.txt"));
    const int first = one.wait(), second = other.wait();
    INFO(first << " and " << second);
    CHECK((first == 0 || second == 0));
    CHECK((first == 0 || first == 2));
    CHECK((second == 0 || second == 2));
    require_same(contents_of(workshop.path(out)), contents_of(workshop.path("alone")));
  }
}
