// Which tape a correction calls into doubt, and what the paper shows when that tape is drafted in
// its place; how the fittings are told once a newer tape is there.
#include "blockwright/job/job.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

/// A full set of a person who does not exist, in cm.
Json lavinia() {
  return Json::parse(R"({
    "format": "blockwright-client-1", "name": "Lavinia Moth", "unit": "cm",
    "sessions": [{ "date": "2026-01-10", "tape": {
      "bust_girth": 94.0, "upper_chest_girth": 88.0, "underbust_girth": 79.0, "waist_girth": 74.0,
      "neck_base_girth": 37.0, "armscye_girth": 40.0, "shoulder_length": 12.4,
      "front_shoulder_slant": 42.5, "back_shoulder_slant": 42.0, "back_waist_length": 40.0,
      "front_waist_length": 34.5, "side_neck_to_bust_point": 26.5, "side_neck_to_waist": 42.5,
      "bust_point_width": 18.6, "across_back": 34.0, "across_front": 32.0, "side_length": 20.0,
      "scye_depth": 19.0 } }] })");
}

/// The same body in inches, to a sixteenth.
Json in_inches(Json client) {
  client["unit"] = "in";
  for (Json& value : client["sessions"][0]["tape"]) {
    value = std::round(value.get<double>() / 2.54 * 16.0) / 16.0;
  }
  return client;
}

FitJob fitted_with(const std::string& words) {
  FitJob job;
  job.client = "lavinia.json";
  job.add = {words};
  job.date = "2026-01-20";
  job.toile = 1;
  return job;
}

struct Fitted {
  std::string text;
  Json report;
};

/// Her file with one correction: what is said of it, and the same as JSON.
Fitted said_of(const Json& client, const std::string& words) {
  Fitted fitted;
  for (const ReportKind kind : {ReportKind::Text, ReportKind::Json}) {
    MemoryFiles files(std::map<std::string, std::string>{{"lavinia.json", client.dump()}});
    FitJob job = fitted_with(words);
    job.report = kind;
    const JobResult result = run_fit(job, files);
    for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
    REQUIRE(result.exit_code == 0);
    if (kind == ReportKind::Text) fitted.text = result.output;
    if (kind == ReportKind::Json) fitted.report = Json::parse(result.output);
  }
  return fitted;
}

/// A length of the first correction of a report, in mm.
double length_in(const Json& report, const std::string& name, const char* when) {
  for (const Json& moved : report["corrections"][0]["moved"]) {
    if (moved["name"] == name) return moved[when].get<double>();
  }
  FAIL(name << " did not move");
  return 0.0;
}

