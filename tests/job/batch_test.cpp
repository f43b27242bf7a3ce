// A folder of clients at once.
#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/files/stamp.hpp"
#include "blockwright/job/options.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"
#include "support/read_job.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <map>
#include <set>
#include <sstream>
#include <streambuf>
#include <unistd.h>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

std::string client(const std::string& name, const std::string& bust) {
  return R"({"format": "blockwright-client-1", "name": ")" + name +
         R"(", "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": )" + bust +
         "}}]}";
}

MemoryFiles folder_of_people() {
  return MemoryFiles(
      std::map<std::string, std::string>{{"people/b.json", client("B", "92")},
                                         {"people/a.json", client("A", "88")},
                                         {"people/c.json", client("C", "9")},
                                         {"people/notes.txt", "not a client"},
                                         {"people/deep/d.json", client("D", "100")}});
}

BatchJob batch_of(const std::string& folder) {
  BatchJob batch;
  batch.folder = folder;
  batch.each.out = "out";
  batch.each.write = {OutputKind::Svg};
  batch.each.report = ReportKind::Json;
  return batch;
}

struct Told {
  JobResult result;
  std::string text;
  std::size_t told = 0;  ///< times that progress was told
};

Told told_by(const BatchJob& batch, FileStore& files) {
  Told told;
  BatchWatch watch;
  watch.say = [&](std::string_view text) { told.text += text; };
  watch.progress = [&](std::size_t done, std::size_t total, std::size_t) {
    CHECK(done == ++told.told);
    CHECK(done <= total);
  };
  told.result = run_batch(batch, files, watch);
  return told;
}

/// "done", "failed" ... of each client.
std::vector<std::string> states(const std::string& summary) {
  std::vector<std::string> found;
  const Json told = Json::parse(summary);
  for (const Json& line : told["clients"]) found.push_back(line["state"]);
  return found;
}

Told stream_of(const std::string& lines, bool writes, FileStore& files, int jobs = 1) {
  Told told;
  BatchJob stream;
  stream.each.out = writes ? "out" : "";
  stream.each.write = {OutputKind::Svg};
  stream.jobs = jobs;
  BatchWatch watch;
  watch.say = [&](std::string_view text) { told.text += text; };
  std::istringstream in(lines);
  told.result = run_stream(stream, in, files, watch);
  return told;
}

/// Sends three clients, each when it is asked for, which must not be before the others are
/// answered.
class Conversation : public std::streambuf {
 public:
  explicit Conversation(const std::size_t& answers) : answers_(answers) {}

 protected:
  int_type underflow() override {
    CHECK(answers_ == asked_);
    if (asked_ == 3) return traits_type::eof();
    ++asked_;
    line_ = client("P" + std::to_string(asked_), "90") + "\n";
    setg(line_.data(), line_.data(), line_.data() + line_.size());
    return traits_type::to_int_type(line_.front());
  }

 private:
  const std::size_t& answers_;
  std::size_t asked_ = 0;
  std::string line_;
};

/// Never ends, and counts what is taken of it.
class EndlessLine : public std::streambuf {
 public:
  static constexpr std::size_t kChunk = 4096;
  explicit EndlessLine(char letter) : chunk_(kChunk, letter) {}
  [[nodiscard]] std::size_t read() const { return read_; }

 protected:
  int_type underflow() override {
    REQUIRE(read_ < std::size_t{64} << 20);
    read_ += kChunk;
    setg(chunk_.data(), chunk_.data(), chunk_.data() + chunk_.size());
    return traits_type::to_int_type(chunk_.front());
  }

 private:
  std::string chunk_;
  std::size_t read_ = 0;
};

std::vector<Json> objects_of(const std::string& lines) {
  std::vector<Json> objects;
  std::istringstream in(lines);
  for (std::string line; std::getline(in, line);) objects.push_back(Json::parse(line));
  return objects;
}

}  // namespace

TEST_CASE("what a problem says of measurements, options and limit outlives the stamp") {
  BatchLine line;
  Problem wide{Severity::Warning, "measure.spread", "shoulder_slope", "too far apart", "again"};
  wide.measurements = {"shoulder_slope"};
  wide.options = {"side"};
  wide.limit = {.least = Measure::degrees(5), .most = Measure::degrees(45)};
  Problem long_side{Severity::Note, "fit.limit", "side", "", ""};
  long_side.limit.most = Length::mm(20.5);
  line.result.problems = {wide, long_side};
  const auto read = read_line(line_json(line).dump());
  REQUIRE(read.has_value());
  CHECK(read->result.problems == line.result.problems);
}

