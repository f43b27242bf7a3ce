// How a newer tape is shared out among the corrections that ask for a change of one measurement.
// Sums by hand, in cm of the whole waist unless another is named.
#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "drafted_lengths.hpp"
#include "new_tape_in_full.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace blockwright;

namespace {

using enum MeasurementName;

// Of a year: a session on the first day of each month, a fitting on the 15th.
Session taken_in(int month, std::initializer_list<std::pair<MeasurementName, Measure>> taken) {
  Session session;
  session.date = "2026-0" + std::to_string(month) + "-01";
  for (const auto& [name, value] : taken) session.tape[name] = Readings{{value}};
  return session;
}
Session waist(int month, double cm) { return taken_in(month, {{WaistGirth, Length::cm(cm)}}); }

struct Asked {
  int month;
  const char* action;
  const char* place;
  double cm;
  AmountAs as = AmountAs::WholeGirth;
  AfterNewTape new_tape = {};
  BodySide side = BodySide::Both;
};

Correction correction_of(const Asked& asked) {
  Correction correction;
  correction.action = asked.action;
  correction.place = asked.place;
  correction.by = Length::cm(asked.cm);
  correction.as = asked.as;
  correction.new_tape = asked.new_tape;
  correction.side = asked.side;
  return correction;
}

struct Settled {
  std::vector<TapeSum> sums;
  std::vector<NumberedCorrection> corrections;
  std::vector<InFull> in_full;
  bool asks = false;

  // What is applied of a correction, in cm as its own amount is read.
  [[nodiscard]] double of(std::size_t number) const {
    const auto found = std::ranges::find(corrections, number, &NumberedCorrection::number);
    return found == corrections.end() ? 0.0 : found->correction.by.cm();
  }
};

Settled settled(const std::vector<Session>& sessions, const std::vector<Asked>& asked) {
  BlockSource source;
  source.client.sessions = sessions;
  source.session = sessions.back();
  std::vector<NumberedCorrection> corrections;
  for (const Asked& one : asked) {
    corrections.push_back({corrections.size() + 1, "2026-0" + std::to_string(one.month) + "-15", 1,
                           correction_of(one)});
  }
  Settled result{sums_of_new_tape(source, corrections), with_what_remains(source, corrections),
                 in_full_after_new_tape(source, corrections), false};
  for (const TapeSum& sum : result.sums) {
    result.asks |= is_worth_asking(sum, corrections);
  }
  return result;
}

const Asked kThreeOff{1, "take_in", "waist", 3.0};

}  // namespace

TEST_CASE(
    "Two corrections of -3 each and a tape of -2.75: -3.25 remains, and the second keeps it") {
  // -3 - 3 = -6; -6 + 2.75 = -3.25. The first would keep -0.25; under the least that is sewn
  // of its row (0.5 on the half, 1.0 in all) it goes to the second: -3 - 0.25 = -3.25.
  const Settled waists =
      settled({waist(1, 76.25), waist(7, 73.5)}, {kThreeOff, {2, "take_in", "waist", 3.0}});
  REQUIRE(waists.sums.size() == 1);
  CHECK(waists.sums[0].asked().length().cm() == Approx(-6.0));
  CHECK(waists.sums[0].remains().length().cm() == Approx(-3.25));
  CHECK(waists.of(1) == 0.0);
  CHECK(waists.of(2) == Approx(3.25));
  CHECK(waists.corrections[0].before_new_tape == Length::cm(3.0));
}

TEST_CASE("What is left of a correction stays with it where it is worth sewing") {
  // -3 + 1.6 = -1.4 of the first; the second keeps its -3.
  const Settled waists =
      settled({waist(1, 76.0), waist(7, 74.4)}, {kThreeOff, {2, "take_in", "waist", 3.0}});
  CHECK(waists.of(1) == Approx(1.4));
  CHECK(waists.of(2) == Approx(3.0));
  CHECK(waists.sums[0].shares.size() == 1);
}

