// Whatever is added to a client file, all that its maker typed stays byte for byte.
#include "blockwright/measure/client_edit.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "client_text.hpp"
#include "support/each.hpp"
#include "support/random.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <sstream>

namespace blockwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

const std::string kMark = "\xEF\xBB\xBF";

std::vector<std::string> wardrobe() {
  std::vector<std::string> texts;
  for (const auto& entry : fs::directory_iterator(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe")) {
    if (entry.path().extension() != ".json") continue;
    std::ifstream file(entry.path(), std::ios::binary);
    texts.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>{});
  }
  return texts;
}

std::string with_crlf(const std::string& text) {
  std::string result;
  for (const char c : text) {
    if (c == '\n') result += '\r';
    result += c;
  }
  return result;
}

/// Writes a JSON value with white space that nobody would think of.
class WildWriter {
 public:
  WildWriter(Random& random, const std::string& newline) : random_(random), newline_(newline) {}

  std::string text(const Json& value) {
    if (!value.is_structured()) return value.dump();
    const bool lines = random_.whole(0, 1) == 1;
    std::string result = value.is_object() ? "{" : "[";
    bool first = true;
    for (const auto& [key, part] : value.items()) {
      if (!first) result += gap(false) + ",";
      first = false;
      result += gap(lines);
      if (value.is_object()) result += Json(key).dump() + gap(false) + ":" + gap(false);
      result += text(part);
    }
    return result + gap(lines) + (value.is_object() ? "}" : "]");
  }

 private:
  std::string gap(bool line) {
    const std::string blanks[] = {"", " ", "  ", "\t"};
    const std::string& blank = blanks[random_.whole(0, 3)];
    return line ? newline_ + blank + std::string(static_cast<std::size_t>(random_.whole(0, 5)), ' ')
                : blank;
  }

  Random& random_;
  std::string newline_;
};

Json random_correction(Random& random) {
  const auto& all = correction_words();
  const auto last = static_cast<int>(all.size()) - 1;
  const CorrectionWords& words = all[static_cast<std::size_t>(random.whole(0, last))];
  Json correction{{std::string(words.action), words.place}, {"by", random.whole(1, 30) / 10.0}};
  if (words.must_say) correction["as"] = amount_way(words.readings.front()).word;
  if (words.one_sided) correction["side"] = "right";
  if (random.whole(0, 2) == 0) correction["seen"] = "a fold, \"slack\" \\ \u0142";
  if (random.whole(0, 2) == 0) correction["withdrawn"] = random.whole(0, 1) == 1;
  return correction;
}

Json random_fitting(Random& random, int number) {
  Json fitting{{"date", "2026-03-1" + std::to_string(number)}, {"toile", 2 * number}};
  if (random.whole(0, 1) == 1) fitting["note"] = "linen";
  if (random.whole(0, 3) == 0) return fitting;
  fitting["corrections"] = Json::array();
  for (int i = random.whole(0, 3); i > 0; --i) {
    fitting["corrections"].push_back(random_correction(random));
  }
  return fitting;
}

Json random_client(Random& random) {
  Json client{{"format", "blockwright-client-1"}, {"name", "Odalys \u0142"}, {"unit", "cm"}};
  client["sessions"] = Json::array();
  client["sessions"].push_back(Json{{"date", "2026-01-02"}, {"tape", Json{{"bust_girth", 92.25}}}});
  if (random.whole(0, 1) == 1) {
    client["sessions"].push_back(
        Json{{"date", "2025-01-02"}, {"by", "R."}, {"tape", Json{{"bust_girth", {92.25, 93}}}}});
  }
  if (random.whole(0, 1) == 1) client["sessions"][0]["sure"] = Json::array({"bust_girth"});
  if (random.whole(0, 3) > 0) {
    client["fittings"] = Json::array();
    for (int i = 1; i <= random.whole(0, 3); ++i) {
      client["fittings"].push_back(random_fitting(random, i));
    }
  }
  if (random.whole(0, 1) == 1) client["ease"] = Json{{"bust_girth", 5.5}};
  return client;
}