TEST_CASE("A batch takes every client in the order of the names; one failure stops nobody") {
  MemoryFiles files = folder_of_people();
  const Told told = told_by(batch_of("people"), files);
  CHECK(told.result.exit_code == 1);
  CHECK(told.told == 3);
  const Json lines = Json::parse(told.text)["clients"];
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["file"] == "people/a.json");
  CHECK(lines[0]["state"] != "failed");
  CHECK(lines[0]["residual_mm"].get<double>() < 0.1);
  CHECK(lines[1]["client"] == "B");
  CHECK(lines[2]["state"] == "failed");
  CHECK(lines[2]["problems"][0]["code"] == "client.range");
  CHECK(files.files.count("out/a-toile.svg") == 1);
  CHECK(files.files.count("out/b-toile.svg") == 1);
  CHECK(files.files.count("out/c-toile.svg") == 0);
}

TEST_CASE("Of a batch nobody fails who has not come as far as the toile that is named") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  const std::size_t before = told_by(batch, files).result.files.size();
  batch.each.toile = 9;
  batch.again = true;
  CHECK(told_by(batch, files).result.files.size() == before);
  CHECK(files.files.contains("out/a-toile.svg"));
}

TEST_CASE("Subfolders are taken on request") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.subfolders = true;
  CHECK(states(told_by(batch, files).text).size() == 4);
}

TEST_CASE("Two clients whose output would share a name: the later one is refused") {
  MemoryFiles files(std::map<std::string, std::string>{{"p/a b.json", client("A", "92")},
                                                       {"p/a-b.json", client("B", "92")}});
  const Told told = told_by(batch_of("p"), files);
  CHECK(told.result.exit_code == 1);
  const Json lines = Json::parse(told.text)["clients"];
  CHECK(lines[0]["state"] != "failed");
  CHECK(lines[1]["problems"][0]["code"] == "batch.collision");
}

TEST_CASE(
    "Names that differ in capitals alone share their output on some disks: the later is refused") {
  MemoryFiles files(std::map<std::string, std::string>{{"p/Zelda.json", client("A", "92")},
                                                       {"p/zElda.json", client("B", "92")},
                                                       {"p/zeldb.json", client("C", "92")}});
  const Json lines = Json::parse(told_by(batch_of("p"), files).text)["clients"];
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["state"] == "done");
  CHECK(lines[1]["state"] == "failed");
  CHECK(lines[1]["problems"][0]["code"] == "batch.collision");
  CHECK(lines[2]["state"] == "done");
}

TEST_CASE("A folder without clients, or none, and a wrong number of jobs are told") {
  MemoryFiles files = folder_of_people();
  CHECK(told_by(batch_of("nowhere"), files).result.exit_code == 2);
  BatchJob batch = batch_of("people");
  batch.jobs = 0;
  CHECK(told_by(batch, files).result.exit_code == 2);
  DiskFiles disk;
  CHECK(told_by(batch_of("/no/such/folder"), disk).result.exit_code == 2);
}

TEST_CASE("What is wrong for everybody is told once, and nobody is worked on") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.each.paper = "papyrus";
  CHECK(told_by(batch, files).result.exit_code == 2);
  batch = batch_of("people");
  batch.styles = {"none.json"};
  CHECK(told_by(batch, files).result.exit_code == 2);
  CHECK(files.files.size() == 5);
}

