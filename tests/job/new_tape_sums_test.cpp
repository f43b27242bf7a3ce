// How a newer tape is shared out among the corrections that ask for a change of one measurement.
// Sums by hand, in cm of the whole waist unless another is named.
#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

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

struct Settled {
  std::vector<TapeSum> sums;
  std::vector<NumberedCorrection> corrections;

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
    Correction correction;
    correction.action = one.action;
    correction.place = one.place;
    correction.by = Length::cm(one.cm);
    correction.as = one.as;
    correction.new_tape = one.new_tape;
    correction.side = one.side;
    corrections.push_back(
        {corrections.size() + 1, "2026-0" + std::to_string(one.month) + "-15", 1, correction});
  }
  Settled result{sums_of_new_tape(source, corrections), {}};
  result.corrections = with_what_remains(corrections, result.sums);
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

TEST_CASE("A tape that has all of it, or nearly all, leaves nothing") {
  for (const double now : each({76.0 - 6.0, 76.0 - 5.5, 76.0 - 8.9})) {
    const Settled waists =
        settled({waist(1, 76.0), waist(7, now)}, {kThreeOff, {2, "take_in", "waist", 3.0}});
    CHECK(waists.corrections.empty());
  }
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

TEST_CASE("A tape that moved the other way, hardly or far more changes no correction",
          "[kLeastShare][kMostShare]") {
  // Ours: from half of the smallest correction to one and a half times what all ask for.
  const auto is_changed = [](double by) {
    return !settled({waist(1, 76.0), waist(7, 76.0 + by)},
                    {kThreeOff, {2, "take_in", "waist", 3.0}})
                .sums.empty();
  };
  CHECK_FALSE(is_changed(3.0));
  CHECK_FALSE(is_changed(0.0));
  CHECK_FALSE(is_changed(-1.49));
  CHECK(is_changed(-1.51));
  CHECK(is_changed(-8.99));
  CHECK_FALSE(is_changed(-9.01));
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
  // The first kept, all 2.75 goes to the second, and 0.25 that is left is too little to sew.
  CHECK(with(keep, {}).of(1) == Approx(3.0));
  CHECK(with(keep, {}).of(2) == 0.0);
  CHECK(with(keep, keep).sums.empty());
  CHECK(with(drop, drop).corrections.empty());
  // A number is what remains as long as the sum says the same; of a newer tape the sum counts.
  const Settled written = with(drop, {OnNewTape::Change, Length::cm(3.26)});
  CHECK(written.of(2) == Approx(3.26));
  const Settled old = with(drop, {OnNewTape::Change, Length::cm(2.0)});
  CHECK(old.of(2) == Approx(3.25));
}

TEST_CASE("A correction of one side takes no part: no tape tells the sides apart") {
  Asked left = kThreeOff;
  left.as = AmountAs::PerHalf;
  left.side = BodySide::Left;
  CHECK(settled({waist(1, 76.0), waist(7, 73.0)}, {left}).of(1) == Approx(3.0));
}

TEST_CASE("Without a tape then, or now, a correction is applied in full") {
  const Session none = taken_in(7, {{BustGirth, Length::cm(92)}});
  CHECK(settled({waist(1, 76.0), none}, {kThreeOff}).of(1) == Approx(3.0));
  CHECK(settled({taken_in(1, {{BustGirth, Length::cm(92)}}), waist(7, 73.0)}, {kThreeOff}).of(1) ==
        Approx(3.0));
  // Fitted on the newest tape itself.
  CHECK(settled({waist(1, 76.0), waist(7, 73.0)}, {{7, "take_in", "waist", 3.0}}).of(1) ==
        Approx(3.0));
}
