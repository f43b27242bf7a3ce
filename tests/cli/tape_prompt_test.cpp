// A tape session at the prompt, with answers from a text and files in memory.
#include "../../src/cli/tape_prompt.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <sstream>
#include <vector>

namespace tape_prompt_test {

using namespace blockwright;
using enum MeasurementName;

namespace {

const std::string kToday = "2026-11-29";

const std::string kClient = R"({
  "format": "blockwright-client-1",
  "name": "Verity Lark",  "unit": "cm",
  "sessions": [
    { "date": "2026-07-12", "tape": { "bust_girth": 94.0, "waist_girth": 74.00 } }
  ]
})";

struct Asked {
  std::string said;
  bool wrote = false;
};

// What the program says to these answers about people/verity.json.
Asked asked(const std::string& answers, MemoryFiles& files, TapeJob job = {}) {
  job.client = "people/verity.json";
  std::istringstream in(answers);
  std::ostringstream out;
  const bool wrote = ask_for_tape(job, kToday, files, in, out);
  return {out.str(), wrote};
}

Client client_in(const MemoryFiles& files) {
  std::istringstream in(files.files.at("people/verity.json"));
  return read_client(in, "people/verity.json");
}

MemoryFiles with_client() { return MemoryFiles({{"people/verity.json", kClient}}); }

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

}  // namespace

TEST_CASE("Done and quit end a tape session as save does") {
  for (const char* word : {"done", "q", "quit"}) {
    MemoryFiles files;
    const auto [said, wrote] =
        asked(std::string("Verity Lark\ncm\n\nR.\n94\n\n74\n") + word + "\n", files);
    CHECK(wrote);
    CHECK(has(said, "2 measurements of 2026-11-29."));
  }
}

TEST_CASE("A new client is asked for name, unit, date and tape, and can be drafted from") {
  MemoryFiles files;
  const auto [said, wrote] = asked("Verity Lark\ncm\n\nR.\n94\n\n74 74.5\nsave\n", files);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "people/verity.json is not there yet: a new person."));
  CHECK(has(said, "1 of 24  bust girth\n  Level round the fullest part of the bust"));
  CHECK(has(said, "Written into people/verity.json: 2 measurements of 2026-11-29."));
  CHECK(has(said, "Next: blockwright draft people/verity.json"));
  const Client client = client_in(files);
  CHECK(client.name == "Verity Lark");
  REQUIRE(client.sessions.size() == 1);
  CHECK(client.sessions[0].date == kToday);
  CHECK(client.sessions[0].by == "R.");
  CHECK(client.sessions[0].tape[BustGirth]->median().number() == 940.0);
  CHECK_FALSE(client.sessions[0].tape[UnderbustGirth]);
  CHECK(client.sessions[0].tape[WaistGirth]->values.size() == 2);
  CHECK(files.files.size() == 1);
}

TEST_CASE("A known client gets a new session behind the old one, whose text stays beside it") {
  MemoryFiles files = with_client();
  const auto [said, wrote] = asked("2026-08-01\n\n95\n", files);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "Verity Lark, in cm"));
  CHECK(has(said, "On 2026-07-12 it was 94 cm."));
  CHECK(files.files.at("people/verity.json.bak") == kClient);
  const Client client = client_in(files);
  REQUIRE(client.sessions.size() == 2);
  CHECK(client.sessions[1].date == "2026-08-01");
  CHECK(client.sessions[1].by.empty());
  CHECK(client.sessions[1].tape[BustGirth]->median().number() == 950.0);
}

TEST_CASE("A session that was broken off goes on where it ended") {
  MemoryFiles files = with_client();
  TapeJob job;
  job.date = "2026-07-12";
  const auto [said, wrote] = asked("82\nback\n83\nsave\n", files, job);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "The file has a session of that date: what it has not got yet is asked."));
  CHECK(has(said, "2 of 24  underbust girth"));
  CHECK(count_of(said, "bust girth, cm >") == 2);  // the underbust girth, twice
  const Client client = client_in(files);
  REQUIRE(client.sessions.size() == 1);
  CHECK(client.sessions[0].tape[UnderbustGirth]->median().number() == 830.0);
  CHECK(client.sessions[0].tape[WaistGirth]->median().number() == 740.0);
}