TEST_CASE("A tape that has all of it leaves nothing, and never more than all is taken off") {
  for (const double now : each({76.0 - 6.0, 76.0 - 6.1, 76.0 - 12.0})) {
    const Settled waists =
        settled({waist(1, 76.0), waist(7, now)}, {kThreeOff, {2, "take_in", "waist", 3.0}});
    CHECK(waists.corrections.empty());
    CHECK(waists.sums.at(0).has().length().cm() == Approx(-6.0));
  }
}

TEST_CASE("The last correction keeps a rest that is too small to sew; next to nothing is nothing",
          "[kLeastRest]") {
  // 0.05 of the least waist (1.0 in all) is 0.05.
  const auto rest_after = [](double by) {
    return settled({waist(1, 76.0), waist(7, 76.0 + by)}, {kThreeOff}).of(1);
  };
  CHECK(rest_after(-2.6) == Approx(0.4));
  CHECK(rest_after(-2.94) == Approx(0.06));
  CHECK(rest_after(-2.96) == 0.0);
}

TEST_CASE("An amount read on the half remains on the half; places of one measurement add up") {
  // Centre back 1.5 on the half is 3 of the waist. 3 + 3 - 4 = 2 remains, with the second: 1 on the
  // half.
  const Settled waists =
      settled({waist(1, 76.0), waist(7, 72.0)},
              {kThreeOff, {2, "take_in", "centre_back", 1.5, AmountAs::PerHalf}});
  CHECK(waists.of(1) == 0.0);
  CHECK(waists.of(2) == Approx(1.0));
}

TEST_CASE("Every change of the tape counts that way, and none the other way") {
  const auto left_after = [](double by) {
    return settled({waist(1, 76.0), waist(7, 76.0 + by)}, {kThreeOff}).of(1);
  };
  CHECK(left_after(3.0) == 3.0);
  CHECK(left_after(0.0) == 3.0);
  CHECK(left_after(-0.1) == Approx(2.9));
}

TEST_CASE("She is asked where the tape has more than tapes differ by, or half of what was asked",
          "[kMostUnasked]") {
  // Two tapes of one waist differ by up to 1.0; half of 1.6 is 0.8.
  const auto asks = [](double asked, double by) {
    return settled({waist(1, 76.0), waist(7, 76.0 + by)}, {{1, "take_in", "waist", asked}}).asks;
  };
  CHECK_FALSE(asks(3.0, -0.99));
  CHECK(asks(3.0, -1.01));
  CHECK_FALSE(asks(1.6, -0.79));
  CHECK(asks(1.6, -0.81));
}

TEST_CASE("Of two bodies the smaller never gets the larger waist, and 0.1 cm never decides") {
  // Corrections of two toiles, from two tapes, both ways, in full and on the half.
  const std::vector<Asked> asked{kThreeOff,
                                 {4, "take_in", "centre_back", 0.7, AmountAs::PerHalf},
                                 {1, "let_out", "waist", 1.5},
                                 {4, "take_in", "waist", 1.0}};
  const auto block_waist = [&](double tape) {
    double waists = tape;
    const Settled now = settled({waist(1, 76.0), waist(4, 74.5), waist(7, tape)}, asked);
    for (const NumberedCorrection& one : now.corrections) {
      const double whole = one.correction.as == AmountAs::PerHalf ? 2.0 : 1.0;
      const double sign = one.correction.action == "let_out" ? 1.0 : -1.0;
      waists += sign * whole * one.correction.by.cm();
    }
    return waists;
  };
  double before = block_waist(60.0);
  for (int mm = 601; mm <= 900; ++mm) {
    const double now = block_waist(0.1 * mm);
    INFO("tape " << 0.1 * mm << " cm");
    CHECK(now >= before - 0.05);
    CHECK(now <= before + 0.1 + 0.05);
    before = now;
  }
}