std::vector<std::string> files() {
  std::vector<std::string> texts;
  for (const std::string& text : wardrobe()) {
    texts.push_back(text);
    texts.push_back(with_crlf(text));
    texts.push_back(kMark + text);
    texts.push_back(Json::parse(text).dump());
    texts.push_back(Json::parse(text).dump(4));
  }
  for (Random& random : each_random(kSanitized ? 60 : 300, 41)) {
    const std::string newline = random.whole(0, 1) == 1 ? "\n" : "\r\n";
    std::string text = WildWriter(random, newline).text(random_client(random));
    if (random.whole(0, 3) == 0) text = kMark + text;
    if (random.whole(0, 1) == 1) text += newline;
    texts.push_back(std::move(text));
  }
  return texts;
}

/// Whether `longer` is `text` with one run of bytes put in.
bool has_one_insertion(const std::string& longer, const std::string& text) {
  const auto common = std::mismatch(text.begin(), text.end(), longer.begin(), longer.end());
  const auto rest = std::mismatch(text.rbegin(), text.rend(), longer.rbegin(), longer.rend());
  return longer.size() > text.size() &&
         (common.first - text.begin()) + (rest.first - text.rbegin()) >=
             static_cast<std::ptrdiff_t>(text.size());
}

std::size_t corrections_of(const Client& client) {
  std::size_t count = 0;
  for (const Fitting& fitting : client.fittings) count += fitting.corrections.size();
  return count;
}

const NewCorrection kLower{.action = "lower",
                           .place = "front_neck",
                           .by = "1.50",
                           .as = {},
                           .side = BodySide::Left,
                           .seen = "presses on \"the\" throat"};
const NewCorrection kTakeIn{.action = "take_in",
                            .place = "side",
                            .by = "1",
                            .as = AmountAs::PerSeam,
                            .side = BodySide::Both,
                            .seen = ""};

TEST_CASE("files for these tests are client files") {
  CHECK(wardrobe().size() >= 8);
  for (const std::string& text : files()) {
    INFO(text);
    CHECK(refusal(text).code.empty());
  }
}

// Every toile of a generated file has an even number and dates of its own; toile 3 of 2026-03-12
// comes between the first and the second, toile 9 of 2026-04-01 behind all.
TEST_CASE("a correction is put in without moving a byte, and is read with all that was there") {
  const std::vector<FittingOf> fittings{
      {"2026-03-11", 2, "", ""}, {"2026-03-12", 3, "", ""}, {"2026-04-01", 9, "Pippa", "net"}};
  for (const std::string& text : files()) {
    for (const FittingOf& fitting : fittings) {
      const NewCorrection& correction = fitting.toile == 3 ? kTakeIn : kLower;
      INFO(text);
      std::string longer;
      try {
        longer = with_correction({text, "f.json"}, fitting, correction);
      } catch (const InputError& error) {
        FAIL(to_text(error.problem()));
      }
      INFO(longer);
      CHECK(has_one_insertion(longer, text));
      const Client before = client_of(text);
      const Client after = client_of(longer);
      CHECK(corrections_of(after) == corrections_of(before) + 1);
      const auto found = std::ranges::find(after.fittings, fitting.toile, &Fitting::toile);
      REQUIRE(found != after.fittings.end());
      CHECK(found->date == fitting.date);
      const Correction& added = found->corrections.back();
      CHECK(added.action == correction.action);
      CHECK(added.place == correction.place);
      CHECK(added.by.mm() == Approx(before.unit == Unit::Cm ? (fitting.toile == 3 ? 10.0 : 15.0)
                                                            : (fitting.toile == 3 ? 25.4 : 38.1)));
      CHECK(added.side == correction.side);
      CHECK(added.seen == correction.seen);
    }
  }
}

