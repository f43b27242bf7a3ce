// What a tape session at the prompt knows: the order, the readings as typed, what is expected next,
// and what is said of a reading at once.
#include "blockwright/measure/tape_session.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "support/each.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <sstream>

using namespace blockwright;
using enum MeasurementName;

namespace {

// The readings in mm.
std::vector<double> read_mm(const std::string& answer, MeasurementName name, Unit unit) {
  std::vector<double> mm;
  for (const Measure& value : readings_typed(answer, name, unit).readings.values) {
    mm.push_back(value.number());
  }
  return mm;
}

Problem refused(const std::string& answer, MeasurementName name, Unit unit) {
  try {
    (void)readings_typed(answer, name, unit);
  } catch (const InputError& error) {
    return error.problem();
  }
  FAIL("'" << answer << "' is taken");
  return {};
}

std::string said(const Remarks& remarks) {
  std::string all;
  for (const std::string& sentence : remarks.sentences) all += sentence + "\n";
  return all;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// What is said of one answer, after these were taken.
Remarks remarks_of(const std::string& answer, MeasurementName name, const Session& taken,
                   const Session* earlier = nullptr) {
  return remarks_on(readings_typed(answer, name, Unit::Cm), name, taken, earlier, Unit::Cm);
}

std::string cm_text(double mm) {
  const auto tenths = static_cast<int>(std::lround(mm));
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

}  // namespace

TEST_CASE("A session takes each measurement once, the bust girth first") {
  const auto& order = tape_order();
  CHECK(std::set(order.begin(), order.end()).size() == kMeasurementCount);
  CHECK(order.front() == BustGirth);
}

TEST_CASE("Readings are read as a maker types them") {
  using Readings = std::vector<double>;
  CHECK(read_mm("74", WaistGirth, Unit::Cm) == Readings{740.0});
  CHECK(read_mm(" 74  74.5 74 ", WaistGirth, Unit::Cm) == Readings{740.0, 745.0, 740.0});
  CHECK(read_mm("74,5", WaistGirth, Unit::Cm) == Readings{745.0});
  CHECK(read_mm("74.5cm 74 cm", WaistGirth, Unit::Cm) == Readings{745.0, 740.0});
  CHECK(read_mm("29 1/4", WaistGirth, Unit::Inch) == Readings{29.25 * 25.4});
  CHECK(read_mm("29 1/4 29 1/2", WaistGirth, Unit::Inch) == Readings{29.25 * 25.4, 29.5 * 25.4});
  CHECK(read_mm("29 29 1/2 29.25", WaistGirth, Unit::Inch) ==
        Readings{29.0 * 25.4, 29.5 * 25.4, 29.25 * 25.4});
  CHECK(read_mm("29\" 29 1/4 in", WaistGirth, Unit::Inch) == Readings{29.0 * 25.4, 29.25 * 25.4});
  CHECK(read_mm("24.5", ShoulderSlope, Unit::Inch) == Readings{24.5});
  CHECK(read_mm("24,5 degrees", ShoulderSlope, Unit::Cm) == Readings{24.5});
}

TEST_CASE("A comma with a space behind it parts readings; one between digits is a decimal comma") {
  using Readings = std::vector<double>;
  CHECK(read_mm("80, 81", WaistGirth, Unit::Cm) == Readings{800.0, 810.0});
  CHECK(read_mm("80,5, 81 cm, 80.5,", WaistGirth, Unit::Cm) == Readings{805.0, 810.0, 805.0});
  CHECK(read_mm("36 1/2, 37 1/2", WaistGirth, Unit::Inch) == Readings{36.5 * 25.4, 37.5 * 25.4});
  CHECK(read_mm("36, 37 1/2", WaistGirth, Unit::Inch) == Readings{36.0 * 25.4, 37.5 * 25.4});
  CHECK(says(refused("36, 1/2", WaistGirth, Unit::Inch).message.plain(), "1/2 in is outside"));
}

TEST_CASE("Inches are read as they are often typed: with a hyphen, with the sign of a fraction") {
  using Readings = std::vector<double>;
  const double half = 31.5 * 25.4;
  for (const std::string& answer : each(std::vector<std::string>{
           "31 1/2", "31-1/2", "31½", "31 ½", "31-½", "31½\"", "31-1/2in", "31½ inches"})) {
    CHECK(read_mm(answer, WaistGirth, Unit::Inch) == Readings{half});
  }
  CHECK(read_mm("31¼ 31¾", WaistGirth, Unit::Inch) == Readings{31.25 * 25.4, 31.75 * 25.4});
  CHECK(says(refused("31½", WaistGirth, Unit::Cm).hint.plain(), "in cm it is 80.01"));
}

TEST_CASE("A reading is written with a point and without needless zeros, or as the inch fraction") {
  using Typed = std::vector<std::string>;
  CHECK(readings_typed("74,50 074 74. 7.4e1", WaistGirth, Unit::Cm).typed ==
        Typed{"74.5", "74", "74", "74"});
  CHECK(readings_typed("29 1/4 30 029.50 29-4/8 29 0/2 29½", WaistGirth, Unit::Inch).typed ==
        Typed{"29 1/4", "30", "29.5", "29 1/2", "29", "29 1/2"});
}

TEST_CASE("What the prompt accepts, the file takes, and reads as the same values") {
  // Every form is tried of every measurement: around a value that it can have, in either unit.
  const std::vector<std::string> forms{"#",      "0#",       "#.",      "#.5",
                                       "#,5",    "#.50",     "0#.5",    "#, #",
                                       "#, #,",  "#,5, #.",  "#.,#",    "#,",
                                       ",#",     "#e0",      "#.e0",    "#cm",
                                       "#in",    "#\"",      "# cm, #", "# 1/2",
                                       "#½",     "#-¾",      "#1/2",    "#-1/2",
                                       "# 2/4",  "# 0/4",    "# 1/64",  "# 63/64",
                                       "0# 1/2", "# 1/2, #", "+#",      "-#",
                                       "#-",     "#..",      "#%",      "#.125",
                                       "#°",     "# # # #",  "#'",      "#/1",
                                       "#\t#",   "#;",       "# 1/2.",  "#.333333333333333",
                                       "0x#",    "#E0",      "inf",     "nan",
                                       "#,5,3"};
  long accepted = 0, refused = 0;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    for (const Unit unit : {Unit::Cm, Unit::Inch}) {
      const bool angle = entry.kind == MeasurementKind::Angle;
      const double per_unit = angle ? 1.0 : unit == Unit::Cm ? 10.0 : 25.4;
      const double middle = 0.5 * (entry.least.number() + entry.most.number()) / per_unit;
      for (std::string answer : forms) {
        const std::string digits = std::to_string(static_cast<int>(middle));
        for (std::size_t at = 0; (at = answer.find('#', at)) != std::string::npos;) {
          answer.replace(at, 1, digits);
        }
        INFO(entry.key << ": " << answer);
        TypedReadings typed;
        try {
          typed = readings_typed(answer, entry.name, unit);
        } catch (const InputError& error) {
          ++refused;
          CHECK_FALSE(error.problem().hint.empty());
          continue;
        }
        ++accepted;
        NewClient made{"O.", unit, {"2027-05-06", "", {{entry.name, typed.typed}}}};
        if (entry.name != BustGirth) {
          made.session.tape.push_back({BustGirth, {unit == Unit::Cm ? "92" : "36"}});
        }
        std::istringstream in(new_client_text(made, "f.json"));
        const Session session = read_client(in, "f.json").sessions.at(0);
        CHECK(session.tape[entry.name]->values == typed.readings.values);
      }
    }
  }
  CHECK(accepted > 1000);
  CHECK(refused > 300);
}

TEST_CASE("A refusal quotes what was typed, and no other text") {
  for (const std::string& answer : each(std::vector<std::string>{
           "92,5,3", "36 1/2.", "36 1/2,37", "3½½", "xin", "74..5", "+74", "36 3/5"})) {
    CHECK(refused(answer, WaistGirth, Unit::Inch).message.plain() ==
          "'" + answer + "' is no number");
  }
  CHECK(refused("80, eighty, 81", WaistGirth, Unit::Cm).message.plain() == "'eighty' is no number");
  CHECK(says(refused("740,0cm", WaistGirth, Unit::Cm).message.plain(), "740,0 cm is outside"));
}

TEST_CASE("What cannot be is answered in words of the prompt, which has no key to leave out") {
  CHECK(refused("0", WaistGirth, Unit::Cm).hint.plain() == "Enter leaves the measurement out");
  CHECK(refused("-5", WaistGirth, Unit::Cm).hint.plain() == "Enter leaves the measurement out");
  CHECK(refused("0", BustGirth, Unit::Cm).hint.plain() ==
        "it is the one measurement that is needed");
  CHECK(says(refused("-74", WaistGirth, Unit::Cm).hint.plain(), "no minus sign"));
}

TEST_CASE("Limits in inches are fractions of the tape that can be typed") {
  // 60 and 160 cm are 23.62 and 62.99 in (25.4 mm exactly, ISO 31 / 1959 agreement).
  const std::string said = refused("20", BustGirth, Unit::Inch).message.plain();
  CHECK(said == "20 in is outside 23 5/8 to 62 15/16 in");
  CHECK(read_mm("23 5/8 62 15/16", BustGirth, Unit::Inch).size() == 2);
  CHECK(says(refused("23 9/16", BustGirth, Unit::Inch).message.plain(), "outside 23 5/8"));
  CHECK(says(refused("63", BustGirth, Unit::Inch).message.plain(), "to 62 15/16 in"));
}

TEST_CASE("The unit is read in any case and written out, too") {
  for (const std::string& word : each(std::vector<std::string>{"in", "IN", "inch", "Inches"})) {
    CHECK(unit_typed(word) == Unit::Inch);
  }
  for (const std::string& word : each(std::vector<std::string>{"cm", "CM", "centimetres"})) {
    CHECK(unit_typed(word) == Unit::Cm);
  }
  CHECK_FALSE(unit_typed("mm"));
  CHECK_FALSE(unit_typed(""));
}

TEST_CASE("What is no reading is refused with its cure") {
  CHECK(refused("seventy", WaistGirth, Unit::Cm).message.plain() == "'seventy' is no number");
  CHECK(says(refused("29 1/4", WaistGirth, Unit::Cm).hint.plain(), "in cm it is 74.29"));
  CHECK(says(refused("29 1/0", WaistGirth, Unit::Inch).hint.plain(), "29 1/4"));
  CHECK(says(refused("29", WaistGirth, Unit::Cm).hint.plain(), "inches"));
  CHECK(says(refused("740", WaistGirth, Unit::Cm).hint.plain(),
             "did you mean 74 cm (ten times as much"));
  CHECK(says(refused("74", WaistGirth, Unit::Inch).hint.plain(), "cm"));
  CHECK(refused("", WaistGirth, Unit::Cm).message.plain() == "there is no number");
  CHECK(refused("nan", WaistGirth, Unit::Cm).code == "tape.reading");
  CHECK(refused("74 1e9", WaistGirth, Unit::Cm).limit.most == info(WaistGirth).most);
  // A word of 64 KB is told in a few letters.
  CHECK(refused(std::string(65536, 'x'), WaistGirth, Unit::Cm).message.plain().size() < 200);
}

TEST_CASE("Twenty readings of one measurement are taken and no more", "[kMostReadings]") {
  std::string twenty;
  for (int i = 0; i < 20; ++i) twenty += "74 ";
  CHECK(read_mm(twenty, WaistGirth, Unit::Cm).size() == 20);
  CHECK(refused(twenty + "74", WaistGirth, Unit::Cm).hint.plain() == "type the last few");
}

TEST_CASE("Before the bust girth nothing is expected, and nothing of what was not surveyed") {
  Session taken;
  CHECK_FALSE(expected_range(taken, BustGirth));
  CHECK_FALSE(expected_range(taken, WaistGirth));
  tape(taken, BustGirth, 920.0);
  CHECK(expected_range(taken, WaistGirth));
  CHECK_FALSE(expected_range(taken, FrontShoulderSlant));
}

TEST_CASE("Nineteen of twenty people lie within what is expected of each next measurement") {
  // The share of a normal distribution within two standard deviations is 0.954 (handbook value).
  long within = 0, all = 0;
  for (const Session& person : each_person(people(300), 31)) {
    Session taken;
    for (const MeasurementName name : tape_order()) {
      if (!person.tape[name]) continue;
      if (const auto range = expected_range(taken, name)) {
        const Measure value = person.tape[name]->median();
        within += value >= range->least && value <= range->most ? 1 : 0;
        ++all;
      }
      taken.tape[name] = person.tape[name];
    }
  }
  CHECK(all > 15L * people(300));
  CHECK(static_cast<double>(within) / static_cast<double>(all) == Approx(0.954).margin(0.02));
}

TEST_CASE(
    "Of ordinary people one reading in a hundred is doubted at most, after eight and after all") {
  long doubted = 0, all = 0;
  for (const Session& person : each_person(people(300), 32)) {
    Session taken;
    for (const MeasurementName name : tape_order()) {
      if (!person.tape[name]) continue;
      const double value = person.tape[name]->median().number();
      if (info(name).kind != MeasurementKind::Angle) {
        doubted += remarks_of(cm_text(value), name, taken).ask_again ? 1 : 0;
        ++all;
      }
      taken.tape[name] = person.tape[name];
    }
  }
  CHECK(100 * doubted <= all);
}

TEST_CASE("Digits swapped are named as such in nine of ten that are caught") {
  // Girths whose first two digits differ by two and more, swapped, after the bust girth was taken:
  // 84 as 48 is out of the limits and refused before; 79 as 97 is what the prompt must see.
  int caught = 0, named = 0;
  for (const Session& person : each_person(people(500), 33)) {
    Session taken;
    taken.tape[BustGirth] = person.tape[BustGirth];
    for (const MeasurementName name : {UnderbustGirth, WaistGirth, HipGirth, UpperChestGirth}) {
      std::string typed = cm_text(person.tape[name]->median().number());
      if (typed.size() != 4 || std::abs(typed[0] - typed[1]) < 2) continue;
      std::swap(typed[0], typed[1]);
      if (!info(name).allows(Length::cm(std::stod(typed)))) continue;
      const Remarks remarks = remarks_of(typed, name, taken);
      if (!remarks.ask_again) continue;
      ++caught;
      named += says(said(remarks), "two digits swapped") ? 1 : 0;
    }
  }
  CHECK(caught >= people(100));
  CHECK(10 * named >= 9 * caught);
}

TEST_CASE("A slip in the bust girth is seen at the next girth, and the bust girth is named") {
  Session taken;
  tape(taken, BustGirth, 790.0);  // 97 was meant
  const Remarks remarks = remarks_of("84", UnderbustGirth, taken);
  CHECK(remarks.ask_again);
  CHECK(says(said(remarks),
             "look at the bust girth of 79 cm. Did you mean 97 cm (two digits swapped)?"));
  // One that the swap would not explain does not blame it.
  CHECK_FALSE(says(said(remarks_of("51", BackWaistLength, taken)), "bust girth"));
}

TEST_CASE("Readings that lie apart, and a change since last time, are said and not asked again") {
  Session taken, earlier;
  earlier.date = "2026-03-14";
  tape(taken, BustGirth, 920.0);
  tape(earlier, WaistGirth, 740.0);
  const Remarks apart = remarks_of("74 75.2", WaistGirth, taken, &earlier);
  CHECK(
      said(apart) ==
      "The readings lie 1.2 cm apart; 1 cm is usual at most. The middle one, 74.6 cm, is used.\n");
  CHECK_FALSE(apart.ask_again);
  CHECK(said(remarks_of("75", WaistGirth, taken, &earlier)).empty());
  CHECK(said(remarks_of("75.1", WaistGirth, taken, &earlier)) ==
        "That is 1.1 cm more than on 2026-03-14.\n");
  CHECK(said(remarks_of("70", WaistGirth, taken, &earlier)) ==
        "That is 4 cm less than on 2026-03-14.\n");
}
