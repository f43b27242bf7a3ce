// A set of files is written whole or not at all, whichever call to the system goes wrong.
#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"
#include "support/each.hpp"
#include "support/faulty_calls.hpp"
#include "support/folder_contents.hpp"

#include <catch2/catch.hpp>

#include <cstring>
#include <optional>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

const Contents kNew = {{"a.json", "new a"}, {"b.pdf", "new b, longer"}, {"c.svg", "new c"}};
/// What stood there before: none of the files, all of them, the one in the middle. A stranger is
/// never touched.
const std::vector<Contents> kBefore = {
    {{"stranger", "s"}},
    {{"stranger", "s"}, {"a.json", "old a"}, {"b.pdf", "old b"}, {"c.svg", ""}},
    {{"stranger", "s"}, {"b.pdf", "old b"}}};

Contents after(const Contents& before) {
  Contents both = kNew;
  both.insert(before.begin(), before.end());
  return both;
}

/// What a FileError told, if there was one.
template <class Work>
std::optional<Problem> problem_of(const Work& work) {
  try {
    work();
  } catch (const FileError& error) {
    return error.problem();
  }
  return std::nullopt;
}

/// A folder that holds what stood there before, and a set to be written into it.
class Scene {
 public:
  explicit Scene(const Contents& before) {
    for (const auto& [name, bytes] : before) (void)folder_.write(name, bytes);
  }
  [[nodiscard]] std::string path() const { return folder_.path(""); }
  [[nodiscard]] Contents contents() const { return contents_of(path()); }

  /// The error, if there was one.
  [[nodiscard]] std::optional<Problem> write(DiskFiles& files) const {
    std::vector<NewFile> set;
    for (const auto& [name, bytes] : kNew) set.push_back({folder_.path(name), bytes});
    return problem_of([&] { files.write_all(set); });
  }
  void write_by_hand(const std::string& name, const std::string& bytes) const {
    std::filesystem::remove(folder_.path(name));  // as editors do
    (void)folder_.write(name, bytes);
  }
  /// What the next run does that holds the folder.
  void hold(DiskFiles& files) const {
    (void)problem_of([&] { (void)files.lock(path()); });
  }

 private:
  TempFolder folder_{memory_folder()};
};

void require_told(const Problem& problem, const Scene& scene, int error) {
  CHECK(problem.code == "file.write");
  CHECK((problem.where + "/").find(scene.path()) == 0);
  CHECK(problem.message.plain().find(std::strerror(error)) != std::string::npos);
  CHECK_FALSE(problem.hint.empty());
}

/// One run with a fault. False if it was over before the fault came.
bool survives(const Contents& before, FaultyCalls& calls) {
  const Scene scene(before);
  DiskFiles files(calls);
  const std::optional<Problem> problem = scene.write(files);
  INFO("call " << calls.at << " " << calls.struck() << ": " << std::strerror(calls.error));
  if (problem) require_told(*problem, scene, calls.error);
  CHECK(without_hidden(scene.contents()) == (problem ? before : after(before)));
  // What could not be removed is removed by the next run.
  if (calls.struck() != "unlink") CHECK(scene.contents() == without_hidden(scene.contents()));
  FaultyCalls sound;
  DiskFiles next(sound);
  scene.hold(next);
  CHECK(scene.contents() == (problem ? before : after(before)));
  return !calls.struck().empty();
}

/// The set written by a process that is killed at its `at`-th call; says which that was, nothing if
/// it was done before.
std::string written_until_killed(const Scene& scene, int at) {
  FaultyCalls calls;
  calls.at = at;
  calls.fault = Fault::Kills;
  DiskFiles files(calls);
  (void)scene.write(files);
  return calls.struck();
}

/// Lets the first call go wrong, then the second, and so on until none is left; says how many.
template <class Prepare>
int survived_faults(const Contents& before, const Prepare& prepare) {
  for (int at = 1;; ++at) {
    FaultyCalls calls;
    calls.at = at;
    prepare(calls);
    if (!survives(before, calls)) return at - 1;
  }
}

}  // namespace

TEST_CASE("Every call fails in turn: older files are as they were, no partial file is left") {
  const Fault fault = GENERATE(Fault::Fails, Fault::LosesReply);
  const int error = GENERATE(ENOSPC, EIO, EACCES);
  const bool has_links = GENERATE(true, false);
  for (const Contents& before : each(kBefore)) {
    const int faults = survived_faults(before, [&](FaultyCalls& calls) {
      calls.fault = fault;
      calls.error = error;
      calls.has_links = has_links;
    });
    CHECK(faults > 30);
  }
}