TEST_CASE("Any number of jobs gives the same summary and the same bytes") {
  const blockwright_tests::TempFolder folder;
  DiskFiles disk;
  for (const int jobs : each({1, 4})) {
    BatchJob batch = batch_of(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe");
    batch.jobs = jobs;
    batch.each.write = {OutputKind::Svg, OutputKind::Pdf, OutputKind::Json};
    batch.each.out = folder.path(std::to_string(jobs));
    const JobResult result = told_by(batch, disk).result;
    CHECK(result.exit_code == 0);
    CHECK(result.files.size() == 24);
  }
  for (const auto& entry : std::filesystem::directory_iterator(folder.path("1"))) {
    const std::string name = entry.path().filename().string();
    if (name.front() == '.') continue;  // records name the folder
    INFO(name);
    CHECK(blockwright_tests::read_bytes(folder.path("1") + "/" + name) ==
          blockwright_tests::read_bytes(folder.path("4") + "/" + name));
  }
}

TEST_CASE("Who has not changed is left as she is; what is gone or changed is made again") {
  MemoryFiles files = folder_of_people();
  CHECK(states(told_by(batch_of("people"), files).text) ==
        std::vector<std::string>{"done", "done", "failed"});
  const auto first = files.files;
  CHECK(states(told_by(batch_of("people"), files).text) ==
        std::vector<std::string>{"unchanged", "unchanged", "failed"});
  CHECK(files.files == first);

  SECTION("an output was deleted") {
    files.files.erase("out/a-toile.svg");
    CHECK(states(told_by(batch_of("people"), files).text)[0] == "done");
    CHECK(files.files == first);
  }
  SECTION("an output was changed") {
    files.files["out/a-toile.svg"] += " ";
    CHECK(states(told_by(batch_of("people"), files).text)[0] == "done");
    CHECK(files.files == first);
  }
  SECTION("she was measured again") {
    files.files["people/a.json"] = client("A", "90");
    const auto now = states(told_by(batch_of("people"), files).text);
    CHECK(now[0] == "done");
    CHECK(now[1] == "unchanged");
    CHECK(files.files["out/a-toile.svg"] != first.at("out/a-toile.svg"));
  }
  SECTION("another option changes everybody") {
    BatchJob batch = batch_of("people");
    batch.each.allowance = Length::mm(15.0);
    CHECK(states(told_by(batch, files).text)[0] == "done");
    CHECK(states(told_by(batch, files).text)[0] == "unchanged");
  }
  SECTION("it is asked for") {
    BatchJob batch = batch_of("people");
    batch.again = true;
    CHECK(states(told_by(batch, files).text)[0] == "done");
    CHECK(files.files == first);
  }
  SECTION("the record is no record") {
    files.files["out/.a-toile.blockwright-done"] = "{}";
    CHECK(states(told_by(batch_of("people"), files).text)[0] == "done");
    CHECK(files.files == first);
  }
  SECTION("she cannot be drafted any more: her old output stays") {
    files.files["people/a.json"] = client("A", "9");
    CHECK(states(told_by(batch_of("people"), files).text)[0] == "failed");
    CHECK(files.files["out/a-toile.svg"] == first.at("out/a-toile.svg"));
  }
}

TEST_CASE("What other sources drew is made again, though the version is the same") {
  MemoryFiles files = folder_of_people();
  told_by(batch_of("people"), files);
  const auto first = files.files;
  std::string& stamp = files.files["out/.a-toile.blockwright-done"];
  Job job = batch_of("people").each;
  job.client = "people/a.json";
  const auto key_of = [&](std::string_view sources) {
    return output_key(job, {sources, "", files.files["people/a.json"]});
  };
  REQUIRE(read_stamp(stamp)->key == key_of(sources_hash()));
  CHECK(sources_hash().size() == 64);
  Stamp older = *read_stamp(stamp);
  older.key = key_of("of another rule");
  stamp = stamp_text(older);
  CHECK(states(told_by(batch_of("people"), files).text)[0] == "done");
  CHECK(files.files == first);
}

TEST_CASE("The output of people whose file is gone is told and stays") {
  MemoryFiles files = folder_of_people();
  told_by(batch_of("people"), files);
  files.files.erase("people/a.json");
  const Json gone = Json::parse(told_by(batch_of("people"), files).text)["gone"];
  REQUIRE(gone.size() == 1);
  CHECK(gone[0]["file"] == "people/a.json");
  CHECK(gone[0]["outputs"] == Json{"a-toile.svg"});
  CHECK(files.files.count("out/a-toile.svg") == 1);
}

TEST_CASE("What a batch does not read is named and counted, with its reason") {
  const blockwright_tests::TempFolder folder;
  DiskFiles disk;
  disk.write(folder.path("people/a.json"), client("A", "92"));
  std::filesystem::create_directory(folder.path("people/x.json"));
  std::filesystem::create_symlink("nowhere", folder.path("people/y.json"));
  BatchJob batch = batch_of(folder.path("people"));
  batch.each.out = folder.path("out");
  const Told told = told_by(batch, disk);
  CHECK(told.result.exit_code == 0);
  const Json summary = Json::parse(told.text);
  CHECK(summary["clients"].size() == 1);
  CHECK(summary["not_read"] ==
        Json::array(
            {{{"file", folder.path("people/x.json")}, {"reason", "a folder"}},
             {{"file", folder.path("people/y.json")}, {"reason", "a link that leads nowhere"}}}));
  CHECK(summary["counts"]["not_read"] == 2);
  batch.each.report = ReportKind::Text;
  batch.quiet = true;
  const std::string text = told_by(batch, disk).text;
  CHECK(text == "not read  " + folder.path("people/x.json") + ": a folder\nnot read  " +
                    folder.path("people/y.json") +
                    ": a link that leads nowhere\n"
                    "1 client: 0 done, 0 warned, 1 unchanged, 0 failed; 2 not read\n");

  SECTION("each in one part of the folder") {
    std::size_t named = 0;
    for (const char* part : {"1/2", "2/2"}) {
      batch.shard = part;
      batch.each.report = ReportKind::Json;
      named += Json::parse(told_by(batch, disk).text)["not_read"].size();
    }
    CHECK(named == 2);
  }
  SECTION("what was a client's file is named there, and is not also gone") {
    std::filesystem::remove(folder.path("people/x.json"));
    std::filesystem::rename(folder.path("people/a.json"), folder.path("people/x.json"));
    std::filesystem::create_directory(folder.path("people/a.json"));
    batch.each.report = ReportKind::Json;
    const Json after = Json::parse(told_by(batch, disk).text);
    CHECK(after["not_read"].size() == 2);
    CHECK(after["gone"].empty());
  }
  SECTION("where nothing else is there, that is the reason") {
    std::filesystem::remove(folder.path("people/a.json"));
    const JobResult result = told_by(batch, disk).result;
    REQUIRE(result.problems.size() == 1);
    CHECK(result.problems[0].code == "batch.empty");
    CHECK(result.problems[0].message.plain() ==
          "there is no client file (*.json) in the folder; not read: " +
              folder.path("people/x.json") + ", a folder, and 1 more");
  }
}

TEST_CASE("A client file that may not be opened fails under its name") {
  if (::geteuid() == 0) return;  // root may open everything
  const blockwright_tests::TempFolder folder;
  DiskFiles disk;
  disk.write(folder.path("people/a.json"), client("A", "92"));
  std::filesystem::permissions(folder.path("people/a.json"), std::filesystem::perms::none);
  BatchJob batch = batch_of(folder.path("people"));
  batch.each.out = folder.path("out");
  const Told told = told_by(batch, disk);
  CHECK(told.result.exit_code == 1);
  const Json summary = Json::parse(told.text);
  CHECK(summary["clients"][0]["file"] == folder.path("people/a.json"));
  CHECK(summary["clients"][0]["problems"][0]["code"] == "file.read");
  CHECK(summary["counts"]["failed"] == 1);
}

TEST_CASE("A client whose file's name is not UTF-8 is done, and not also gone") {
  const blockwright_tests::TempFolder folder;
  DiskFiles disk;
  disk.write(folder.path("people/od\xFF") + "ile.json", client("Odile", "92"));
  BatchJob batch = batch_of(folder.path("people"));
  batch.each.out = folder.path("out");
  for (const char* state : {"done", "unchanged"}) {
    const Json summary = Json::parse(told_by(batch, disk).text);
    CHECK(summary["clients"][0]["state"] == state);
    CHECK(summary["gone"].empty());
  }
  std::filesystem::remove(folder.path("people/od\xFF") + "ile.json");
  disk.write(folder.path("people/a.json"), client("A", "92"));
  CHECK(Json::parse(told_by(batch, disk).text)["gone"].size() == 1);
}

TEST_CASE("The parts of a folder hold everybody once, and who comes later moves nobody") {
  MemoryFiles files = folder_of_people();
  std::multiset<std::string> seen;
  const auto in_part = [&](const std::string& part) {
    MemoryFiles fresh(files.files);
    BatchJob batch = batch_of("people");
    batch.shard = part;
    std::set<std::string> clients;
    const Json summary = Json::parse(told_by(batch, fresh).text);
    for (const Json& line : summary["clients"]) {
      clients.insert(line["file"].get<std::string>());
    }
    return clients;
  };
  std::map<std::string, std::set<std::string>> parts;
  for (const char* part : {"1/3", "2/3", "3/3"}) {
    parts[part] = in_part(part);
    seen.insert(parts[part].begin(), parts[part].end());
  }
  CHECK(seen == std::multiset<std::string>{"people/a.json", "people/b.json", "people/c.json"});
  files.files["people/aa.json"] = client("AA", "95");
  for (const auto& [part, clients] : each(parts)) {
    std::set<std::string> now = in_part(part);
    now.erase("people/aa.json");
    CHECK(now == clients);
  }
  for (const char* wrong : {"0/3", "4/3", "1", "1/0", "a/3", "1/3/", "-1/3", "1/2000000"}) {
    BatchJob batch = batch_of("people");
    batch.shard = wrong;
    INFO(wrong);
    CHECK(told_by(batch, files).result.exit_code == 2);
  }
}

TEST_CASE("Clients that a job file lists are taken before those of the folder") {
  MemoryFiles files = folder_of_people();
  const BatchJob batch = read_job<BatchJob>(
      R"({"format": "blockwright-job-1", "clients": ["people/deep/d.json"], "folder": "people",
          "out": "out", "write": ["svg"], "report": "json", "again": true, "jobs": 2})",
      "job.json", {});
  const Json lines = Json::parse(told_by(batch, files).text)["clients"];
  REQUIRE(lines.size() == 4);
  CHECK(lines[0]["client"] == "D");
  CHECK_THROWS_AS(
      read_job<BatchJob>(R"({"format": "blockwright-job-1", "client": "a.json"})", "job.json", {}),
      InputError);
}