TEST_CASE("a mark is kept at the head of the file and line ends are the file's own") {
  for (const std::string& text : each(wardrobe())) {
    const std::string marked =
        with_correction({kMark + text, "f.json"}, {"2026-03-21", 1, "", ""}, kLower);
    CHECK(marked == kMark + with_correction({text, "f.json"}, {"2026-03-21", 1, "", ""}, kLower));
    const std::string plain = with_correction({text, "f.json"}, {"2026-03-21", 1, "", ""}, kLower);
    CHECK(with_correction({with_crlf(text), "f.json"}, {"2026-03-21", 1, "", ""}, kLower) ==
          with_crlf(plain));
  }
}

const std::string kBegin = R"({
  "format": "blockwright-client-1",
  "name": "O",
  "unit": "cm",
  "sessions": [
    { "date": "2026-03-14", "tape": { "bust_girth": 92.50 } }
  ])";

TEST_CASE("what is added follows the indent of the file") {
  const std::string one = with_correction({kBegin + "\n}\n", "f.json"}, {"2026-03-21", 1, "R.", ""},
                                          {"lower", "front_neck", "1.0", {}, BodySide::Both, ""});
  CHECK(one == kBegin + R"(,
  "fittings": [
    {
      "date": "2026-03-21",
      "toile": 1,
      "by": "R.",
      "corrections": [
        { "lower": "front_neck", "by": 1.0 }
      ]
    }
  ]
}
)");
  const std::string two = with_correction({one, "f.json"}, {"2026-03-21", 1, "", ""}, kTakeIn);
  CHECK(two == kBegin + R"(,
  "fittings": [
    {
      "date": "2026-03-21",
      "toile": 1,
      "by": "R.",
      "corrections": [
        { "lower": "front_neck", "by": 1.0 },
        { "take_in": "side", "by": 1, "as": "per_seam" }
      ]
    }
  ]
}
)");
  const std::string three = with_session(
      {with_withdrawn({two, "f.json"}, 1), "f.json"},
      {"2026-09-14",
       "R.",
       {{MeasurementName::BustGirth, {"93.0"}}, {MeasurementName::WaistGirth, {"74.0", "74.50"}}}});
  CHECK(three.find(R"({ "lower": "front_neck", "by": 1.0, "withdrawn": true },)") !=
        std::string::npos);
  CHECK(three.find(R"(
    { "date": "2026-03-14", "tape": { "bust_girth": 92.50 } },
    { "date": "2026-09-14", "by": "R.", "tape": { "bust_girth": 93.0, "waist_girth": [74.0, 74.50] } }
  ],)") != std::string::npos);
}

TEST_CASE("an empty list of fittings is filled, and one line stays one line") {
  const std::string added = R"({ "date": "2026-03-21", "toile": 1, "corrections": [)"
                            R"({ "lower": "front_neck", "by": 1.0 }] })";
  const NewCorrection correction{"lower", "front_neck", "1.0", {}, BodySide::Both, ""};
  const std::string line = client_text(R"("bust_girth": 92)");
  const std::string open = line.substr(0, line.size() - 1);
  CHECK(with_correction({line, "f.json"}, {"2026-03-21", 1, "", ""}, correction) ==
        open + R"(, "fittings": [)" + added + "]}");
  CHECK(with_correction({open + R"(, "fittings": []})", "f.json"}, {"2026-03-21", 1, "", ""},
                        correction) == open + R"(, "fittings": [)" + added + "]}");
  const std::string lines = with_correction({kBegin + ",\n  \"fittings\": []\n}", "f.json"},
                                            {"2026-03-21", 1, "", ""}, correction);
  CHECK(lines ==
        with_correction({kBegin + "\n}", "f.json"}, {"2026-03-21", 1, "", ""}, correction));
  CHECK(with_correction({kBegin + ",\n  \"fittings\": [\n  ]\n}", "f.json"},
                        {"2026-03-21", 1, "", ""}, correction) == lines);
}