TEST_CASE("A tape on which nothing was fitted has no part in what remains") {
  // 76 to 72 to 76 again: nobody is smaller, and all 3 are right.
  const std::vector<Asked> asked{kThreeOff};
  CHECK(settled({waist(1, 76.0), waist(4, 72.0)}, asked).of(1) == 0.0);
  CHECK(settled({waist(1, 76.0), waist(4, 72.0), waist(7, 76.0)}, asked).of(1) == Approx(3.0));
}

TEST_CASE("A tape of the day of a fitting is newer than its toile, unless it is the first") {
  Session same_day = waist(3, 74.0);
  same_day.date = "2026-03-15";
  CHECK(settled({waist(1, 76.0), same_day}, {{3, "take_in", "waist", 3.0}}).of(1) == Approx(1.0));
  CHECK(settled({same_day}, {{3, "take_in", "waist", 3.0}}).of(1) == Approx(3.0));
}

TEST_CASE("Each change of the tape is shared out once, among the corrections that were there") {
  // January to April -3: the first is done with. The second was fitted on April's tape; April to
  // July -1.6 leaves 3 - 1.6 = 1.4 of it. Counted since January, 4.6 would have been shared.
  const std::vector<Session> sessions{waist(1, 76.0), waist(4, 73.0), waist(7, 71.4)};
  const std::vector<Asked> asked{kThreeOff, {4, "take_in", "waist", 3.0}};
  const Settled july = settled(sessions, asked);
  CHECK(july.of(1) == 0.0);
  CHECK(july.of(2) == Approx(1.4));
  const Settled april = settled({sessions[0], sessions[1]}, asked);
  CHECK(april.of(1) == 0.0);
  CHECK(april.of(2) == Approx(3.0));
}

TEST_CASE("A correction that takes back a part of another stays") {
  // Neck 1.0 lower, later 0.4 higher: 0.6 in all. The tape has 0.6 of the first: 0.4 less 0.4
  // remain.
  const auto front = [](int month, double cm) {
    return taken_in(month, {{FrontWaistLength, Length::cm(cm)}});
  };
  const Settled necks = settled({front(1, 34.0), front(7, 33.4)},
                                {{1, "lower", "front_neck", 1.0, AmountAs::Length},
                                 {2, "raise", "front_neck", 0.4, AmountAs::Length}});
  CHECK(necks.of(1) == Approx(0.4));
  CHECK(necks.of(2) == Approx(0.4));
}

TEST_CASE("The file decides: what is kept takes no part, what is dropped is not applied") {
  const auto with = [](AfterNewTape first, AfterNewTape second) {
    Asked one = kThreeOff, other{2, "take_in", "waist", 3.0};
    one.new_tape = first;
    other.new_tape = second;
    return settled({waist(1, 76.25), waist(7, 73.5)}, {one, other});
  };
  const AfterNewTape keep{OnNewTape::Keep, {}}, drop{OnNewTape::Drop, {}};
  // The first kept, all 2.75 goes to the second: 0.25 of it remains.
  CHECK(with(keep, {}).of(1) == Approx(3.0));
  CHECK(with(keep, {}).of(2) == Approx(0.25));
  CHECK(with(keep, keep).sums.empty());
  CHECK(with(drop, drop).corrections.empty());
  CHECK_FALSE(with(drop, drop).asks);
  // An amount counts as it was written, whatever the sum says; of the tape it has its own part.
  // The first keeps 2 of 3: 1 of the tape's 2.75 is its; 3 - 1.75 = 1.25 remains of the second.
  const Settled part = with({OnNewTape::Change, Length::cm(2.0)}, {});
  CHECK(part.of(1) == Approx(2.0));
  CHECK(part.of(2) == Approx(1.25));
  // All of it written is as much as kept.
  const Settled all = with({OnNewTape::Change, Length::cm(3.0)}, {});
  CHECK(all.of(1) == Approx(3.0));
  CHECK(all.of(2) == Approx(0.25));
  // Dropped, the first has 2.75 of the tape, and what it lacks is the maker's.
  CHECK(with(drop, {}).of(2) == Approx(3.0));
  const Settled written = with(drop, {OnNewTape::Change, Length::cm(2.0)});
  CHECK(written.of(2) == Approx(2.0));
  CHECK_FALSE(written.asks);
}

