#include "blockwright/base/error.hpp"
#include "blockwright/style/style.hpp"
#include "steps.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <set>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

std::string file_with(const std::string& steps, const std::string& unit = "cm") {
  return R"({"format": "blockwright-style-1", "name": "n", "unit": ")" + unit + R"(", "steps": [)" +
         steps + "]}";
}

std::string refusal(const std::string& text) {
  try {
    read_style(text, "style.json");
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

/// A step whose texts are all "a", but for that of one key.
std::string step_with(const StepRow& row, std::string_view of, const std::string& value) {
  std::string keys;
  for (const StepKey& key : row.keys) {
    if (key.text == nullptr) continue;
    keys += (keys.empty() ? "\"" : ", \"") + std::string(key.name) +
            "\": " + (key.name == of ? value : "\"a\"");
  }
  return file_with("{\"" + std::string(row.name) + "\": {" + keys + "}}");
}

void check_refused(const std::string& text, const std::string& code, const std::string& part) {
  const std::string message = refusal(text);
  INFO(text.substr(0, 200) << "\n" << message);
  CHECK(message.find("[" + code + "] style.json") != std::string::npos);
  CHECK(message.find(part) != std::string::npos);
}

}  // namespace

TEST_CASE("Every step of a style file is read, its lengths in the file's unit") {
  const Style style = read_style(file_with(R"(
    {"pivot": {"dart": "front.shoulder", "to": "front.side:0.25", "part": 0.5, "hold_back": 2.5}},
    {"pivot": {"dart": "front.shoulder", "to": "front.waist", "angle": 8}},
    {"split": {"dart": "front.waist", "shares": [0.4, 0.6], "spacing": 3, "group": "parallel"}},
    {"merge": {"dart": "front.waist_1", "into": "front.waist_2"}},
    {"one_dart": {"into": "front.waist", "where_there": true}},
    {"dart_point": {"dart": "front.waist_2", "hold_back": 1, "where_there": false}},
    {"press": {"dart": "front.waist_2", "towards": "side"}},
    {"gathers": {"dart": "front.side", "over": 6}},
    {"ease": {"dart": "back.shoulder"}},
    {"spread": {"from": "back.waist:0.2", "to": "back.neck", "by": 4, "lines": 2, "apart": 1.5,
                "hinged": false, "gathered": false, "over": 3}},
    {"panel_seam": {"from": "front.shoulder", "to": "front.waist", "centre_panel": "a",
                    "side_panel": "b"}})"),
                                 "style.json");
  REQUIRE(style.steps.size() == 11);
  CHECK(style.name == "n");
  const auto& pivot = std::get<PivotMove>(style.steps[0]);
  CHECK(pivot.to == "front.side:0.25");
  CHECK(pivot.part == 0.5);
  CHECK(*pivot.hold_back == Approx(25.0));
  CHECK(std::get<PivotMove>(style.steps[1]).angle->degrees() == Approx(8.0));
  const auto& split = std::get<SplitMove>(style.steps[2]);
  CHECK(split.spacing == Approx(30.0));
  CHECK(split.group == DartGroup::Parallel);
  CHECK(std::get<PressMove>(style.steps[6]).towards == PressMove::Towards::Side);
  CHECK(std::get<OneDart>(style.steps[4]).into == "front.waist");
  CHECK(style.where_there == std::set<std::size_t>{4});
  CHECK(std::get<GatherMove>(style.steps[7]).over == Approx(60.0));
  CHECK(std::get<GatherMove>(style.steps[8]).kind == Fullness::Kind::Ease);
  const auto& spread = std::get<SpreadMove>(style.steps[9]);
  CHECK(spread.by == Approx(40.0));
  CHECK_FALSE(spread.hinged);
  CHECK(spread.lines == 2);
  CHECK(std::get<PanelSeam>(style.steps[10]).side_panel == "b");
}

TEST_CASE("Inches are inches; without a unit the file is in centimetres") {
  const auto point = [](const std::string& text) {
    return std::get<PointMove>(read_style(text, "s").steps[0]).hold_back;
  };
  const std::string step = R"({"dart_point": {"dart": "front.waist", "hold_back": 1}})";
  CHECK(point(file_with(step, "in")) == Approx(25.4));
  CHECK(point(R"({"format": "blockwright-style-1", "name": "n", "steps": [)" + step + "]}") ==
        Approx(10.0));
}

TEST_CASE("What a style file cannot hold is refused, naming place, key and cure") {
  check_refused("", "style.syntax", "");
  check_refused("{\n  ]", "style.syntax", "style.json:2:3");
  check_refused("[]", "style.type", "one object");
  check_refused(R"({"format": "blockwright-client-1"})", "style.format", "blockwright-style-1");
  check_refused(R"({"name": "n", "steps": []})", "style.missing", "blockwright-style-1");
  check_refused(R"({"Format": "blockwright-style-1", "name": "n", "steps": []})", "style.key",
                "did you mean \"format\"?");
  check_refused(R"({"format": "blockwright-style-1", "steps": []})", "style.missing", "name");
  check_refused(R"({"format": "blockwright-style-1", "name": "n"})", "style.missing", "steps");
  check_refused(R"({"format": "blockwright-style-1", "name": "n", "steps": {}})", "style.type",
                "steps is an object, where a list is expected");
  check_refused(file_with("", "ell"), "style.value", "known here: cm, in");
  check_refused(file_with("1"), "style.type", "steps[0]");
  check_refused(file_with("{}"), "style.type", "one key");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b"}, "split": {}})"), "style.type",
                "one key");
  check_refused(file_with(R"({"twirl": {}})"), "style.key", "known here: pivot, split, merge");
  check_refused(file_with(R"({"pivott": {}})"), "style.key", "did you mean \"pivot\"?");
  check_refused(file_with(R"({"pivot": 1})"), "style.type", "pivot is the number 1");
  check_refused(file_with(R"({"pivot": {"dart": "a"}})"), "style.missing", "\"to\" is missing");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": 3}})"), "style.type",
                "steps[0].pivot.to: to is the number 3, where a text is expected");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "part": "x"}})"), "style.type",
                "where a number is expected");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "parts": 1}})"), "style.key",
                "did you mean \"part\"?");
  check_refused(file_with(R"({"pivot": {"dart": "a", "dart": "a", "to": "b"}})"), "style.duplicate",
                "is given twice");
  check_refused(file_with(R"({"split": {"dart": "a", "shares": 2}})"), "style.type",
                "where a list is expected");
  check_refused(file_with(R"({"split": {"dart": "a", "shares": [0.5, "x"]}})"), "style.type",
                "shares[1]");
  check_refused(file_with(R"({"spread": {"from": "a", "to": "b", "hinged": 1}})"), "style.type",
                "true or false");
  check_refused(file_with(R"({"press": {"dart": "a", "towards": "left"}})"), "style.value",
                "centre, side, down, up");
  check_refused(file_with(R"({"press": {"dart": "a"}})"), "style.missing", "towards");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "part": 1e999}})"), "style.range",
                "1e999");
  check_refused(file_with(R"({"spread": {"from": "a", "to": "b", "lines": 2.5}})"), "style.type",
                "whole number");
  check_refused(file_with(R"({"spread": {"from": "a", "to": "b", "lines": 3e9}})"), "style.type",
                "whole number");
  check_refused(file_with(R"({"one_dart": {"into": "a", "where_there": "yes"}})"), "style.type",
                "steps[0].one_dart.where_there");
  check_refused(file_with(R"({"dart_point": {"dart": "a"}})"), "style.missing", "hold_back");
  check_refused(R"({"format": "blockwright-style-1", "name": " ", "steps": []})", "style.text",
                "name the garment");
  check_refused(R"({"format": "blockwright-style-1", "name": "a\nb", "steps": []})", "style.text",
                "control character");
  check_refused(std::string(200, '['), "style.size", "nest");
  check_refused(std::string(2 * 1024 * 1024, ' '), "style.size", "1 MiB");
}