/// Her fittings toile by toile, after a correction and whatever else is in the file.
std::string story_of(Json client, const std::string& words, const Json& session) {
  MemoryFiles files(std::map<std::string, std::string>{{"lavinia.json", client.dump()}});
  REQUIRE(run_fit(fitted_with(words), files).exit_code == 0);
  Json now = Json::parse(files.files["lavinia.json"]);
  if (!session.is_null()) now["sessions"].push_back(session);
  files.files["lavinia.json"] = now.dump();
  FitJob list;
  list.client = "lavinia.json";
  list.list = true;
  return run_fit(list, files).output;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("What is said of a tape in doubt is what a draft with that tape prints") {
  struct Tried {
    const char* name;
    const char* watched;
  };
  constexpr Tried kTried[] = {{"narrow bust_points 0.6 cm per_half", "bust_points"},
                              {"narrow bust_points 1/4 in per_half", "bust_points"},
                              {"widen bust_points 0.6 cm per_half", "bust_points"},
                              {"lower underarm 0.6 cm", "front.side"},
                              {"lower underarm 1/4 in", "front.side"},
                              {"raise underarm 1/4 in", "front.side"},
                              {"take_in waist 1 cm per_half", "waist"}};
  for (const bool inches : {false, true}) {
    for (const Tried& tried : each(kTried)) {
      const Json client = inches ? in_inches(lavinia()) : lavinia();
      const Fitted first = said_of(client, tried.name);
      const Json& doubt = first.report["corrections"][0]["doubts"];
      INFO(tried.name << doubt.dump() << first.text);
      REQUIRE(doubt["instead"]["length"] == tried.watched);
      Json again = client;
      again["sessions"][0]["tape"][doubt["name"].get<std::string>()] =
          doubt["would_do"].get<double>() / (inches ? 25.4 : 10.0);
      const Json drafted = said_of(again, tried.name).report;
      const double step = inches ? 25.4 / 16.0 : 1.0;
      const double change = length_in(drafted, tried.watched, "before_mm") -
                            length_in(first.report, tried.watched, "before_mm");
      CHECK(doubt["instead"]["drafted_mm"].get<double>() == Approx(change).margin(step));
      const bool same = says(first.text, " would have made this correction unnecessary");
      CHECK(says(first.text, "drafted with ") == !same);
      const double asked = length_in(first.report, tried.watched, "after_mm") -
                           length_in(first.report, tried.watched, "before_mm");
      CHECK((std::abs(change - asked) <= step) == same);
    }
  }
}

TEST_CASE("A tape that can do only a part of a correction is not said to do it all") {
  // The armhole's length and the drop of the underarm meet half way.
  Json client = lavinia();
  client["sessions"][0]["tape"]["armscye_girth"] = 44.0;
  const std::string text = said_of(client, "lower underarm 1.0").text;
  INFO(text);
  CHECK(says(text,
             "not mended by a tape: side length, now 20.0 cm; drafted with 19.0 cm the front "
             "side would have 0."));
  CHECK(says(text, " cm less, so that another tape would help little\n"));
  CHECK_FALSE(says(text, "calls into doubt"));
  client["sessions"][0]["tape"]["armscye_girth"] = 43.0;
  const std::string half = said_of(client, "lower underarm 1.0").text;
  INFO(half);
  CHECK(says(half, " cm less; this correction makes 1.0 cm less\n"));
}

TEST_CASE(
    "A measurement that was never taped is told as estimated, and whether a tape would help") {
  Json client = lavinia();
  client["sessions"][0]["tape"].erase("bust_point_width");
  const std::string text = said_of(client, "narrow bust_points 0.6 per_half").text;
  INFO(text);
  CHECK(says(text, "calls into doubt: bust point width, never taped, estimated at "));
  const std::string story = story_of(client, "narrow bust_points 0.6 per_half", {});
  INFO(story);
  CHECK_FALSE(says(story, "Take these tapes again"));
  CHECK(says(story, "\nNever taped\n  bust point width: estimated at "));
  CHECK(says(story, " cm; taping it would help\n"));
  // Where the slants are taped the slope is not drafted by.
  const std::string slope = story_of(lavinia(), "lower shoulder_point 0.6", {});
  INFO(slope);
  CHECK(says(slope, "  shoulder slope: estimated at "));
  CHECK(says(slope, "; taping it would change little\n"));
}

TEST_CASE("A correction of one side calls no tape of both into doubt") {
  const std::string text = said_of(lavinia(), "take_in waist 1.0 per_half left").text;
  INFO(text);
  CHECK_FALSE(says(text, "calls into doubt"));
}

TEST_CASE("A tape that was taken again after the fitting is not asked for once more") {
  const char* const words = "take_in waist 1.0 per_half";
  CHECK(says(story_of(lavinia(), words, {}), "Take these tapes again\n  waist girth: 74.0 cm"));
  Json later = lavinia()["sessions"][0];
  later["date"] = "2026-02-10";
  for (const double waist : {74.0, 73.0, 72.0}) {
    later["tape"]["waist_girth"] = waist;
    const std::string story = story_of(lavinia(), words, later);
    INFO(story);
    CHECK_FALSE(says(story, "Take these tapes again"));
  }
  later["tape"].erase("waist_girth");
  CHECK(says(story_of(lavinia(), words, later), "waist girth: estimated at "));
}

TEST_CASE("What a newer tape has of a correction is told where the fittings are") {
  const char* const words = "take_in waist 1.0 per_half";
  Json later = lavinia()["sessions"][0];
  later["date"] = "2026-02-10";
  later["tape"]["waist_girth"] = 72.0;
  const std::string all = story_of(lavinia(), words, later);
  INFO(all);
  CHECK(says(all,
             "done: take in waist 1.0 cm (per half); with the newer tape nothing of it is left\n"));
  later["tape"]["waist_girth"] = 73.0;
  const std::string half = story_of(lavinia(), words, later);
  INFO(half);
  CHECK(says(
      half,
      "done: take in waist 1.0 cm (per half); with the newer tape it counts 0.5 cm per half\n"));
}
