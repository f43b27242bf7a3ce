#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using namespace blockwright_tests;

// Row 44: where a waist is taken in and let out. Common practice, no source.

namespace {

// Cloth that a correction took from the half, and where.
struct Taken {
  double front_waist = 0.0, back_waist = 0.0;  // sewn
  double front = 0.0, back = 0.0;              // the darts' mouths
  double centre = 0.0;                         // the centre back at the waist
  [[nodiscard]] double whole() const { return front_waist + back_waist; }
  [[nodiscard]] double sides() const { return whole() - front - back - centre; }
};

double mouths(const Pattern& pattern, const std::string& piece) {
  double sum = 0.0;
  for (const Dart& dart : pattern.piece(piece).darts) {
    if (dart.edge == "waist") sum += dart.intake();
  }
  return sum;
}

// How far the centre back comes in at the waist.
double centre_in(const Pattern& pattern) {
  return pattern.piece("back").landmark("centre_waist").x;
}

Taken taken(const Pattern& before, const Pattern& after) {
  Taken t;
  t.front_waist = sewn(before, "front", "waist") - sewn(after, "front", "waist");
  t.back_waist = sewn(before, "back", "waist") - sewn(after, "back", "waist");
  t.front = mouths(after, "front") - mouths(before, "front");
  t.back = mouths(after, "back") - mouths(before, "back");
  t.centre = centre_in(after) - centre_in(before);
  return t;
}

RowAmount waist_in(double by) {
  return {CorrectionRow::WaistTakenIn, 1, by, AmountAs::PerHalf, BodySide::Both, "waist"};
}
RowAmount waist_out(double by) {
  return {CorrectionRow::WaistTakenIn, -1, by, AmountAs::PerHalf, BodySide::Both, "waist"};
}

// How far the waist between the centre and its first dart rises over both of its ends, or sinks
// under them.
double hump(const Pattern& pattern, const char* piece) {
  const Curve& stretch = pattern.piece(piece).edge("waist").path.curves().front();
  const auto [low, high] = std::minmax(start_of(stretch).y, end_of(stretch).y);
  double most = 0.0;
  for (int i = 1; i < 100; ++i) {
    const double y = point_at(stretch, i / 100.0).y;
    most = std::max({most, y - high, low - y});
  }
  return most;
}

std::optional<Taken> taken_by(const Pattern& block, const RowAmount& row) {
  const Outcome got = outcome(block, {row});
  if (!got.fitted) return std::nullopt;
  return taken(block, got.fitted->pattern);
}

// Mouths are chords of a curving waist: they widen by so much more or less, as a share.
constexpr double kChord = 0.2;

// What back waist darts take: one 40 mm; several 35 mm each, widened in their proportion, together
// at least as much as one.
double most_in_back(const Pattern& block) {
  double widest = 0.0;
  int count = 0;
  for (const Dart& dart : block.piece("back").darts) {
    if (dart.edge != "waist") continue;
    widest = std::max(widest, dart.intake());
    ++count;
  }
  return count < 2 ? 40.0 : std::max(40.0, mouths(block, "back") * 35.0 / widest);
}

bool has_room(const Pattern& block, double in_front, double in_back) {
  return mouths(block, "back") > in_back && mouths(block, "back") + in_back < most_in_back(block) &&
         mouths(block, "front") > in_front && mouths(block, "front") + in_front < 45.0;
}

}  // namespace

TEST_CASE("A waist taken in or let out by up to 8 mm at each edge goes to the sides alone") {
  for (const Pattern& block : each_block(5)) {
    for (const double by : each({5.0, 16.0})) {
      for (const RowAmount& row : each({waist_in(by), waist_out(by)})) {
        const auto t = taken_by(block, row);
        REQUIRE(t);
        CHECK(t->sides() == Approx(row.sign * by).margin(1e-6));
        CHECK(t->front == 0.0);
        CHECK(t->back == 0.0);
        CHECK(t->centre == 0.0);
      }
    }
  }
}

