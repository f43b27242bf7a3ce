// The table of options: one row more is seen on the command line, in job files, in their schema, in
// the help and in the key of a batch's stamps.
#include "../../src/cli/command_options.hpp"
#include "batch_work.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "option_values.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <map>
#include <set>

using namespace blockwright;

namespace {

/// The table and a row of this test's own, bound to a member that has no option.
std::vector<Option> with_thread_colour() {
  std::vector<Option> table = option_table();
  table.push_back(option("thread_colour", {Command::Draft}, &Job::stem, Changes::Output,
                         "Colour of the thread", {.otherwise = "white"}));
  return table;
}

/// What a draft is called with ends in the job.
Job called(const std::string& arguments, const std::vector<Option>& table, FileStore& files) {
  Job job;
  CLI::App app;
  const CommandOptions options(app, JobOptions(job, table));
  app.parse(arguments, false);
  options.take(files);
  return job;
}

Job called(const std::string& arguments, const std::vector<Option>& table) {
  MemoryFiles files;
  return called(arguments, table, files);
}

std::string refusal_of(const std::string& arguments) {
  try {
    (void)called(arguments, option_table());
  } catch (const UsageError& error) {
    CHECK(error.problem().code == "job.value");
    return to_text(error.problem());
  }
  return {};
}

template <class AnyJob>
std::set<std::string> names_of(AnyJob job) {
  std::set<std::string> names;
  const JobOptions options(job);
  for (const Option& option : options.options) {
    INFO(option.name);
    CHECK(names.insert(std::string(option.name)).second);
  }
  return names;
}

Job job_of(Command command) {
  Job job;
  job.command = command;
  return job;
}

}  // namespace

TEST_CASE("An option that is added to the table is seen in all five places") {
  const std::vector<Option> table = with_thread_colour();
  // The command line.
  CHECK(called("a.json --thread-colour blue", table).stem == "blue");
  // The job file, over which the command line wins.
  const std::string text = R"({"format": "blockwright-job-1", "thread_colour": "red"})";
  MemoryFiles files(std::map<std::string, std::string>{{"job.json", text}});
  CHECK(called("--job job.json", table, files).stem == "red");
  CHECK(called("--job job.json --thread-colour blue", table, files).stem == "blue");
  CHECK_THROWS_AS(called("--job job.json", option_table(), files), InputError);
  // The schema.
  const auto schema = nlohmann::json::parse(job_schema(table))["properties"]["thread_colour"];
  CHECK(schema["type"] == "string");
  CHECK(schema["description"] == "draft: Colour of the thread; default: white.");
  // The help.
  Job job;
  CLI::App app;
  const CommandOptions options(app, JobOptions(job, table));
  CHECK(app.help().find("--thread-colour TEXT") != std::string::npos);
  CHECK(app.help().find("Colour of the thread; default: white") != std::string::npos);
  // The batch's key.
  const std::string without = output_key(JobOptions(job, table));
  job.stem = "blue";
  CHECK(output_key(JobOptions(job, table)) != without);
}

TEST_CASE("The help names the allowances that hold where none is given") {
  CLI::App app;
  Job job;
  const CommandOptions options(app, JobOptions(job));
  const std::string usual = trimmed(PrintOptions{}.allowance.mm(), 1) + ", or " +
                            inch_fraction(kInchAllowance.inches()) + " in";
  CHECK(app.help().find(usual) != std::string::npos);
}

TEST_CASE("A draft's output depends on each option that says so, and on no other") {
  const std::vector<std::string> other = {"[0]",          "--session 2026-01-01", "--toile 1",
                                          "--write json", "--paper a3",           "--cut net",
                                          "--unit in",    "--one-bust-dart",      "--allowance 15",
                                          "--margin 12",  "--overlap 8",          "--anonymous",
                                          "--bands"};
  Job job = called("a.json", option_table());
  const std::string before = output_key(JobOptions(job));
  std::set<std::string> keys{before};
  for (std::size_t i = 1; i < other.size(); ++i) {
    INFO(other[i]);
    Job changed = called(other[i], option_table());
    CHECK(keys.insert(output_key(JobOptions(changed))).second);
  }
  std::size_t output = 0;
  const JobOptions options(job);
  for (const Option& option : options.options) output += option.changes == Changes::Output ? 1 : 0;
  CHECK(output + 1 == other.size());
  for (const char* same : {"--out o", "--report json", "--steps", "b.json"}) {
    INFO(same);
    Job changed = called(same, option_table());
    CHECK(output_key(JobOptions(changed)) == before);
  }
}

