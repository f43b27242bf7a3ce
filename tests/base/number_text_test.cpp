#include "blockwright/base/number_text.hpp"

#include "support/each.hpp"
#include "support/random.hpp"

#include <catch2/catch.hpp>

#include <bit>
#include <charconv>
#include <clocale>
#include <cmath>
#include <limits>
#include <locale>
#include <numeric>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

double read(const std::string& text) {
  double value = std::numeric_limits<double>::quiet_NaN();
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  REQUIRE(end.ptr == text.data() + text.size());
  return value;
}

// A comma for the decimal point and dots between the thousands, as a Polish or German reader
// writes.
struct CommaPunctuation : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

// Puts both the C++ and the C locale back when it goes.
class LocaleGuard {
 public:
  LocaleGuard() : c_(std::setlocale(LC_ALL, nullptr)) {}
  ~LocaleGuard() {
    std::locale::global(cxx_);
    std::setlocale(LC_ALL, c_.c_str());
  }
  LocaleGuard(const LocaleGuard&) = delete;
  LocaleGuard& operator=(const LocaleGuard&) = delete;

 private:
  std::locale cxx_;
  std::string c_;
};

std::vector<std::string> texts_of_all_kinds() {
  return {fixed(1234567.891, 2), trimmed(1234567.5, 3), exact(1234567.891), inch_fraction(1234.5)};
}

// Sixteenths in a text such as "-3 5/8".
long long sixteenths_in(const std::string& text) {
  const bool negative = text.front() == '-';
  const std::string rest = text.substr(negative ? 1 : 0);
  const auto slash = rest.find('/');
  const auto space = rest.find(' ');
  long long sum = 0;
  if (slash == std::string::npos || space != std::string::npos) sum += 16 * std::stoll(rest);
  if (slash != std::string::npos) {
    const std::size_t from = space == std::string::npos ? 0 : space + 1;
    const long long above = std::stoll(rest.substr(from));
    const long long below = std::stoll(rest.substr(slash + 1));
    REQUIRE(std::gcd(above, below) == 1);
    REQUIRE(16 % below == 0);
    sum += above * (16 / below);
  }
  return negative ? -sum : sum;
}

}  // namespace

TEST_CASE("a fixed number has exactly the places asked for") {
  CHECK(fixed(12.345, 2) == "12.35");
  CHECK(fixed(12.344, 2) == "12.34");
  CHECK(fixed(3.0, 3) == "3.000");
  CHECK(fixed(3.7, 0) == "4");
  CHECK(fixed(-12.5, 1) == "-12.5");
  CHECK(fixed(0.0, 2) == "0.00");
  CHECK(fixed(1e-13, 12) == "0.000000000000");
  CHECK(fixed(1e15, 1) == "1000000000000000.0");
}

TEST_CASE("the exact value of the double is rounded, halves to even") {
  CHECK(fixed(0.5, 0) == "0");
  CHECK(fixed(1.5, 0) == "2");
  CHECK(fixed(2.5, 0) == "2");
  CHECK(fixed(0.125, 2) == "0.12");
  CHECK(fixed(0.375, 2) == "0.38");
  CHECK(fixed(1.005, 2) == "1.00");  // the double lies below 1.005
}

TEST_CASE("nothing prints as minus nought") {
  for (int decimals = 0; decimals <= 12; ++decimals) {
    CAPTURE(decimals);
    for (const double value : each({-0.0, -1e-300, -0.4 * std::pow(10.0, -decimals)})) {
      CHECK(fixed(value, decimals).front() == '0');
      CHECK(trimmed(value, decimals) == "0");
    }
  }
  CHECK(fixed(-0.001, 2) == "0.00");
  CHECK(fixed(-0.006, 2) == "-0.01");
  CHECK(exact(-0.0) == "0");
  CHECK(inch_fraction(-0.01) == "0");
  CHECK(inch_fraction(-0.0) == "0");
}

TEST_CASE("a fixed number reads back within half a unit of its last place") {
  for (Random& random : each_random(20000, 1)) {
    const double value = random.between(-2000.0, 2000.0);
    const int decimals = random.whole(0, 12);
    const double half_a_unit = 0.5 * std::pow(10.0, -decimals);
    REQUIRE(std::abs(read(fixed(value, decimals)) - value) <= half_a_unit + 1e-12);
  }
}

TEST_CASE("the largest double fits with all places") {
  const double largest = std::numeric_limits<double>::max();
  CHECK(read(fixed(largest, 12)) == largest);
  CHECK(read(fixed(-largest, 12)) == -largest);
}

