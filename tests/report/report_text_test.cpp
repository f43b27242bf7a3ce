// A report of plain values, in tables and as JSON.
#include "blockwright/report/fitting_report.hpp"
#include "blockwright/report/report.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace blockwright;

namespace {

using Json = nlohmann::json;
using enum MeasurementName;

DartMeasure dart(const char* name, double intake) {
  return {"back", name, Angle::degrees(10.0), intake, 150.0};
}

Report one(Unit unit) {
  Report report;
  report.client = "Odile";
  report.session = "2026-03-14";
  report.garment = "bodice block";
  report.cut = "toile";
  report.unit = unit;
  report.measure_back = {
      {ArmscyeGirth, Source::Taped, Length::mm(401), Length::mm(35.9), {}, Length::mm(436.9)}};
  report.stages = {{"drafted",
                    {{"front.armhole", 217.1},
                     {"back.armhole", 218.6},
                     {"armhole", 435.7},
                     {"front.neckline", 120.6},
                     {"back.neckline", 80.6},
                     {"neckline", 402.4}},
                    {dart("waist_outer", 20.0)},
                    {}}};
  report.blended = {{"back", "waist", "waist_outer", Angle::degrees(-1.5), 0.4}};
  report.problems = {{Severity::Warning, "draft.limited", "back.waist_outer", "so it is", ""}};
  return report;
}

}  // namespace

TEST_CASE("Body, ease and difference add up to the pattern, and the halves to the whole") {
  const std::string inches = report_text(one(Unit::Inch));
  // 401 mm = 15.787 in, 35.9 mm = 1.413 in: 15 13/16 + 1 7/16; 436.9 mm alone would be 17 3/16.
  CHECK_THAT(inches, Catch::Contains(
                         "armscye girth               15 13/16    1 7/16    17 1/4           0\n"));
  // 217.1 mm = 8.547 in, 218.6 mm = 8.606 in: 8 9/16 + 8 5/8; 435.7 mm alone would be 17 1/8.
  CHECK_THAT(inches, Catch::Contains("armhole                      17 3/16\n"));
  const std::string cm = report_text(one(Unit::Cm));
  // 12.1 + 8.1, twice for both halves of the body; 402.4 mm alone would be 40.2.
  CHECK_THAT(cm, Catch::Contains("  neckline                        40.4\n"));
}

TEST_CASE("Names are words, seams are blended, and small lengths are in the person's unit") {
  const std::string text = report_text(one(Unit::Inch));
  CHECK_THAT(text, Catch::Contains("Blended across the closed darts\n  back waist"));
  CHECK_THAT(text, Catch::Contains("a turn of 1.5° smoothed, the line moved 0.016 in at most"));
  CHECK_THAT(text, Catch::Contains("  back waist outer"));
  CHECK_THAT(text, Catch::Contains("warning [draft.limited] back waist outer: so it is"));
  CHECK(text.find('_') == std::string::npos);
  CHECK_THAT(report_text(one(Unit::Cm)), Catch::Contains("the line moved 0.4 mm at most"));
}

TEST_CASE("The stages are in running order, the last with what it moved") {
  Report report = one(Unit::Inch);
  Stage styled{"styled", {{"back.waist", 200.0}}, {dart("waist", 20.0)}, {}};
  styled.moved = {
      {"spread by " + Length::inches(0.5),
       {{"back.waist", Length::mm(180), Length::mm(200), Length::mm(210), Length::mm(230), {}},
        {"back.yoke", {}, Length::mm(300), {}, Length::mm(300), {}}},
       {{dart("waist_outer", 20.0), {}}, {{}, dart("waist", 20.0)}},
       {{Severity::Note, "dart.fullness", "back.waist", "it is " + Length::cm(2.54), ""}}}};
  report.stages.push_back(styled);
  const Json json = Json::parse(report_json(report));
  REQUIRE(json["stages"].size() == 2);
  CHECK(json["stages"][0]["name"] == "drafted");
  CHECK(json["stages"][0]["moved"].empty());
  const Json& moved = json["stages"][1]["moved"][0];
  CHECK(moved["did"] == "spread by 1/2 in");
  CHECK(moved["lengths"][0]["cut_after_mm"] == 230.0);
  CHECK(moved["lengths"][1]["before_mm"].is_null());
  CHECK(moved["darts"][0]["after"].is_null());
  CHECK(moved["darts"][1]["after"]["name"] == "waist");
  CHECK(moved["remarks"][0]["message"] == "it is 1 in");
  CHECK(json["blended"][0]["dart"] == "back.waist_outer");
  const std::string text = report_text(report);
  CHECK_THAT(text, Catch::Contains("\nspread by 1/2 in (in)\n"));
  CHECK_THAT(text, Catch::Contains("-> closed"));
  CHECK_THAT(text, Catch::Contains("new, cut 11 13/16, sewn 11 13/16"));
  CHECK_THAT(made_lines(report)[2], Catch::Contains("  back waist: it is 1 in"));
}