TEST_CASE(
    "No command has two options of one name; anonymous and toile are options of all that draft") {
  const std::vector<std::set<std::string>> commands = {names_of(job_of(Command::Draft)),
                                                       names_of(job_of(Command::Pivot)),
                                                       names_of(job_of(Command::Adapt)),
                                                       names_of(BatchJob{}),
                                                       names_of(FitJob{}),
                                                       names_of(CompareJob{})};
  std::set<std::string> all = names_of(TapeJob{});
  for (const auto& names : commands) {
    CHECK(names.contains("anonymous"));
    CHECK(names.contains("toile"));
    all.insert(names.begin(), names.end());
  }
  std::set<std::string> published;
  const auto schema = nlohmann::json::parse(job_schema());
  for (const auto& [key, rule] : schema["properties"].items()) published.insert(key);
  published.erase("format");
  CHECK(published == all);
}

TEST_CASE("A value that was typed wrong is refused with value, limit and cure") {
  CHECK(refusal_of("--cut lace").find("--cut: 'lace' is not known (use toile") !=
        std::string::npos);
  CHECK(refusal_of("--write svg,doc").find("--write: 'doc' is not known (use svg") !=
        std::string::npos);
  CHECK(refusal_of("--allowance 0x10")
            .find("'0x10' is not a number of mm (use a number of mm "
                  "from 0 to 60)") != std::string::npos);
  CHECK(refusal_of("--toile 1.5").find("'1.5' is not a whole number") != std::string::npos);
  CompareJob compare;
  compare.client = "a.json";
  compare.write = {OutputKind::Svg, OutputKind::Json};
  CHECK_THROWS_WITH(judge(JobOptions(compare)),
                    Catch::Contains("--write: 'json' is not known (use svg (one sheet) or pdf"));
  Job job;
  job.client = "a.json";
  job.margin = Length::mm(2.0);
  CHECK_THROWS_WITH(judge(JobOptions(job)),
                    "error [job.value] --margin: 2 mm is out of range (use a number of mm from 7 "
                    "to 40)");
  job = {};
  CHECK_THROWS_WITH(judge(JobOptions(job)),
                    "error [job.value] CLIENT: no client file was named "
                    "(`blockwright draft --help` shows how it is called)");
}

TEST_CASE("A margin of 1e308 is refused in few characters, however it is written") {
  constexpr std::size_t few = 170;  // 60 of the value are shown
  const std::string digits = "1" + std::string(308, '0');
  const std::string not_out_of_range[] = {"1e308", digits + "0", "-" + digits + "0"};
  for (const std::string& margin : not_out_of_range) {
    const std::string message = refusal_of("a.json --margin " + margin);
    CHECK(message.find("is not a number of mm") != std::string::npos);
    CHECK(message.size() < few);
  }
  Job job = called("a.json --margin " + digits, option_table());
  try {
    judge(JobOptions(job));
    FAIL("it was taken");
  } catch (const UsageError& error) {
    CHECK(to_text(error.problem()) ==
          "error [job.value] --margin: 1e+308 mm is out of range (use a number of mm from 7 to "
          "40)");
  }
}

TEST_CASE("What is typed over a job file's value is refused by its name, not by a line there") {
  MemoryFiles files(std::map<std::string, std::string>{
      {"job.json", R"({"format": "blockwright-job-1", "margin": 9})"}});
  const auto where = [&](const std::string& arguments) {
    Job job = called(arguments, option_table(), files);
    job.margin = Length::mm(99.0);
    try {
      judge(JobOptions(job));
    } catch (const UsageError& error) {
      return error.problem().where;
    }
    return std::string();
  };
  CHECK(where("a.json --job job.json") == "job.json:1:43 margin");
  CHECK(where("a.json --job job.json --margin 99") == "--margin");
}