TEST_CASE("who fitted and a note are added to a fitting that has none, and never overwritten") {
  const FittingOf bare{"2026-03-21", 1, "", ""};
  const FittingOf told{"2026-03-21", 1, "R.", "linen"};
  const std::string text = with_correction({kBegin + "\n}", "f.json"}, bare, kLower);
  const std::string longer = with_correction({text, "f.json"}, told, kTakeIn);
  const Fitting fitting = client_of(longer).fittings.front();
  CHECK(fitting.by == "R.");
  CHECK(fitting.note == "linen");
  CHECK(fitting.corrections.size() == 2);
  CHECK(with_correction({longer, "f.json"}, told, kLower) ==
        with_correction({longer, "f.json"}, bare, kLower));
}

TEST_CASE("who fitted and a note are kept in a fitting without a correction") {
  const FittingOf fitting{"2026-03-21", 2, "R.", "fits"};
  const std::string one = with_fitting({kBegin + "\n}\n", "f.json"}, fitting);
  CHECK(one == kBegin + R"(,
  "fittings": [
    {
      "date": "2026-03-21",
      "toile": 2,
      "by": "R.",
      "note": "fits"
    }
  ]
}
)");
  CHECK(with_fitting({one, "f.json"}, fitting) == one);
  const Client both = client_of(with_correction({one, "f.json"}, fitting, kLower));
  REQUIRE(both.fittings.size() == 1);
  CHECK(both.fittings[0].note == "fits");
  CHECK(both.fittings[0].corrections.size() == 1);
  CHECK_THROWS_AS(with_fitting({one, "f.json"}, {"2026-03-20", 3, "", ""}), InputError);
}

TEST_CASE("what was seen is judged as the reader of the file judges it") {
  CHECK_FALSE(fault_of_seen("the armhole digs in, \"here\""));
  CHECK_FALSE(fault_of_seen(std::string(500, 'a')));
  const auto too_long = fault_of_seen(std::string(501, 'a'));
  REQUIRE(too_long);
  CHECK(too_long->message.plain().starts_with("what you typed has 501 characters, over 500"));
  const auto control = fault_of_seen("waist \x1b[A");
  REQUIRE(control);
  CHECK(control->message.plain() == "what you typed holds the control character U+001B");
  CHECK(fault_of_seen("waist \xff"));
}

TEST_CASE("a session keeps what it is sure of, whatever is added to its file") {
  const std::string text =
      R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [
{"date": "2026-03-14", "tape": {"bust_girth": 92}, "sure": ["bust_girth"]}]})";
  const std::string fitted = with_correction({text, "f.json"}, {"2026-03-21", 1, "", ""}, kLower);
  const std::string retaped =
      with_session({fitted, "f.json"}, {"2027-05-06", "", {{MeasurementName::BustGirth, {"93"}}}});
  const Client after = client_of(with_withdrawn({retaped, "f.json"}, 1));
  REQUIRE(after.sessions.size() == 2);
  CHECK(after.sessions[0].sure.has(MeasurementName::BustGirth));
  CHECK(after.sessions[1].sure == MeasurementSet());
}

TEST_CASE("withdrawing and making active again gives the same bytes, and back again too") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    for (std::size_t number = 1; number <= corrections_of(before); ++number) {
      INFO(text << "\ncorrection " << number);
      const std::string withdrawn = with_withdrawn({text, "f.json"}, number);
      const std::string active = with_active({text, "f.json"}, number);
      CHECK((withdrawn == text) != (active == text));
      CHECK((withdrawn == text ? with_withdrawn({active, "f.json"}, number)
                               : with_active({withdrawn, "f.json"}, number)) == text);
      CHECK(corrections_of(client_of(withdrawn)) == corrections_of(before));
    }
  }
}

TEST_CASE("one correction is withdrawn, and no other") {
  std::string text = kBegin + "\n}";
  for (const char* date : {"2026-03-21", "2026-03-22"}) {
    for (const NewCorrection& correction : {kLower, kTakeIn}) {
      text = with_correction({text, "f.json"}, {date, 1, "", ""}, correction);
    }
  }
  const std::string third = with_withdrawn({text, "f.json"}, 3);
  CHECK(has_one_insertion(third, text));
  const Client client = client_of(third);
  CHECK_FALSE(client.fittings[0].corrections[0].withdrawn);
  CHECK_FALSE(client.fittings[0].corrections[1].withdrawn);
  CHECK(client.fittings[1].corrections[0].withdrawn);
  CHECK_FALSE(client.fittings[1].corrections[1].withdrawn);
}