TEST_CASE("What was settled counts as the sum does, and is asked about again when that has moved") {
  // On 73.0 the sum left 0 of the first and 3 of the second, which was agreed to.
  Asked one = kThreeOff, other{2, "take_in", "waist", 3.0};
  one.new_tape = {OnNewTape::Settled, {}};
  other.new_tape = {OnNewTape::Settled, Length::cm(3.0)};
  const auto now = [&](double tape) {
    return settled({waist(1, 76.0), waist(7, tape)}, {one, other});
  };
  CHECK(now(73.0).of(1) == 0.0);
  CHECK(now(73.0).of(2) == Approx(3.0));
  CHECK_FALSE(now(73.0).asks);
  // 0.9 more off: so much two tapes differ by, but it counts. 1.1: she is asked.
  CHECK(now(72.1).of(2) == Approx(2.1));
  CHECK_FALSE(now(72.1).asks);
  CHECK(now(71.9).asks);
  // Of half a centimetre that was agreed to remain nothing does: that is asked, little as it is.
  one.new_tape = {OnNewTape::Settled, Length::cm(0.5)};
  const auto alone = [&](double tape) {
    return settled({waist(1, 76.0), waist(7, tape)}, {one}).asks;
  };
  CHECK_FALSE(alone(73.5));
  CHECK_FALSE(alone(73.26));
  CHECK(alone(73.24));
  CHECK(alone(73.0));
  one.new_tape = {OnNewTape::Settled, {}};
  // Back where she was: all of it, and she is asked.
  CHECK(now(76.0).of(1) == Approx(3.0));
  CHECK(now(76.0).asks);
}

TEST_CASE("A correction of one side takes no part: no tape tells the sides apart") {
  Asked left = kThreeOff;
  left.as = AmountAs::PerHalf;
  left.side = BodySide::Left;
  const auto now = [&](double tape) { return settled({waist(1, 76.0), waist(7, tape)}, {left}); };
  CHECK(now(73.0).sums.empty());
  CHECK(now(73.0).of(1) == Approx(3.0));
  // It is said where the tape went that way by more than tapes differ, and the file says nothing.
  CHECK(now(74.9).in_full.size() == 1);
  CHECK(now(75.1).in_full.empty());
  CHECK(now(79.0).in_full.empty());
  left.new_tape = {OnNewTape::Keep, {}};
  CHECK(now(73.0).in_full.empty());
  left.new_tape = {OnNewTape::Change, Length::cm(1.5)};
  CHECK(now(73.0).in_full.empty());
  CHECK(now(73.0).of(1) == Approx(1.5));
}

namespace {

// A full set of a person who does not exist; the changes by a later month.
using Taped = std::vector<std::pair<MeasurementName, double>>;

Session lavinia(int month, const Taped& changed = {}) {
  Session session;
  session.date = "2026-0" + std::to_string(month) + "-01";
  const auto take = [&](MeasurementName name, double cm) {
    session.tape[name] = Readings{{Length::cm(cm)}};
  };
  const Taped taped{
      {BustGirth, 94.0},       {UpperChestGirth, 88.0},    {UnderbustGirth, 79.0},
      {WaistGirth, 74.0},      {NeckBaseGirth, 37.0},      {ArmscyeGirth, 40.0},
      {ShoulderLength, 12.4},  {FrontShoulderSlant, 42.5}, {BackShoulderSlant, 42.0},
      {BackWaistLength, 40.0}, {FrontWaistLength, 34.5},   {SideNeckToBustPoint, 26.5},
      {SideNeckToWaist, 42.5}, {BustPointWidth, 18.6},     {AcrossBack, 34.0},
      {AcrossFront, 32.0},     {SideLength, 20.0},         {ScyeDepth, 19.0}};
  for (const auto& [name, cm] : taped) take(name, cm);
  for (const auto& [name, cm] : changed) take(name, cm);
  return session;
}

// What remains of a correction seen on the first tape, where the second has what it asked for.
struct Taken {
  Asked asked;
  Taped changed;
  double least, most;  ///< cm that remain
  bool told = false;   ///< that it is applied in full though tape or block have some of it
};

}  // namespace