TEST_CASE("A call that a signal interrupts is made again") {
  for (const Contents& before : kBefore) {
    for (int at = 1;; ++at) {
      FaultyCalls calls;
      calls.at = at;
      calls.error = EINTR;
      const Scene scene(before);
      DiskFiles files(calls);
      INFO("call " << at << " " << calls.struck());
      CHECK_FALSE(scene.write(files));
      CHECK(scene.contents() == after(before));
      if (calls.struck().empty()) break;
    }
  }
}

TEST_CASE("A write or read that takes only half is gone on with") {
  for (const bool has_links : each({true, false})) {
    const int faults = survived_faults(kBefore[1], [&](FaultyCalls& calls) {
      calls.fault = Fault::Shortens;
      calls.has_links = has_links;
    });
    CHECK(faults > 30);
  }
}

TEST_CASE("Killed at any call, and killed again while the next run puts in order: old or new") {
  const bool has_links = GENERATE(true, false);
  int old_ones = 0, new_ones = 0;
  for (const Contents& before : kBefore) {
    bool over = false;
    for (int first = 1; !over; ++first) {
      bool second_over = false;
      for (int second = 1; !second_over; ++second) {
        const Scene scene(before);
        FaultyCalls killed, killed_again, sound;
        for (FaultyCalls* calls : {&killed, &killed_again}) calls->fault = Fault::Kills;
        killed.at = first;
        killed.has_links = has_links;
        killed_again.at = second;
        DiskFiles files(killed), next(killed_again), last(sound);
        (void)scene.write(files);
        scene.hold(next);
        scene.hold(last);
        INFO("killed at " << first << " " << killed.struck() << ", then at " << second << " "
                          << killed_again.struck());
        const Contents left = scene.contents();
        CHECK((left == before || left == after(before)));
        ++(left == before ? old_ones : new_ones);
        over = killed.struck().empty();
        second_over = killed_again.struck().empty();
      }
    }
  }
  CHECK(old_ones > 100);
  CHECK(new_ones > 100);
}

TEST_CASE("A run that holds nothing clears up before it writes, too") {
  for (int at = 1;; ++at) {
    const Scene scene(kBefore[1]);
    const std::string struck = written_until_killed(scene, at);
    FaultyCalls sound;
    DiskFiles next(sound);
    INFO("killed at " << at << " " << struck);
    CHECK_FALSE(scene.write(next));
    CHECK(scene.contents() == after(kBefore[1]));
    if (struck.empty()) break;
  }
}

TEST_CASE("What a person wrote by hand after a run was killed is kept") {
  // Killed before the last of three renames, the third file is still the person's own.
  for (int at = 1;; ++at) {
    CAPTURE(at);
    const Scene scene(kBefore[1]);
    REQUIRE_FALSE(written_until_killed(scene, at).empty());
    FaultyCalls sound;
    DiskFiles next(sound);
    const Contents left = scene.contents();
    if (left.at("b.pdf") != kNew.at("b.pdf")) continue;
    REQUIRE(left.at("c.svg") == kBefore[1].at("c.svg"));
    scene.write_by_hand("c.svg", "by hand");
    scene.hold(next);
    Contents expected = kBefore[1];
    expected["c.svg"] = "by hand";
    CHECK(scene.contents() == expected);
    break;
  }
}

TEST_CASE("Reading: a call that fails is told with the file and the reason") {
  const TempFolder folder;
  const std::string path = folder.write("a.json", "text");
  for (int at = 1;; ++at) {
    CAPTURE(at);
    FaultyCalls calls;
    calls.at = at;
    calls.error = EACCES;
    DiskFiles files(calls);
    std::string text;
    const std::optional<Problem> problem = problem_of([&] { text = files.read(path); });
    if (calls.struck() == "close") CHECK_FALSE(problem);
    if (!problem) {
      CHECK(text == "text");
      if (calls.struck().empty()) break;
      continue;
    }
    CHECK(problem->code == "file.read");
    CHECK(problem->where == path);
    CHECK(problem->message.plain().find("Permission denied") != std::string::npos);
    CHECK(problem->hint == "ask for the right to read it");
  }
}
