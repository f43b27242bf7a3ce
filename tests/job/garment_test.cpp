// From a style that finishes its edges to a garment on paper.
#include "blockwright/geometry/path.hpp"
#include "blockwright/job/job.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <array>
#include <cctype>
#include <cmath>
#include <map>
#include <regex>
#include <string>
#include <vector>

using namespace blockwright;
using GarmentJson = nlohmann::json;

namespace {

const char* const kGarmentClient = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "cm",
  "sessions": [{ "date": "2026-03-14", "tape": { "bust_girth": 92, "waist_girth": 74 } }]
})";

std::string style_of_steps(const std::string& steps) {
  return R"({"format": "blockwright-style-1", "name": "top", "steps": [)" + steps + "]}";
}

const std::string kAllowance = R"({"allowance": {"hem": 2.5, "centre": 2}})";

struct Finished {
  JobResult result;
  std::map<std::string, std::string> files;
};

Finished finished(const std::string& style, std::optional<CutStyle> cut = {},
                  ReportKind report = ReportKind::Json) {
  MemoryFiles files({{"odile.json", kGarmentClient}, {"top.json", style}});
  Job job;
  job.command = Command::Adapt;
  job.client = "odile.json";
  job.style = "top.json";
  job.out = "out";
  job.cut = cut;
  job.report = report;
  job.write = {OutputKind::Svg, OutputKind::Json};
  Finished done{run_job(job, files), {}};
  for (const std::string& path : done.result.files) done.files[path] = files.files.at(path);
  return done;
}

std::size_t times_in(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

// Of a cubic by its points, as chords.
double chords(const std::array<Point, 4>& p) {
  constexpr int kChords = 400;
  double sum = 0.0;
  Point before = p[0];
  for (int i = 1; i <= kChords; ++i) {
    const double t = static_cast<double>(i) / kChords, s = 1.0 - t;
    const double w[] = {s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t};
    const Point here{w[0] * p[0].x + w[1] * p[1].x + w[2] * p[2].x + w[3] * p[3].x,
                     w[0] * p[0].y + w[1] * p[1].y + w[2] * p[2].y + w[3] * p[3].y};
    sum += distance(before, here);
    before = here;
  }
  return sum;
}

// Length in mm of a stitch line of the SVG, read from its text.
double svg_length(const std::string& svg, const std::string& id) {
  std::smatch found;
  const std::regex wanted("id=\"" + id + "-stitch\"[^>]* d=\"([^\"]*)\"");
  REQUIRE(std::regex_search(svg, found, wanted));
  const std::string data = found[1];
  const std::regex token("[MLC]|-?[0-9.]+");
  std::vector<double> numbers;
  char command = 'M';
  Point last;
  double sum = 0.0;
  for (std::sregex_iterator it(data.begin(), data.end(), token), end; it != end; ++it) {
    const std::string word = it->str();
    if (std::isalpha(static_cast<unsigned char>(word[0])) != 0) {
      command = word[0];
      continue;
    }
    numbers.push_back(std::stod(word));
    if (numbers.size() < (command == 'C' ? 6U : 2U)) continue;
    const Point next{numbers[numbers.size() - 2], numbers.back()};
    if (command == 'L') sum += distance(last, next);
    if (command == 'C') {
      sum += chords({last, {numbers[0], numbers[1]}, {numbers[2], numbers[3]}, next});
    }
    last = next;
    numbers.clear();
  }
  return sum;
}

}  // namespace

TEST_CASE("A style that says its allowances is cut as a garment, without asking for it") {
  const Finished done = finished(style_of_steps(kAllowance));
  REQUIRE(done.result.exit_code == 0);
  CHECK(done.files.contains("out/odile-top-garment.svg"));
  const std::string& svg = done.files.at("out/odile-top-garment.svg");
  CHECK(times_in(svg, "class=\"stitch-line\"") == 11);  // six edges a piece, one of them a fold
  CHECK(times_in(svg, "class=\"balance-line\"") == 0);
  CHECK(svg.find("2.5 cm at waist") != std::string::npos);
  const auto pattern = GarmentJson::parse(done.files.at("out/odile-top-pattern.json"));
  std::map<std::string, double> widths;
  for (const auto& edge : pattern["pieces"][1]["edges"]) {
    widths[edge["name"]] = edge["allowance"].get<double>();
  }
  const std::map<std::string, double> expected = {{"waist", 25},    {"side", 15},
                                                  {"armhole", 10},  {"shoulder", 15},
                                                  {"neckline", 10}, {"centre_back", 20}};
  CHECK(widths == expected);
}

