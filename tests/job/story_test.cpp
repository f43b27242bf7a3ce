// One block over half a year: a tape session, three toiles, a new session. The person is invented;
// every number that is expected is reckoned by hand beside it. Lengths in mm.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <map>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

const char* const kFirstSession = R"({
  "format": "blockwright-client-1",
  "name": "Sabine Thorne, prompter",
  "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": {
      "bust_girth": 94.0, "upper_chest_girth": 88.0, "underbust_girth": 79.0, "waist_girth": 74.0,
      "neck_base_girth": 37.0, "armscye_girth": 40.0, "shoulder_length": 12.4,
      "front_shoulder_slant": 42.5, "back_shoulder_slant": 42.0, "back_waist_length": 40.0,
      "front_waist_length": 34.5, "side_neck_to_bust_point": 26.5, "side_neck_to_waist": 42.5,
      "bust_point_width": 18.6, "across_back": 34.0, "across_front": 32.0, "side_length": 20.0,
      "scye_depth": 19.0 } }
  ]
})";

const char* const kSecondSession = R"(
    { "date": "2026-07-12", "tape": {
      "bust_girth": 94.0, "upper_chest_girth": 88.0, "underbust_girth": 79.0, "waist_girth": 72.0,
      "neck_base_girth": 37.0, "armscye_girth": 40.0, "shoulder_length": 11.8,
      "front_shoulder_slant": 42.5, "back_shoulder_slant": 42.0, "back_waist_length": 40.0,
      "front_waist_length": 34.5, "side_neck_to_bust_point": 26.5, "side_neck_to_waist": 42.5,
      "bust_point_width": 18.6, "across_back": 34.0, "across_front": 32.0, "side_length": 20.0,
      "scye_depth": 19.0 } })";

