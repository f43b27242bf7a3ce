#include "blockwright/measure/client.hpp"

#include "blockwright/measure/body.hpp"
#include "client_text.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

using enum MeasurementName;

double taped(const Client& client, MeasurementName name) {
  const auto& readings = client.sessions.front().tape[name];
  REQUIRE(readings.has_value());
  return readings->median().number();
}

Readings readings(std::initializer_list<double> lengths_mm) {
  Readings taken;
  for (const double mm : lengths_mm) taken.values.emplace_back(Length::mm(mm));
  return taken;
}

TEST_CASE("a client file is read with every part in its place") {
  const Client client = client_of(R"({
    "format": "blockwright-client-1",
    "name": "Ondine Marsh",
    "unit": "cm",
    "sessions": [
      { "date": "2026-03-14", "by": "R.",
        "tape": { "bust_girth": 92.5, "waist_girth": [74.0, 74.5, 74.0], "shoulder_slope": 24 } }
    ],
    "ease": { "bust_girth": 6.5, "waist_girth": 0, "shoulder_slope": -2.5 },
    "fittings": []
  })");
  CHECK(client.name == "Ondine Marsh");
  CHECK(client.unit == Unit::Cm);
  REQUIRE(client.sessions.size() == 1);
  const Session& session = client.sessions.front();
  CHECK(session.date == "2026-03-14");
  CHECK(session.by == "R.");
  CHECK(session.tape[BustGirth]->values == std::vector<Measure>{Length::mm(925)});
  CHECK(session.tape[WaistGirth]->values ==
        std::vector<Measure>{Length::mm(740), Length::mm(745), Length::mm(740)});
  CHECK(session.tape[ShoulderSlope]->values == std::vector{Measure::degrees(24)});
  CHECK_FALSE(session.tape[HipGirth].has_value());
  CHECK(client.ease[BustGirth] == Length::mm(65));
  CHECK(client.ease[WaistGirth] == Length());
  CHECK(client.ease[ShoulderSlope] == Measure::degrees(-2.5));
  CHECK_FALSE(client.ease[HipGirth].has_value());
}

std::string with_sure(const std::string& sure) {
  return R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [
{"date": "2026-03-14", "tape": {"bust_girth": 92, "across_back": 36, "hip_girth": 98}, "sure": )" +
         sure + "}]}";
}

TEST_CASE("what the maker is sure of is read, and carried into the body") {
  const Session sure = client_of(with_sure(R"(["across_back", "bust_girth"])")).sessions.front();
  const Body body = fill_in(sure);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.key);
    const bool named = entry.name == AcrossBack || entry.name == BustGirth;
    CHECK(sure.sure.has(entry.name) == named);
    CHECK(body.sure(entry.name) == named);
  }
  CHECK(client_of(with_sure("[]")).sessions.front().sure == MeasurementSet());
  CHECK(client_of(client_text(R"("bust_girth": 92)")).sessions.front().sure == MeasurementSet());
}

TEST_CASE("a session that is sure of what it cannot be sure of is refused") {
  const auto refused = [](const std::string& sure, const char* code, const char* where,
                          const char* message, const char* hint) {
    INFO(sure);
    const Problem problem = refusal(with_sure(sure));
    INFO(to_text(problem));
    CHECK(problem.code == code);
    CHECK(problem.where.find(where) != std::string::npos);
    CHECK(problem.message.plain().find(message) != std::string::npos);
    CHECK(problem.hint.plain().find(hint) != std::string::npos);
  };
  refused(R"("across_back")", "client.type", "sessions[0].sure", "\"across_back\"", "in a list");
  refused("true", "client.type", "sessions[0].sure", "true", "in a list");
  refused("[36.5]", "client.type", "sessions[0].sure[0]", "36.5", "in a list");
  refused(R"(["across_bak"])", "client.key", "sessions[0].sure[0]", "\"across_bak\"",
          "did you mean \"across_back\"?");
  refused(R"(["across_back", "across_back"])", "client.duplicate", "sessions[0].sure[1]",
          "across_back is named twice", "one of the two");
  refused(R"(["waist_girth"])", "client.missing", "sessions[0].sure[0]",
          "waist_girth is not in this session's tape", "only be sure of what was taped");
}

