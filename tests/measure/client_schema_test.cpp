#include "client_text.hpp"
#include "schema_check.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <iterator>

namespace blockwright {
namespace {

using Json = nlohmann::json;

Json schema() { return Json::parse(client_schema()); }

Json published_tape() {
  return schema()["properties"]["sessions"]["items"]["properties"]["tape"]["properties"];
}

TEST_CASE("the published schema is the program's own") {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/docs/schema/client.schema.json");
  REQUIRE(file.good());
  const std::string published{std::istreambuf_iterator<char>(file), {}};
  CHECK(published == client_schema());
}

TEST_CASE("the schema has the catalogue's keys and no others") {
  const Json whole = schema();
  const Json ease = whole["properties"]["ease"]["properties"];
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.key);
    CHECK(published_tape().contains(entry.key));
    CHECK(published_tape()[std::string(entry.key)]["description"] == entry.how);
    CHECK(ease.contains(entry.key));
  }
  CHECK(published_tape().size() == kMeasurementCount);
  CHECK(ease.size() == kMeasurementCount);
  for (const char* name : {"tape_cm", "tape_in", "ease_cm", "ease_in"}) {
    CHECK(whole["$defs"][name]["properties"].size() == kMeasurementCount);
  }
}

void check_limits(const MeasurementInfo& entry, const char* tape, double mm_per_unit) {
  INFO(entry.key << ' ' << tape);
  const double unit = entry.kind == MeasurementKind::Angle ? 1.0 : mm_per_unit;
  const Json limits = schema()["$defs"][tape]["properties"][std::string(entry.key)];
  const double least = limits["minimum"].get<double>() * unit;
  const double most = limits["maximum"].get<double>() * unit;
  CHECK(least >= entry.least - 1e-9);
  CHECK(least <= entry.least + 0.01 * unit);
  CHECK(most <= entry.most + 1e-9);
  CHECK(most >= entry.most - 0.01 * unit);
  CHECK(limits["items"]["minimum"] == limits["minimum"]);
  CHECK(limits["items"]["maximum"] == limits["maximum"]);
}

TEST_CASE("the schema's limits are the catalogue's, in either unit, to a hundredth") {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    check_limits(entry, "tape_cm", 10.0);
    check_limits(entry, "tape_in", 25.4);
  }
}

std::string file_of(const std::string& unit, const std::string& tape, const std::string& more) {
  std::string text = client_text(tape, unit);
  text.pop_back();
  return text + more + "}";
}

TEST_CASE("the schema accepts what the program reads") {
  const SchemaCheck check(schema());
  const std::string files[] = {
      file_of("cm", R"("bust_girth": 92.5)", ""),
      file_of("cm", R"("bust_girth": [92.5, 93], "shoulder_slope": 22)", R"(, "fittings": [])"),
      file_of("in", R"("bust_girth": "36 1/2", "shoulder_slope": 22)", ""),
      file_of("in", R"("bust_girth": ["36 1/2", 36, "36"])", R"(, "ease": {"bust_girth": "-1/2"})"),
      file_of("cm", R"("bust_girth": 60)", R"(, "ease": {"shoulder_slope": -15})"),
      file_of("cm", R"("bust_girth": 92)", R"(, "$schema": "client.schema.json")"),
  };
  for (const std::string& text : files) {
    INFO(text);
    CHECK(refusal(text).code.empty());
    CHECK(check.accepts(Json::parse(text)));
  }
}

TEST_CASE("the schema refuses what the program refuses by form or limit") {
  const SchemaCheck check(schema());
  const std::string files[] = {
      file_of("cm", R"("bust_girth": 925)", ""),
      file_of("cm", R"("bust_girth": 36)", ""),
      file_of("in", R"("bust_girth": 92)", ""),
      file_of("cm", R"("bust_girth": "36 1/2")", ""),
      file_of("in", R"("bust_girth": "36 1/3")", ""),
      file_of("in", R"("bust_girth": 36, "shoulder_slope": "22")", ""),
      file_of("cm", R"("bust_girth": [92, 925])", ""),
      file_of("cm", R"("bust_girth": [])", ""),
      file_of("cm", R"("bust_girth": null)", ""),
      file_of("cm", R"("bust": 92)", ""),
      file_of("cm", R"("waist_girth": 70)", ""),
      file_of("mm", R"("bust_girth": 92)", ""),
      file_of("cm", R"("bust_girth": 92)", R"(, "ease": {"bust_girth": 21})"),
      file_of("in", R"("bust_girth": 36)", R"(, "ease": {"bust_girth": 8})"),
      file_of("cm", R"("bust_girth": 92)", R"(, "fittings": [{}])"),
      file_of("cm", R"("bust_girth": 92)", R"(, "colour": 1)"),
  };
  for (const std::string& text : files) {
    INFO(text);
    CHECK_FALSE(refusal(text).code.empty());
    CHECK_FALSE(check.accepts(Json::parse(text)));
  }
}

}  // namespace
}  // namespace blockwright