TEST_CASE("an answer on the new tape is put beside its correction, or changed there") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    for (std::size_t number = 1; number <= corrections_of(before); ++number) {
      INFO(text << "\ncorrection " << number);
      const std::string kept = with_new_tape({text, "f.json"}, number, {OnNewTape::Keep});
      const std::string dropped = with_new_tape({kept, "f.json"}, number, {OnNewTape::Drop});
      CHECK(with_new_tape({dropped, "f.json"}, number, {OnNewTape::Keep}) == kept);
      std::size_t told = 0;
      for (const Fitting& fitting : client_of(dropped).fittings) {
        for (const Correction& correction : fitting.corrections) {
          told += correction.new_tape.answer == OnNewTape::Drop ? 1 : 0;
        }
      }
      CHECK(told >= 1);
      CHECK(corrections_of(client_of(kept)) == corrections_of(before));
    }
    CHECK_THROWS_AS(with_new_tape({text, "f.json"}, corrections_of(before) + 1, {OnNewTape::Keep}),
                    InputError);
  }
}

TEST_CASE("a new answer adds one member and moves no other byte") {
  const std::string text =
      with_correction({kBegin + "\n}", "f.json"}, {"2026-03-21", 1, "", ""}, kLower);
  const std::string kept = with_new_tape({text, "f.json"}, 1, {OnNewTape::Keep});
  CHECK(has_one_insertion(kept, text));
  CHECK(client_of(kept).fittings[0].corrections[0].new_tape.answer == OnNewTape::Keep);
}

TEST_CASE("what remains of an amount is written in the file's unit, rounded, and read back") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    if (corrections_of(before) == 0) continue;
    const Length remains = as_written_in_file(Length::mm(16.2549), before.unit);
    // Ours: to 0.1 mm, and to 0.001 of an inch.
    CHECK(remains.mm() == Approx(before.unit == Unit::Cm ? 16.3 : 0.64 * 25.4));
    const AfterNewTape left{OnNewTape::Settled, remains};
    const std::string changed = with_new_tape({text, "f.json"}, 1, left);
    CHECK(changed.find(before.unit == Unit::Cm ? "1.63" : "0.64") != std::string::npos);
    std::vector<AfterNewTape> read;
    for (const Fitting& fitting : client_of(changed).fittings) {
      for (const Correction& one : fitting.corrections) read.push_back(one.new_tape);
    }
    CHECK(read.front() == left);
  }
}

TEST_CASE("a settled sum is an object beside its correction, and is replaced as a whole") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    if (corrections_of(before) == 0) continue;
    INFO(text);
    for (const Length left : each({Length(), as_written_in_file(Length::mm(16.3), before.unit)})) {
      const AfterNewTape settled{OnNewTape::Settled, left};
      const std::string changed = with_new_tape({text, "f.json"}, 1, settled);
      std::vector<AfterNewTape> read;
      for (const Fitting& fitting : client_of(changed).fittings) {
        for (const Correction& one : fitting.corrections) read.push_back(one.new_tape);
      }
      CHECK(read.front() == settled);
      const std::string kept = with_new_tape({changed, "f.json"}, 1, {OnNewTape::Keep});
      CHECK(kept == with_new_tape({text, "f.json"}, 1, {OnNewTape::Keep}));
      CHECK(with_new_tape({kept, "f.json"}, 1, settled) == changed);
    }
  }
}