TEST_CASE("Pattern files may not lie among the client files, where the next run would take them") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.each.write = {OutputKind::Json};
  for (const char* out : {"people", "people/", "./people"}) {
    batch.each.out = out;
    INFO(out);
    CHECK(told_by(batch, files).result.exit_code == 2);
  }
  batch.each.out = "people/blocks";
  batch.subfolders = true;
  CHECK(told_by(batch, files).result.exit_code == 2);
  batch.subfolders = false;
  CHECK(told_by(batch, files).result.exit_code == 1);  // one of the clients cannot be drafted
}

TEST_CASE("The text says a line for each and the counts; quiet, only who failed") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.each.report = ReportKind::Text;
  const std::string all = told_by(batch, files).text;
  CHECK(all.find("done      people/a.json: A; 1 taken, 20 estimated; front shoulder ") == 0);
  CHECK(all.find("failed    people/c.json\n") != std::string::npos);
  CHECK(all.find("3 clients: 2 done, 0 warned, 0 unchanged, 1 failed\n") != std::string::npos);
  batch.quiet = true;
  const std::string quiet = told_by(batch, files).text;
  CHECK(quiet.find("failed    people/c.json\n") == 0);
  CHECK(quiet.find("people/a.json") == std::string::npos);
}

TEST_CASE(
    "A stream gives an object for each line in order, with the pattern where none is written") {
  MemoryFiles files;
  std::string lines;
  for (int i = 0; i < 40; ++i)
    lines += client("P" + std::to_string(i), std::to_string(80 + i)) + "\n";
  lines += "\n{\"name\": 3\n";
  const Told one = stream_of(lines, false, files), four = stream_of(lines, false, files, 4);
  CHECK(one.text == four.text);
  CHECK(one.result.exit_code == 1);
  const std::vector<Json> objects = objects_of(one.text);
  REQUIRE(objects.size() == 41);
  for (int i = 0; i < 40; ++i) {
    CAPTURE(i);
    const Json& object = objects[static_cast<std::size_t>(i)];
    CHECK(object["line"] == i + 1);
    CHECK(object["client"] == "P" + std::to_string(i));
    CHECK(object["pattern"]["format"] == "blockwright-pattern-1");
    CHECK(object["report"].contains("measure_back"));
  }
  CHECK(objects.back()["line"] == 42);
  CHECK(objects.back()["state"] == "failed");
  CHECK(objects.back()["problems"][0]["where"].get<std::string>().find("line 42") == 0);
  CHECK(files.files.empty());
}

