#include "client_text.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

std::string with_those_fittings(const std::string& fittings, const std::string& unit = "cm") {
  std::string text =
      client_text(unit == "cm" ? R"("bust_girth": 92)" : R"("bust_girth": 36)", unit);
  text.pop_back();
  return text + R"(, "fittings": [)" + fittings + "]}";
}

Correction only_correction(const std::string& correction, const std::string& unit = "cm") {
  const Client client = client_of(with_those_fittings(
      R"({"date": "2026-03-21", "toile": 1, "corrections": [)" + correction + "]}", unit));
  REQUIRE(client.fittings.size() == 1);
  REQUIRE(client.fittings.front().corrections.size() == 1);
  return client.fittings.front().corrections.front();
}

TEST_CASE("fittings are read with every part in its place") {
  const Client client = client_of(with_those_fittings(R"(
    { "date": "2026-03-21", "toile": 1, "by": "Odalys", "note": "unwashed linen, size of pins 0.6",
      "corrections": [
        { "lower": "front_neck", "by": 1.0, "as": "length", "side": "left",
          "seen": "presses on the throat", "withdrawn": true },
        { "by": 0.75, "as": "per_half", "take_in": "waist", "withdrawn": false } ] },
    { "date": "2026-03-28", "toile": 2 })"));
  REQUIRE(client.fittings.size() == 2);
  const Fitting& first = client.fittings.front();
  CHECK(first.date == "2026-03-21");
  CHECK(first.toile == 1);
  CHECK(first.by == "Odalys");
  CHECK(first.note == "unwashed linen, size of pins 0.6");
  REQUIRE(first.corrections.size() == 2);
  CHECK(first.corrections[0] ==
        Correction{"lower", "front_neck", Length::mm(10.0), AmountAs::Length, BodySide::Left,
                   "presses on the throat", true, AfterNewTape{}, "1.0 cm"});
  CHECK(first.corrections[1] == Correction{"take_in", "waist", Length::mm(7.5), AmountAs::PerHalf,
                                           BodySide::Both, "", false, AfterNewTape{}, "0.75 cm"});
  CHECK(client.fittings.back() == Fitting{"2026-03-28", 2, "", "", {}});
}

// An inch is 25.4 mm exactly (international inch, 1959).
TEST_CASE("amounts are in the file's unit: numbers in cm, numbers or fractions in inches") {
  CHECK(only_correction(R"({"raise": "underarm", "by": 1})").by.mm() == 10.0);
  CHECK(only_correction(R"({"raise": "underarm", "by": 0.6})").by.mm() == Approx(6.0));
  CHECK(only_correction(R"({"raise": "underarm", "by": 10})").by.mm() == 100.0);
  CHECK(only_correction(R"({"raise": "underarm", "by": 0.25})", "in").by.mm() == Approx(6.35));
  CHECK(only_correction(R"({"raise": "underarm", "by": "3/8"})", "in").by.mm() == Approx(9.525));
  CHECK(only_correction(R"({"raise": "underarm", "by": "1 1/2"})", "in").by.mm() == Approx(38.1));
}

TEST_CASE("each pair of words is read with each of its ways and on each side") {
  for (const CorrectionWords& words : correction_words()) {
    for (const AmountAs as : words.readings) {
      const std::string text = R"({")" + std::string(words.action) + R"(": ")" +
                               std::string(words.place) + R"(", "by": 1, "as": ")" +
                               std::string(amount_way(as).word) + R"(", "side": ")" +
                               (as == AmountAs::WholeGirth ? "both" : "right") + R"("})";
      INFO(text);
      const Correction read = only_correction(text);
      CHECK(read.action == words.action);
      CHECK(read.place == words.place);
      CHECK(read.as == as);
    }
  }
}

TEST_CASE("an amount that can be read in one way alone is read so") {
  CHECK(only_correction(R"({"lower": "back_neck", "by": 1})").as == AmountAs::Length);
  CHECK(only_correction(R"({"fuller": "one_breast", "by": 1, "side": "left"})").as ==
        AmountAs::PerHalf);
}

TEST_CASE("one toile may be tried on again, and two on one day") {
  const Client client = client_of(with_those_fittings(
      R"({"date": "2026-03-21", "toile": 1}, {"date": "2026-03-22", "toile": 1},
         {"date": "2026-03-22", "toile": 2}, {"date": "2026-03-22", "toile": 99})"));
  CHECK(client.fittings.size() == 4);
}

}  // namespace
}  // namespace blockwright
