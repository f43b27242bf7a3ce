// Every bad client file must end in an error that names the file, the place, the value or key, and
// a cure that someone who sews for herself can follow.
#include "client_text.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace blockwright {
namespace {

struct BadFile {
  std::string what;
  std::string text;
  std::string code;
  std::string where;    // part of it
  std::string message;  // part of it
  std::string hint;     // part of it
};

std::string with_name(const std::string& name) {
  return R"({"format": "blockwright-client-1", "name": )" + name +
         R"(, "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}]})";
}

std::string with_date(const std::string& date) {
  return R"({"format": "blockwright-client-1", "name": "O", "unit": "cm",
"sessions": [{"date": )" +
         date + R"(, "tape": {"bust_girth": 92}}]})";
}

std::string with_more(const std::string& more) {
  return R"({"format": "blockwright-client-1", "name": "O", "unit": "cm",
"sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}], )" +
         more + "}";
}

const std::string kBust = "sessions[0].tape.bust_girth";

void check(const BadFile& bad) {
  INFO(bad.what << '\n' << bad.text.substr(0, 300));
  const Problem problem = refusal(bad.text);
  INFO(to_text(problem));
  CHECK(problem.severity == Severity::Error);
  CHECK(problem.code == bad.code);
  CHECK(problem.where.starts_with("ondine.json"));
  CHECK(problem.where.find(bad.where) != std::string::npos);
  CHECK(problem.message.plain().find(bad.message) != std::string::npos);
  CHECK(problem.hint.plain().find(bad.hint) != std::string::npos);
  CHECK_FALSE(problem.hint.empty());
}

TEST_CASE("what is not JSON is refused with line, column and the likely cure") {
  const std::vector<BadFile> files = {
      {"nothing", "", "client.syntax", ":1:1", "empty", "file's name"},
      {"space", " \n ", "client.syntax", "", "empty", "file's name"},
      {"prose", "bust 92", "client.syntax", ":1:1", "begins with bust", "double quotes"},
      {"second line", "{\n  \"format\": oops\n}", "client.syntax", ":2:13 format", "oops",
       "double quotes"},
      {"columns count characters", "{\"ŁŁ\": oops}", "client.syntax", ":1:8", "oops", "quotes"},
      {"decimal comma", client_text(R"("bust_girth": 92,5)"), "client.syntax", "sessions[0].tape",
       "not 5", "92.5, not 92,5"},
      {"unit behind", client_text(R"("bust_girth": 92cm)"), "client.syntax",
       "ondine.json:1:", "follows the number", "bare number"},
      {"zero in front", client_text(R"("bust_girth": 092)"), "client.syntax",
       "ondine.json:1:", "zero in front", "bare number"},
      {"plus", client_text(R"("bust_girth": +92)"), "client.syntax", kBust, "+92", "no plus"},
      {"point only", client_text(R"("bust_girth": 92.)"), "client.syntax", kBust, "92.", "92.5"},
      {"bare fraction", client_text(R"("bust_girth": 36 1/2)", "in"), "client.syntax",
       "ondine.json:1:", "fraction", R"("36 1/2")"},
      {"bare half", client_text(R"("shoulder_length": 1/2)", "in"), "client.syntax",
       "ondine.json:1:", "fraction", R"("36 1/2")"},
      {"NaN", client_text(R"("bust_girth": NaN)"), "client.syntax", kBust, "NaN is not a number",
       "leave the key out"},
      {"infinity", client_text(R"("bust_girth": -Infinity)"), "client.syntax", kBust,
       "-Infinity is not a number", "leave the key out"},
      {"last comma", client_text(R"("bust_girth": 92,)"), "client.syntax", "sessions[0].tape",
       "comma before }", "last comma"},
      {"no comma", client_text(R"("bust_girth": 92 "waist_girth": 70)"), "client.syntax",
       "sessions[0].tape", "a comma is missing before \"waist_girth\"", "commas between"},
      {"no colon", client_text(R"("bust_girth" 92)"), "client.syntax", "sessions[0].tape",
       "a colon is missing before 92", "\"key\": value"},
      {"no value", client_text(R"("bust_girth": )"), "client.syntax", kBust, "missing", "value"},
      {"single quotes", client_text("'bust_girth': 92"), "client.syntax", "sessions[0].tape",
       "single quote", "double quotes"},
      {"no quotes", client_text("bust_girth: 92"), "client.syntax", "sessions[0].tape",
       "bust_girth is not in quotes", "double quotes"},
      {"open quote", client_text("\"bust_girth: 92"), "client.syntax", "sessions[0].tape",
       "not closed", "double quote"},
      {"quote over the line", with_name("\"On\ndine\""), "client.syntax", "name", "not closed",
       "double quote"},
      {"backslash", with_name(R"("C:\dine")"), "client.syntax", "name", "backslash", R"(\\)"},
      {"comment", client_text("\"bust_girth\": 92 // taken twice"), "client.syntax", "", "comments",
       "take the comment"},
      {"comment above", "// Ondine\n{}", "client.syntax", ":1:1", "comments", "take the comment"},
      {"wrong bracket", client_text("\"bust_girth\": [92}"), "client.syntax", kBust, "}",
       "bracket"},
      {"cut off", "{\n\"format\": \"blockwright-client-1\"", "client.syntax",
       ":2:", "ends too early", "opens in ondine.json:1:1"},
      {"garbage behind", client_text("\"bust_girth\": 92") + " x", "client.syntax",
       "ondine.json:1:", "after the end", "one client"},
      {"second client", client_text("\"bust_girth\": 92") + client_text("\"bust_girth\": 92"),
       "client.syntax", "ondine.json:1:", "after the end", "one client"},
      {"not UTF-8", with_name("\"Zo\xEB\""), "client.syntax", "name", "UTF-8", "save the file"},
      {"UTF-16", std::string("\xFF\xFE{\0", 4), "client.syntax", ":1:1", "UTF-16", "as UTF-8"},
      {"half a surrogate", with_name(R"("\ud800")"), "client.syntax", "name", "\\ud800 is half",
       "both"},
      {"two readings without a comma", client_text(R"("bust_girth": [92 93])"), "client.syntax",
       kBust, "a comma is missing before 93", "readings of a list"},
      {"unit behind a space", client_text(R"("bust_girth": 92.5 cm)"), "client.syntax", kBust,
       "cm follows the number 92", "bare number"},
      {"a bare date", with_date("2026-03-14"), "client.syntax", "sessions[0].date",
       "the date 2026-03-14", "as a text"},
      {"two commas", client_text(R"("bust_girth": 92,, "hip_girth": 99)"), "client.syntax",
       "sessions[0].tape", "a comma follows a comma", "take one"},
      {"two colons", client_text(R"("bust_girth":: 92)"), "client.syntax", kBust,
       "a colon follows a colon", "take one"},
      {"no value before a comma", client_text(R"("bust_girth": , "hip_girth": 99)"),
       "client.syntax", kBust, "value is missing", "take the key away"},
      {"an open list", client_text(R"("bust_girth": [92, "hip_girth": 99)"), "client.syntax", kBust,
       "a colon in a list", "close the list"},
      {"a bracket too many", client_text("\"bust_girth\": 92") + "}", "client.syntax",
       "ondine.json:1:", "} too many", "take it away"},
      {"a comma behind", client_text("\"bust_girth\": 92") + ",", "client.syntax",
       "ondine.json:1:", "a comma after the end", "take the comma away"},
      {"no braces", R"("format": "blockwright-client-1")", "client.syntax", ":1:9", "braces",
       "begin the file with {"},
      {"a bad escape", with_name(R"("Zo\xEB")"), "client.syntax", "name", "\\x is no escape",
       R"(\\)"},
      {"a short escape", with_name(R"("Zo\u00e")"), "client.syntax", "name", "four hexadecimal",
       "letter itself"},
      {"a tabulator", with_name("\"On\tdine\""), "client.syntax", "name", "U+0009", "take it away"},
      {"None", client_text(R"("bust_girth": None)"), "client.syntax", kBust, "None is not a number",
       "leave the key out"},
      {"1e999", client_text(R"("bust_girth": 1e999)"), "client.range", kBust, "1e999 is too large",
       "92.5"},
      {"-1e999 in a list", client_text(R"("bust_girth": [92, -1e999])"), "client.range", kBust,
       "-1e999 is too large", "92.5"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("characters that only look plain, or cannot be seen, are named by their code") {
  const std::vector<BadFile> files = {
      {"curly quotes", with_name("\u201cO\u201d"), "client.syntax", "name", "U+201C", "straight"},
      {"typographic minus",
       client_text("\"bust_girth\": \u2212"
                   "92"),
       "client.syntax", kBust, "U+2212", "keyboard"},
      {"wide colon", client_text("\"bust_girth\"\uff1a 92"), "client.syntax", kBust,
       "wide form of :", "plain :"},
      {"Arabic digits", client_text("\"bust_girth\": \u0669\u0662"), "client.syntax", kBust,
       "U+0669", "0 to 9"},
      {"no-break space",
       client_text("\"bust_girth\":\u00a0"
                   "92"),
       "client.syntax", kBust, "U+00A0", "plain space"},
      {"form feed", client_text("\f\"bust_girth\": 92"), "client.syntax", "tape", "U+000C",
       "take it away"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("nothing behind a NUL byte or a second byte order mark is passed over") {
  const std::string good = client_text("\"bust_girth\": 92");
  const std::vector<BadFile> files = {
      {"NUL behind the client", good + '\0', "client.syntax", "ondine.json:1:", "NUL", "damaged"},
      {"a client behind a NUL", good + '\0' + good, "client.syntax", "ondine.json:1:", "NUL",
       "damaged"},
      {"NUL within", client_text(std::string("\"bust_girth\":\0 92", 17)), "client.syntax", kBust,
       "NUL", "damaged"},
      {"two marks", "\ufeff\ufeff" + good, "client.syntax", ":1:1", "U+FEFF", "take it away"},
  };
  for (const BadFile& bad : files) check(bad);
  CHECK(refusal("\ufeff" + good).code.empty());
}

TEST_CASE("files that no client needs are refused by size, quickly and without recursion") {
  std::string many = "1";
  for (int i = 0; i < 20'000; ++i) many += ",1";
  const std::vector<BadFile> files = {
      {"10 MB of brackets", std::string(10'000'000, '['), "client.size", "ondine.json", "1 MiB",
       "right file"},
      {"1 MB of brackets", std::string(1'000'000, '['), "client.size", ":1:17", "deeper than 16",
       "brackets"},
      {"deep objects",
       [] {
         std::string text;
         for (int i = 0; i < 100; ++i) text += "{\"a\":";
         return text;
       }(),
       "client.size", "a.a.a", "deeper than 16", "brackets"},
      {"20,000 readings", client_text("\"bust_girth\": [" + many + "]"), "client.size", kBust,
       "10000 values", "right file"},
      {"21 readings",
       client_text(
           "\"bust_girth\": [90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90,90]"),
       "client.size", kBust, "21 readings, over 20", "keep the last"},
      {"long name", with_name('"' + std::string(101, 'o') + '"'), "client.size", "name",
       "101 characters, over 100", "shorten"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("keys that are unknown, twice there or missing are named with the cure") {
  const std::vector<BadFile> files = {
      {"misspelt format", R"({"Format": "blockwright-client-1"})", "client.key", ":1:2 Format",
       "Format", "\"format\"?"},
      {"of the top in a tape", client_text(R"("bust_girth": 92, "unit": "cm")"), "client.key",
       "tape.unit", "unit", "top of the file"},
      {"of a session at the top", with_more(R"("tape": {})"), "client.key", "tape", "tape",
       "in a session"},
      {"of a tape at the top", with_more(R"("hip_girth": 99)"), "client.key", "hip_girth",
       "hip_girth", "session's tape"},
      {"a short word like no key", with_more(R"("memo": 1)"), "client.key", "memo", "memo",
       "known here: format"},
      {"a Cyrillic letter", client_text("\"bust_girth\": 92, \"w\u0430ist_girth\": 70"),
       "client.key", "tape.w", "holds U+0430", "\"waist_girth\"?"},
      {"mistyped", client_text(R"("bust_grith": 92)"), "client.key", "sessions[0].tape.bust_grith",
       "bust_grith", "\"bust_girth\"?"},
      {"hyphen", client_text(R"("Bust-Girth": 92)"), "client.key", "Bust-Girth", "Bust-Girth",
       "\"bust_girth\"?"},
      {"short", client_text(R"("bust_girth": 92, "waist": 70)"), "client.key", "tape.waist",
       "waist", "\"waist_girth\"?"},
      {"strange", client_text(R"("bust_girth": 92, "favourite_colour": 1)"), "client.key",
       "favourite_colour", "favourite_colour", "known here: bust_girth, "},
      {"of the session", with_more(R"("sesions": [])"), "client.key", ":2:", "sesions",
       "\"sessions\"?"},
      {"of the ease", with_more(R"("ease": {"bust": 5})"), "client.key", "ease.bust", "bust",
       "\"bust_girth\"?"},
      {"control characters in it", with_more(R"("\u001b[31m": 1)"), "client.key", "\\u001b[31m",
       "\\u001b[31m", "known here"},
      {"twice", client_text("\"bust_girth\": 92,\n\"waist_girth\": 70,\n\"bust_girth\": 93"),
       "client.duplicate", "ondine.json:3:1 " + kBust, "first is in ondine.json:1", "list"},
      {"twice at the top", with_more(R"("name": "P")"), "client.duplicate",
       "ondine.json:2:", "name", "keep one"},
      {"no bust", client_text(R"("waist_girth": 70)"), "client.missing", "sessions[0].tape",
       "\"bust_girth\" is missing", "fullest part"},
      {"empty tape", client_text(""), "client.missing", "sessions[0].tape",
       "\"bust_girth\" is missing", "one measurement"},
      {"no readings", client_text(R"("bust_girth": [])"), "client.missing", kBust,
       "without readings", "at least one"},
      {"empty object", "{}", "client.missing", ":1:1", "\"format\" is missing",
       "\"blockwright-client-1\""},
      {"no name", R"({"format": "blockwright-client-1", "unit": "cm", "sessions": []})",
       "client.missing", "", "\"name\" is missing", "\"name\""},
      {"no unit", R"({"format": "blockwright-client-1", "name": "O", "sessions": []})",
       "client.missing", "", "\"unit\" is missing", "\"unit\": \"cm\""},
      {"no sessions", R"({"format": "blockwright-client-1", "name": "O", "unit": "cm"})",
       "client.missing", "", "\"sessions\" is missing", "\"sessions\": ["},
      {"empty sessions",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": []})",
       "client.missing", "sessions", "no session", "bust_girth"},
      {"no date",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [{"tape": {}}]})",
       "client.missing", "sessions[0]", "\"date\" is missing", "2026-03-14"},
      {"no tape",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm",
           "sessions": [{"date": "2026-03-14"}]})",
       "client.missing", "sessions[0]", "\"tape\" is missing", "bust_girth"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("values of the wrong type are named with what is expected") {
  const std::vector<BadFile> files = {
      {"list as file", "[]", "client.type", ":1:1", "the file is a list", "braces"},
      {"number as file", "42", "client.type", ":1:1", "the file is the number 42", "braces"},
      {"true", client_text(R"("bust_girth": true)"), "client.type", kBust, "bust_girth is true",
       "leave the key out"},
      {"null among readings", client_text(R"("bust_girth": [92, null])"), "client.type",
       kBust + "[1]", "is null", "leave the reading out"},
      {"a dash", client_text(R"("bust_girth": 92, "hip_girth": "-")"), "client.type", "hip_girth",
       "\"-\"", "leave the key out"},
      {"no ease", with_more(R"("ease": {"bust_girth": null})"), "client.type", "ease.bust_girth",
       "null", "by default"},
      {"schema", with_more(R"("$schema": 1)"), "client.type", "$schema", "the number 1",
       "leave it"},
      {"no-break space in a fraction", client_text("\"bust_girth\": \"36\u00a01/2\"", "in"),
       "client.type", kBust, "holds U+00A0", "\"36 1/2\""},
      {"null", client_text(R"("bust_girth": null, "hip_girth": 99)"), "client.missing", kBust,
       "bust_girth is null", "blockwright tape"},
      {"object", client_text(R"("bust_girth": {"cm": 92})"), "client.type", kBust,
       "bust_girth is an object", "92.5"},
      {"list in a list", client_text(R"("bust_girth": [[92]])"), "client.type", kBust + "[0]",
       "bust_girth[0] is a list", "92.5"},
      {"number in quotes", client_text(R"("bust_girth": "92.5")"), "client.type", kBust,
       "the text \"92.5\"", "without quotes"},
      {"fraction in a cm file", client_text(R"("bust_girth": "36 1/2")"), "client.type", kBust,
       "number of cm", "files in inches; in cm it is 92.71"},
      {"not a fraction", client_text(R"("bust_girth": "36 and a half")", "in"), "client.type",
       kBust, "36 and a half", "\"36 1/2\""},
      {"not a tape's fraction", client_text(R"("bust_girth": "36 1/3")", "in"), "client.type",
       kBust, "36 1/3", "\"36 1/2\""},
      {"more than one", client_text(R"("bust_girth": "36 3/2")", "in"), "client.type", kBust,
       "36 3/2", "\"36 1/2\""},
      {"over nothing", client_text(R"("bust_girth": "36 1/0")", "in"), "client.type", kBust,
       "36 1/0", "\"36 1/2\""},
      {"a slope in fractions", client_text(R"("bust_girth": 36, "shoulder_slope": "22 1/2")", "in"),
       "client.type", "shoulder_slope", "number of degrees", "bare number"},
      {"name", with_name("7"), "client.type", "name", "the number 7", "double quotes"},
      {"date", with_date("20260314"), "client.type", "sessions[0].date", "20260314", "2026-03-14"},
      {"sessions",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": {}})",
       "client.type", "sessions", "an object, where a list", "[ { ... } ]"},
      {"session",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [1]})",
       "client.type", "sessions[0]", "sessions[0] is the number 1", "\"date\""},
      {"ease", with_more(R"("ease": 5)"), "client.type", "ease", "the number 5", "\"bust_girth\""},
      {"an ease", with_more(R"("ease": {"bust_girth": [5]})"), "client.type", "ease.bust_girth",
       "a list", "one number"},
      {"format", R"({"format": 1})", "client.type", "format", "the number 1",
       "blockwright-client-1"},
      {"other format", R"({"format": "blockwright-client-9"})", "client.format", "format",
       "\"blockwright-client-9\"", "\"blockwright-client-1\""},
      {"a job", R"({"format": "blockwright-job-1"})", "client.format", "format",
       "\"blockwright-job-1\"", "--job"},
      {"unit", R"({"format": "blockwright-client-1", "name": "O", "unit": "mm"})", "client.unit",
       ":1:", "\"mm\"", "\"cm\" or"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("values that no body has are refused with the limit and the likely slip") {
  const std::vector<BadFile> files = {
      {"mm in a cm file", client_text(R"("bust_girth": 925)"), "client.range", kBust,
       "925 cm, outside 60 to 160 cm",
       "did you mean 92.5 cm (ten times as much was written: mm, or"},
      {"ten times too small", client_text(R"("bust_girth": 9.25)"), "client.range", kBust,
       "9.25 cm", "did you mean 92.5 cm (a tenth was written)?"},
      {"metres", client_text(R"("bust_girth": 0.925)"), "client.range", kBust, "0.925 cm",
       "did you mean 92.5 cm (metres were written; the unit here is cm)?"},
      {"inches in a cm file", client_text(R"("bust_girth": 36)"), "client.range", kBust, "36 cm",
       "did you mean 91.4 cm (inches were written; the unit here is cm)?"},
      {"inches of a neck", client_text(R"("bust_girth": 92, "neck_base_girth": 14)"),
       "client.range", "neck_base_girth", "14 cm, outside 25 to 58 cm",
       "did you mean 35.6 cm (inches"},
      {"cm in an inch file", client_text(R"("bust_girth": 92.5)", "in"), "client.range", kBust,
       "92.5 in, outside 23 5/8 to 62 15/16 in",
       "did you mean 36 7/16 in (cm were written; the unit here is inches)?"},
      {"mm in an inch file", client_text(R"("bust_girth": 925)", "in"), "client.range", kBust,
       "925 in", "did you mean 36 7/16 in (mm"},
      {"lost point in an inch file", client_text(R"("bust_girth": 365)", "in"), "client.range",
       kBust, "365 in", "did you mean 36 1/2 in (ten times as much"},
      {"fraction out of range", client_text(R"("bust_girth": "6 1/2")", "in"), "client.range",
       kBust, "\"6 1/2\" in", ""},
      {"zero", client_text(R"("bust_girth": 92, "hip_girth": 0)"), "client.range", "hip_girth",
       "0 cm", "leave the key out"},
      {"negative", client_text(R"("bust_girth": -92.5)"), "client.range", kBust, "-92.5 cm",
       "did you mean 92.5 cm? A measurement has no minus sign"},
      {"half a width", client_text(R"("bust_girth": 92, "across_back": 18)"), "client.range",
       "across_back", "18 cm", "did you mean 36 cm (half was written"},
      {"feet", client_text(R"("bust_girth": 36, "stature": 5.5)", "in"), "client.range", "stature",
       "5.5 in", "did you mean 66 in (feet"},
      {"a hair too small", client_text(R"("bust_girth": 59.99)"), "client.range", kBust, "59.99 cm",
       "take it again"},
      {"slope from the upright", client_text(R"("bust_girth": 92, "shoulder_slope": 66)"),
       "client.range", "shoulder_slope", "66 degrees",
       "did you mean 24 degrees (measured from the upright"},
      {"a drop for a slope", client_text(R"("bust_girth": 92, "shoulder_slope": 4.5)"),
       "client.range", "shoulder_slope", "4.5 degrees", "take it again"},
      {"minus nothing", client_text(R"("bust_girth": -0.0)"), "client.range", kBust, "-0.0 cm",
       "leave the key out"},
      {"huge", client_text(R"("bust_girth": 1e300)"), "client.range", kBust, "1e300 cm",
       "take it again: Level round"},
      {"tiny", client_text(R"("bust_girth": 1e-300)"), "client.range", kBust, "1e-300 cm",
       "take it again"},
      {"20 digits", client_text(R"("bust_girth": 92500000000000000000)"), "client.range", kBust,
       "92500000000000000000 cm", "take it again"},
      {"decimal comma in a list", client_text(R"("bust_girth": [92,5])"), "client.range",
       kBust + "[1]", "bust_girth[1] is 5 cm", "point"},
      {"one of three readings", client_text(R"("bust_girth": [92, 925, 93])"), "client.range",
       kBust + "[1]", "bust_girth[1] is 925 cm", "did you mean 92.5 cm (ten times"},
      {"radians", client_text(R"("bust_girth": 92, "shoulder_slope": 0.4)"), "client.range",
       "shoulder_slope", "0.4 degrees, outside 5 to 45 degrees",
       "did you mean 22.9 degrees (radians"},
      {"slope ten times", client_text(R"("bust_girth": 92, "shoulder_slope": 245)"), "client.range",
       "shoulder_slope", "245 degrees", "did you mean 24.5 degrees (ten times"},
      {"ease of a finished width", with_more(R"("ease": {"bust_girth": 97.5})"), "client.range",
       "ease.bust_girth", "97.5 cm for bust_girth is more than 20 cm", "added"},
      {"ease far below", with_more(R"("ease": {"bust_girth": -20.1})"), "client.range",
       "ease.bust_girth", "-20.1 cm", "added"},
      {"ease of a slope", with_more(R"("ease": {"shoulder_slope": 16})"), "client.range",
       "ease.shoulder_slope", "16 degrees", "added"},
  };
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("dates, names and fittings that cannot be used are refused") {
  std::vector<BadFile> files = {
      {"two of one day",
       R"({"format": "blockwright-client-1", "name": "O", "unit": "cm", "sessions": [
{"date": "2026-03-14", "tape": {"bust_girth": 92}},
{"date": "2026-03-14", "tape": {"bust_girth": 93}}]})",
       "client.duplicate", "ondine.json:3:10 sessions[1].date", "first is in ondine.json:2",
       "list"},
      {"empty name", with_name("\"\""), "client.text", "name", "empty", "printed"},
      {"blank name", with_name("\"  \""), "client.text", "name", "empty", "printed"},
      {"a name of no-break spaces", with_name("\"\u00a0\u00a0\""), "client.text", "name",
       "empty; it holds only U+00A0", "printed"},
      {"a name of a joiner", with_name("\"\u200d\""), "client.text", "name", "U+200D", "printed"},
      {"a lost letter in a name", with_name("\"Zo\ufffd\""), "client.text", "name", "U+FFFD",
       "write the letter again"},
      {"escape in a name", with_name(R"("O\u001bdine")"), "client.text", "name", "U+001B",
       "take it away"},
      {"nothing in a name", with_name(R"("O\u0000dine")"), "client.text", "name", "U+0000",
       "take it away"},
      {"next line in a name", with_name(R"("O\u0085dine")"), "client.text", "name", "U+0085",
       "take it away"},
      {"turned writing in a name", with_name(R"("O\u202edine")"), "client.text", "name", "U+202E",
       "take it away"},
      {"fittings", with_more(R"("fittings": {})"), "client.type", "fittings", "an object", "[ {"},
  };
  for (const char* date :
       {"2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026-3-14", "14.03.2026",
        "2026/03/14", "1899-12-31", "2200-01-01", "2026-03-14T10", "", "today"}) {
    files.push_back({std::string("date ") + date, with_date('"' + std::string(date) + '"'),
                     "client.date", "ondine.json:2:23 sessions[0].date", date, "2026-03-14"});
  }
  for (const BadFile& bad : files) check(bad);
}

TEST_CASE("leap days, an empty list of fittings and a name of the schema are fine") {
  CHECK(refusal(with_date("\"2024-02-29\"")).code.empty());
  CHECK(refusal(with_more(R"("fittings": [])")).code.empty());
  CHECK(refusal(with_more(R"("$schema": "client.schema.json")")).code.empty());
}

TEST_CASE("a file cut short or with one byte changed is read or refused, never worse") {
  const std::string whole = client_text(
      R"("bust_girth": "36 1/2", "waist_girth": [28, "28 1/4"], "shoulder_slope": 22.5)", "in");
  REQUIRE(refusal(whole).code.empty());
  int refused = 0;
  for (std::size_t size = 0; size < whole.size(); ++size) {
    refused += refusal(whole.substr(0, size)).code.empty() ? 0 : 1;
  }
  CHECK(refused == static_cast<int>(whole.size()));
  int changed = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    CAPTURE(at);
    for (const char byte : std::string("\0\"\\{}[],:1x\x80\xFF", 13)) {
      std::string text = whole;
      text[at] = byte;
      const Problem problem = refusal(text);
      if (problem.code.empty()) continue;
      ++changed;
      CHECK(problem.code.starts_with("client."));
    }
  }
  CHECK(changed > 1000);
}

TEST_CASE("a refused value carries its measurement and the limit that it passed") {
  const Problem bust = refusal(client_text(R"("bust_girth": 925)"));
  CHECK(bust.measurements == std::vector<std::string>{"bust_girth"});
  CHECK(bust.limit == Limit{.least = Length::mm(600), .most = Length::mm(1600)});
  const Problem slope = refusal(client_text(R"("bust_girth": 92, "shoulder_slope": 2)"));
  CHECK(slope.limit == Limit{.least = Measure::degrees(5), .most = Measure::degrees(45)});
  const Problem ease = refusal(with_more(R"("ease": {"waist_girth": 30})"));
  CHECK(ease.measurements == std::vector<std::string>{"waist_girth"});
  CHECK(ease.limit == Limit{.least = Length::mm(-200), .most = Length::mm(200)});
}

}  // namespace
}  // namespace blockwright
