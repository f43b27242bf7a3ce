// What a run of `fit` advises can be done with `fit`: no hint speaks of an option that it has not
// got.
#include "blockwright/job/options.hpp"
#include "support/each.hpp"
#include "support/faulty_calls.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <regex>

using namespace blockwright;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

const std::string kClientOfFit = R"({"format": "blockwright-client-1", "name": "A", "unit": "cm",
  "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}]})";

/// The options that a text speaks of: "--out" is "out".
std::vector<std::string> options_in(const std::string& text) {
  const std::regex form("--([a-z][a-z-]*)");
  std::vector<std::string> names;
  for (std::sregex_iterator it(text.begin(), text.end(), form), end; it != end; ++it) {
    names.push_back((*it)[1]);
    std::ranges::replace(names.back(), '-', '_');
  }
  return names;
}

/// Every command has these.
bool is_an_option_of_fit(const std::string& name) {
  return name == "job" || name == "help" || has_option(Command::Fit, name);
}

/// What other commands say; and the option table itself.
bool is_of_other_commands(const std::string& path) {
  for (const char* other : {"/job/run_job.cpp", "/job/run_compare.cpp", "/job/drawings.cpp",
                            "/job/tape_form.cpp", "/job/batch/", "/job/options/wishes.cpp",
                            "/job/options/options.cpp", "/report/bands_text.cpp", "/layout/",
                            "/write/", "/style/", "/cli/commands.cpp", "/cli/run_program.cpp"}) {
    if (path.find(other, std::string(BLOCKWRIGHT_SOURCE_DIR).size()) != std::string::npos)
      return true;
  }
  return false;
}

/// What a source has in quotes, its comments apart, but for what in_its_place() takes out again and
/// for whole calls of another command, which have that command's options.
std::string texts_of_source(const fs::path& path) {
  const std::string code =
      std::regex_replace(read_bytes(path.string()), std::regex("//[^\n]*"), "");
  const std::regex quoted(R"("([^"\\\n]|\\.)*")");
  std::string texts;
  for (std::sregex_iterator it(code.begin(), code.end(), quoted), end; it != end; ++it) {
    if (it->str() != "\"" + std::string(kOtherFolder) + "\"") texts += it->str() + "\n";
  }
  return std::regex_replace(texts, std::regex("`blockwright tape [^`]*`"), "");
}

FitJob one_more(const std::string& client) {
  FitJob job;
  job.client = client;
  job.add = {"lower front_neck 1.0"};
  job.date = "2026-03-21";
  job.toile = 1;
  return job;
}

}  // namespace

TEST_CASE("No source that a fit run comes by advises an option that fit has not got") {
  CHECK(options_in("--out and --hold-back") == std::vector<std::string>{"out", "hold_back"});
  CHECK_FALSE(is_an_option_of_fit("hold_back"));
  int sources = 0, advised = 0;
  for (const char* top : {"/src", "/include"}) {
    for (const auto& entry :
         fs::recursive_directory_iterator(std::string(BLOCKWRIGHT_SOURCE_DIR) + top)) {
      const std::string path = entry.path().string();
      if ((!path.ends_with(".cpp") && !path.ends_with(".hpp")) || is_of_other_commands(path)) {
        continue;
      }
      ++sources;
      for (const std::string& name : options_in(texts_of_source(entry.path()))) {
        INFO(path << ": --" << name);
        CHECK(is_an_option_of_fit(name));
        ++advised;
      }
    }
  }
  CHECK(sources > 200);
  CHECK(advised >= 5);
}

TEST_CASE("Whatever call fails, a fit run advises no other folder and no option that it lacks") {
  int problems = 0;
  for (const int error :
       each({EACCES, EIO, EMFILE, ENAMETOOLONG, ENOSPC, ENOTDIR, EROFS, EWOULDBLOCK})) {
    for (int at = 1;; ++at) {
      const TempFolder folder(memory_folder());
      const std::string client = folder.write("a.json", kClientOfFit);
      FaultyCalls calls;
      calls.at = at;
      calls.error = error;
      DiskFiles files(calls);
      const JobResult result = run_fit(one_more(client), files);
      if (calls.struck().empty()) break;
      for (const Problem& problem : result.problems) {
        if (problem.severity != Severity::Error) continue;
        const std::string hint = problem.hint.plain();
        INFO(calls.struck() << ": " << to_text(problem));
        CHECK_FALSE(hint.empty());
        CHECK(hint.find("another folder") == std::string::npos);
        CHECK(std::ranges::all_of(options_in(hint), is_an_option_of_fit));
        ++problems;
      }
    }
  }
  CHECK(problems > 100);
}

TEST_CASE("What an amount lacks is advised with lines that fit reads") {
  const TempFolder folder;
  DiskFiles files;
  FitJob job = one_more(folder.write("a.json", kClientOfFit));
  job.add = {"take_in waist 2"};
  const JobResult result = run_fit(job, files);
  REQUIRE(result.problems.size() == 1);
  const std::string hint = result.problems[0].hint.plain();
  INFO(hint);
  for (const char* line : each({"take in waist 2 per half", "take in waist 2 whole girth"})) {
    CHECK(hint.find("\"" + std::string(line) + "\": ") != std::string::npos);
    job.add = {line};
    CHECK(run_fit(job, files).exit_code == 0);
  }
}