TEST_CASE("round values in cm come out as round values in mm") {
  CHECK(taped(client_of(client_text(R"("bust_girth": 92)")), BustGirth) == 920.0);
  CHECK(taped(client_of(client_text(R"("bust_girth": 92.0)")), BustGirth) == 920.0);
  CHECK(taped(client_of(client_text(R"("bust_girth": 9.2e1)")), BustGirth) == 920.0);
  CHECK(taped(client_of(client_text(R"("bust_girth": 60)")), BustGirth) == 600.0);
  CHECK(taped(client_of(client_text(R"("bust_girth": 160)")), BustGirth) == 1600.0);
}

// An inch is 25.4 mm exactly (international inch, 1959).
TEST_CASE("inches may be numbers or fractions; the slope stays in degrees") {
  const Client client = client_of(client_text(
      R"("bust_girth": "36 1/2", "waist_girth": 28.25, "hip_girth": "38", "shoulder_length": "4 7/8",
         "neck_base_girth": ["13 1/2", 13.75], "shoulder_slope": 22.5)",
      "in"));
  CHECK(client.unit == Unit::Inch);
  CHECK(taped(client, BustGirth) == Approx(36.5 * 25.4).epsilon(1e-14));
  CHECK(taped(client, WaistGirth) == Approx(28.25 * 25.4).epsilon(1e-14));
  CHECK(taped(client, HipGirth) == Approx(38 * 25.4).epsilon(1e-14));
  CHECK(taped(client, ShoulderLength) == Approx(4.875 * 25.4).epsilon(1e-14));
  CHECK(taped(client, NeckBaseGirth) == Approx(13.625 * 25.4).epsilon(1e-14));
  CHECK(taped(client, ShoulderSlope) == 22.5);
}

TEST_CASE("ease in an inch file may be a fraction, and less than nothing") {
  const Client client = client_of(
      R"({"format": "blockwright-client-1", "name": "O", "unit": "in",
          "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 36}}],
          "ease": {"bust_girth": "1/2", "waist_girth": "-1 1/4", "hip_girth": -1}})");
  CHECK(client.ease[BustGirth]->number() == Approx(12.7));
  CHECK(client.ease[WaistGirth]->number() == Approx(-31.75));
  CHECK(client.ease[HipGirth]->number() == Approx(-25.4));
}

TEST_CASE("the median of repeated readings is the middle one, or the mean of the middle two") {
  CHECK(readings({74.0}).median() == Length::mm(74.0));
  CHECK(readings({75.0, 74.0, 90.0}).median() == Length::mm(75.0));
  CHECK(readings({76.0, 74.0, 90.0, 75.0}).median() == Length::mm(75.5));
}

TEST_CASE("the spread of repeated readings is the largest less the smallest") {
  CHECK(readings({74.0}).spread() == Length::mm(0.0));
  CHECK(readings({75.0, 74.0, 90.0}).spread() == Length::mm(16.0));
}

Client of_two_sessions() {
  return client_of(R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [
    {"date": "2026-03-14", "tape": {"bust_girth": 93}},
    {"date": "2024-02-29", "tape": {"bust_girth": 91}}]})");
}

TEST_CASE("sessions are sorted by date; the newest is chosen unless a date is given") {
  const Client client = of_two_sessions();
  REQUIRE(client.sessions.size() == 2);
  CHECK(client.sessions.front().date == "2024-02-29");
  CHECK(session_of(client, "", "o.json").tape[BustGirth]->median() == Length::mm(930));
  CHECK(session_of(client, "2024-02-29", "o.json").tape[BustGirth]->median() == Length::mm(910));
}

TEST_CASE("a date without a session is refused with the dates there are") {
  const Client client = of_two_sessions();
  try {
    session_of(client, "2025-01-01", "o.json");
    FAIL("the date was taken");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "client.session");
    CHECK(error.problem().where == "o.json");
    CHECK(error.problem().message.plain().find("2025-01-01") != std::string::npos);
    CHECK(error.problem().hint.plain().find("2024-02-29, 2026-03-14") != std::string::npos);
  }
}

TEST_CASE("a byte order mark and a name in any script are taken") {
  const std::string text =
      R"({"format": "blockwright-client-1", "name": "Зофья Łęcka Αλεξάνδρα", "unit": "cm",
          "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92.5}}]})";
  CHECK(client_of("\xEF\xBB\xBF" + text).name == "Зофья Łęcka Αλεξάνδρα");
}

TEST_CASE("a name is kept as it is, markup and paths included") {
  const Client client = client_of(
      R"({"format": "blockwright-client-1", "name": "<script> ../\"x\"", "unit": "cm",
          "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92.5}}]})");
  CHECK(client.name == "<script> ../\"x\"");
}

}  // namespace
}  // namespace blockwright