TEST_CASE("what remains of a correction is read as its amount is, with a unit or without") {
  const auto read = [](const std::string& unit, const std::string& new_tape) {
    const std::string text =
        R"({ "format": "blockwright-client-1", "name": "N", "unit": ")" + unit +
        R"(", "sessions": [ { "date": "2026-01-10", "tape": { "bust_girth": )" +
        (unit == "cm" ? "92" : "36") +
        R"( } } ], "fittings": [ { "date": "2026-02-01", "toile": 1,
      "corrections": [ { "lower": "front_neck", "by": 1.0, "new_tape": )" +
        new_tape + " } ] } ] }";
    return client_of(text).fittings[0].corrections[0].new_tape;
  };
  const auto change = [](double mm) { return AfterNewTape{OnNewTape::Change, Length::mm(mm)}; };
  CHECK(read("cm", "0.5") == change(5.0));
  CHECK(read("cm", R"("0.5 cm")") == change(5.0));
  CHECK(read("cm", R"("1/4 in")") == change(6.35));
  CHECK(read("in", R"("1/2")") == change(12.7));
  CHECK(read("cm", "0") == change(0.0));
  CHECK(read("cm", "1.0") == change(10.0));
  CHECK(read("in", R"({ "settled": "1/2" })") ==
        AfterNewTape{OnNewTape::Settled, Length::inches(0.5)});
  for (const char* bad : each({"1.01", "-0.1", R"("kept")", R"({ "settled": 11 })", "{}",
                               R"({ "settled": 1, "on": "x" })", "[]", "true"})) {
    INFO(bad);
    CHECK_THROWS_AS(read("cm", bad), InputError);
  }
}

TEST_CASE("a session is put in without moving a byte, and is read with all that was there") {
  const NewSession session{
      "2027-05-06",
      "Tamsin \"T.\"",
      {{MeasurementName::WaistGirth, {"30", "30.50"}}, {MeasurementName::BustGirth, {"62.0"}}}};
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    NewSession taken = session;
    if (before.unit == Unit::Cm) {
      taken.tape = {{MeasurementName::BustGirth, {"93.0"}}};
    } else {
      taken.tape[1].values = {"36 1/2"};
    }
    const std::string longer = with_session({text, "f.json"}, taken);
    INFO(longer);
    CHECK(has_one_insertion(longer, text));
    const Client after = client_of(longer);
    REQUIRE(after.sessions.size() == before.sessions.size() + 1);
    CHECK(after.sessions.back().date == "2027-05-06");
    CHECK(after.sessions.back().by == "Tamsin \"T.\"");
    CHECK(after.sessions.back().tape[MeasurementName::BustGirth]->median().number() ==
          Approx(before.unit == Unit::Cm ? 930.0 : 36.5 * 25.4));
    CHECK(after.fittings == before.fittings);
  }
}

std::string code_of(const std::function<std::string()>& edit, const std::string& message) {
  try {
    (void)edit();
  } catch (const InputError& error) {
    INFO(to_text(error.problem()));
    CHECK(error.problem().where.starts_with("f.json"));
    CHECK(error.problem().message.plain().find(message) != std::string::npos);
    CHECK_FALSE(error.problem().hint.empty());
    return error.problem().code;
  }
  return {};
}

TEST_CASE("what cannot be added is refused as the reader of the file refuses it") {
  const std::string text =
      with_correction({kBegin + "\n}", "f.json"}, {"2026-03-21", 2, "", "linen"}, kLower);
  const auto add = [&](const FittingOf& fitting, const NewCorrection& correction) {
    return [&text, fitting, correction] {
      return with_correction({text, "f.json"}, fitting, correction);
    };
  };
  const FittingOf here{"2026-03-21", 2, "", ""};
  const auto correction = [](const std::string& action, const std::string& by) {
    return NewCorrection{action, "front_neck", by, {}, BodySide::Both, ""};
  };
  CHECK(code_of(add(here, correction("embroider", "1")), "embroider") == "client.key");
  CHECK(code_of(add(here, correction("widen", "1")), "\"widen\" does not go") ==
        "client.correction");
  CHECK(code_of(add(here, correction("lower", "0")), "by is 0 cm") == "client.range");
  CHECK(code_of(add(here, correction("lower", "1, \"raise\": \"underarm\"")), "by is the text") ==
        "client.type");
  CHECK(code_of(add(here, correction("lower", "")), "by is the text") == "client.type");
  CHECK(code_of(add(here, correction("by", "1")), "\"by\" is given twice") == "client.duplicate");
  CHECK(code_of(add(here, {"take_in", "side", "1", {}, BodySide::Both, ""}), "4 ways") ==
        "client.amount");
  CHECK(code_of(add(here, {"lower", "front_neck", "1", {}, BodySide::Both, "a\nb"}), "U+000A") ==
        "client.text");
  CHECK(code_of(add(here, {"lower", "front_neck", "1", {}, BodySide::Both, "\xff"}), "UTF-8") ==
        "client.syntax");
  CHECK(code_of(add({"2026-03-22", 1, "", ""}, kLower), "would contradict the fitting of") ==
        "client.order");
  CHECK(code_of(add({"2026-03-20", 3, "", ""}, kLower), "would contradict the fitting of") ==
        "client.order");
  CHECK(code_of(add({"2026-02-30", 3, "", ""}, kLower), "2026-02-30") == "client.date");
  CHECK(code_of(add({"2026-03-22", 0, "", ""}, kLower), "toile is 0") == "client.range");
  CHECK(code_of(add({"2026-03-21", 2, "", "silk"}, kLower), "linen") == "client.duplicate");
  CHECK(code_of(
            [&] {
              return with_withdrawn({text, "f.json"}, 2);
            },
            "no correction 2; the file holds 1") == "client.correction");
  CHECK(code_of(
            [&] {
              return with_withdrawn({text, "f.json"}, 0);
            },
            "no correction 0") == "client.correction");
  CHECK(code_of(
            [&] {
              return with_session({text, "f.json"}, {"2026-03-14", "", {}});
            },
            "2026-03-14") == "client.duplicate");
  CHECK(code_of(
            [&] {
              return with_session({text, "f.json"}, {"2026-03-15", "", {}});
            },
            "\"bust_girth\" is missing") == "client.missing");
  CHECK(code_of(
            [&] {
              return with_correction({"{}", "f.json"}, here, kLower);
            },
            "format") == "client.missing");
}

}  // namespace

