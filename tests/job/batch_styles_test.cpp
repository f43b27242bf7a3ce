// Several styles in one batch: each client with each style, as if it were made alone.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace batch_styles_test {

using namespace blockwright;
using Json = nlohmann::json;

namespace {

std::string client(const std::string& name, const std::string& bust) {
  return R"({"format": "blockwright-client-1", "name": ")" + name +
         R"(", "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": )" + bust +
         "}}]}";
}

std::string style(const std::string& step) {
  return R"({"format": "blockwright-style-1", "name": "top", "unit": "cm", "steps": [)" + step +
         "]}";
}

const std::string kToSide = R"({"pivot": {"dart": "front.shoulder", "to": "front.side"}})";
const std::string kToNeck = R"({"pivot": {"dart": "front.shoulder", "to": "front.neck"}})";
// No front is as deep.
const std::string kTooDeep = R"({"neckline": {"shape": "v", "front_depth": 60}})";

MemoryFiles theatre() {
  return MemoryFiles({{"people/a.json", client("A", "92")},
                      {"people/b.json", client("B", "88")},
                      {"styles/neck.json", style(kToNeck)},
                      {"styles/side.json", style(kToSide)}});
}

BatchJob batch_in(const std::vector<std::string>& styles) {
  BatchJob batch;
  batch.folder = "people";
  batch.styles = styles;
  batch.each.out = "out";
  batch.each.write = {OutputKind::Svg};
  batch.each.report = ReportKind::Json;
  return batch;
}

struct ToldBatch {
  JobResult result;
  std::string text;
};

ToldBatch told(const BatchJob& batch, FileStore& files) {
  ToldBatch all;
  BatchWatch watch;
  watch.say = [&](std::string_view text) { all.text += text; };
  all.result = run_batch(batch, files, watch);
  return all;
}

// "done" of what was made, warned or not.
std::string state_in(const Json& line) {
  const std::string state = line["state"];
  return state == "warned" ? "done" : state;
}

// "people/a.json styles/neck.json done", one for each line of the summary.
std::vector<std::string> lines_of(const std::string& summary) {
  std::vector<std::string> lines;
  const Json told = Json::parse(summary);
  for (const Json& line : told["clients"]) {
    lines.push_back(line["file"].get<std::string>() + " " + line["style"].get<std::string>() + " " +
                    state_in(line));
  }
  return lines;
}

using Lines = std::vector<std::string>;

// What one person in one style writes by itself.
std::map<std::string, std::string> alone(const BatchJob& batch, const std::string& client,
                                         const std::string& style, MemoryFiles files) {
  const auto before = files.files;
  Job job = batch.each;
  job.command = Command::Adapt;
  job.client = client;
  job.style = style;
  CHECK(run_job(job, files).exit_code == 0);
  for (const auto& [path, bytes] : before) files.files.erase(path);
  CHECK_FALSE(files.files.empty());
  return files.files;
}

}  // namespace

TEST_CASE("A batch adapts each client to each style, in order, under names of their own") {
  MemoryFiles files = theatre();
  const ToldBatch all = told(batch_in({"styles/side.json", "styles/neck.json"}), files);
  CHECK(all.result.exit_code == 0);
  CHECK(lines_of(all.text) ==
        Lines{"people/a.json styles/side.json done", "people/a.json styles/neck.json done",
              "people/b.json styles/side.json done", "people/b.json styles/neck.json done"});
  CHECK(all.result.files == Lines{"out/a-side-toile.svg", "out/a-neck-toile.svg",
                                  "out/b-side-toile.svg", "out/b-neck-toile.svg"});
  const Json counts = Json::parse(all.text)["counts"];
  CHECK(counts["done"].get<int>() + counts["warned"].get<int>() == 4);
}

TEST_CASE("A folder of styles is all of them, in the order of their names, each once") {
  MemoryFiles files = theatre();
  const ToldBatch all = told(batch_in({"styles/side.json", "styles"}), files);
  REQUIRE(lines_of(all.text).size() == 4);
  CHECK(lines_of(all.text)[0] == "people/a.json styles/side.json done");
  CHECK(lines_of(all.text)[1] == "people/a.json styles/neck.json done");
}

TEST_CASE("A style that one client cannot have stops neither her other styles nor the others") {
  MemoryFiles files = theatre();
  files.files["styles/deep.json"] = style(kTooDeep);
  const ToldBatch all = told(batch_in({"styles"}), files);
  CHECK(all.result.exit_code == 1);
  CHECK(lines_of(all.text) ==
        Lines{"people/a.json styles/deep.json failed", "people/a.json styles/neck.json done",
              "people/a.json styles/side.json done", "people/b.json styles/deep.json failed",
              "people/b.json styles/neck.json done", "people/b.json styles/side.json done"});
  CHECK(Json::parse(all.text)["counts"]["failed"] == 2);
  BatchJob words = batch_in({"styles"});
  words.each.report = ReportKind::Text;
  const std::string text = told(words, files).text;
  CHECK_THAT(text, Catch::Contains("failed    people/a.json, styles/deep.json"));
  CHECK_THAT(text,
             Catch::Contains("2 clients in 3 styles: 0 done, 0 warned, 4 unchanged, 2 failed"));
}