// As it is drafted: kSideShare at each side edge, kFrontDartShare in front, the rest in the back.
TEST_CASE("A wider amount is shared: 24 % sides, 35 % front darts, 41 % back darts") {
  int tried = 0;
  for (const Pattern& block : each_block()) {
    for (const double by : each({18.0, 30.0})) {
      if (!has_room(block, 0.35 * by + 1.0, 0.41 * by + 1.0)) continue;
      for (const RowAmount& row : each({waist_in(by), waist_out(by)})) {
        const auto t = taken_by(block, row);
        if (!t) continue;
        ++tried;
        // Half of the sides on each piece: 12 and 35 % of the front, 12 and 41 % of the back.
        CHECK(t->front_waist == Approx(0.47 * row.sign * by).margin(0.01));
        CHECK(t->back_waist == Approx(0.53 * row.sign * by).margin(0.01));
        CHECK(t->front == Approx(0.35 * row.sign * by).epsilon(kChord));
        CHECK(t->back == Approx(0.41 * row.sign * by).epsilon(kChord));
        CHECK(t->centre == 0.0);
      }
    }
  }
  CHECK(tried > share_of_blocks(0.3));
}

TEST_CASE("Where one place is full the next takes more: sides, back darts, front darts, centre") {
  int at_sides = 0, at_centre = 0;
  for (const Pattern& block : each_block()) {
    for (const double by : {24.0, 45.0, 60.0, 75.0}) {
      const auto t = taken_by(block, waist_in(by));
      if (!t) continue;
      INFO(by << ": " << t->sides() << " " << t->front << " " << t->back << " " << t->centre);
      CHECK(t->whole() == Approx(by).margin(0.01));
      CHECK(t->sides() <= 16.0 + 1.0);
      CHECK(t->centre <= 15.0);
      if (t->sides() > 0.24 * by + 2.0) ++at_sides;
      if (t->centre == 0.0) continue;
      // The seam comes last: sides and darts are full.
      ++at_centre;
      CHECK(t->sides() > 15.99 - kChord * (t->front + t->back));
      CHECK(mouths(block, "back") + t->back > most_in_back(block) - 0.01);
      CHECK(mouths(block, "front") + t->front > 45.0 - 0.01);
    }
  }
  CHECK(at_sides > 0);
  CHECK(at_centre > 0);
}

TEST_CASE("The centre back seam that a wide waist uses is square at both ends and still closes") {
  int tried = 0;
  for (const Pattern& block : each_block()) {
    for (const double by : each({45.0, 60.0, 75.0})) {
      const Outcome got = outcome(block, {waist_in(by)});
      if (!got.fitted || centre_in(got.fitted->pattern) == 0.0) continue;
      ++tried;
      const Piece& back = got.fitted->pattern.piece("back");
      CHECK_FALSE(find_problem(back));
      const Path& centre = back.edge("centre_back").path;
      CHECK(std::abs(start_tangent(centre).x) < 1e-6);
      CHECK(std::abs(end_tangent(centre).x) < 1e-6);
      CHECK(back.edge("centre_back").role == block.piece("back").edge("centre_back").role);
    }
  }
  CHECK(tried > 0);
}

TEST_CASE("A wide waist taken in, then let out on the fitted pattern, is the first outline") {
  int tried = 0;
  for (const Pattern& block : each_block(5)) {
    if (!has_room(block, 7.5, 8.5)) continue;
    const Outcome there = outcome(block, {waist_in(18.0)});
    if (!there.fitted) continue;
    const Outcome back = outcome(there.fitted->pattern, {waist_out(18.0)});
    REQUIRE(back.fitted);
    ++tried;
    CHECK(apart(block, back.fitted->pattern) < 0.1);
  }
  CHECK(tried > share_of_blocks(0.02));
}

TEST_CASE("More than sides, darts and centre back can carry is refused, naming the waist girth") {
  const Problem refused = outcome(usual_block(), {waist_in(85.0)}).refusal;
  CHECK(refused.code == "fit.limit");
  CHECK(refused.message.plain().find("centre back") != std::string::npos);
  CHECK(refused.hint.plain().find("waist girth") != std::string::npos);
}

TEST_CASE("A hem lowered or raised at the centre runs up to the dart without a hump") {
  for (const Pattern& block : each_block(3)) {
    for (const double by : each({5.0, 8.0, 10.0, 15.0, 20.0})) {
      for (const int sign : {1, -1}) {
        const RowAmount front{numbered(41),     sign,           by,
                              AmountAs::Length, BodySide::Both, "front_hem"};
        const RowAmount back{numbered(38), sign, by, AmountAs::Length, BodySide::Both, "back_hem"};
        const Outcome got = outcome(block, {front, back});
        if (!got.fitted) continue;
        for (const char* piece : {"front", "back"}) {
          INFO(piece);
          // Less than a pencil line.
          CHECK(hump(got.fitted->pattern, piece) < std::max(0.1, hump(block, piece)));
        }
      }
    }
  }
}