TEST_CASE("trimming takes noughts behind the point and nothing else") {
  CHECK(trimmed(12.50, 3) == "12.5");
  CHECK(trimmed(3.0, 3) == "3");
  CHECK(trimmed(100.0, 0) == "100");
  CHECK(trimmed(100.0, 2) == "100");
  CHECK(trimmed(0.05, 2) == "0.05");
  CHECK(trimmed(0.0, 5) == "0");
  CHECK(trimmed(-20.10, 2) == "-20.1");
  CHECK(trimmed(1.9999, 2) == "2");
}

TEST_CASE("an exact number reads back as the very same double") {
  CHECK(exact(0.1) == "0.1");
  CHECK(exact(1e-9) == "1e-09");
  CHECK(exact(250.0) == "250");
  int tested = 0;
  for (Random& random : each_random(100000, 2)) {
    const auto value = std::bit_cast<double>(random.bits());
    if (!std::isfinite(value)) continue;
    REQUIRE(read(exact(value)) == value);
    REQUIRE(exact(value).size() <= 24);
    ++tested;
  }
  CHECK(tested > 99000);
  CHECK(read(exact(std::numeric_limits<double>::denorm_min())) ==
        std::numeric_limits<double>::denorm_min());
}

TEST_CASE("inches read as on a tape") {
  CHECK(inch_fraction(36.5) == "36 1/2");
  CHECK(inch_fraction(36.0) == "36");
  CHECK(inch_fraction(0.25) == "1/4");
  CHECK(inch_fraction(0.1875) == "3/16");
  CHECK(inch_fraction(5.625) == "5 5/8");
  CHECK(inch_fraction(-1.75) == "-1 3/4");
  CHECK(inch_fraction(-0.5) == "-1/2");
  CHECK(inch_fraction(0.0) == "0");
  CHECK(inch_fraction(11.99) == "12");
}

TEST_CASE("inches go to the nearest sixteenth, in lowest terms") {
  for (Random& random : each_random(20000, 3)) {
    const double inches = random.between(-60.0, 60.0);
    const double off = static_cast<double>(sixteenths_in(inch_fraction(inches))) - 16.0 * inches;
    REQUIRE(std::abs(off) <= 0.5);
  }
}

TEST_CASE("what cannot be printed is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  for (const double value : each({nan, infinity, -infinity})) {
    CHECK_THROWS_AS(fixed(value, 2), std::logic_error);
    CHECK_THROWS_AS(trimmed(value, 2), std::logic_error);
    CHECK_THROWS_AS(exact(value), std::logic_error);
    CHECK_THROWS_AS(inch_fraction(value), std::logic_error);
  }
  CHECK_THROWS_AS(fixed(1.0, -1), std::logic_error);
  CHECK_THROWS_AS(fixed(1.0, 13), std::logic_error);
  CHECK_THROWS_AS(inch_fraction(1e300), std::logic_error);
}

TEST_CASE("a number that cannot be used is told whatever it is, and shortly") {
  CHECK(told_number(12.50, 3) == "12.5");
  CHECK(told_number(-2.25, 1) == "-2.2");
  CHECK(told_number(999999999.0, 1) == "999999999");
  CHECK(told_number(1e9, 1) == "1e+09");
  CHECK(told_number(-1e20, 1) == "-1e+20");
  CHECK(told_number(std::numeric_limits<double>::max(), 2) == "1.7976931348623157e+308");
  CHECK(told_number(std::numeric_limits<double>::infinity(), 2) == "no number");
  CHECK(told_number(-std::numeric_limits<double>::infinity(), 2) == "no number");
  CHECK(told_number(std::numeric_limits<double>::quiet_NaN(), 2) == "no number");
}

TEST_CASE("a text is a number as a whole, or none") {
  CHECK(number_in<int>("-12") == -12);
  CHECK(number_in<double>("0.25") == 0.25);
  for (const char* text : each({"", " 1", "1 ", "1,5", "+1", "1/2", "99999999999"})) {
    CHECK(number_in<int>(text) == std::nullopt);
  }
  CHECK(number_in<unsigned>("-1") == std::nullopt);
}

TEST_CASE("no locale changes a number") {
  const std::vector<std::string> expected = {"1234567.89", "1234567.5", "1234567.891", "1234 1/2"};
  REQUIRE(texts_of_all_kinds() == expected);
  const LocaleGuard guard;
  SECTION("a C++ locale with commas") {
    std::locale::global(std::locale(std::locale::classic(), new CommaPunctuation));
    CHECK(texts_of_all_kinds() == expected);
  }
  SECTION("those locales with commas that are installed here") {
    for (const char* name : {"pl_PL.UTF-8", "de_DE.UTF-8", "fr_FR.UTF-8"}) {
      if (std::setlocale(LC_ALL, name) == nullptr) continue;
      INFO(name);
      CHECK(std::string(std::localeconv()->decimal_point) == ",");
      CHECK(texts_of_all_kinds() == expected);
    }
    CHECK(texts_of_all_kinds() == expected);
  }
}
