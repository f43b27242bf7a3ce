// Whatever is wrong with a fitting ends in an error with file, key, value, limit and cure.
#include "client_text.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

struct BadFitting {
  std::string what;
  std::string text;  // of the fitting's correction, or of the list of fittings
  std::string code;
  std::string where;    // part of it
  std::string message;  // part of it
  std::string hint;     // part of it
};

std::string with_fittings(const std::string& fittings, const std::string& unit) {
  std::string text =
      client_text(unit == "cm" ? R"("bust_girth": 92)" : R"("bust_girth": 36)", unit);
  text.pop_back();
  return text + ",\n\"fittings\": [" + fittings + "]}";
}

void check(const BadFitting& bad, const std::string& text) {
  INFO(bad.what << '\n' << text);
  const Problem problem = refusal(text);
  INFO(to_text(problem));
  CHECK(problem.severity == Severity::Error);
  CHECK(problem.code == bad.code);
  CHECK(problem.where.starts_with("ondine.json:2:"));
  CHECK(problem.where.find(bad.where) != std::string::npos);
  CHECK(problem.message.plain().find(bad.message) != std::string::npos);
  CHECK(problem.hint.plain().find(bad.hint) != std::string::npos);
  CHECK_FALSE(problem.hint.empty());
}

void check_corrections(const std::vector<BadFitting>& all, const std::string& unit = "cm") {
  for (const BadFitting& bad : all) {
    check(bad,
          with_fittings(R"({"date": "2026-03-21", "toile": 1, "corrections": [)" + bad.text + "]}",
                        unit));
  }
}

const std::string kFirst = "fittings[0].corrections[0]";

TEST_CASE("corrections in words that no fitter uses are refused with the nearest that one does") {
  check_corrections({
      {"no action", R"({"by": 1})", "client.correction", kFirst, "does not say what",
       "lower, raise, widen"},
      {"two actions", R"({"lower": "front_neck", "raise": "underarm", "by": 1})",
       "client.correction", kFirst + ".raise", R"("lower" and "raise")", "make two of them"},
      {"misspelt action", R"({"lowr": "front_neck", "by": 1})", "client.key", kFirst + ".lowr",
       "lowr", "\"lower\"?"},
      {"unknown action", R"({"embroider": "front_neck", "by": 1})", "client.key",
       kFirst + ".embroider", "embroider", "known here: lower, raise, "},
      {"misspelt place", R"({"lower": "frontneck", "by": 1})", "client.correction",
       kFirst + ".lower", "\"frontneck\" is not a place", "\"front_neck\"?"},
      {"short place", R"({"lower": "front", "by": 1})", "client.correction", kFirst + ".lower",
       "\"front\" is not a place", "\"front_neck\"?"},
      {"misspelt place of another action", R"({"lower": "acros_back", "by": 1})",
       "client.correction", kFirst + ".lower", "acros_back", "\"across_back\"?"},
      {"unknown place", R"({"lower": "moon", "by": 1})", "client.correction", kFirst + ".lower",
       "moon", "\"lower\" goes with: front_neck"},
      {"place of another action", R"({"lower": "across_back", "by": 1})", "client.correction",
       kFirst + ".lower", R"("lower" does not go with "across_back")",
       "write one of: widen, narrow"},
      {"place a number", R"({"lower": 1, "by": 1})", "client.type", kFirst + ".lower",
       "the number 1", "\"lower\": \"front_neck\""},
      {"Cyrillic place", "{\"lower\": \"fr\u043ent_neck\", \"by\": 1}", "client.correction",
       kFirst + ".lower", "U+043E", "\"front_neck\"?"},
      {"field of a later version", R"({"lower": "front_neck", "by": 1, "taper": 2})", "client.key",
       kFirst + ".taper", "taper", "known here"},
      {"not an object", R"("lower the neck")", "client.type", kFirst, "the text", "object"},
      {"side", R"({"lower": "front_neck", "by": 1, "side": "front"})", "client.correction",
       kFirst + ".side", "\"front\"", "\"left\" or \"right\""},
      {"side missing", R"({"lower": "one_shoulder", "by": 1})", "client.missing", kFirst,
       "\"side\" is missing", "\"left\""},
      {"both sides of one", R"({"lower": "one_shoulder", "by": 1, "side": "both"})",
       "client.correction", kFirst + ".side", "one_shoulder", "\"left\""},
      {"withdrawn a text", R"({"lower": "front_neck", "by": 1, "withdrawn": "yes"})", "client.type",
       kFirst + ".withdrawn", "\"yes\"", "without quotes"},
      {"seen a number", R"({"lower": "front_neck", "by": 1, "seen": 1})", "client.type",
       kFirst + ".seen", "the number 1", "double quotes"},
      {"seen too long",
       R"({"lower": "front_neck", "by": 1, "seen": ")" + std::string(501, 'o') + R"("})",
       "client.size", kFirst + ".seen", "501 characters, over 500", "shorten"},
      {"twice", R"({"lower": "front_neck", "by": 1, "lower": "underarm"})", "client.duplicate",
       kFirst + ".lower", "twice", "keep one"},
  });
}