TEST_CASE("Whatever a style finishes, its toile, card and net are as without it") {
  const std::string hem = R"({"hem": {"above_waist": 2}})";
  for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
    const std::string name = "out/odile-top-" + std::string(cut_style_name(cut)) + ".svg";
    INFO(name);
    const Finished with = finished(style_of_steps(hem + "," + kAllowance), cut);
    REQUIRE(with.result.exit_code == 0);
    CHECK(with.files.at(name) == finished(style_of_steps(hem), cut).files.at(name));
  }
}

TEST_CASE("A garment is refused where nothing says its allowances") {
  const Finished done =
      finished(style_of_steps(R"({"hem": {"above_waist": 2}})"), CutStyle::Garment);
  CHECK(done.result.exit_code != 0);
  REQUIRE(done.result.problems.size() == 1);
  CHECK(done.result.problems.front().code == "job.cut");
  CHECK(done.files.empty());
}

TEST_CASE("A strip is as long as the edges that it binds, read from the drawing") {
  const Finished done = finished(style_of_steps(
      R"({"binding": {"runs": [["neckline"], ["armhole"]], "stretch": 0}},)" + kAllowance));
  REQUIRE(done.result.exit_code == 0);
  const std::string& svg = done.files.at("out/odile-top-garment.svg");
  const auto bindings = GarmentJson::parse(done.files.at("out/odile-top-pattern.json"))["bindings"];
  REQUIRE(bindings.size() == 2);
  const double neck = 2.0 * (svg_length(svg, "front-neckline") + svg_length(svg, "back-neckline"));
  const double armhole = svg_length(svg, "front-armhole") + svg_length(svg, "back-armhole");
  // Two ends of 15 mm.
  CHECK(bindings[0]["strip_length"].get<double>() == Approx(neck + 30.0).margin(5.0));
  CHECK(bindings[1]["strip_length"].get<double>() == Approx(armhole + 30.0).margin(5.0));
  CHECK(bindings[0]["strips"] == 1);
  CHECK(bindings[1]["strips"] == 2);
  CHECK(bindings[0]["edge_length"].get<double>() == Approx(neck).margin(0.5));
  // Bound edges are cut on the finished line, and say so.
  CHECK(svg.find("none at armhole (bound) and neckline (bound)") != std::string::npos);
  CHECK(svg.find("armhole \u2013 bound") != std::string::npos);
}

// Source: the strip round an opening and its straps is as long as their edges, the straps between
// what is sewn in at their ends (15 mm each), and two ends of 15 mm; common practice, no source.
TEST_CASE("A strip along straps is as long as edges and straps, read from the drawing") {
  const Finished done = finished(style_of_steps(
      R"({"one_dart": {"into": "front.waist"}}, {"hem": {"below_bust_point": 9}},
         {"top_edge": {"shape": "sweetheart", "straps": {"width": 2, "adjust": 3.5}}},
         {"opening": {"at": "left_side", "with": "open_zip"}},
         {"binding": {"runs": [["armhole"], ["neckline", "strap"]], "stretch": 0}},)" +
      kAllowance));
  REQUIRE(done.result.exit_code == 0);
  const std::string& svg = done.files.at("out/odile-top-garment.svg");
  const auto bindings = GarmentJson::parse(done.files.at("out/odile-top-pattern.json"))["bindings"];
  REQUIRE(bindings.size() == 2);
  const auto both = [&](const std::string& edge) {
    return svg_length(svg, "front-" + edge) + svg_length(svg, "back-" + edge);
  };
  const double strap = svg_length(svg, "strap-long-edge");
  CHECK(svg_length(svg, "strap-other-long-edge") == Approx(strap).margin(0.1));
  CHECK(strap > 250.0);
  CHECK(strap < 550.0);
  const double along = 2.0 * (both("neckline") + strap - 30.0);
  CHECK(bindings[0]["strip_length"].get<double>() == Approx(both("armhole") + 30.0).margin(5.0));
  CHECK(bindings[1]["strip_length"].get<double>() == Approx(along + 30.0).margin(5.0));
  CHECK(bindings[1]["edge_length"].get<double>() == Approx(along).margin(0.5));
}

