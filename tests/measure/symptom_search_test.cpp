// Corrections found by what is seen. The phrases are everyday speech and the words of
// docs/fitting.md: from memory, no source.
#include "blockwright/measure/symptom_search.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"
#include "symptom_table.hpp"
#include "understood.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <string>

namespace blockwright {
namespace {

struct Phrase {
  std::string said;
  std::string correction;  ///< "lower front_neck", "-" for nothing
};

std::vector<Phrase> phrases() {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/tests/measure/symptom_phrases.tsv");
  REQUIRE(file.good());
  std::vector<Phrase> all;
  for (std::string line; std::getline(file, line);) {
    const std::size_t tab = line.find('\t');
    if (line.starts_with('#') || tab == std::string::npos) continue;
    all.push_back({line.substr(0, tab), line.substr(tab + 1)});
  }
  return all;
}

std::string words_of(const FoundCorrection& found) {
  return std::string(found.words->action) + " " + std::string(found.words->place);
}

std::vector<std::string> found_by(std::string_view said) {
  std::vector<std::string> words;
  for (const FoundCorrection& found : find_corrections(said).best) words.push_back(words_of(found));
  return words;
}

bool is_among(const std::string& correction, const std::vector<std::string>& answers) {
  return std::ranges::find(answers, correction) != answers.end();
}

TEST_CASE("Each of more than 500 phrases finds its correction as first or second answer") {
  std::size_t tried = 0;
  for (const Phrase& phrase : phrases()) {
    if (phrase.correction == "-") continue;
    INFO(phrase.said);
    std::vector<std::string> answers = found_by(phrase.said);
    answers.resize(std::min<std::size_t>(answers.size(), 2));
    CAPTURE(answers);
    CHECK(is_among(phrase.correction, answers));
    CHECK(find_corrections(phrase.said).not_understood.empty());
    ++tried;
  }
  CHECK(tried > 500);
}

TEST_CASE("Each correction is found by a phrase of the list") {
  std::set<std::string> listed;
  for (const Phrase& phrase : phrases()) listed.insert(phrase.correction);
  for (const CorrectionWords& words : each(correction_words())) {
    CHECK(listed.contains(words_of({&words, {}})));
  }
}

TEST_CASE("Words that say nothing of a fault find nothing") {
  std::size_t tried = 0;
  for (const Phrase& phrase : phrases()) {
    if (phrase.correction != "-") continue;
    INFO(phrase.said);
    CHECK(found_by(phrase.said).empty());
    ++tried;
  }
  CHECK(tried >= 40);
}

TEST_CASE("Every correction is found first by its own words, with its row, direction and cure") {
  for (const CorrectionWords& words : each(correction_words())) {
    std::string said = words_of({&words, {}});
    CHECK(found_by(said).front() == said);
    std::ranges::replace(said, '_', ' ');
    const FoundCorrections found = find_corrections(said);
    CHECK(found.best.front().words == &words);
    CHECK(found.best.front().cure == cure_of(words));
    CHECK(cure_of(words).size() > 20);
    CHECK(cure_of(words).size() <= 90);  // one line of a terminal, beside the words
  }
}

TEST_CASE("A correction is found first by its name said alone, of any side") {
  for (const CorrectionWords& words : each(correction_words())) {
    const std::string name(row_name(words.row, words.sign));
    const CorrectionWords& best = *find_corrections(name).best.front().words;
    INFO(name << ": " << best.action << ' ' << best.place);
    CHECK(row_name(best.row, best.sign) == name);
  }
  CHECK(found_by("shoulder shorter").front() == "shorten shoulder");
  CHECK(found_by("waist taken in").front() == "take_in waist");
}

TEST_CASE("What begins to speak and what is left over at a place name no side") {
  const auto side_of = [](const char* said) { return find_corrections(said).best.front().side; };
  CHECK(side_of("right, the waist is loose") == BodySide::Both);
  CHECK(side_of("2 cm left at the waist") == BodySide::Both);
  CHECK(side_of("right: the armhole gapes") == BodySide::Right);
  CHECK(side_of("right armhole gapes") == BodySide::Right);
  CHECK(side_of("left, the armhole gapes") == BodySide::Left);
}

TEST_CASE("The parts of the body hold every correction once") {
  std::set<const CorrectionWords*> seen;
  std::size_t count = 0;
  for (const FittingPart& part : each(fitting_parts())) {
    CHECK(fitting_part(part.name) == &part);
    for (const FoundCorrection& correction : part.corrections) {
      seen.insert(correction.words);
      ++count;
    }
  }
  CHECK(count == correction_words().size());
  CHECK(seen.size() == count);
  CHECK(fitting_part("Shoulders")->name == "shoulder");
  CHECK(fitting_part("the armpit")->name == "armhole");
  CHECK(fitting_part("hem")->name == "waist");
  CHECK(fitting_part("armhole digs in") == nullptr);
  CHECK(fitting_part("") == nullptr);
}

TEST_CASE("What names no fault of a bodice is told from what is not understood") {
  const auto of = [](const char* said) { return find_corrections(said).set_aside; };
  for (const char* said : each({"waist isn't loose", "the neck is fine", "everything is great",
                                "dont take in the waist", "nothing wrong with the neck"})) {
    CHECK(of(said) == SaidOf::NoFault);
  }
  for (const char* said : each({"sleeve is too tight", "the cuffs are too wide and too long"})) {
    CHECK(of(said) == SaidOf::Sleeve);
  }
  for (const char* said :
       each({"wrinkles under my bum", "trousers", "side seam pulls at the hip"})) {
    CHECK(of(said) == SaidOf::BelowWaist);
  }
  for (const char* said : each({"waist loose", "hello world", "", "the neck isn't right"})) {
    CHECK(of(said) == SaidOf::Fault);
  }
  CHECK(find_corrections("the neck is gorgeously fine").not_understood.empty());
}

TEST_CASE("A seat is below the waist, and no but") {
  for (const char* said : each({"my butt sticks out", "the butts", "butt is tight"})) {
    CHECK(find_corrections(said).set_aside == SaidOf::BelowWaist);
  }
}

TEST_CASE(
    "What is seen without a place is told from what has one, and from words of a correction") {
  for (const char* said : each({"too long", "loose", "it gapes"})) {
    CHECK(find_corrections(said).is_nowhere);
  }
  for (const char* said : each({"too long at the back", "waist loose", "front", "lower front_neck",
                                "whole bodice too tight", "the weather"})) {
    CHECK_FALSE(find_corrections(said).is_nowhere);
  }
}

TEST_CASE("Something wrong that is not named shows what can be done there") {
  for (const char* said :
       each({"the waist doesn't fit", "waist isn't right", "waist fits badly"})) {
    CHECK(found_by(said) == found_by("waist"));
  }
}

TEST_CASE("What is longer is the first thing named") {
  const auto first = [](const char* said) { return found_by(said).front(); };
  CHECK(first("front longer than back") != first("back longer than front"));
  CHECK(first("back longer than front") != first("back shorter than front"));
  CHECK(first("back shorter than front") != first("front longer than back"));
}

bool undoes(const CorrectionWords& one, const CorrectionWords& other) {
  const std::map<std::string_view, std::string_view> ways{
      {"raise", "lower"},  {"widen", "narrow"},   {"take_in", "let_out"}, {"shorten", "lengthen"},
      {"forward", "back"}, {"fuller", "smaller"}, {"scoop", "fill"},      {"take_up", "let_down"}};
  const auto way = ways.find(one.action);
  return one.place == other.place && way != ways.end() && way->second == other.action;
}

TEST_CASE("Of two opposites at one place only the likelier answers what is seen") {
  std::size_t tried = 0;
  for (const Phrase& phrase : phrases()) {
    if (!understood(phrase.said).concepts.has_any(is_sight)) continue;
    const std::vector<FoundCorrection> best = find_corrections(phrase.said).best;
    for (const FoundCorrection& one : best) {
      for (const FoundCorrection& other : best) {
        INFO(phrase.said << ": " << words_of(one) << ", " << words_of(other));
        // What digs in behind may go either way.
        const bool either = one.words->place == "back_armhole";
        CHECK_FALSE((!either && one.side == other.side && undoes(*one.words, *other.words)));
      }
    }
    ++tried;
  }
  CHECK(tried > 300);
}

TEST_CASE("An armhole that digs in at the back may want filling or hollowing: both are offered") {
  const std::vector<std::string> digs = found_by("armhole digs in at the back");
  CHECK(is_among("fill back_armhole", digs));
  CHECK(is_among("scoop back_armhole", digs));
  const std::vector<std::string> wide = found_by("back armhole too wide");
  CHECK_FALSE(is_among("fill back_armhole", wide));
}

TEST_CASE("The bust dart is one of the front, at the shoulder or the waist") {
  CHECK(is_among("let_out front_shoulder_dart", found_by("let out the bust dart")));
  CHECK(is_among("take_in front_shoulder_dart", found_by("take in the bust dart")));
}

TEST_CASE("Round shoulders are a round back, not sloping ones") {
  for (const char* said :
       each({"round shoulders", "rounded shoulders", "she has round shoulders"})) {
    const std::vector<std::string> found = found_by(said);
    CHECK(is_among("lengthen upper_back", found));
    CHECK(is_among("forward shoulder_point", found));
    REQUIRE(found.size() > 2);
    CHECK_FALSE(is_among("lower shoulder_point", {found.begin(), found.begin() + 3}));
  }
}

TEST_CASE("A waist dart let out says that it gives no room at the bust") {
  for (const char* place : {"front_waist_dart", "back_waist_dart", "waist_darts"}) {
    const std::string cure(cure_of(*find_correction_words("let_out", place)));
    CHECK(cure.find("bust") != std::string::npos);
  }
}

TEST_CASE("What undoes the first answer, or is of another part, is no answer") {
  const auto is_answer = [](const char* correction, const char* said) {
    return is_among(correction, found_by(said));
  };
  CHECK_FALSE(is_answer("raise shoulder_point", "shoulder stands off at its end"));
  CHECK_FALSE(is_answer("let_out centre_back", "1.5 cm out at each centre back"));
  CHECK_FALSE(
      is_answer("let_out centre_front", "bust points too far apart (pinched at centre front)"));
  CHECK_FALSE(is_answer("narrow side_neck", "sides not flat"));
  CHECK_FALSE(is_answer("take_in side", "neck sides to come in by 3 cm"));
  CHECK_FALSE(is_answer("raise one_shoulder", "lower the left shoulder"));
  CHECK_FALSE(is_answer("take_in back_armhole_edge", "drag lines across the back"));
}

TEST_CASE("Apostrophes and dashes of a printer are those of a keyboard") {
  CHECK(found_by("waist isn\xE2\x80\x99t loose \xE2\x80\x94 the neck gapes") ==
        found_by("waist isn't loose - the neck gapes"));
  CHECK(found_by("waist isn\xE2\x80\x98t loose").empty());
}

TEST_CASE("At most five are found", "[kMostFound]") {
  for (const char* said : each({"loose", "tight", "armhole", "waist loose", "neck"})) {
    CHECK(found_by(said).size() == kMostFound);
  }
  CHECK(found_by("bust points too far apart").size() < kMostFound);
}

TEST_CASE("A word and its opposite find opposite directions") {
  for (const auto& [loose, tight, place] :
       std::vector<std::array<std::string, 3>>{{"loose", "tight", "waist"},
                                               {"baggy", "too small", "bust"},
                                               {"slack", "strains", "side"},
                                               {"too long", "too short", "shoulder"},
                                               {"too low", "too high", "front neck"},
                                               {"gapes", "cuts in", "neck sides"},
                                               {"too wide", "too narrow", "across the back"},
                                               {"sags", "rides up", "front hem"},
                                               {"too far apart", "too close", "bust points"},
                                               {"swings forward", "swings back", "side seam"}}) {
    INFO(place << ": " << loose << ", " << tight);
    const auto one = found_by(place + " " + loose), other = found_by(place + " " + tight);
    REQUIRE_FALSE(one.empty());
    REQUIRE_FALSE(other.empty());
    CHECK_FALSE(is_among(one.front(), other));
    CHECK_FALSE(is_among(other.front(), one));
  }
}

// Ours: what is elsewhere may follow, never lead.
TEST_CASE("A place that is named comes before what is elsewhere") {
  const std::map<std::string, std::vector<std::string>> at{
      {"neck", {"neck"}},
      {"shoulder", {"shoulder"}},
      {"armhole", {"armhole", "underarm"}},
      {"waist", {"waist", "below_bust"}},
      {"front hem", {"front_hem", "front_waist"}},
      {"back hem", {"back_hem", "back_waist"}},
      {"centre back", {"centre_back", "back_waist", "upper_back", "back_shoulder"}},
      {"side seam", {"side", "below_bust"}}};
  const auto lies_at = [](const std::string& words, const std::vector<std::string>& places) {
    return std::ranges::any_of(
        places, [&](const std::string& p) { return words.find(p) != std::string::npos; });
  };
  for (const auto& [place, places] : at) {
    for (const char* sight : {"loose", "tight", "too long", "too short", "bubbles"}) {
      INFO(place << " " << sight);
      const auto found = found_by(place + " " + sight);
      REQUIRE_FALSE(found.empty());
      CHECK(lies_at(found.front(), places));
    }
  }
}

TEST_CASE("Words that are not understood are named; the others are answered all the same") {
  const FoundCorrections found = find_corrections("The Armhole wobbles and digs in, frumpily");
  CHECK(found.not_understood == std::vector<std::string>{"wobbles", "frumpily"});
  CHECK(words_of(found.best.front()) == "lower underarm");
}

TEST_CASE("No more than five words are named as not understood, each once", "[kMostUnknown]") {
  const auto unknown = [](const char* said) {
    return find_corrections(said).not_understood.size();
  };
  CHECK(unknown("wob wob wob") == 1);
  CHECK(unknown("wob zib quax flum drob") == kMostUnknown);
  CHECK(unknown("wob zib quax flum drob plimp") == kMostUnknown);
}

TEST_CASE("A side that is named is heard, and rows of one side answer only then") {
  CHECK(find_corrections("right shoulder lower").side == BodySide::Right);
  CHECK(find_corrections("waist loose on the left").side == BodySide::Left);
  CHECK(find_corrections("waist loose").side == BodySide::Both);
  CHECK(find_corrections("left and right armhole gape").side == BodySide::Both);
  CHECK(find_corrections("the left side of the neck gapes, the right is fine").side ==
        BodySide::Left);
  CHECK(is_among("take_in waist", found_by("waist loose on the left")));
  for (const auto& said : phrases()) {
    if (understood(said.said).concepts.has(Concept::One)) continue;
    for (const FoundCorrection& found : find_corrections(said.said).best) {
      INFO(said.said << ": " << words_of(found));
      CHECK((!found.words->one_sided || found_by(said.said).front() == words_of(found)));
    }
  }
}

TEST_CASE("A side is one only where it names a half of the body or a part of it") {
  const auto side = [](const char* said) { return find_corrections(said).side; };
  for (const char* said :
       each({"too tight right at the back", "gapes right where my bra strap is",
             "right under the bust it is loose", "loose right across the back",
             "cloth left under the arm", "fabric left over at the waist",
             "no room left at the bust", "1 cm left over at the side",
             "nothing left to pinch at the bust", "shoulder is not the right length",
             "it's not right at the neck", "the neck is right"})) {
    CHECK(side(said) == BodySide::Both);
  }
  for (const char* said :
       each({"left front armhole gapes", "on the left the waist is loose", "armhole gapes on left",
             "armhole gapes, left only", "waist: left too loose", "left arm hole digs in",
             "2 cm too much on the left at the waist", "left under arm digs in",
             "waist loose left"})) {
    CHECK(side(said) == BodySide::Left);
  }
  CHECK(side("the right side of the neck gapes") == BodySide::Right);
  CHECK(side("dart too long, right") == BodySide::Right);
}

TEST_CASE("Of two faults each is answered in turn, with the side that was said of it") {
  const auto answers = [](const char* said) { return find_corrections(said).best; };
  const auto first = answers("left shoulder lower, and the neck gapes");
  REQUIRE(first.size() >= 2);
  CHECK(words_of(first[0]) == "lower one_shoulder");
  CHECK(first[0].side == BodySide::Left);
  CHECK(words_of(first[1]) == "narrow neck");
  CHECK(first[1].side == BodySide::Both);

  const auto sides = answers("the left shoulder slopes, the right armhole gapes");
  REQUIRE(sides.size() >= 2);
  CHECK(sides[0].side == BodySide::Left);
  CHECK(sides[1].side == BodySide::Right);

  const auto darts = answers("the left dart is too high and the right dart is too low");
  REQUIRE(darts.size() >= 2);
  CHECK(words_of(darts[0]) == "lower bust_point");
  CHECK(darts[0].side == BodySide::Left);
  CHECK(words_of(darts[1]) == "raise bust_point");
  CHECK(darts[1].side == BodySide::Right);

  CHECK(words_of(answers("bust strains and the front rides up").front()) == "fuller bust");
  CHECK_FALSE(find_corrections("front too long, back too short").is_nowhere);
}

TEST_CASE("What a hand takes hold of is loose, what takes hold of her is tight") {
  const std::vector<std::string> loose = found_by("waist loose"), tight = found_by("waist tight");
  for (const char* said : each({"I can pinch 2 cm at the waist", "pinched 2 cm at the waist",
                                "able to pinch the waist", "a 2 cm pinch at the waist",
                                "I'm pinching an inch at the waist"})) {
    CHECK(found_by(said).front() == loose.front());
  }
  for (const char* said :
       each({"the waist pinches", "it can pinch at the waist", "when I sit the waist pinches",
             "I feel pinched at the waist", "I can't pinch anything at the waist"})) {
    CHECK(found_by(said).front() == tight.front());
  }
}

TEST_CASE(
    "No word of the vocabulary means two things, and each saying of the table is understood") {
  std::map<std::vector<std::string>, std::string_view> all;
  const auto stems = [](std::string_view words) {
    std::vector<std::string> list;
    for (const SaidWord& word : plain_words(words)) list.push_back(word.stem);
    return list;
  };
  for (const Saying& saying : vocabulary()) {
    for (const std::string_view words : listed(saying.words)) {
      INFO(words << " and " << all[stems(words)]);
      CHECK(all[stems(words)].empty());
      all[stems(words)] = words;
    }
  }
  for (const SpeechWords& some : speech_words()) {
    for (const std::string_view words : listed(some.words)) {
      INFO(words << " and " << all[stems(words)]);
      CHECK(all[stems(words)].empty());
      all[stems(words)] = words;
    }
  }
  for (const std::string_view empty : empty_words()) {
    INFO(empty);
    CHECK_FALSE(all.contains(stems(empty)));
  }
  for (const auto& parts : {upper_symptoms(), lower_symptoms()}) {
    for (const SymptomPart& part : parts) {
      for (const SymptomEntry& entry : part.entries) {
        for (const std::string_view saying : listed(entry.sayings)) {
          INFO(entry.action << ' ' << entry.place << ": " << saying);
          CHECK(understood(saying).unknown.empty());
        }
      }
    }
  }
}

TEST_CASE("Each correction of the table is one of the catalogue") {
  for (const auto& parts : {upper_symptoms(), lower_symptoms()}) {
    for (const SymptomPart& part : parts) {
      for (const SymptomEntry& entry : part.entries) {
        INFO(entry.action << ' ' << entry.place);
        CHECK(find_correction_words(entry.action, entry.place) != nullptr);
      }
    }
  }
}

TEST_CASE("Buttons are no fault by themselves") {
  for (const char* said : {"buttons", "button", "the hooks"}) {
    CHECK(find_corrections(said).best.empty());
  }
  CHECK_FALSE(find_corrections("buttons gape").best.empty());
  CHECK_FALSE(find_corrections("buttons pull at the waist").best.empty());
}

}  // namespace
}  // namespace blockwright