TEST_CASE("amounts that no correction has are refused with the limit and the likely slip") {
  check_corrections({
      {"none", R"({"lower": "front_neck"})", "client.missing", kFirst, "\"by\" is missing",
       "in cm: \"by\": 1.0"},
      {"nothing", R"({"lower": "front_neck", "by": 0})", "client.range", kFirst + ".by",
       "by is 0 cm; a correction is more than 0 and at most 10 cm", "leave the correction out"},
      {"minus nothing", R"({"lower": "front_neck", "by": -0.0})", "client.range", kFirst + ".by",
       "-0.0", "leave the correction out"},
      {"less than nothing", R"({"lower": "front_neck", "by": -1})", "client.range", kFirst + ".by",
       "-1 cm", R"(or "raise": "front_neck")"},
      {"less than nothing, no opposite", R"({"lengthen": "below_nape", "by": -1.25})",
       "client.range", kFirst + ".by", "-1.25 cm", "did you mean 1.25?"},
      {"mm", R"({"lower": "front_neck", "by": 12})", "client.range", kFirst + ".by",
       "12 cm; a correction is more than 0 and at most 10 cm", "did you mean 12 mm?"},
      {"a hair too much", R"({"lower": "front_neck", "by": 10.01})", "client.range", kFirst + ".by",
       "10.01 cm", "redraft"},
      {"far too much", R"({"lower": "front_neck", "by": 120})", "client.range", kFirst + ".by",
       "120 cm", "redraft"},
      {"huge", R"({"lower": "front_neck", "by": 1e308})", "client.range", kFirst + ".by", "1e308",
       "redraft"},
      {"a list", R"({"lower": "front_neck", "by": [1, 2]})", "client.type", kFirst + ".by",
       "a list", "one number"},
      {"in quotes", R"({"lower": "front_neck", "by": "1.0"})", "client.type", kFirst + ".by",
       "\"1.0\"", "without quotes"},
      {"fraction in a cm file", R"({"lower": "front_neck", "by": "1/2"})", "client.type",
       kFirst + ".by", "\"1/2\"", "write \"1/2 in\" or \"1/2 cm\""},
      {"null", R"({"lower": "front_neck", "by": null})", "client.type", kFirst + ".by", "null",
       "one number"},
      {"NaN", R"({"lower": "front_neck", "by": NaN})", "client.syntax", kFirst + ".by",
       "NaN is not a number", "leave the key out"},
  });
  check_corrections(
      {
          {"nothing", R"({"lower": "front_neck", "by": "0"})", "client.range", kFirst + ".by",
           "by is 0 in; a correction is more than 0 and at most 3 15/16 in",
           "leave the correction"},
          {"mm", R"({"lower": "front_neck", "by": 12})", "client.range", kFirst + ".by", "12 in",
           "did you mean 12 mm?"},
          {"a third", R"({"lower": "front_neck", "by": "1/3"})", "client.type", kFirst + ".by",
           "\"1/3\"", "\"1/2\""},
          {"a fraction less than nothing", R"({"lower": "front_neck", "by": "-1/2"})",
           "client.range", kFirst + ".by", "-1/2 in", "and 1/2, or \"raise\""},
      },
      "in");
}

TEST_CASE(
    "what becomes of a correction after a newer tape is refused with all that may be written") {
  const std::string at = kFirst + ".new_tape";
  const char* const accepted =
      "write \"keep\", \"drop\", or the amount that remains of it now that a newer tape session "
      "has some of it, 1.5, or, as the program writes it, { \"settled\": 1.5 }";
  check_corrections({
      {"a fraction of what", R"({"lower": "front_neck", "by": 1, "new_tape": "1/4"})",
       "client.type", at, "new_tape is \"1/4\": of an inch or of a cm?",
       "\"1/4 in\" or \"1/4 cm\""},
      {"yes", R"({"lower": "front_neck", "by": 1, "new_tape": true})", "client.correction", at,
       "true is neither \"keep\", \"drop\" nor an amount", accepted},
      {"nothing", R"({"lower": "front_neck", "by": 1, "new_tape": null})", "client.correction", at,
       "null is neither", accepted},
      {"a list", R"({"lower": "front_neck", "by": 1, "new_tape": [1]})", "client.correction", at,
       "is neither", accepted},
      {"another word", R"({"lower": "front_neck", "by": 1, "new_tape": "yes"})",
       "client.correction", at, "\"yes\" is neither", accepted},
  });
}