TEST_CASE("An empty file is gone on with on its own date, and its nulls are filled in place") {
  MemoryFiles files;
  const std::string blank = blank_client_text({"Verity Lark", Unit::Cm, "2026-08-01"}, "v.json");
  files.files["people/verity.json"] = blank;
  const auto [said, wrote] = asked("\n94\nskip\n74 74.5\nsave\n", files);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "Date of this session (Enter: 2026-08-01)"));
  CHECK(has(said, "1 of 24  bust girth"));
  std::string expected = blank;
  const auto fill = [&](const std::string& key, const std::string& value) {
    const std::string null = "\"" + key + "\": null";
    expected.replace(expected.find(null), null.size(), "\"" + key + "\": " + value);
  };
  fill("bust_girth", "94");
  fill("waist_girth", "[74, 74.5]");
  CHECK(files.files.at("people/verity.json") == expected);
  CHECK(client_in(files).sessions.size() == 1);
}

TEST_CASE("Whatever ends the session, what was entered is written") {
  for (const std::string& end :
       each(std::vector<std::string>{"save\n", "", "unfinished", "\n\nsave\n"})) {
    MemoryFiles files;
    asked("Verity Lark\nin\n2026-08-01\n\n37 1/4\n" + end, files);
    CHECK(client_in(files).sessions[0].tape[BustGirth]->median().number() == Approx(946.15));
  }
}

TEST_CASE("Without a measurement, or without the bust girth, nothing is written and it says so") {
  for (const std::string& answers : each(std::vector<std::string>{
           "", "Verity Lark\n", "Verity Lark\ncm\n", "Verity Lark\ncm\n\n\n",
           "Verity Lark\ncm\n\n\nsave\n", "Verity Lark\ncm\n\n\nskip\n\n"})) {
    MemoryFiles files;
    const auto [said, wrote] = asked(answers, files);
    CHECK_FALSE(wrote);
    CHECK(has(said, "Nothing is written: nothing was entered."));
    CHECK(files.files.empty());
  }
  MemoryFiles files = with_client();
  CHECK_FALSE(asked("\n\n", files).wrote);
  CHECK(files.files.size() == 1);
  CHECK(files.files.at("people/verity.json") == kClient);
}

TEST_CASE("The bust girth cannot be left out; everything else can") {
  MemoryFiles files;
  const std::string said = asked("V.\ncm\n\n\n\nskip\n94\n", files).said;
  CHECK(count_of(said, "The bust girth is the one measurement that is needed.") == 2);
  CHECK(count_of(said, "bust girth, cm >") == 4);  // three times, and the underbust girth
}

TEST_CASE(
    "An unlikely reading is asked for once more, and kept when it is typed again or with Enter") {
  for (const std::string& again : each(std::vector<std::string>{"66\n", "\n", "66 \n"})) {
    MemoryFiles files;
    const std::string said = asked("V.\ncm\n\n\n94\n66\n" + again + "74\n", files).said;
    INFO(said);
    CHECK(count_of(said, "66 cm would be unusual") == 1);
    CHECK(client_in(files).sessions[0].tape[UnderbustGirth]->median().number() == 660.0);
    CHECK(client_in(files).sessions[0].tape[WaistGirth]->median().number() == 740.0);
  }
  MemoryFiles files;
  asked("V.\ncm\n\n\n94\n66\n81\n", files);
  CHECK(client_in(files).sessions[0].tape[UnderbustGirth]->median().number() == 810.0);
}

TEST_CASE("In doubt the words hold as at the plain question, and what is kept is said") {
  const std::string begun = "V.\ncm\n\n\n94\n66\n";
  MemoryFiles back;
  std::string said = asked(begun + "back\n95\n\n74\nsave\n", back).said;
  INFO(said);
  CHECK(has(said, "66 cm is kept."));
  CHECK(has(said, "You entered 94 cm; Enter keeps it."));
  CHECK(client_in(back).sessions[0].tape[BustGirth]->median().number() == 950.0);
  CHECK(client_in(back).sessions[0].tape[UnderbustGirth]->median().number() == 660.0);
  MemoryFiles saved;
  said = asked(begun + "?\nSAVE\n99\n", saved).said;
  CHECK(has(said, "It closes the front's share of the bust"));
  CHECK(has(said, "66 cm is kept.\n\nWritten into people/verity.json: 2 measurements"));
  MemoryFiles left_out;
  said = asked(begun + "ninety\nSkip\n74\n", left_out).said;
  CHECK(has(said, "'ninety' is no number"));
  CHECK(has(said, "66 cm is taken out."));
  CHECK_FALSE(client_in(left_out).sessions[0].tape[UnderbustGirth]);
  CHECK(client_in(left_out).sessions[0].tape[WaistGirth]->median().number() == 740.0);
}