TEST_CASE("What has not changed is told by client and style") {
  MemoryFiles files = theatre();
  told(batch_in({"styles"}), files);
  const auto first = files.files;
  CHECK(lines_of(told(batch_in({"styles"}), files).text)[3] ==
        "people/b.json styles/side.json unchanged");
  SECTION("a style was changed") {
    files.files["styles/side.json"] = style(kToNeck);
    CHECK(lines_of(told(batch_in({"styles"}), files).text) ==
          Lines{"people/a.json styles/neck.json unchanged", "people/a.json styles/side.json done",
                "people/b.json styles/neck.json unchanged", "people/b.json styles/side.json done"});
  }
  SECTION("one output was deleted") {
    files.files.erase("out/b-neck-toile.svg");
    CHECK(lines_of(told(batch_in({"styles"}), files).text) ==
          Lines{"people/a.json styles/neck.json unchanged",
                "people/a.json styles/side.json unchanged", "people/b.json styles/neck.json done",
                "people/b.json styles/side.json unchanged"});
    CHECK(files.files == first);
  }
  SECTION("a client is gone: one line names all that was made of her") {
    files.files.erase("people/a.json");
    const Json gone = Json::parse(told(batch_in({"styles"}), files).text)["gone"];
    REQUIRE(gone.size() == 1);
    CHECK(gone[0]["outputs"] == Json{"a-neck-toile.svg", "a-side-toile.svg"});
  }
}

TEST_CASE(
    "Of a client and style that share their output's name with another the later is refused") {
  MemoryFiles files({{"people/a.json", client("A", "92")},
                     {"people/a-long.json", client("B", "88")},
                     {"styles/long-top.json", style(kToNeck)},
                     {"styles/top.json", style(kToSide)}});
  const ToldBatch all = told(batch_in({"styles"}), files);
  CHECK(lines_of(all.text) == Lines{"people/a-long.json styles/long-top.json done",
                                    "people/a-long.json styles/top.json done",
                                    "people/a.json styles/long-top.json failed",
                                    "people/a.json styles/top.json done"});
  const Json problem = Json::parse(all.text)["clients"][2]["problems"][0];
  CHECK(problem["code"] == "batch.collision");
  CHECK(problem["message"] ==
        "its output would have the same names as that of people/a-long.json in styles/top.json");
}

TEST_CASE("Two styles whose output would share its name are refused before anybody is worked on") {
  MemoryFiles files = theatre();
  files.files["older/Side.json"] = style(kToNeck);
  const auto before = files.files;
  const ToldBatch all = told(batch_in({"styles", "older"}), files);
  CHECK(all.result.exit_code == 2);
  CHECK(all.result.problems.at(0).code == "job.value");
  CHECK(all.result.problems.at(0).where == "--style");
  CHECK(files.files == before);
  CHECK(told(batch_in({"styles", "none.json"}), files).result.exit_code == 2);
  files.files["styles/broken.json"] = "{";
  CHECK(told(batch_in({"styles"}), files).result.exit_code != 0);
  CHECK(files.files.size() == before.size() + 1);
}

TEST_CASE("A stream answers each line once with every style") {
  MemoryFiles files = theatre();
  BatchJob stream;
  stream.styles = {"styles"};
  std::istringstream in(client("A", "92") + "\n\n" + client("B", "8") + "\n");
  std::string text;
  BatchWatch watch;
  watch.say = [&](std::string_view said) { text += said; };
  stream.each.out.clear();
  CHECK(run_stream(stream, in, files, watch).exit_code == 1);
  std::istringstream lines(text);
  Lines answers;
  for (std::string line; std::getline(lines, line);) {
    const Json answer = Json::parse(line);
    answers.push_back(answer["line"].dump() + " " + answer["style"].get<std::string>() + " " +
                      state_in(answer));
    CHECK(answer.contains("pattern") == (answer["state"] != "failed"));
  }
  CHECK(answers == Lines{"1 styles/neck.json done", "1 styles/side.json done",
                         "3 styles/neck.json failed", "3 styles/side.json failed"});
}

// Every person of the theatre in every style: what comes of it is what `adapt` makes alone, tried
// on every eighth.
TEST_CASE("The whole wardrobe in all styles at once gives the bytes of each made alone") {
  MemoryFiles files;
  for (const char* folder : {"examples/wardrobe", "examples/styles"}) {
    const auto root = std::filesystem::path(BLOCKWRIGHT_SOURCE_DIR) / folder;
    for (const auto& entry : std::filesystem::directory_iterator(root)) {
      if (entry.path().extension() != ".json") continue;
      files.files[std::string(folder) + "/" + entry.path().filename().string()] =
          blockwright_tests::read_bytes(entry.path().string());
    }
  }
  const MemoryFiles before = MemoryFiles(files.files);
  BatchJob batch = batch_in({"examples/styles"});
  batch.folder = "examples/wardrobe";
  batch.each.write = {OutputKind::Json};
  batch.jobs = 2;
  const ToldBatch all = told(batch, files);
  const Json lines = Json::parse(all.text)["clients"];
  CHECK(lines.size() == 8 * (before.files.size() - 8));
  std::size_t refused = 0, compared = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    INFO(lines[i]["file"] << " " << lines[i]["style"] << " " << lines[i]["problems"].dump());
    if (lines[i]["state"] == "failed") {
      const std::string code = lines[i]["problems"][0]["code"];
      CHECK((code == "garment.armhole" || code == "dart.unknown"));
      ++refused;
      continue;
    }
    if (i % 8 != i / 16 % 8) continue;
    for (const auto& [path, bytes] : alone(batch, lines[i]["file"], lines[i]["style"], before)) {
      CHECK(files.files[path] == bytes);
      ++compared;
    }
  }
  CHECK(refused <= 3);  // an armhole that would turn too sharply, a front without a waist dart
  CHECK(compared >= 12);
}

}  // namespace batch_styles_test