TEST_CASE("how an amount was read is never guessed where it could be read in two ways") {
  check_corrections({
      {"not said", R"({"take_in": "side", "by": 1})", "client.amount", kFirst,
       R"("as" is missing: the amount of "take_in": "side" can be measured in 4 ways)",
       "\"per_seam\": from each of the two pieces"},
      {"a word misspelt", R"({"take_in": "side", "by": 1, "as": "per_seem"})", "client.amount",
       kFirst + ".as", "per_seem", "\"per_seam\"?"},
      {"a word unknown", R"({"take_in": "side", "by": 1, "as": "roughly"})", "client.amount",
       kFirst + ".as", "roughly", "known here: tuck_depth, per_seam, per_half, whole_girth"},
      {"no sense", R"({"lower": "front_neck", "by": 1, "as": "per_seam"})", "client.amount",
       kFirst + ".as", R"("lower" of "front_neck" cannot be measured as "per_seam")",
       "\"length\": how far"},
      {"a length of cloth", R"({"take_in": "side", "by": 1, "as": "length"})", "client.amount",
       kFirst + ".as", "cannot be measured as \"length\"", "\"tuck_depth\": depth of"},
      {"not a text", R"({"take_in": "side", "by": 1, "as": 2})", "client.type", kFirst + ".as",
       "the number 2", "how you measured it"},
      {"the whole of one side",
       R"({"take_in": "side", "by": 1, "as": "whole_girth", "side": "left"})", "client.amount",
       kFirst + ".as", "the left alone", "\"per_half\""},
  });
}

TEST_CASE("fittings without their parts or out of order are refused") {
  const std::vector<BadFitting> all{
      {"a number", "1", "client.type", "fittings[0]", "the number 1", "\"toile\": 1"},
      {"no date", R"({"toile": 1})", "client.missing", "fittings[0]", "\"date\" is missing",
       "2026-03-14"},
      {"no calendar day", R"({"date": "2026-02-30", "toile": 1})", "client.date",
       "fittings[0].date", "2026-02-30", "2026-03-14"},
      {"no toile", R"({"date": "2026-03-21"})", "client.missing", "fittings[0]",
       "\"toile\" is missing", "from 1 to 99"},
      {"toile 0", R"({"date": "2026-03-21", "toile": 0})", "client.range", "fittings[0].toile",
       "toile is 0", "from 1 to 99"},
      {"toile 100", R"({"date": "2026-03-21", "toile": 100})", "client.range", "fittings[0].toile",
       "toile is 100", "from 1 to 99"},
      {"half a toile", R"({"date": "2026-03-21", "toile": 1.5})", "client.range",
       "fittings[0].toile", "toile is 1.5, not a whole number", "from 1 to 99"},
      {"toile in quotes", R"({"date": "2026-03-21", "toile": "1"})", "client.type",
       "fittings[0].toile", "the text \"1\"", "\"toile\": 1"},
      {"a correction as key", R"({"date": "2026-03-21", "toile": 1, "lower": "front_neck"})",
       "client.key", "fittings[0].lower", "lower", "belongs in a fitting's corrections"},
      {"a side", R"({"date": "2026-03-21", "toile": 1, "side": "let out"})", "client.key",
       "fittings[0].side", "side", "belongs in a fitting's corrections"},
      {"corrections an object", R"({"date": "2026-03-21", "toile": 1, "corrections": {}})",
       "client.type", "fittings[0].corrections", "an object", "a list"},
      {"a control character in a note", R"({"date": "2026-03-21", "toile": 1, "note": "a\u0007b"})",
       "client.text", "fittings[0].note", "U+0007", "take it away"},
      {"toiles fall", R"({"date": "2026-03-21", "toile": 2}, {"date": "2026-03-22", "toile": 1})",
       "client.order", "fittings[1].toile", "toile 1 comes after toile 2", "newest last"},
      {"dates fall", R"({"date": "2026-03-21", "toile": 1}, {"date": "2026-03-20", "toile": 2})",
       "client.order", "fittings[1].date", "2026-03-20 comes after that of 2026-03-21",
       "newest last"},
      {"twice", R"({"date": "2026-03-21", "toile": 1}, {"date": "2026-03-21", "toile": 1})",
       "client.duplicate", "fittings[1].date", "toile 1", "into one"},
  };
  for (const BadFitting& bad : all) check(bad, with_fittings(bad.text, "cm"));
}

TEST_CASE("fittings cut short or with one byte changed are read or refused, never worse") {
  const std::string whole = with_fittings(
      R"({"date": "2026-03-21", "toile": 1, "note": "linen", "corrections": [
         {"take_in": "side", "by": "1/2", "as": "per_seam", "side": "left", "withdrawn": true}]})",
      "in");
  REQUIRE(refusal(whole).code.empty());
  for (std::size_t size = 0; size < whole.size(); ++size) {
    CAPTURE(size);
    CHECK(refusal(whole.substr(0, size)).code.starts_with("client."));
  }
  int refused = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    CAPTURE(at);
    for (const char byte : std::string("\0\"\\{}[],:1x\x80\xFF", 13)) {
      std::string text = whole;
      text[at] = byte;
      const Problem problem = refusal(text);
      if (problem.code.empty()) continue;
      ++refused;
      CHECK(problem.code.starts_with("client."));
    }
  }
  CHECK(refused > 1000);
}

}  // namespace
}  // namespace blockwright