TEST_CASE("A stream of one job answers each line before it asks for the next") {
  MemoryFiles files;
  std::size_t answers = 0;
  Conversation conversation(answers);
  std::istream in(&conversation);
  BatchJob stream;
  stream.each.out = "";
  BatchWatch watch;
  watch.say = [&](std::string_view) { ++answers; };
  CHECK(run_stream(stream, in, files, watch).exit_code == 0);
  CHECK(answers == 3);
}

TEST_CASE("A stream's line of a mebibyte is a client; a longer one fails alone, up to 16 MiB") {
  MemoryFiles files;
  const auto padded = [](std::size_t size) {
    std::string line = client("P", "90");
    return line.append(size - line.size(), ' ') + "\n";
  };
  constexpr std::size_t mebibyte = std::size_t{1} << 20;
  const std::string after = client("Q", "92") + "\n";
  const auto codes = [&](std::size_t size) {
    std::vector<std::string> found;
    for (const Json& object : objects_of(stream_of(padded(size) + after, false, files).text)) {
      const bool failed = object["state"] == "failed";
      found.push_back(failed ? object["problems"][0]["code"] : object["client"]);
    }
    return found;
  };
  using Codes = std::vector<std::string>;
  CHECK(codes(mebibyte) == Codes{"P", "Q"});
  CHECK(codes(mebibyte + 1) == Codes{"client.size", "Q"});
  CHECK(codes(mebibyte + 2) == Codes{"client.size", "Q"});
  CHECK(codes(16 * mebibyte) == Codes{"client.size", "Q"});
  CHECK(codes(16 * mebibyte + 1) == Codes{"input.line"});
}

