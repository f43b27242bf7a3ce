#include "client_text.hpp"
#include "schema_check.hpp"
#include "schema_tables.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>

namespace blockwright {
namespace {

using Json = nlohmann::json;

constexpr const char* kPublished = BLOCKWRIGHT_SOURCE_DIR "/docs/schema/client.schema.json";

std::string published() {
  std::ifstream file(kPublished);
  REQUIRE(file.good());
  return {std::istreambuf_iterator<char>(file), {}};
}

Json schema() { return Json::parse(published()); }

Json published_tape() {
  return schema()["properties"]["sessions"]["items"]["properties"]["tape"]["properties"];
}

// After a change of a table run this program with BLOCKWRIGHT_APPROVE=1 in the environment.
TEST_CASE("the published schema has what the program's tables know") {
  const std::string file = published();
  const std::string anew = with_tables(nlohmann::ordered_json::parse(file)).dump(2) + '\n';
  if (std::getenv("BLOCKWRIGHT_APPROVE") != nullptr) std::ofstream(kPublished) << anew;
  CHECK(published() == anew);
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
  for (const char* name : each({"tape_cm", "tape_in", "ease_cm", "ease_in"})) {
    CHECK(whole["$defs"][name]["properties"].size() == kMeasurementCount);
  }
}

void check_limits(const MeasurementInfo& entry, const char* tape, double mm_per_unit) {
  INFO(entry.key << ' ' << tape);
  const double unit = entry.kind == MeasurementKind::Angle ? 1.0 : mm_per_unit;
  const Json limits = schema()["$defs"][tape]["properties"][std::string(entry.key)];
  const double least = limits["minimum"].get<double>() * unit;
  const double most = limits["maximum"].get<double>() * unit;
  CHECK(least >= entry.least.number() - 1e-9);
  CHECK(least <= entry.least.number() + 0.01 * unit);
  CHECK(most <= entry.most.number() + 1e-9);
  CHECK(most >= entry.most.number() - 0.01 * unit);
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

std::string sure_of(const std::string& sure) {
  return R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [
{"date": "2026-03-14", "tape": {"bust_girth": 92, "across_back": 36}, "sure": )" +
         sure + "}]}";
}

std::string fitting_of(const std::string& corrections) {
  return R"(, "fittings": [{"date": "2026-03-21", "toile": 1, "corrections": [)" + corrections +
         "]}]";
}

TEST_CASE("the schema accepts what the program reads") {
  const SchemaCheck check(schema());
  const std::string files[] = {
      file_of("cm", R"("bust_girth": 92.5)", ""),
      file_of("cm", R"("bust_girth": [92.5, 93], "shoulder_slope": 22)", R"(, "fittings": [])"),
      file_of("in", R"("bust_girth": "36 1/2", "shoulder_slope": 22)", ""),
      file_of("in", R"("bust_girth": ["36 1/2", 36, "36"])", R"(, "ease": {"bust_girth": "-1/2"})"),
      file_of("cm", R"("bust_girth": 92.5, "shoulder_slope": null, "hip_girth": null)", ""),
      file_of("in", R"("bust_girth": 36, "shoulder_slope": null, "hip_girth": null)", ""),
      file_of("cm", R"("bust_girth": 60)", R"(, "ease": {"shoulder_slope": -15})"),
      file_of("cm", R"("bust_girth": 92)", R"(, "$schema": "client.schema.json")"),
      file_of("cm", R"("bust_girth": 92)",
              R"(, "fittings": [{"date": "2026-03-21", "toile": 1, "by": "R.", "note": "linen"}])"),
      file_of("cm", R"("bust_girth": 92)", fitting_of(R"({"lower": "front_neck", "by": 10})")),
      file_of("in", R"("bust_girth": 36)",
              fitting_of(R"({"lower": "front_neck", "by": "1/2", "as": "length"})")),
      file_of("cm", R"("bust_girth": 92)",
              fitting_of(R"({"take_in": "side", "by": 1, "as": "per_seam", "side": "left",
                             "seen": "slack", "withdrawn": true})")),
      file_of("cm", R"("bust_girth": 92)",
              fitting_of(R"({"lower": "one_shoulder", "by": 1, "side": "right"})")),
      sure_of("[]"),
      sure_of(R"(["across_back", "bust_girth"])"),
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
      file_of("cm", R"("bust": 92)", ""),
      file_of("cm", R"("waist_girth": 70)", ""),
      file_of("mm", R"("bust_girth": 92)", ""),
      file_of("cm", R"("bust_girth": 92)", R"(, "ease": {"bust_girth": 21})"),
      file_of("in", R"("bust_girth": 36)", R"(, "ease": {"bust_girth": 8})"),
      file_of("cm", R"("bust_girth": 92)", R"(, "fittings": [{}])"),
      sure_of(R"("across_back")"),
      sure_of("[36]"),
      sure_of(R"(["across_bak"])"),
      sure_of(R"(["across_back", "across_back"])"),
      file_of("cm", R"("bust_girth": 92)", R"(, "colour": 1)"),
      file_of("cm", R"("bust_girth": 92)",
              R"(, "fittings": [{"date": "2026-03-21", "toile": 1.5}])"),
      file_of("cm", R"("bust_girth": 92)", R"(, "fittings": [{"date": "2026-03-21", "toile": 0}])"),
  };
  for (const std::string& text : files) {
    INFO(text);
    CHECK_FALSE(refusal(text).code.empty());
    CHECK_FALSE(check.accepts(Json::parse(text)));
  }
}

TEST_CASE("the schema refuses the corrections that the program refuses") {
  const SchemaCheck check(schema());
  const std::string corrections[] = {
      R"({})",
      R"({"by": 1})",
      R"({"lower": "front_neck"})",
      R"({"lower": "front_neck", "by": 0})",
      R"({"lower": "front_neck", "by": -1})",
      R"({"lower": "front_neck", "by": 10.1})",
      R"({"lower": "front_neck", "by": "1/2"})",
      R"({"lower": "front_nek", "by": 1})",
      R"({"lower": "across_back", "by": 1})",
      R"({"drop": "front_neck", "by": 1})",
      R"({"lower": "front_neck", "raise": "underarm", "by": 1})",
      R"({"lower": "front_neck", "by": 1, "as": "per_seam"})",
      R"({"lower": "front_neck", "by": 1, "side": "middle"})",
      R"({"lower": "front_neck", "by": 1, "withdrawn": "yes"})",
      R"({"lower": "front_neck", "by": 1, "stage": 2})",
      R"({"lower": "one_shoulder", "by": 1})",
      R"({"lower": "one_shoulder", "by": 1, "side": "both"})",
      R"({"take_in": "side", "by": 1})",
      R"({"take_in": "side", "by": 1, "as": "length"})",
      R"({"take_in": "side", "by": 1, "as": "whole_girth", "side": "left"})",
  };
  for (const std::string& correction : corrections) {
    const std::string text = file_of("cm", R"("bust_girth": 92)", fitting_of(correction));
    INFO(text);
    CHECK_FALSE(refusal(text).code.empty());
    CHECK_FALSE(check.accepts(Json::parse(text)));
  }
}

TEST_CASE("the schema takes each pair of words with each of its ways, and no other pair") {
  const SchemaCheck check(schema());
  for (const std::string_view action : correction_actions()) {
    for (const std::string_view place : correction_places()) {
      const CorrectionWords* words = find_correction_words(action, place);
      for (const auto& [as, word, meaning] : kAmountWays) {
        Json correction{{std::string(action), place}, {"by", 1}, {"as", word}};
        if (words != nullptr && words->one_sided) correction["side"] = "left";
        const std::string text =
            file_of("cm", R"("bust_girth": 92)", fitting_of(correction.dump()));
        INFO(text);
        const bool right =
            words != nullptr && std::ranges::find(words->readings, as) != words->readings.end();
        CHECK(refusal(text).code.empty() == right);
        CHECK(check.accepts(Json::parse(text)) == right);
      }
    }
  }
}

}  // namespace
}  // namespace blockwright