// The same rule as for the texts of a client file (tests/measure/client_error_test.cpp).
TEST_CASE("Every text of a style file is printable and of at most 100 characters") {
  const std::vector<std::pair<std::string, std::string>> bad = {
      {R"("a\u001b[31m")", "style.text"}, {R"("a\nb")", "style.text"},
      {R"("\u009bm")", "style.text"},     {R"("a\u202eb")", "style.text"},
      {R"("\u2066")", "style.text"},      {R"("a\u2028")", "style.text"},
      {R"("Zo\ufffd")", "style.text"},    {'"' + std::string(101, 'w') + '"', "style.size"}};
  const std::string longest = '"' + std::string(100, 'w') + '"';
  int texts = 0;
  for (StyleStep& step : step_of_each_name()) {
    const StepRow row = row_of(step);
    for (const StepKey& key : row.keys) {
      if (key.text == nullptr) continue;
      ++texts;
      const std::string place = "steps[0]." + std::string(row.name) + "." + std::string(key.name);
      const auto with = [&](const std::string& value) { return step_with(row, key.name, value); };
      for (const auto& [value, code] : bad) check_refused(with(value), code, place);
      CHECK(refusal(with(longest)).find(place) == std::string::npos);
    }
  }
  CHECK(texts > 10);
  for (const auto& [value, code] : bad) {
    check_refused(R"({"format": "blockwright-style-1", "steps": [], "name": )" + value + "}", code,
                  " name: ");
  }
}

namespace {

std::string worn(const std::string& ease, const std::string& unit = "cm") {
  return R"({"format": "blockwright-style-1", "name": "n", "unit": ")" + unit +
         R"(", "wearing_ease": )" + ease + R"(, "steps": []})";
}

WearingEase ease_of(const std::string& ease, const std::string& unit = "cm") {
  return read_style(worn(ease, unit), "style.json").wearing_ease.value();
}

}  // namespace