TEST_CASE("A stream's line without an end is refused, and no more of it is read") {
  MemoryFiles files;
  for (const char letter : {'x', ' '}) {
    EndlessLine endless(letter);
    std::istream in(&endless);
    BatchJob stream;
    stream.each.out = "";
    std::string text;
    BatchWatch watch;
    watch.say = [&](std::string_view said) { text += said; };
    CHECK(run_stream(stream, in, files, watch).exit_code == 1);
    const Json problem = Json::parse(text)["problems"][0];
    CHECK(problem["code"] == "input.line");
    CHECK(problem["message"] ==
          "the line is longer than 16 MiB; neither it nor what follows is read");
    CHECK(endless.read() <= (std::size_t{16} << 20) + EndlessLine::kChunk);
  }
}

TEST_CASE("A stream that writes names its files by line and client, so that none meets another") {
  MemoryFiles files;
  const Told told = stream_of(client("A B", "90") + "\n" + client("A B", "95") + "\n", true, files);
  CHECK(told.result.files ==
        std::vector<std::string>{"out/1-A-B-toile.svg", "out/2-A-B-toile.svg"});
  CHECK(files.files.size() == 2);
}

TEST_CASE("Without names, neither paper, file names of a stream, summary nor record hold one") {
  MemoryFiles files(
      std::map<std::string, std::string>{{"people/7.json", client("Zephyrine", "92")}});
  BatchJob batch = batch_of("people");
  batch.each.anonymous = true;
  batch.each.write = {OutputKind::Svg, OutputKind::Json};
  const Told told = told_by(batch, files);
  CHECK(told.text.find("Zephyrine") == std::string::npos);
  files.files.erase("people/7.json");
  REQUIRE(files.files.size() == 3);
  for (const auto& [path, bytes] : files.files) {
    INFO(path);
    CHECK(bytes.find("Zephyrine") == std::string::npos);
  }
}

TEST_CASE("A folder has up to a million parts", "[kMostShards]") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.shard = "1/1000000";
  CHECK(told_by(batch, files).result.exit_code == 0);
  batch.shard = "1/1000001";
  CHECK(told_by(batch, files).result.exit_code == 2);
  batch.shard = "3/3";
  CHECK(told_by(batch, files).result.exit_code != 2);
  batch.shard = "4/3";
  CHECK(told_by(batch, files).result.exit_code == 2);
}