TEST_CASE("What the tape has of a correction is what the block drafted from it shows") {
  using enum AmountAs;
  const Taken kTaken[] = {
      // What the block has as taped is left out.
      {{1, "take_in", "waist", 2.0}, {{WaistGirth, 72.0}}, 0.0, 0.0},
      {{1, "lower", "front_neck", 0.6, Length}, {{FrontWaistLength, 33.9}}, 0.0, 0.0},
      {{1, "lower", "underarm", 1.0, Length}, {{SideLength, 19.0}}, 0.0, 0.0},
      {{1, "shorten", "shoulder", 0.6, Length}, {{ShoulderLength, 11.8}}, 0.0, 0.0},
      {{1, "widen", "neck", 0.4, Length}, {{NeckBaseGirth, 38.96}}, 0.0, 0.0},
      // The centres do not go along with a side length, nor the sides with the centres.
      {{1, "lengthen", "below_bust", 1.2, Length}, {{SideLength, 21.2}}, 1.2, 1.2, true},
      {{1, "lengthen", "below_bust", 1.2, Length},
       {{FrontWaistLength, 35.7}, {BackWaistLength, 41.2}},
       1.2,
       1.2,
       true},
      // The waist stays where it was.
      {{1, "take_up", "shoulders", 1.0, Length}, {{SideNeckToBustPoint, 25.5}}, 1.0, 1.0, true},
      // The across back gives way to the armhole, and so does the armhole to the side.
      {{1, "widen", "across_back", 0.8, PerHalf}, {{AcrossBack, 35.6}}, 0.1, 0.2},
      {{1, "widen", "armhole", 0.4, Length}, {{ArmscyeGirth, 41.5}}, 0.3, 0.4},
      // Slants say what the slope says, which was never taped.
      {{1, "lower", "shoulder_point", 0.8, Length},
       {{FrontShoulderSlant, 41.7}, {BackShoulderSlant, 41.2}},
       0.0,
       0.05}};
  for (const Taken& taken : each(kTaken)) {
    INFO(taken.asked.action << " " << taken.asked.place);
    const Settled left = settled({lavinia(1), lavinia(7, taken.changed)}, {taken.asked});
    CHECK(left.of(1) >= Approx(taken.least));
    CHECK(left.of(1) <= Approx(taken.most));
    CHECK(left.in_full.size() == (taken.told ? 1 : 0));
  }
}

TEST_CASE("A length that two measurements move is given to one of their corrections") {
  using enum AmountAs;
  // Bust 2 and waist 2 less at the sides, and 2 more of the waist at the darts; the newer tape has
  // 2 of the bust and 2 of the waist. The sides are left out, and with them 2 of the waist that the
  // tape has: the darts stay.
  const Settled girths =
      settled({lavinia(1), lavinia(7, {{BustGirth, 92.0}, {WaistGirth, 72.0}})},
              {{1, "take_in", "side", 1.0, PerHalf}, {1, "take_in", "waist_darts", 1.0, PerHalf}});
  CHECK(girths.of(1) == Approx(0.0).margin(0.05));
  CHECK(girths.of(2) == Approx(1.0).margin(0.05));
  // Of 3 cm of the waist 1 is left for the darts, which take 0.5 on each half in.
  const Settled more =
      settled({lavinia(1), lavinia(7, {{BustGirth, 92.0}, {WaistGirth, 71.0}})},
              {{1, "take_in", "side", 1.0, PerHalf}, {1, "take_in", "waist_darts", 1.0, PerHalf}});
  CHECK(more.of(1) == Approx(0.0).margin(0.05));
  CHECK(more.of(2) == Approx(0.5).margin(0.05));
}