TEST_CASE("more measurements go behind those of their session, without moving a byte") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    const Session& session = before.sessions.front();
    std::vector<NewReadings> more;
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      if (session.tape[entry.name] || entry.kind == MeasurementKind::Angle) continue;
      const Length middle = 0.5 * (entry.least.length() + entry.most.length());
      const double number = before.unit == Unit::Cm ? middle.cm() : middle.inches();
      more.push_back({entry.name, {fixed(number, 2), fixed(number, 3)}});
    }
    const std::string longer = with_readings({text, "f.json"}, session.date, more);
    INFO(longer);
    CHECK(has_one_insertion(longer, text));
    Client after = client_of(longer);
    for (const NewReadings& taken : more) {
      CHECK(after.sessions.front().tape[taken.name]->values.size() == 2);
      after.sessions.front().tape[taken.name].reset();
    }
    CHECK(after == before);
    CHECK(code_of(
              [&] {
                return with_readings({longer, "f.json"}, session.date, {more.front()});
              },
              "already") == "client.duplicate");
    CHECK(code_of(
              [&] {
                return with_readings({text, "f.json"}, "2199-01-01", more);
              },
              "2199-01-01") == "client.session");
  }
}

TEST_CASE("readings taken again replace those of their session, and no other byte") {
  for (const std::string& text : files()) {
    const Client before = client_of(text);
    const Session& session = before.sessions.front();
    const double cm = before.unit == Unit::Cm ? 1.0 : 2.54;
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      if (!session.tape[entry.name] || entry.kind == MeasurementKind::Angle) continue;
      const std::string middle =
          fixed(0.5 * (entry.least.length() + entry.most.length()).cm() / cm, 1);
      const std::string once =
          with_retaken({text, "f.json"}, session.date, {{entry.name, {middle, middle}}});
      const std::string again =
          with_retaken({once, "f.json"}, session.date, {{entry.name, {middle}}});
      INFO(once << again);
      CHECK(client_of(again).sessions.front().tape[entry.name]->values.size() == 1);
      Client after = client_of(once);
      CHECK(after.sessions.front().tape[entry.name]->values.size() == 2);
      after.sessions.front().tape[entry.name] = session.tape[entry.name];
      CHECK(after == before);
    }
  }
  const std::string text = with_session(
      {kBegin + "\n}", "f.json"}, {"2027-05-06", "", {{MeasurementName::BustGirth, {"93.0"}}}});
  std::string expected = text;
  expected.replace(expected.find("93.0"), 4, "[94, 94.5]");
  CHECK(with_retaken({text, "f.json"}, "2027-05-06",
                     {{MeasurementName::BustGirth, {"94", "94.5"}}}) == expected);
}