TEST_CASE("The report says what to cut, to buy and to sew, in order") {
  const std::string steps = R"({"opening": {"at": "centre_back", "with": "open_zip"}},
    {"binding": {"runs": [["armhole"]]}},)" +
                            kAllowance;
  const Finished done = finished(style_of_steps(steps));
  REQUIRE(done.result.exit_code == 0);
  const auto making = GarmentJson::parse(done.result.output)["making"];
  CHECK(making["cut"][0] == "cloth: front 1 on the fold and back 2 as a pair");
  const std::vector<std::string> buy = making["buy"];
  REQUIRE(buy.size() >= 4);  // cloth by its width, what is counted, the zip
  CHECK(buy[0].starts_with("cloth, 90 cm "));
  CHECK_THAT(buy[0], Catch::EndsWith("cm once washed); bias strips included") ||
                         Catch::EndsWith("cm once washed); bias strips from what is left over"));
  CHECK_THAT(buy[buy.size() - 3], Catch::Contains("150 cm wide: "));
  CHECK(buy[buy.size() - 2].starts_with("counted for that: cloth folded in half "));
  CHECK(buy.back().starts_with("zip that parts in two, "));
  std::vector<std::string> begins;
  for (const std::string line : making["sew"]) begins.push_back(line.substr(0, line.find(' ')));
  REQUIRE(begins.size() == 7);
  CHECK(begins == std::vector<std::string>{"sew", "sew", "set", "sew", "face", "bind", "turn"});
  const std::string text = finished(style_of_steps(steps), {}, ReportKind::Text).result.output;
  CHECK(text.find("To sew\n   1. sew the darts") != std::string::npos);
  CHECK(GarmentJson::parse(finished(style_of_steps(steps), CutStyle::Toile).result.output)
            .contains("making") == false);
}

TEST_CASE("Facings are told and written as they are printed") {
  const Finished done =
      finished(style_of_steps(R"({"facing": {"edges": ["neckline"]}}, )" + kAllowance));
  const std::string report = done.result.output;
  CHECK(times_in(report, "sew the facings on, right sides together") == 1);
  CHECK(times_in(report, "face or line the neckline") == 0);
  const auto pattern = std::ranges::find_if(
      done.files, [](const auto& file) { return file.first.ends_with("pattern.json"); });
  REQUIRE(pattern != done.files.end());
  CHECK(GarmentJson::parse(pattern->second).at("facings").size() == 2);
}

TEST_CASE("A bodice that cannot be got into is warned of") {
  const auto codes = [](const std::string& opening) {
    const Finished done = finished(style_of_steps(opening + "," + kAllowance));
    std::vector<std::string> where;
    for (const Problem& problem : done.result.problems) {
      if (problem.code == "garment.get_in") where.push_back(problem.where);
    }
    return where;
  };
  CHECK(codes(R"({"opening": {"at": "centre_back"}})") == std::vector<std::string>{"hem"});
  CHECK(codes(R"({"opening": {"at": "centre_back", "with": "open_zip"}})").empty());
  CHECK(codes(R"({"opening": {"at": "left_side"}})") ==
        std::vector<std::string>{"hem", "neckline"});
}

TEST_CASE("A toile says where its garment opens, so that it can be put on") {
  const std::string opening = R"({"opening": {"at": "left_side", "with": "open_zip"}},)";
  const Finished toile = finished(style_of_steps(opening + kAllowance), CutStyle::Toile);
  REQUIRE(toile.result.exit_code == 0);
  const std::string& svg = toile.files.at("out/odile-top-toile.svg");
  CHECK(times_in(svg, "left side alone: zip that parts in two") == 2);
  CHECK(times_in(svg, "opening") == 0);
}
