// Clients of a batch at the same time: one is drafted while the sets of others wait for the disk.
#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <stdexcept>
#include <thread>

using namespace blockwright;

namespace {

/// A disk that takes its time with the set of one client.
class SlowForOne : public MemoryFiles {
 public:
  using MemoryFiles::MemoryFiles;
  std::string slow;                   ///< what her files' names begin with
  bool others_were_written = false;   ///< while hers waited
  std::string refused = "of nobody";  ///< what the names of files begin with that are not written

  void write_all(const std::vector<NewFile>& set) override {
    const std::string& path = set.front().path;
    std::unique_lock lock(waiting_);
    if (path.starts_with(slow)) {
      others_were_written =
          another_.wait_for(lock, std::chrono::seconds(20), [&] { return written_ == 2; });
    }
    if (path.starts_with(refused)) {
      throw FileError({Severity::Error, "file.write", path, "the disk is full", ""});
    }
    MemoryFiles::write_all(set);
    ++written_;
    another_.notify_all();
  }

 private:
  std::mutex waiting_;
  std::condition_variable another_;
  int written_ = 0;
};

SlowForOne three_people() {
  std::map<std::string, std::string> files;
  for (const std::string name : {"a", "b", "c"}) {
    files["people/" + name + ".json"] =
        R"({"format": "blockwright-client-1", "name": ")" + name +
        R"(", "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}]})";
  }
  return SlowForOne(files);
}

struct Said {
  JobResult result;
  std::string text;
};

Said said_by_batch(int jobs, FileStore& files) {
  BatchJob batch;
  batch.folder = "people";
  batch.jobs = jobs;
  batch.each.out = "out";
  batch.each.write = {OutputKind::Svg};
  Said said;
  BatchWatch watch;
  watch.say = [&](std::string_view text) { said.text += text; };
  said.result = run_batch(batch, files, watch);
  return said;
}

BatchLine line_of(const std::string& client, int exit_code = 0) {
  BatchLine line{client, {}};
  line.result.exit_code = exit_code;
  return line;
}

/// Steps over a number of tasks that do nothing.
BatchSteps idle_steps(int& left) {
  return {[&left]() -> std::optional<BatchTask> {
            if (left == 0) return std::nullopt;
            return BatchTask{std::to_string(left--), ""};
          },
          [](const BatchTask& task) { return BatchDraft{line_of(task.client)}; },
          [](BatchDraft draft) { return draft.line; }, [](const BatchLine&) {}};
}

/// Notes how many are in it at the same time.
class Room {
 public:
  void come_in() {
    const int now = ++in_;
    int most = most_;
    while (most < now && !most_.compare_exchange_weak(most, now)) {
    }
  }
  void leave() { --in_; }
  [[nodiscard]] int most() const { return most_; }

 private:
  std::atomic<int> in_ = 0, most_ = 0;
};

}  // namespace

TEST_CASE("While one client's set waits for the disk, others are drafted and written") {
  const int jobs = GENERATE(1, 2);
  SlowForOne quick = three_people(), files = three_people();
  quick.slow = "nobody";
  files.slow = "out/a-";
  const Said said = said_by_batch(jobs, files);
  CHECK(files.others_were_written);
  CHECK(said.text == said_by_batch(1, quick).text);
  CHECK(files.files == quick.files);
}

TEST_CASE("A set that cannot be written fails its own client, and leaves no stamp of her") {
  const int jobs = GENERATE(1, 2, 3);
  SlowForOne files = three_people();
  files.slow = "out/b-";
  files.refused = "out/b-";
  const Said said = said_by_batch(jobs, files);
  CHECK(said.result.exit_code == 1);
  INFO(said.text);
  const std::size_t failed = said.text.find("failed    people/b.json");
  REQUIRE(failed != std::string::npos);
  CHECK(said.text.find("the disk is full") > failed);
  CHECK(said.text.find("done      people/a.json") < failed);
  CHECK(said.text.find("done      people/c.json") > failed);
  CHECK(said.text.ends_with("3 clients: 2 done, 0 warned, 0 unchanged, 1 failed\n"));
  const auto is_of_b = [](const auto& file) { return file.first.find("out/b-") == 0; };
  CHECK(std::ranges::none_of(files.files, is_of_b));
  CHECK_FALSE(files.files.contains("out/.b-toile.blockwright-done"));
  CHECK(files.files.contains("out/.c-toile.blockwright-done"));
}

TEST_CASE("As many are drafted at a time as there are jobs, and few more are in hand") {
  int left = 60;
  const BatchPace pace{3, 7};
  Room drafting, in_hand;
  BatchSteps steps = idle_steps(left);
  steps.next = [&, next = steps.next] {
    const auto task = next();
    if (task) in_hand.come_in();
    return task;
  };
  steps.draft = [&](const BatchTask& task) {
    drafting.come_in();
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
    drafting.leave();
    return BatchDraft{line_of(task.client)};
  };
  const int most = static_cast<int>(pace.begun);
  steps.write = [&, first = std::to_string(left)](BatchDraft draft) {
    const auto late = std::chrono::steady_clock::now() + std::chrono::seconds(20);
    while (draft.line.client == first && in_hand.most() < most &&
           std::chrono::steady_clock::now() < late) {
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return draft.line;
  };
  int expected = left;
  steps.hand_on = [&](const BatchLine& line) {
    in_hand.leave();
    CHECK(line.client == std::to_string(expected--));
  };
  CHECK(work_in_order(pace, steps).exit_code == 0);
  CHECK(expected == 0);
  CHECK(drafting.most() <= pace.jobs);
  CHECK(in_hand.most() == most);
}

TEST_CASE("What a step throws comes out once nobody is at work any more") {
  const std::string from = GENERATE("draft", "write");
  int left = 20;
  Room at_work;
  BatchSteps steps = idle_steps(left);
  steps.draft = [&](const BatchTask& task) {
    if (from == "draft" && task.client == "10") throw std::runtime_error("draft");
    return BatchDraft{line_of(task.client)};
  };
  std::atomic<int> writing = 0;
  steps.write = [&](BatchDraft draft) {
    ++writing;
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
    --writing;
    if (from == "write" && draft.line.client == "10") throw std::runtime_error("write");
    return draft.line;
  };
  CHECK_THROWS_WITH(work_in_order({2, 8}, steps), from);
  CHECK(writing == 0);
}

TEST_CASE("Up to 96 clients are in hand, so that a process may open what they write",
          "[kMostBegun]") {
  CHECK(pace_of(1).begun == 32);
  CHECK(pace_of(2).begun == 64);
  CHECK(pace_of(3).begun == 96);
  CHECK(pace_of(4).begun == 96);
  CHECK(pace_of(64).begun == 96);
  CHECK(pace_of(64).jobs == 64);
}
