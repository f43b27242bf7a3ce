// Two versions side by side.
#include "blockwright/report/comparison.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <utility>

using namespace blockwright;

namespace {

Comparison two_versions() {
  Comparison c;
  c.before = {"Odile", "Odile, session 2026-03-14, no corrections", {}, {}};
  c.after = {"Odile", "Odile, session 2026-09-20, no corrections", {}, {}};
  c.before.stage.lengths = {{"front.side", 180.0}, {"front.centre_front", 300.0}};
  c.after.stage.lengths = {
      {"front.side", 170.0}, {"front.centre_front", 300.0}, {"back.yoke", 50.0}};
  c.before.stage.darts = {{"back", "waist_outer", Angle::degrees(9.0), 20.0, 120.0}};
  c.points = {{"front.front_neck_point", Length::mm(0.0), Length::mm(-10.0)},
              {"front.bust_point", Length::mm(0.6), Length::mm(0.6)}};
  return c;
}

}  // namespace

TEST_CASE("A comparison shows what differs, and points by one name for their piece") {
  const std::string text = comparison_text(two_versions());
  CHECK_THAT(text, Catch::StartsWith("Odile, two versions compared, cm\n"));
  CHECK_THAT(text, Catch::Contains("front side                        18.0      17.0      -1.0"));
  CHECK_THAT(text, Catch::Contains("back waist outer                  9.0°         -      gone"));
  CHECK_THAT(text,
             Catch::Contains("\n  front neck point                   0.0 out,    1.0 down\n"));
  CHECK(text.find("centre front") == std::string::npos);
  CHECK(text.find("bust point") == std::string::npos);
}

TEST_CASE("A comparison as JSON has all values, in mm and degrees") {
  const auto json = nlohmann::json::parse(comparison_json(two_versions()));
  CHECK(json["lengths"].size() == 3);
  CHECK(json["lengths"][2]["before"].is_null());
  CHECK(json["dart_angles"][0]["before"] == 9.0);
  CHECK(json["points"][0]["y_mm"] == -10.0);
}

TEST_CASE("A piece that became a right and a left one is compared with each of them") {
  Comparison c = two_versions();
  c.after.stage.lengths = {{"front_right.centre_front", 300.0},
                           {"front_right.side", 174.0},
                           {"front_left.side", 180.0},
                           {"front_left.centre_front", 300.0}};
  c.after.stage.darts = {};
  c.before.stage.darts = {};
  c.points = {{"front_right.underarm_point", Length::mm(1.0), Length::mm(-6.0)}};
  const auto holds = [&](const char* words) {
    CHECK_THAT(comparison_text(c), Catch::Contains(words));
  };
  holds("\n  right front side                  18.0      17.4      -0.6\n");
  holds("\n  right front underarm point         0.1 out,    0.6 down\n");
  const std::string text = comparison_text(c);
  for (const char* word : {"new", "gone", "left front side", "front right"}) {
    INFO(word);
    CHECK(text.find(word) == std::string::npos);
  }
  std::swap(c.before, c.after);
  holds("\n  right front side                  17.4      18.0      +0.6\n");
}