TEST_CASE("a new client file reads as what it was made of") {
  const NewClient made{"Ondine \"O.\" Marsh",
                       Unit::Inch,
                       {"2027-05-06",
                        "R.",
                        {{MeasurementName::BustGirth, {"36 1/2"}},
                         {MeasurementName::WaistGirth, {"28", "28 1/4"}}}}};
  const std::string text = new_client_text(made, "new.json");
  const Client client = client_of(text);
  CHECK(client.name == made.name);
  CHECK(client.unit == Unit::Inch);
  REQUIRE(client.sessions.size() == 1);
  CHECK(client.sessions[0].by == "R.");
  CHECK(client.sessions[0].tape[MeasurementName::WaistGirth]->values.size() == 2);
  CHECK(text.ends_with("}\n"));
}

TEST_CASE("a new client that no reader would take is refused") {
  const NewSession session{"2027-05-06", "", {{MeasurementName::BustGirth, {"92"}}}};
  const auto refused = [](const NewClient& client, const std::string& message) {
    return code_of([&] { return new_client_text(client, "f.json"); }, message);
  };
  CHECK(refused({"", Unit::Cm, session}, "is empty") == "client.text");
  CHECK(refused({"A", Unit::Cm, {"2027-02-30", "", session.tape}}, "2027-02-30") == "client.date");
  CHECK(refused({"A", Unit::Cm, {"2027-05-06", "", {}}}, "is missing") == "client.missing");
  CHECK(refused({"A", Unit::Inch, session}, "outside") == "client.range");
}

TEST_CASE("an empty client file has a null for each measurement, in the order of a session") {
  const std::string text = blank_client_text({"me", Unit::Cm, "2027-05-06"}, "f.json");
  std::size_t at = 0;
  for (const MeasurementName name : tape_order()) {
    at = text.find("\"" + std::string(info(name).key) + "\": null", at);
    CHECK(at != std::string::npos);
  }
  CHECK(code_of(
            [&] {
              return with_session({text, "f.json"}, {"2027-05-06", "", {}});
            },
            "already") == "client.duplicate");
  std::istringstream in(text), again(text);
  CHECK_THROWS_AS(read_client(in, "f.json"), InputError);
  const Client client = read_client(again, "f.json", Unfinished::Kept);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    CHECK_FALSE(client.sessions.at(0).tape[entry.name]);
  }
}

TEST_CASE("readings are put in the place of a null, and everything else stays byte for byte") {
  const std::string blank = blank_client_text({"me", Unit::Inch, "2027-05-06"}, "f.json");
  std::string text = blank;
  text.replace(text.find("\": null"), 7, "\"  :\tnull");  // the maker's own spaces
  const std::string filled = with_readings(
      {text, "f.json"}, "2027-05-06",
      {{MeasurementName::WaistGirth, {"28", "28 1/4"}}, {MeasurementName::BustGirth, {"36 1/2"}}});
  std::string expected = text;
  expected.replace(expected.find("null"), 4, "\"36 1/2\"");
  const std::string waist = "\"waist_girth\": null";
  expected.replace(expected.find(waist), waist.size(), "\"waist_girth\": [28, \"28 1/4\"]");
  CHECK(filled == expected);
  CHECK(client_of(filled).sessions.at(0).tape[MeasurementName::BustGirth]->median() ==
        Measure(Length::inches(36.5)));
}

}  // namespace blockwright