TEST_CASE("What a garment is worn with is a word, or lengths in the file's unit") {
  CHECK_FALSE(read_style(file_with(""), "style.json").wearing_ease);
  for (const WearingEase& ease : kWearingEases) {
    const WearingEase read = ease_of('"' + std::string(ease.name) + '"');
    CHECK(read.name == ease.name);
    CHECK(read.bust == ease.bust);
    CHECK(read.shoulder_in == ease.shoulder_in);
  }
  CHECK_FALSE(ease_of("\"strapless\"").has_armhole);
  const std::string lengths = R"({"bust": 1.5, "waist": 1, "raise_underarm": 0.5})";
  CHECK(ease_of(lengths).bust == Approx(15.0));
  CHECK(ease_of(lengths, "in").raise_underarm == Approx(12.7));
  CHECK(ease_of(lengths).shoulder_in == 0.0);
  CHECK(ease_of(lengths).name.empty());
  check_refused(worn("3"), "style.type", "wearing_ease");
  check_refused(worn("\"sleeveles\""), "style.value", "sleeveless");
  check_refused(worn(R"({"bust": 3})"), "style.missing", "\"waist\" is missing");
  check_refused(worn(R"({"bust": 3, "waist": 2, "hip": 3})"), "style.key", "hip");
  check_refused(worn(R"({"bust": "3", "waist": 2})"), "style.type", "wearing_ease.bust");
}

TEST_CASE("An ease that no cloth can have is refused with what can be worn",
          "[kLeastWearingEase][kMostWearingEase]") {
  const auto with = [](const char* key, const std::string& value) {
    const std::string girths = std::string(key) == "bust"    ? R"("waist": 1)"
                               : std::string(key) == "waist" ? R"("bust": 1)"
                                                             : R"("bust": 1, "waist": 1)";
    return worn("{\"" + std::string(key) + "\": " + value + ", " + girths + "}");
  };
  check_refused(with("bust", "-4.1"), "style.ease", "from -4.0 to 15.0 cm");
  check_refused(with("bust", "15.1"), "style.ease", "bust is 15.1 cm");
  check_refused(with("waist", "-0.1"), "style.ease", "from 0.0 to 15.0 cm");
  check_refused(with("raise_underarm", "2.1"), "style.ease", "to 2.0 cm");
  check_refused(with("shoulder_in", "4.1"), "style.ease", "to 4.0 cm");
  CHECK(refusal(with("bust", "-4")) == "");
  CHECK(refusal(with("bust", "15")) == "");
  CHECK(refusal(with("waist", "0")) == "");
  CHECK(refusal(with("raise_underarm", "2")) == "");
  CHECK(refusal(with("shoulder_in", "4")) == "");
}

TEST_CASE("docs/schema/style.schema.json has the words of the eases and what may be asked for") {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/docs/schema/style.schema.json");
  const Json rule = Json::parse(file)["$defs"]["wearing_ease"]["oneOf"];
  Json words = Json::array();
  for (const WearingEase& ease : kWearingEases) words.push_back(ease.name);
  CHECK(rule[0]["enum"] == words);
  for (const auto& [key, value] : rule[1]["properties"].items()) {
    INFO(key);
    const bool needed = rule[1]["required"].dump().find(key) != std::string::npos;
    const std::string lengths = R"({"bust": 1, "waist": 1, ")" + key + R"(": 1})";
    if (!needed) CHECK(refusal(worn(lengths)) == "");
  }
}

// The texts of the schema are those of its file alone; the names of the table have to be there.
TEST_CASE("docs/schema/style.schema.json has the table's steps and keys, and no others") {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/docs/schema/style.schema.json");
  const Json schema = Json::parse(file);
  Json published = schema["$defs"]["step"]["properties"];
  for (StyleStep& step : step_of_each_name()) {
    const StepRow row = row_of(step);
    INFO(row.name);
    REQUIRE(published.contains(row.name));
    Json rule = published[std::string(row.name)];
    published.erase(std::string(row.name));
    if (rule.contains("$ref")) {
      rule = schema.at(Json::json_pointer(rule["$ref"].get<std::string>().substr(1)));
    }
    CHECK(rule["additionalProperties"] == false);
    std::set<std::string> required(rule["required"].begin(), rule["required"].end());
    CHECK(rule["properties"].size() == row.keys.size() + 1);
    CHECK(rule["properties"]["where_there"]["$ref"] == "#/$defs/where_there");
    for (const StepKey& key : row.keys) {
      INFO(key.name);
      const Json value = rule["properties"][std::string(key.name)];
      CHECK(value.value("$ref", value.value("type", "enum")) == key.holds);
      CHECK(value.value("enum", Json::array()) == Json(key.words));
      CHECK((required.erase(std::string(key.name)) == 1) == key.required);
    }
    CHECK(required.empty());
  }
  CHECK(published.empty());
}