TEST_CASE("What a correction changed adds up as printed") {
  FittingReport report;
  report.unit = Unit::Inch;
  FittingLine line;
  line.correction = {
      1,
      "2026-03-21",
      1,
      {"lower", "front_neck", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false}};
  line.order = order_corrections({line.correction.correction}).at(0);
  // 100.6 mm = 3.961 in and 102.4 mm = 4.031 in: 3 15/16 and 4 1/16 as printed, 1/8 between them;
  // 1.8 mm alone would be 1/16.
  line.change = Change{
      {},
      {{"front.centre_front", Length::mm(100.6), Length::mm(102.5), {}, {}, Length::mm(1.8)}},
      {},
      {}};
  report.lines = {line};
  const std::string text = fitting_text(report);
  CHECK_THAT(text, Catch::Contains("lower front neck 1/4 in (2026-03-21, toile 1)"));
  CHECK_THAT(text, Catch::Contains("  centre front   "));
  CHECK_THAT(text, Catch::Contains("3 15/16 -> 4 1/16   (+1/8; expected +1/16)"));
}

TEST_CASE(
    "A length that moved by less than 0.05 mm is left out, either way, unless it was expected") {
  const auto text_of_move = [](double by, std::optional<Length> predicted) {
    FittingReport report;
    FittingLine line;
    line.correction = {
        1,
        "2026-03-21",
        1,
        {"lower", "front_neck", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false}};
    line.order = order_corrections({line.correction.correction}).at(0);
    const Length before = Length::mm(300.0);
    line.change =
        Change{{}, {{"front.side", before, before + Length::mm(by), {}, {}, predicted}}, {}, {}};
    report.lines = {line};
    return fitting_text(report);
  };
  const std::string shown = "  front side  ";
  for (const double by : {0.051, -0.051}) CHECK_THAT(text_of_move(by, {}), Catch::Contains(shown));
  for (const double by : {0.049, -0.049}) {
    CHECK_THAT(text_of_move(by, {}), !Catch::Contains(shown));
    CHECK_THAT(text_of_move(by, Length::mm(6.0)), Catch::Contains(shown));
  }
}

// A correction that moved the waist by 20 mm, and before it in the list the front waist by 10.
FittingReport report_of(const std::string& action, const std::string& place) {
  const Correction correction{action, place, Length::mm(10.0), AmountAs::PerHalf, BodySide::Both,
                              "",     false};
  FittingLine line;
  line.correction = {1, "2026-03-21", 1, correction};
  line.order = order_corrections({correction}).at(0);
  line.change = Change{{},
                       {{"front.waist", Length::mm(212), Length::mm(202), {}, {}, {}},
                        {"waist", Length::mm(765), Length::mm(745), {}, {}, {}}},
                       {},
                       {}};
  FittingReport report;
  report.lines = {line};
  return report;
}

TEST_CASE("What the fitter watches comes first, and what moves besides is said in words") {
  const std::string text = fitting_text(report_of("take_in", "front_waist_dart"));
  CHECK(text.find("       waist ") < text.find("       front waist "));
  CHECK_THAT(text, Catch::Contains("\n       besides: all at this dart, to nothing at the bust "
                                   "line; the side waist point stays\n"));
  CHECK_THAT(fitting_text(report_of("let_out", "front_waist_dart")),
             Catch::Contains("\n       besides: room at the waist and under the bust, none at the "
                             "bust line"));
  CHECK_THAT(fitting_text(report_of("scoop", "front_armhole")),
             Catch::Contains("\n       what moves: the armhole line at the across point"));
  CHECK_THAT(fitting_text(report_of("lower", "front_neck")), !Catch::Contains("besides"));
  const Json json = Json::parse(fitting_json(report_of("let_out", "waist_darts")));
  CHECK_THAT(json["corrections"][0]["says"].get<std::string>(), Catch::StartsWith("room at the"));
  CHECK_FALSE(
      Json::parse(fitting_json(report_of("lower", "front_neck")))["corrections"][0].contains(
          "says"));
}

TEST_CASE("Of one side alone nothing is said of both together") {
  FittingReport report = report_of("widen", "side_neck");
  report.lines[0].correction.correction.as = AmountAs::Length;
  CHECK_THAT(fitting_text(report), Catch::Contains("; straight across both together change"));
  report.lines[0].correction.correction.side = BodySide::Left;
  CHECK_THAT(fitting_text(report),
             Catch::Contains("besides: the side neck point moves so far along its shoulder\n"));
  CHECK(Json::parse(fitting_json(report))["corrections"][0]["says"] ==
        "the side neck point moves so far along its shoulder");
}

