#include "blockwright/base/error.hpp"
#include "blockwright/style/style.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

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

void check_refused(const std::string& text, const std::string& code, const std::string& part) {
  const std::string told = refusal(text);
  INFO(text << "\n" << told);
  CHECK(told.find("[" + code + "] style.json") != std::string::npos);
  CHECK(told.find(part) != std::string::npos);
}

}  // namespace

TEST_CASE("Every step of a style file is read, its lengths in the file's unit") {
  const Style style = read_style(file_with(R"(
    {"pivot": {"dart": "front.shoulder", "to": "front.side:0.25", "part": 0.5, "hold_back": 2.5}},
    {"pivot": {"dart": "front.shoulder", "to": "front.waist", "angle": 8}},
    {"split": {"dart": "front.waist", "shares": [0.4, 0.6], "spacing": 3, "group": "parallel"}},
    {"merge": {"dart": "front.waist_1", "into": "front.waist_2"}},
    {"dart_point": {"dart": "front.waist_2", "hold_back": 1}},
    {"press": {"dart": "front.waist_2", "towards": "side"}},
    {"gathers": {"dart": "front.side", "over": 6}},
    {"ease": {"dart": "back.shoulder"}},
    {"spread": {"from": "back.waist:0.2", "to": "back.neck", "by": 4, "lines": 2, "apart": 1.5,
                "hinged": false, "gathered": false, "over": 3}},
    {"panel_seam": {"from": "front.shoulder", "to": "front.waist", "centre_panel": "a",
                    "side_panel": "b"}})"),
                                 "style.json");
  REQUIRE(style.steps.size() == 10);
  CHECK(style.name == "n");
  const auto& pivot = std::get<PivotMove>(style.steps[0]);
  CHECK(pivot.to == "front.side:0.25");
  CHECK(pivot.part == 0.5);
  CHECK(*pivot.hold_back == Approx(25.0));
  CHECK(std::get<PivotMove>(style.steps[1]).angle->degrees() == Approx(8.0));
  const auto& split = std::get<SplitMove>(style.steps[2]);
  CHECK(split.spacing == Approx(30.0));
  CHECK(split.group == DartGroup::Parallel);
  CHECK(std::get<PressMove>(style.steps[5]).towards == PressMove::Towards::Side);
  CHECK(std::get<GatherMove>(style.steps[6]).over == Approx(60.0));
  CHECK(std::get<GatherMove>(style.steps[7]).kind == Fullness::Kind::Ease);
  const auto& spread = std::get<SpreadMove>(style.steps[8]);
  CHECK(spread.by == Approx(40.0));
  CHECK_FALSE(spread.hinged);
  CHECK(spread.lines == 2);
  CHECK(std::get<PanelSeam>(style.steps[9]).side_panel == "b");
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

TEST_CASE("What a style file cannot hold is refused, naming the key and the cure") {
  check_refused("", "style.syntax", "not JSON");
  check_refused("{\n  ]", "style.syntax", ":2:3: this is not JSON");
  check_refused("[]", "style.type", "not an object");
  check_refused(R"({"format": "blockwright-client-1"})", "style.format", "blockwright-style-1");
  check_refused(R"({"format": "blockwright-style-1", "steps": []})", "style.key", "name");
  check_refused(R"({"format": "blockwright-style-1", "name": "n"})", "style.type", "steps");
  check_refused(file_with("", "ell"), "style.value", "cm, in");
  check_refused(file_with("1"), "style.type", "steps[0]");
  check_refused(file_with("{}"), "style.type", "one key");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b"}, "split": {}})"), "style.type",
                "one key");
  check_refused(file_with(R"({"twirl": {}})"), "style.key", "steps are: dart_point, ease");
  check_refused(file_with(R"({"pivot": {"dart": "a"}})"), "style.key", "steps[0].pivot.to");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": 3}})"), "style.type", "3 is not a text");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "part": "x"}})"), "style.type",
                "is not a number");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "parts": 1}})"), "style.key",
                "known are: angle, dart, hold_back, part, to");
  check_refused(file_with(R"({"pivot": {"dart": "a", "dart": "a", "to": "b"}})"), "style.key",
                "stands twice");
  check_refused(file_with(R"({"split": {"dart": "a", "shares": 2}})"), "style.type",
                "a list of numbers");
  check_refused(file_with(R"({"spread": {"from": "a", "to": "b", "hinged": 1}})"), "style.type",
                "true or false");
  check_refused(file_with(R"({"press": {"dart": "a", "towards": "left"}})"), "style.value",
                "centre, side, down, up");
  check_refused(file_with(R"({"pivot": {"dart": "a", "to": "b", "part": 1e999}})"), "style.syntax",
                "");
  check_refused(file_with(R"({"spread": {"from": "a", "to": "b", "lines": 2.5}})"), "style.type",
                "whole number");
  check_refused(file_with(R"({"dart_point": {"dart": "a"}})"), "style.key", "hold_back");
  check_refused(R"({"format": "blockwright-style-1", "name": " ", "steps": []})", "style.value",
                "name");
  check_refused(R"({"format": "blockwright-style-1", "name": "a\nb", "steps": []})", "style.value",
                "control");
  check_refused(std::string(200, '['), "style.syntax", "");
  check_refused(std::string(2 * 1024 * 1024, ' '), "style.syntax", "1 MiB");
}
