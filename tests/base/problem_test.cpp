
#include "blockwright/base/error.hpp"
#include "blockwright/base/version.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace blockwright;

namespace {

const Problem kDoubtful{Severity::Warning, "measure.doubtful", "waist_girth",
                        "readings differ by 30 mm", "take it again"};

}  // namespace

TEST_CASE("severities are named in small letters") {
  CHECK(severity_name(Severity::Note) == "note");
  CHECK(severity_name(Severity::Warning) == "warning");
  CHECK(severity_name(Severity::Error) == "error");
}

TEST_CASE("a problem is one line for a person") {
  CHECK(to_text(kDoubtful) ==
        "warning [measure.doubtful] waist_girth: readings differ by 30 mm (take it again)");
}

TEST_CASE("a problem without a place or a hint has no empty brackets") {
  CHECK(to_text({Severity::Note, "draft.done", "", "all is well", ""}) ==
        "note [draft.done] all is well");
}

TEST_CASE("only an error makes a list bad") {
  Problems problems;
  CHECK_FALSE(has_errors(problems));
  problems.push_back(kDoubtful);
  problems.push_back({Severity::Note, "x", "", "", ""});
  CHECK_FALSE(has_errors(problems));
  problems.insert(problems.begin(), {Severity::Error, "y", "", "", ""});
  CHECK(has_errors(problems));
}

TEST_CASE("an error carries its problem and says it") {
  const Problem missing{Severity::Error, "file.missing", "ondine.json", "no such file", ""};
  try {
    throw FileError(missing);
  } catch (const Error& error) {
    CHECK(error.problem() == missing);
    CHECK(error.what() == to_text(missing));
  }
}

TEST_CASE("every kind of error can be caught as an error and as a standard exception") {
  CHECK_THROWS_AS(throw UsageError(kDoubtful), Error);
  CHECK_THROWS_AS(throw FileError(kDoubtful), Error);
  CHECK_THROWS_AS(throw InputError(kDoubtful), Error);
  CHECK_THROWS_AS(throw InputError(kDoubtful), std::runtime_error);
}

TEST_CASE("a broken invariant is a bug, not an error about the run") {
  CHECK_NOTHROW(require(true, "all is well"));
  CHECK_THROWS_AS(require(false, "the seam is gone"), std::logic_error);
  CHECK_THROWS_WITH(require(false, "the seam is gone"), Catch::Contains("the seam is gone"));
}

TEST_CASE("the version has three numbers") {
  const std::string text(version());
  CHECK(std::count(text.begin(), text.end(), '.') == 2);
  CHECK(text.find_first_not_of("0123456789.") == std::string::npos);
  CHECK(text.front() != '.');
  CHECK(text.back() != '.');
}