TEST_CASE("What one correction gives and another takes back is in no tape") {
  using enum AmountAs;
  const auto now = [](double bust, double half_taken_in) {
    return settled(
        {lavinia(1), lavinia(7, {{BustGirth, bust}})},
        {{1, "fuller", "bust", 1.0, PerHalf}, {2, "take_in", "side", half_taken_in, PerHalf}});
  };
  // 2 more and 2 less of the bust are nothing. She grew by 2: the block goes along, and keeps its
  // ease. Were the 2 of the tape taken off the first alone, the ease would be 2 less.
  const Settled both = now(96.0, 1.0);
  CHECK(both.of(1) == Approx(1.0));
  CHECK(both.of(2) == Approx(1.0));
  REQUIRE(both.sums.size() == 1);
  CHECK(both.sums[0].shares.size() == 2);
  CHECK(both.sums[0].asked().number() == Approx(0.0).margin(1e-9));
  CHECK(both.sums[0].has().number() == 0.0);
  CHECK_FALSE(both.asks);
  // So with 2 less.
  CHECK(now(92.0, 1.0).of(1) == Approx(1.0));
  CHECK(now(92.0, 1.0).of(2) == Approx(1.0));
  // 2 more and 1 less: 1 more. The tape has it, though it has 2: 2 - 1 = 1 remains of the first,
  // 0.5 on the half, and with the second nothing in all.
  CHECK(now(96.0, 0.5).of(1) == Approx(0.5).margin(0.01));
  CHECK(now(96.0, 0.5).of(2) == Approx(0.5));
  CHECK(now(96.0, 0.5).sums.at(0).remains().number() == Approx(0.0).margin(0.2));
  // Of 0.6 that the tape has 2 - 0.6 = 1.4 remains, 0.7 on the half.
  CHECK(now(94.6, 0.5).of(1) == Approx(0.7).margin(0.01));
  // 2 more and 3 less are 1 less: 2 more on the tape has nothing of it.
  CHECK(now(96.0, 1.5).of(1) == Approx(1.0));
  CHECK(now(96.0, 1.5).of(2) == Approx(1.5));
}

TEST_CASE("Corrections both ways are one sum at one fitting too") {
  using enum AmountAs;
  const auto now = [](double width) {
    return settled(
        {lavinia(1), lavinia(7, {{BustPointWidth, width}})},
        {{1, "narrow", "bust_points", 0.6, PerHalf}, {1, "widen", "bust_points", 0.3, PerHalf}});
  };
  // -1.2 + 0.6 = -0.6. A tape of +0.4 has nothing of it; of -0.4 it has 0.4, and 0.8 of the first
  // remains, 0.4 on the half; of -1.0 it has all 0.6: 0.6 and 0.6 remain, which is nothing.
  CHECK(now(19.0).of(1) == Approx(0.6));
  CHECK(now(19.0).of(2) == Approx(0.3));
  CHECK(now(18.2).of(1) == Approx(0.4).margin(0.01));
  CHECK(now(18.2).of(2) == Approx(0.3));
  CHECK(now(17.6).of(1) == Approx(0.3).margin(0.01));
  CHECK(now(17.6).of(2) == Approx(0.3));
}

TEST_CASE("What a correction of another measurement takes off a girth counts in its sum") {
  using enum AmountAs;
  const auto now = [](const Taped& changed) {
    return settled({lavinia(1), lavinia(7, changed)},
                   {{1, "let_out", "waist", 1.0, PerHalf}, {1, "take_in", "side", 1.0, PerHalf}});
  };
  // The waist 2 more, and at the sides bust and waist 2 less: of the waist nothing. It grew by 3,
  // and the block goes along.
  CHECK(now({{WaistGirth, 77.0}}).of(1) == Approx(1.0));
  CHECK(now({{WaistGirth, 77.0}}).of(2) == Approx(1.0));
  CHECK(now({{WaistGirth, 77.0}}).sums.at(0).others.size() == 1);
  // The bust has the 2 of the sides, which go, and with them what they took off the waist. The
  // waist, which did not change, then has the 2 that were let out.
  CHECK(now({{BustGirth, 92.0}}).of(1) == Approx(0.0).margin(0.05));
  CHECK(now({{BustGirth, 92.0}}).of(2) == Approx(0.0).margin(0.05));
}