TEST_CASE("What a newer tape has left of a correction is said with what it was until then") {
  FittingReport report = report_of("take_in", "waist");
  report.lines[0].correction.before_new_tape = Length::cm(2.0);
  CHECK_THAT(fitting_text(report), Catch::Contains("toile 1, was 2 cm until the newer tape)"));
}

TEST_CASE("Beside the body's side length it says that the underarm drop is its ease") {
  Report report = one(Unit::Cm);
  report.measure_back.push_back(
      {SideLength, Source::Taped, Length::mm(200), Length::mm(-20), {}, Length::mm(180)});
  const std::string text = report_text(report);
  const std::string words = "  its ease is the underarm drop\n";
  const std::size_t at = text.find("  side length  ");
  REQUIRE(at != std::string::npos);
  CHECK(text.substr(at, text.find('\n', at) + 1 - at).ends_with(words));
  CHECK(text.find(words) == text.rfind(words));
}

TEST_CASE("What to look at before cutting is said where something was written to cut") {
  Report report = one(Unit::Cm);
  CHECK_THAT(report_text(report), Catch::EndsWith("\nNothing was written.\n"));
  CHECK_THAT(report_text(report), !Catch::Contains("Before cutting"));
  report.files = {"out/odile-toile.svg"};
  CHECK_THAT(report_text(report),
             Catch::Contains("\nWritten\n  out/odile-toile.svg\n\nBefore cutting\n"));
}

TEST_CASE("The steps of a draft say each length once, in the person's unit, piece by piece") {
  const DraftLog log = {
      {"front",
       "nape",
       {0.0, 400.0},
       "{0} up from the waist, then {1} down",
       {400.0, 20.0},
       "rule"},
      {"front", "tip", {120.0, 381.0}, "on the line", {}, "shoulder slope"},
      {"back", "tip", {130.0, 390.5}, "go out by {0}", {12.7}, "shoulder length"}};
  CHECK_THAT(draft_steps_text("Odile", Unit::Cm, log),
             Catch::EndsWith(
                 "\nHalf front\n"
                 "  1. nape (out 0.0, up 40.0): 40 cm up from the waist, then 2 cm down. [rule]\n"
                 "  2. tip (out 12.0, up 38.1): on the line. [shoulder slope]\n"
                 "\nHalf back\n"
                 "  3. tip (out 13.0, up 39.1): go out by 1.3 cm. [shoulder length]\n\n"));
  CHECK_THAT(
      draft_steps_text("Odile", Unit::Inch, log),
      Catch::Contains("  3. tip (out 5 1/8, up 15 3/8): go out by 1/2 in. [shoulder length]\n"));
}

TEST_CASE("On paper steps are words without underlines") {
  Report report = one(Unit::Cm);
  Stage styled{"styled", {}, {}, {}};
  styled.moved = {{"pivot front.waist_outer to side", {}, {}, {}}};
  report.stages.push_back(styled);
  CHECK(made_lines(report) ==
        std::vector<std::string>{"bodice block:", "pivot front.waist outer to side"});
}

TEST_CASE("A problem in JSON names its measurements, its options and the limit that it passed") {
  Problem wide{Severity::Warning, "measure.spread", "waist_girth", "too far apart",
               "take it again"};
  wide.measurements = {"waist_girth"};
  wide.limit.most = Length::mm(10);
  Problem slope{Severity::Error, "client.range", "shoulder_slope", "outside", "", {}, {"side"}};
  slope.limit = {.least = Measure::degrees(5), .most = Measure::degrees(45)};
  const auto json =
      nlohmann::json::parse(failure_json("odile.json", {wide, slope, {}}))["problems"];
  CHECK(json[0]["measurements"] == nlohmann::json{"waist_girth"});
  CHECK(json[0]["limit"] == nlohmann::json{{"most_mm", 10.0}});
  CHECK_FALSE(json[0].contains("options"));
  CHECK(json[1]["options"] == nlohmann::json{"side"});
  CHECK(json[1]["limit"] == nlohmann::json{{"least_deg", 5.0}, {"most_deg", 45.0}});
  for (const char* key : {"measurements", "options", "limit"}) CHECK_FALSE(json[2].contains(key));
}

TEST_CASE("A tape is worth taking that does a quarter of a correction or more", "[kLeastHelp]") {
  const auto is_worth = [](double share) {
    Doubt doubt{MeasurementName::WaistGirth, Length::mm(740.0), Length::mm(720.0), false, {}};
    doubt.instead = DraftedInstead{"waist", Length::mm(-20.0), share * Length::mm(-20.0), false};
    return is_worth_taping(doubt);
  };
  CHECK(is_worth(kLeastHelp));
  CHECK(is_worth(1.0));
  CHECK_FALSE(is_worth(kLeastHelp - 0.01));
  CHECK_FALSE(is_worth(-1.0));
}