TEST_CASE("What was entered is taken out again with skip, but for the bust girth") {
  MemoryFiles files;
  const std::string said =
      asked("V.\ncm\n\n\n94\n82\n74, 74.5\nBack\nskip\nback\nback\nback\nskip\n\nsave\n", files)
          .said;
  INFO(said);
  CHECK(has(said, "You entered 74, 74.5 cm; Enter keeps it, \"skip\" takes it out."));
  CHECK(has(said, "74, 74.5 cm is taken out."));
  CHECK(count_of(said, "The bust girth is the one measurement that is needed.") == 1);
  const Client client = client_in(files);
  CHECK(client.sessions[0].tape[BustGirth]);
  CHECK(client.sessions[0].tape[UnderbustGirth]);
  CHECK_FALSE(client.sessions[0].tape[WaistGirth]);
}

TEST_CASE("What the file has is taken again: back leads there from the first question") {
  MemoryFiles files = with_client();
  TapeJob job;
  job.date = "2026-07-12";
  const auto [said, wrote] = asked("back\n75.50\nsave\n", files, job);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "3 of 24  waist girth"));
  CHECK(has(said, "The file has 74 cm; Enter keeps it."));
  std::string expected = kClient;
  expected.replace(expected.find("74.00"), 5, "75.5");
  CHECK(files.files.at("people/verity.json") == expected);
  CHECK(files.files.at("people/verity.json.bak") == kClient);
  MemoryFiles undone = with_client();
  const std::string again = asked("back\nback\nback\n75\nback\nskip\n", undone, job).said;
  INFO(again);
  CHECK(has(again, "This is the first one."));
  CHECK(has(again, "75 cm is taken out; what the file has stays: 94 cm."));
  CHECK(undone.files.at("people/verity.json") == kClient);
}

TEST_CASE("Where all are taken it says so, and each can be taken again") {
  std::vector<NewReadings> all;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const double middle = 0.5 * (entry.least.number() + entry.most.number());
    const bool angle = entry.kind == MeasurementKind::Angle;
    all.push_back({entry.name, {std::to_string(static_cast<int>(angle ? middle : middle / 10.0))}});
  }
  const std::string full = new_client_text({"V.", Unit::Cm, {"2026-07-12", "", all}}, "v.json");
  TapeJob job;
  job.date = "2026-07-12";
  MemoryFiles files({{"people/verity.json", full}});
  const auto [said, wrote] = asked("save\n", files, job);
  INFO(said);
  CHECK(wrote);
  CHECK(has(said, "all 24 are taken.\n"));
  CHECK(has(said, "Nothing is changed: all 24 are taken."));
  CHECK(files.files.at("people/verity.json") == full);
  CHECK(asked("111\nsave\n", files, job).wrote);
  CHECK(client_in(files).sessions[0].tape[BustGirth]->median().number() == 1110.0);
}

TEST_CASE("The unit is taken in any case and written out") {
  for (const std::string& word : each(std::vector<std::string>{"IN", "inch", "inches"})) {
    MemoryFiles files;
    asked("V.\n" + word + "\n\n\n36½, 36-1/2\nsave\n", files);
    CHECK(client_in(files).unit == Unit::Inch);
    CHECK(client_in(files).sessions[0].tape[BustGirth]->values.size() == 2);
  }
  MemoryFiles files;
  asked("V.\ncentimetres\n\n\n94.\nsave\n", files);
  CHECK(client_in(files).unit == Unit::Cm);
}

TEST_CASE("Another unit than her file's is refused before anything is asked") {
  MemoryFiles files({{"people/verity.json", kClient}});
  TapeJob job;
  job.unit = Unit::Inch;
  CHECK_THROWS_AS(asked("\n\n92.5\nsave\n", files, job), UsageError);
  CHECK(files.files["people/verity.json"] == kClient);
  job.unit = Unit::Cm;
  CHECK(asked("\n\n92.5\nsave\n", files, job).wrote);
}

TEST_CASE("An older session without a bust girth does not hide the last that was taken") {
  std::string text = kClient;
  const std::string blank = "{ \"date\": \"2026-09-12\", \"tape\": { \"bust_girth\": null } }";
  text.insert(text.find("\n  ]"), ",\n    " + blank);
  MemoryFiles files({{"people/verity.json", text}});
  CHECK(asked("2026-11-29\n\nsave\n", files).said.find("On 2026-07-12 it was 94 cm.") !=
        std::string::npos);
}