TEST_CASE("A bust that was made fuller and taken in grows with the tape, and never against it") {
  using enum AmountAs;
  // The block's bust less its ease: the tape, +2 or what is left of it, -1.4 or what is left of it.
  // On 94 it is 94.6. It stays there until the tape is, and goes on with it.
  const auto block_bust = [](double tape) {
    const Settled left =
        settled({lavinia(1), lavinia(7, {{BustGirth, tape}})},
                {{1, "fuller", "bust", 1.0, PerHalf}, {2, "take_in", "side", 0.7, PerHalf}});
    return tape + 2.0 * (left.of(1) - left.of(2));
  };
  for (int mm = 900; mm <= 980; mm += 2) {
    const double tape = 0.1 * mm;
    INFO("tape " << tape << " cm");
    const double fitted = tape <= 94.0 ? tape + 0.6 : std::max(94.6, tape);
    CHECK(block_bust(tape) == Approx(fitted).margin(0.05));
  }
}

TEST_CASE("What was fitted stays on every length that shows it, whatever the newer tape is") {
  using enum AmountAs;
  const Asked kAsked[] = {{1, "lengthen", "below_bust", 1.2, Length},
                          {1, "lower", "shoulder_point", 0.8, Length},
                          {1, "widen", "across_back", 0.8, PerHalf},
                          {1, "take_in", "waist", 3.0}};
  std::mt19937 random(19);
  const auto off = [&] { return static_cast<double>(random() % 41) * 0.1 - 2.0; };
  for (int i = 0; i < 20; ++i) {
    const Session before = lavinia(1);
    const Session after = lavinia(7, {{WaistGirth, 74.0 + off()},
                                      {SideLength, 20.0 + 0.5 * off()},
                                      {BackWaistLength, 40.0 + 0.5 * off()},
                                      {FrontWaistLength, 34.5 + 0.5 * off()},
                                      {FrontShoulderSlant, 42.5 + 0.5 * off()},
                                      {BackShoulderSlant, 42.0 + 0.5 * off()},
                                      {AcrossBack, 34.0 + off()}});
    for (const Asked& asked : kAsked) {
      const Settled left = settled({before, after}, {asked});
      const Correction correction = correction_of(asked);
      const RowAmount row = row_of(correction);
      const DoubtedMeasurement doubts = *fitting_row(row.row).doubts;
      const double way = asked_change(doubts, row) < 0.0 ? -1.0 : 1.0;
      const double share = left.of(1) / asked.cm;
      for (const LengthMoved& length : lengths_that_show(doubts, row)) {
        INFO(asked.action << " " << asked.place << ": " << length.name);
        const auto drafted = [&](const Session& session) {
          return length_named(drafted_lengths(session, Ease{}), length.name) / length.per_mm;
        };
        const double by_tape = way * (drafted(after) - drafted(before));
        const double in_all = by_tape + share * way * asked_change(doubts, row);
        // Where the body went the other way the block goes along.
        CHECK(in_all >= way * asked_change(doubts, row) + std::min(by_tape, 0.0) - 0.5);
      }
    }
  }
}

TEST_CASE("Without a tape then, or now, and no block to draft, a correction is applied in full") {
  const Session none = taken_in(7, {{BustGirth, Length::cm(92)}});
  CHECK(settled({waist(1, 76.0), none}, {kThreeOff}).of(1) == Approx(3.0));
  CHECK(settled({taken_in(1, {{BustGirth, Length::cm(92)}}), waist(7, 73.0)}, {kThreeOff}).of(1) ==
        Approx(3.0));
  // Fitted on the newest tape itself.
  CHECK(settled({waist(1, 76.0), waist(7, 73.0)}, {{7, "take_in", "waist", 3.0}}).of(1) ==
        Approx(3.0));
}
