#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace blockwright::schemas_test {
namespace {

using Json = nlohmann::json;

const std::string kRoot = BLOCKWRIGHT_SOURCE_DIR;

std::string text_of(const std::string& path) {
  std::ifstream file(path);
  INFO(path);
  REQUIRE(file.good());
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The demo client from the checkout; what is written stays in memory.
class Memory : public FileStore {
 public:
  std::string read(const std::string& path) override {
    if (path.starts_with(kRoot)) return text_of(path);
    throw FileError({Severity::Error, "file.read", path, "no such file", ""});
  }
  std::vector<std::string> list(const std::string&, const std::string&, Listing) override {
    return {};
  }
  void write_all(const std::vector<NewFile>& files) override {
    for (const NewFile& file : files) written[file.path] = file.bytes;
  }
  FolderLock lock(const std::string&) override { return {}; }
  std::map<std::string, std::string> written;
};

/// Compares what the program wrote with a schema: keys that must be there, and values that the
/// schema fixes. Enough to see that schema and writer have not drifted apart.
class Comparison {
 public:
  explicit Comparison(Json schema) : root_(std::move(schema)) {}

  /// The places where the value differs, one a line; empty if none.
  std::string faults_of(const Json& value) {
    faults_.clear();
    compare(root_, value, "");
    return faults_;
  }

 private:
  void compare(const Json& rule, const Json& value, const std::string& path) {
    if (rule.contains("$ref")) {
      const auto name = rule["$ref"].get<std::string>().substr(1);
      return compare(root_.at(Json::json_pointer(name)), value, path);
    }
    if (rule.contains("const") && rule["const"] != value) fault(path, value.dump());
    if (rule.contains("enum")) {
      const Json& allowed = rule["enum"];
      if (std::find(allowed.begin(), allowed.end(), value) == allowed.end()) {
        fault(path, value.dump());
      }
    }
    if (value.is_object()) compare_object(rule, value, path);
    if (value.is_array() && rule.contains("items") && !rule.contains("prefixItems")) {
      for (const Json& item : value) compare(rule["items"], item, path + "[]");
    }
  }

  void compare_object(const Json& rule, const Json& value, const std::string& path) {
    if (rule.contains("required")) {
      for (const Json& key : rule["required"]) {
        if (!value.contains(key)) fault(path, key.dump() + " is missing");
      }
    }
    if (!rule.contains("properties")) return;
    for (const auto& [key, member] : value.items()) {
      if (rule["properties"].contains(key)) {
        compare(rule["properties"][key], member, path + '.' + key);
      }
    }
  }

  void fault(const std::string& path, const std::string& what) {
    faults_ += path + ": " + what + '\n';
  }

  const Json root_;
  std::string faults_;
};

Job demo_job() {
  Job job;
  job.client = kRoot + "/examples/wardrobe/ondine-marsh.json";
  job.out = "out";
  job.write = {OutputKind::Json};
  job.report = ReportKind::Json;
  job.bands = true;
  return job;
}

std::string faults_against(const std::string& name, const Json& value) {
  return Comparison(Json::parse(schema_named(name))).faults_of(value);
}

TEST_CASE("the published schemas are the program's own, and are JSON Schemas") {
  for (const std::string name : {"client", "job", "pattern", "report", "style"}) {
    INFO(name);
    const std::string schema = schema_named(name);
    CHECK(text_of(kRoot + "/docs/schema/" + name + ".schema.json") == schema);
    const Json json = Json::parse(schema);
    CHECK(json["$schema"] == "https://json-schema.org/draft/2020-12/schema");
    CHECK(json["type"] == "object");
    CHECK_FALSE(json["required"].empty());
  }
}

TEST_CASE("an unknown schema is refused with the names there are") {
  try {
    (void)schema_named("dress");
    FAIL("a schema was given");
  } catch (const UsageError& error) {
    CHECK(error.problem().code == "schema.unknown");
    CHECK(error.problem().hint == "use client, job, pattern, report or style");
  }
}

TEST_CASE("the comparison sees a missing key and a wrong value") {
  CHECK(faults_against("report", Json::object()) != "");
  CHECK(faults_against("pattern", {{"format", "x"},
                                   {"unit", "mm"},
                                   {"pieces", Json::array()},
                                   {"seams", Json::array()}}) == ".format: \"x\"\n");
}

TEST_CASE("the report and the pattern of the demo client have what their schemas require") {
  Memory files;
  const JobResult result = run_job(demo_job(), files);
  REQUIRE(result.exit_code == 0);
  const Json report = Json::parse(result.output);
  REQUIRE_FALSE(report["measure_back"].empty());
  REQUIRE_FALSE(report["stages"].empty());
  REQUIRE_FALSE(report["bands"]["edges"].empty());
  CHECK(faults_against("report", report) == "");
  REQUIRE(files.written.size() == 1);
  const Json pattern = Json::parse(files.written.begin()->second);
  REQUIRE(pattern["pieces"].size() == 2);
  CHECK(faults_against("pattern", pattern) == "");
}

TEST_CASE("the report of a client that cannot be read has what its schema requires") {
  Job job = demo_job();
  job.session = "1999-01-01";
  Memory files;
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code == 1);
  CHECK(files.written.empty());
  const Json report = Json::parse(result.output);
  CHECK(report["problems"].size() == 1);
  CHECK(faults_against("report", report) == "");
}

}  // namespace
}  // namespace blockwright::schemas_test
