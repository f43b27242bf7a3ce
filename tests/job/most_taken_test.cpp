// What a refusal of an amount names is taken, and a step of her tape more is refused. No source:
// both are tried through the run that judges what she types.
#include "most_taken.hpp"

#include "blockwright/job/fit_words.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "support/client_text.hpp"
#include "support/each.hpp"
#include "support/each_person.hpp"
#include "support/memory_files.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

using namespace blockwright;

namespace {

constexpr const char* kHer = "her.json";

std::string text_of_person(const std::string& person) {
  std::ifstream in(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe/" + person + ".json");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

FitJob adding(const std::vector<std::string>& words) {
  FitJob job;
  job.client = kHer;
  job.add = words;
  job.date = "2027-01-01";
  job.toile = 9;
  return job;
}

/// What is said against it; empty where it is taken.
std::string refusal_of(const std::string& client, const FitJob& job) {
  MemoryFiles files;
  files.files[kHer] = client;
  const JobResult result = run_fit(job, files);
  if (result.exit_code == 0) return "";
  REQUIRE_FALSE(result.problems.empty());
  return to_text(result.problems.front());
}

/// The same without a letter written or drawn, of one correction.
std::string preview_refusal_of(const std::string& client, const FitJob& job) {
  MemoryFiles files;
  files.files[kHer] = client;
  const FitPreview preview = preview_fit(job, files);
  return preview.does.empty() ? to_text(preview.problems.front()) : "";
}

/// The words between the quotes behind "this block takes up to"; empty where it names none.
std::string named_in(const std::string& refusal) {
  const std::string before = "this block takes up to \"";
  const std::size_t at = refusal.find(before);
  if (at == std::string::npos) return "";
  const std::size_t from = at + before.size();
  return refusal.substr(from, refusal.find('"', from) - from);
}

/// The same words with a step of the tape more.
std::string a_step_more(const std::string& words, Unit unit) {
  const TypedCorrection typed = correction_typed(words);
  const Length by = amount_typed(typed.amount)->length(unit) + printed_step(unit);
  std::string more =
      typed.action + " " + typed.place + " " +
      (unit == Unit::Inch ? inch_fraction(by.inches()) + " in" : trimmed(by.mm(), 2) + " mm");
  if (typed.as) more += " " + std::string(amount_way(*typed.as).word);
  if (typed.side) more += " " + std::string(side_word(*typed.side));
  return more;
}

/// Whether it was refused with an amount, of which all is true.
bool names_what_is_taken(const std::string& client, const std::string& words, Unit unit) {
  FitJob job = adding({words});
  job.unit = unit;
  const std::string refusal = preview_refusal_of(client, job);
  const std::string named = named_in(refusal);
  INFO(words << ": " << refusal);
  if (named.empty()) return false;
  job.add = {named};
  CHECK(preview_refusal_of(client, job) == "");
  job.add = {a_step_more(named, unit)};
  INFO(job.add.front());
  CHECK(preview_refusal_of(client, job) != "");
  return true;
}

}  // namespace

TEST_CASE("A refused amount is told with the most that her block takes, in her unit") {
  for (const char* person : each({"bronislawa-slizewicz", "eleni-lygerou", "odalys-fenn"})) {
    const std::string client = text_of_person(person);
    for (const char* words :
         each({"lower underarm 11 cm", "lower underarm 10 cm", "take_in waist 12 in per_half",
               "take_in waist 9 cm per_half", "narrow side_neck 9 cm whole_girth",
               "take_in centre_back 8 cm per_half", "smaller bust 9 cm per_half"})) {
      for (const Unit unit : {Unit::Cm, Unit::Inch})
        CHECK(names_what_is_taken(client, words, unit));
    }
  }
}

TEST_CASE("A shoulder 2.5 cm longer is taken, and that is what 2.6 cm are told") {
  for (const char* person : each({"bronislawa-slizewicz", "ondine-marsh"})) {
    const std::string client = text_of_person(person);
    CHECK(refusal_of(client, adding({"lengthen shoulder 2.5 cm"})) == "");
    CHECK(named_in(refusal_of(client, adding({"lengthen shoulder 2.6 cm"}))) ==
          "lengthen shoulder 2.5 cm");
  }
}

TEST_CASE("Of two corrections the one is named that the other leaves no room for") {
  const std::string client = text_of_person("ondine-marsh");
  const std::string refusal =
      refusal_of(client, adding({"lengthen shoulder 2 cm", "lengthen shoulder 2 cm"}));
  CHECK(named_in(refusal) == "lengthen shoulder 0.5 cm");
  CHECK(refusal_of(client, adding({"lengthen shoulder 2 cm", "lengthen shoulder 0.5 cm"})) == "");
}

TEST_CASE("A draft names what would be taken, too") {
  MemoryFiles files;
  files.files[kHer] = text_of_person("ondine-marsh");
  REQUIRE(run_fit(adding({"lengthen shoulder 2 cm"}), files).exit_code == 0);
  std::string& text = files.files[kHer];
  const std::size_t at =
      text.find("\"2 cm\"") != std::string::npos ? text.find("\"2 cm\"") : text.find("\"by\": 2");
  REQUIRE(at != std::string::npos);
  text.replace(text.find('2', at), 1, "4");
  Job job;
  job.client = kHer;
  job.write = {OutputKind::Svg};
  const JobResult result = run_job(job, files);
  REQUIRE_FALSE(result.problems.empty());
  CHECK(named_in(to_text(result.problems.front())) == "lengthen shoulder 2.5 cm");
}

TEST_CASE("No amount is named of what is refused whatever its amount is") {
  const std::string client = text_of_person("odalys-fenn");
  const std::string refusal = refusal_of(client, adding({"lower underarm 0"}));
  CHECK(refusal.find("changes nothing") != std::string::npos);
  CHECK(named_in(refusal) == "");
}

TEST_CASE("What a refusal names is taken by anybody, of every row") {
  const auto& all = correction_words();
  int named = 0;
  std::size_t next = 0;
  for (const Session& session : each_person(people(50), 20261201)) {
    const std::string client = client_text(session, 1);
    for (int i = 0; i < 3; ++i, next += 7) {
      const CorrectionWords& words = all[next % all.size()];
      const std::string typed = std::string(words.action) + " " + std::string(words.place) +
                                " 99 mm " + std::string(amount_way(words.readings.back()).word) +
                                (words.one_sided ? " left" : "");
      named += names_what_is_taken(client, typed, Unit::Cm) ? 1 : 0;
    }
  }
  CHECK(named >= people(50));
}
