#include "blockwright/base/printable.hpp"
#include "blockwright/write/writers.hpp"
#include "write/drawings.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <sstream>

using namespace blockwright_tests;
using nlohmann::json;

namespace {

std::string json_of(const Pattern& pattern) {
  std::ostringstream out;
  write_pattern_json(out, pattern);
  return out.str();
}

/// Numbers that decimals cannot hold: they must come back to the last bit.
constexpr double kThird = 1.0 / 3.0;
constexpr double kTiny = 1e-17;

Piece front() {
  Piece piece{"front", {}, {}, {}, {}, {}, {{30, 40}, {30, 180}}, CutOn::Pair};
  Edge waist{"waist", EdgeRole::Hem, Path::through({{0, 0}, {60 + kThird, kTiny}})};
  Edge side{"side", EdgeRole::Seam, {}};
  side.path.add(Segment{{60 + kThird, kTiny}, {70.1, 100}});
  side.path.add(CubicCurve{{70.1, 100}, {71.7, 120}, {40, 200.2}, {0, 0}});
  piece.edges = {waist, side};
  piece.darts = {{"waist dart", "waist", {20, 90}, {20, 70}, {Point{10, 0}, {30.3, 0}}, {20, -1}}};
  piece.notches = {{"side.single", "side", 12.25, 2, "back", "side"}};
  piece.balance_lines = {{"bust line", Path::through({{0, 90}, {69, 90}})}};
  piece.landmarks = {{"bust_point", {20, 90}}, {"nape", {0, kThird}}};
  return piece;
}

Pattern sample() {
  return {{front(), {"back", {}, {}, {}, {}, {}, {}, CutOn::Fold}},
          {{"side", {{"front", "side"}}, {{"back", "side"}}, 1.5 * kThird}}};
}

Point point_of(const json& pair) {
  REQUIRE(pair.size() == 2);
  return {pair[0].get<double>(), pair[1].get<double>()};
}

}  // namespace

TEST_CASE("a pattern file names its format, its unit and its pieces") {
  const json file = json::parse(json_of(sample()));
  CHECK(file.at("format") == "blockwright-pattern-1");
  CHECK(file.at("unit") == "mm");
  REQUIRE(file.at("pieces").size() == 2);
  CHECK(file["pieces"][0].at("name") == "front");
  CHECK(file["pieces"][0].at("cut_on") == "pair");
  CHECK(file["pieces"][1].at("cut_on") == "fold");
  CHECK(file["pieces"][1].at("edges").empty());
  CHECK(json::parse(json_of({})).at("pieces").empty());
}

TEST_CASE("edges come back in order with every number to the last bit") {
  const Piece piece = front();
  const json edges = json::parse(json_of(sample())).at("pieces")[0].at("edges");
  REQUIRE(edges.size() == piece.edges.size());
  for (std::size_t i = 0; i < edges.size(); ++i) {
    CAPTURE(i);
    CHECK(edges[i].at("name") == piece.edges[i].name);
    CHECK(edges[i].at("role") == edge_role_name(piece.edges[i].role));
    Path path;
    Point at;
    for (const json& stroke : edges[i].at("path")) {
      const auto p = [&](std::size_t k) {
        return Point{stroke[k].get<double>(), stroke[k + 1].get<double>()};
      };
      if (stroke[0] == "L") path.add(Segment{at, p(1)});
      if (stroke[0] == "C") path.add(CubicCurve{at, p(1), p(3), p(5)});
      at = p(stroke.size() - 2);
    }
    CHECK(path == piece.edges[i].path);
  }
}

TEST_CASE("darts, notches, lines, landmarks, grain and seams come back") {
  const Piece piece = front();
  const json file = json::parse(json_of(sample()));
  const json& read = file["pieces"][0];
  const json& dart = read.at("darts").at(0);
  CHECK(dart.at("name") == "waist dart");
  CHECK(dart.at("edge") == "waist");
  CHECK(point_of(dart.at("apex")) == piece.darts[0].apex);
  CHECK(point_of(dart.at("point")) == piece.darts[0].point);
  CHECK(point_of(dart.at("legs").at(0)) == piece.darts[0].legs[0]);
  CHECK(point_of(dart.at("legs").at(1)) == piece.darts[0].legs[1]);
  CHECK(point_of(dart.at("peak")) == piece.darts[0].peak);
  const json& notch = read.at("notches").at(0);
  CHECK(notch.at("along") == 12.25);
  CHECK(notch.at("count") == 2);
  CHECK(notch.at("mate_piece") == "back");
  CHECK(distance(point_of(notch.at("at")), point_at_length(piece.edges[1].path, 12.25)) == 0.0);
  CHECK(read.at("balance_lines").at(0).at("path") ==
        json::parse(R"([["M", 0, 90], ["L", 69, 90]])"));
  CHECK(point_of(read.at("landmarks").at("nape")) == piece.landmarks[1].at);
  CHECK(point_of(read.at("grain").at(1)) == piece.grainline.b);
  const json& seam = file.at("seams").at(0);
  CHECK(seam.at("a") == json::parse(R"([["front", "side"]])"));
  CHECK(seam.at("b").at(0).at(1) == "side");
  CHECK(seam.at("ease_in") == 1.5 * kThird);
}

TEST_CASE("a pattern file has one edge, dart, notch or seam to a line") {
  std::istringstream lines(json_of(sample()));
  std::string line;
  int with_names = 0;
  while (std::getline(lines, line)) {
    INFO(line);
    if (line.find("{\"name\"") != std::string::npos) ++with_names;
    CHECK(line.find("{\"name\"") == line.rfind("{\"name\""));
    CHECK(line.find(" \n") == std::string::npos);
  }
  CHECK(with_names == 2 + 1 + 1 + 1 + 1);
}

TEST_CASE("names that are valid text come back from a pattern file as they were") {
  Piece piece = front();
  const std::string name = GENERATE("<script>\"x\"</script>", "a\\b\n\t\x01", "Łódź, שלום, перёд",
                                    "\u009b\u202e\u2028\x7f", "");
  piece.name = name;
  piece.edges[0].name = name;
  const std::string text = json_of({{piece}, {}});
  CHECK(text == printable_lines(text));
  const json file = json::parse(text);
  CHECK(file["pieces"][0].at("name") == name);
  CHECK(file["pieces"][0].at("edges")[0].at("name") == name);
}