TEST_CASE("A date or name that no file may have is refused as the option that gave it") {
  TapeJob job;
  job.client = "v.json";
  job.date = "2026-13-01";
  const auto refused = [&] {
    try {
      judge_tape(job);
    } catch (const UsageError& error) {
      return error.problem().where + ": " + error.problem().message.plain();
    }
    return std::string();
  };
  CHECK(has(refused(), "--date: "));
  CHECK(has(refused(), "2026-13-01"));
  job.date = "2026-12-01";
  CHECK(refused().empty());
  job.by = "a\nb";
  CHECK(has(refused(), "--by: "));
}

TEST_CASE("A path is a word of the next command, in quotes where a shell needs them") {
  CHECK(as_argument("people/verity.json") == "people/verity.json");
  CHECK(as_argument("a b.json") == "'a b.json'");
  CHECK(as_argument("V's.json") == "'V'\\''s.json'");
}

TEST_CASE("A wrong answer is told its cure and asked for again") {
  MemoryFiles files;
  const std::string said =
      asked("\nVerity Lark\nmm\ncm\n2026-02-30\n2026-08-01\n" + std::string(300, 'R') +
                "\nR.\nninety\n940\n94\n?\n" + std::string(5000, '8') + "\n82\n",
            files)
          .said;
  INFO(said);
  CHECK(has(said, "the name \"\" is empty"));
  CHECK(has(said, "  cm or in\n"));
  CHECK(has(said, "\"2026-02-30\" is not a date"));
  CHECK(has(said, "'ninety' is no number"));
  CHECK(has(said, "did you mean 94 cm ("));
  CHECK(has(said, "It closes the front's share of the bust"));
  CHECK(has(said, "Where the tape runs: docs/tape.md, figure Girths, number 2."));
  CHECK(has(said, "the answer is longer than 1000 bytes"));
  const Client client = client_in(files);
  CHECK(client.sessions[0].by == "R.");
  CHECK(client.sessions[0].tape[BustGirth]->median().number() == 940.0);
  CHECK(client.sessions[0].tape[UnderbustGirth]->median().number() == 820.0);
}

TEST_CASE("After eight measurements it says that they are enough") {
  MemoryFiles files;
  const std::string said = asked("V.\ncm\n\n\n94\n82\n74\n38\n13\n26\n41\n20\n88\n", files).said;
  INFO(said);
  const std::size_t enough = said.find("That is enough for a good first block.");
  REQUIRE(enough != std::string::npos);
  CHECK(said.find("8 of 24") < enough);
  CHECK(said.find("9 of 24") > enough);
}

TEST_CASE(
    "A file that is no client's, and one that cannot be written, end it before anything is lost") {
  MemoryFiles broken;
  broken.files["people/verity.json"] = "{";
  CHECK_THROWS_AS(asked("\n\n94\n", broken), InputError);
  CHECK(broken.files.at("people/verity.json") == "{");
  MemoryFiles full = with_client();
  full.refuses_writing = true;
  TapeJob job;
  job.client = "people/verity.json";
  std::istringstream in("\n\n94 94.5\n\n74\n");
  std::ostringstream out;
  CHECK_THROWS_AS(ask_for_tape(job, kToday, full, in, out), FileError);
  CHECK(full.files.at("people/verity.json") == kClient);
  CHECK(has(out.str(),
            "What you entered, of 2026-11-29:\n  bust girth: 94 94.5\n  waist girth: 74\n"));
}

TEST_CASE("Nothing that is typed reaches the terminal unescaped") {
  MemoryFiles files;
  const std::string said = asked(
                               "Ve\x1b[31mrity\nVerity\ncm\n2026\x07\n\n\n9\x9b"
                               "4\n94\n",
                               files)
                               .said;
  for (const char c : said) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
}

TEST_CASE("What was changed in the file during a session stays") {
  // The file is changed when the answers have been read: by a store that changes it with the lock.
  struct ChangedMeanwhile : MemoryFiles {
    FolderLock lock(const std::string& folder) override {
      std::string& text = files["people/verity.json"];
      text.replace(text.find("Verity Lark"), 11, "Verity Wren");
      return MemoryFiles::lock(folder);
    }
  };
  ChangedMeanwhile files;
  files.files["people/verity.json"] = kClient;
  CHECK(asked("\n\n95\n", files).wrote);
  const Client client = client_in(files);
  CHECK(client.name == "Verity Wren");
  CHECK(client.sessions.size() == 2);
  CHECK(has(files.files.at("people/verity.json.bak"), "Verity Wren"));
}

}  // namespace tape_prompt_test