Json drafted(MemoryFiles& files) {
  Job job;
  job.client = "sabine.json";
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  const JobResult result = run_job(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  REQUIRE(result.exit_code == 0);
  return Json::parse(result.output);
}

void correct(MemoryFiles& files, int toile, const std::string& date, const std::string& words,
             std::optional<AmountAs> as = std::nullopt) {
  FitJob job;
  job.client = "sabine.json";
  job.add = {words};
  if (as) job.as = {as};
  job.date = date;
  job.toile = toile;
  const JobResult result = run_fit(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  REQUIRE(result.exit_code == 0);
}

double edge(const Json& lengths, const char* name) { return lengths.at(name).get<double>(); }

std::vector<std::string> explained(const Json& report) {
  std::vector<std::string> where;
  for (const Json& problem : report["problems"]) {
    if (problem["code"] == "fit.explained") where.push_back(problem["where"]);
  }
  return where;
}

}  // namespace

TEST_CASE("From the tape to a fitted block, and the same block half a year later") {
  MemoryFiles files(std::map<std::string, std::string>{{"sabine.json", kFirstSession}});

  // The first toile is the draft itself. Waist 740 + ease 25 = 765, half of it 382.5 on both
  // pieces. Shoulder 124 on both. Centre front 345 + ease 13 and 1.5 for each cm that her cup of 15
  // cm is over 13.7: 359.9. Centre back 400 + ease 6 = 406.
  const Json first = drafted(files);
  const Json& l0 = first["stages"][0]["lengths"];
  CHECK(edge(l0, "front.waist") + edge(l0, "back.waist") == Approx(382.5).margin(0.1));
  CHECK(edge(l0, "front.shoulder") == Approx(124.0).margin(0.1));
  CHECK(edge(l0, "back.shoulder") == Approx(124.0).margin(0.1));
  CHECK(edge(l0, "front.centre_front") == Approx(359.9).margin(0.1));
  CHECK(edge(l0, "back.centre_back") == Approx(406.0).margin(0.1));
  const double side = edge(l0, "front.side");
  CHECK(edge(l0, "back.side") == Approx(side).margin(0.1));

  // Toile 1, seen: the neck presses on the throat; the waist is loose, 20 mm pinned out all round.
  // Centre front 10 less. Waist 765 - 20 = 745, half 372.5.
  correct(files, 1, "2026-01-20", "lower front_neck 1.0");
  correct(files, 1, "2026-01-20", "take_in waist 2.0", AmountAs::WholeGirth);
  const Json l1 = drafted(files)["stages"][1]["lengths"];
  CHECK(edge(l1, "front.centre_front") == Approx(349.9).margin(0.1));
  CHECK(edge(l1, "front.waist") + edge(l1, "back.waist") == Approx(372.5).margin(0.2));
  CHECK(edge(l1, "back.centre_back") == Approx(406.0).margin(0.1));
  CHECK(edge(l1, "front.shoulder") == Approx(124.0).margin(0.1));

  // Toile 2, seen: the shoulder seam falls off by 6 mm; the armhole digs in under the arm, 6 mm.
  // Shoulder 124 - 6 = 118 on both. Sides both 6 shorter.
  correct(files, 2, "2026-02-02", "shorten shoulder 0.6");
  correct(files, 2, "2026-02-02", "lower underarm 0.6");
  const Json l2 = drafted(files)["stages"][1]["lengths"];
  CHECK(edge(l2, "front.shoulder") == Approx(118.0).margin(0.2));
  CHECK(edge(l2, "back.shoulder") == Approx(118.0).margin(0.2));
  CHECK(edge(l2, "front.side") == Approx(side - 6.0).margin(0.5));
  CHECK(edge(l2, "back.side") == Approx(edge(l2, "front.side")).margin(0.5));

  // Toile 3, seen: the waist seam lies 10 mm under the waist all round: folded out below the bust.
  // Centre front and centre back 10 less, sides 6 + 10 = 16 shorter than
  // drafted.
  correct(files, 3, "2026-02-10", "shorten below_bust 1.0", AmountAs::Length);
  const Json third = drafted(files);
  const Json& l3 = third["stages"][1]["lengths"];
  CHECK(third["corrections"].size() == 5);
  CHECK(edge(l3, "front.centre_front") == Approx(339.9).margin(0.2));
  CHECK(edge(l3, "back.centre_back") == Approx(396.0).margin(0.2));
  CHECK(edge(l3, "front.side") == Approx(side - 16.0).margin(0.7));
  CHECK(edge(l3, "front.shoulder") == Approx(118.0).margin(0.2));
  CHECK(explained(third).empty());

  // Half a year later the tape says: waist 720, 20 less, as the waist was taken in by 20; shoulder
  // 118, 6 less, as it was shortened by 6. Both corrections are in the new tape already and are
  // told; the neck, the underarm and the length are not.
  std::string& text = files.files["sabine.json"];
  const std::string end_of_session = "\"scye_depth\": 19.0 } }";
  const std::size_t at = text.find(end_of_session);
  REQUIRE(at != std::string::npos);
  text.insert(at + end_of_session.size(), std::string(",") + kSecondSession);
  const Json later = drafted(files);
  CHECK(later["session"] == "2026-07-12");
  CHECK(explained(later) == std::vector<std::string>{"correction 2", "correction 3"});
  // Until that is settled, what the tape has is not applied twice: waist 720 + 25 = 745, half
  // 372.5.
  const Json& l_later = later["stages"][1]["lengths"];
  CHECK(later["corrections"].size() == 3);
  CHECK(edge(l_later, "front.waist") + edge(l_later, "back.waist") == Approx(372.5).margin(0.2));

  // Both withdrawn, nothing is applied twice: waist 720 + 25 = 745, half 372.5; shoulder 118; the
  // neck (- 10) and the length (- 10) are still corrected.
  FitJob undo;
  undo.client = "sabine.json";
  undo.undo = {2, 3};
  REQUIRE(run_fit(undo, files).exit_code == 0);
  const Json last = drafted(files);
  const Json& l4 = last["stages"][1]["lengths"];
  CHECK(explained(last).empty());
  CHECK(last["corrections"].size() == 3);
  CHECK(edge(l4, "front.waist") + edge(l4, "back.waist") == Approx(372.5).margin(0.2));
  CHECK(edge(l4, "front.shoulder") == Approx(118.0).margin(0.2));
  CHECK(edge(l4, "front.centre_front") == Approx(339.9).margin(0.2));

  // Waist as fitted half a year ago and as drafted from the new tape: the same, 372.5.
  CHECK(edge(l4, "front.waist") + edge(l4, "back.waist") ==
        Approx(edge(l3, "front.waist") + edge(l3, "back.waist")).margin(0.4));
}
