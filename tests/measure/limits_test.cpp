// The limits of a client file from both sides.
#include "client_text.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

std::string readings(int count) {
  std::string text = "\"bust_girth\": [92";
  for (int i = 1; i < count; ++i) text += ", 92";
  return client_text(text + "]");
}

std::string fitted(const std::string& toile, const std::string& by) {
  std::string text = client_text("\"bust_girth\": 92");
  text.pop_back();
  return text + R"(, "fittings": [{"date": "2026-03-21", "toile": )" + toile +
         R"(, "corrections": [{"lower": "front_neck", "by": )" + by + "}]}]}";
}

std::string named(std::size_t letters) {
  std::string text = client_text("\"bust_girth\": 92");
  const std::string name = "Ondine Marsh";
  return text.replace(text.find(name), name.size(), std::string(letters, 'o'));
}

}  // namespace

// All ours.
TEST_CASE("A value may have 20 readings and no more", "[kMostReadings]") {
  CHECK(refusal(readings(20)).code == "");
  CHECK(refusal(readings(21)).code != "");
}

TEST_CASE("Toiles are counted to 99 and no further", "[kMostToiles]") {
  CHECK(refusal(fitted("99", "1")).code == "");
  CHECK(refusal(fitted("100", "1")).code != "");
  CHECK(refusal(fitted("1", "1")).code == "");
  CHECK(refusal(fitted("0", "1")).code != "");
}

TEST_CASE("A correction is of 10 cm at most", "[kMostCorrection]") {
  CHECK(refusal(fitted("1", "10")).code == "");
  CHECK(refusal(fitted("1", "10.01")).code != "");
}

TEST_CASE("A name has 100 letters at most", "[kMostTextLength]") {
  CHECK(refusal(named(100)).code == "");
  CHECK(refusal(named(101)).code != "");
}

TEST_CASE("Every measurement is read at the limits of its row and refused beyond them") {
  for (const auto& row : kMeasurements) {
    if (row.name == MeasurementName::ShoulderSlope) continue;
    const auto read = [&](double mm) {
      const std::string bust = row.name == MeasurementName::BustGirth ? "" : ", \"bust_girth\": 92";
      char number[32];
      (void)std::snprintf(number, sizeof number, "%.2f", mm / 10.0);
      return refusal(client_text("\"" + std::string(row.key) + "\": " + number + bust)).code == "";
    };
    INFO(row.key);
    CHECK(read(row.least.number()));
    CHECK_FALSE(read(row.least.number() - 0.1));
    CHECK(read(row.most.number()));
    CHECK_FALSE(read(row.most.number() + 0.1));
  }
}

TEST_CASE("Each slip of unit or decimal point is recognised, in both units") {
  struct Slip {
    const char *unit, *tape, *said;
  };
  for (const auto& [unit, tape, said] :
       {Slip{"cm", "\"bust_girth\": 925", "(ten times as much"},
        Slip{"cm", "\"bust_girth\": 9.25", "(a tenth was written)"},
        Slip{"cm", "\"bust_girth\": 36.5", "(inches were written; "},
        Slip{"cm", "\"bust_girth\": 0.925", "(metres were written; "},
        Slip{"cm", "\"bust_girth\": 92, \"stature\": 5.5", "(feet were written; "},
        Slip{"in", "\"bust_girth\": 92.5", "(cm were written; "},
        Slip{"in", "\"bust_girth\": 925", "(mm were written; "},
        Slip{"in", "\"bust_girth\": 3.65", "(a tenth was written)"},
        Slip{"in", "\"bust_girth\": 18.25", "did you mean 36 1/2 in (half was written"},
        Slip{"in", "\"bust_girth\": 36, \"stature\": 5.5", "(feet were written; "}}) {
    const Problem problem = refusal(client_text(tape, unit));
    INFO(unit << ": " << tape << "\n" << to_text(problem));
    CHECK(to_text(problem).find(said) != std::string::npos);
  }
}
