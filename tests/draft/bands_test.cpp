// How far the lines of a block could be off, tried by taping people again and again.
#include "blockwright/draft/bands.hpp"

#include "support/band_width.hpp"
#include "support/each_person.hpp"
#include "support/hand_tape.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace blockwright;
using enum MeasurementName;

namespace {

using Names = std::set<MeasurementName>;

Session only(Session session, const Names& names) {
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!names.contains(entry.name)) session.tape[entry.name].reset();
  }
  return session;
}

Pattern block_of(const Body& body) { return draft_block(body, Ease::of_toile()).pattern; }

BlockBands bands_of(const Session& session) {
  const Body body = fill_in(session);
  return block_bands(body, spread_of(body), Ease::of_toile(), draft_block(body, Ease::of_toile()));
}

Session a_person() { return survey_people(1, 5).front(); }

const LengthBand& edge_in(const BlockBands& bands, std::string_view piece, std::string_view edge) {
  return *std::ranges::find_if(bands.lengths, [&](const LengthBand& band) {
    return band.piece == piece && band.edge == edge;
  });
}

// Of the places that have a band.
struct Held {
  double held = 0.0, all = 0.0;
  void count(double off, Length band) {
    if (band <= Length::mm(0.01)) return;
    all += 1.0;
    held += std::abs(off) <= band.mm() ? 1.0 : 0.0;
  }
};

// Whether the bands drawn after a tape hold the block of the person herself.
void count_points(const Session& person, const Session& tape, Held& held) {
  const Pattern own = block_of(fill_in(person)), drafted = block_of(fill_in(tape));
  for (const PointBand& band : bands_of(tape).points) {
    const Vec off =
        drafted.piece(band.piece).landmark(band.point) - own.piece(band.piece).landmark(band.point);
    held.count(off.x, band.x);
    held.count(off.y, band.y);
  }
}

double share_held(const Names& taken, unsigned seed) {
  Held held;
  HandTape hand(seed);
  for (const Session& person : each_person(people(200), seed)) {
    count_points(person, only(hand.taken_of(person), taken), held);
  }
  return held.held / held.all;
}

Names all_names() {
  Names all;
  for (const MeasurementInfo& entry : kMeasurements) all.insert(entry.name);
  return all;
}

}  // namespace

// Fewer people than elsewhere under the sanitizers leave more to chance.
TEST_CASE("A person taped once: the bands hold her own block 19 times of 20") {
  const double slack = kSanitized ? 0.05 : 0.02;
  CHECK(share_held(all_names(), 71) == Approx(0.95).margin(slack));
  CHECK(share_held({BustGirth}, 72) == Approx(0.95).margin(slack));
  CHECK(share_held({BustGirth, WaistGirth, BackWaistLength}, 73) == Approx(0.95).margin(slack));
}

// By hand: 1.96 SD of one tape, on an edge that it alone closes.
TEST_CASE("An edge that one tape closes is off by what that tape errs by") {
  const BlockBands bands = bands_of(a_person());
  const auto once = [](MeasurementName name) { return 1.959964 * tape_sd(name).number(); };
  CHECK(edge_in(bands, "back", "centre_back").off.mm() ==
        Approx(once(BackWaistLength)).margin(0.01));
  CHECK(edge_in(bands, "front", "shoulder").off.mm() == Approx(once(ShoulderLength)).margin(0.01));
  CHECK(edge_in(bands, "back", "shoulder").off.mm() == Approx(once(ShoulderLength)).margin(0.01));
}

// By hand: half of a tape's variance is shared by readings of one day, the other half is a third of
// itself after three: sqrt(1/2 + 1/6).
TEST_CASE("Three readings that agree make the band narrower") {
  Session person = a_person();
  const double once = edge_in(bands_of(person), "back", "centre_back").off.mm();
  const double value = person.tape[BackWaistLength]->median().number();
  tape(person, BackWaistLength, {value, value, value});
  CHECK(edge_in(bands_of(person), "back", "centre_back").off.mm() ==
        Approx(std::sqrt(0.5 + 0.5 / 3.0) * once).margin(0.01));
}

TEST_CASE("What the maker is sure of has no band, and nothing is to be taken again") {
  Session person = a_person();
  for (const MeasurementInfo& entry : kMeasurements) {
    if (person.tape[entry.name]) person.sure.add(entry.name);
  }
  const BlockBands bands = bands_of(person);
  CHECK(width_of(bands) == 0.0);
  CHECK(bands.take_first.empty());
  for (const PointBand& point : bands.points) CHECK((point.x == Length() && point.y == Length()));
}

TEST_CASE("Of the bust alone, what is to be taken first narrows the bands by what was said") {
  for (const Session& person : each_person(people(20), 6)) {
    const Session bust = only(person, {BustGirth});
    const BlockBands before = bands_of(bust);
    REQUIRE(before.take_first.size() == 2);
    CHECK(before.take_first[0].name != before.take_first[1].name);
    const double now = width_of(before);
    double width = now;
    Session taken = bust;
    for (const Retake& retake : before.take_first) {
      CHECK_FALSE(retake.taped);
      tape(taken, retake.name, fill_in(taken)[retake.name].number());
      const double then = width_of(bands_of(taken));
      CHECK((width - then) / now == Approx(retake.narrows).margin(0.05));
      width = then;
    }
  }
}

TEST_CASE("No other measurement would have narrowed the bands more") {
  const Session bust = only(a_person(), {BustGirth});
  const auto width_with = [&](MeasurementName name) {
    Session taken = bust;
    tape(taken, name, fill_in(bust)[name].number());
    return width_of(bands_of(taken));
  };
  const double best = width_with(bands_of(bust).take_first.front().name);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (entry.name == BustGirth || !fill_in(bust).has(entry.name)) continue;
    INFO(entry.key);
    CHECK(width_with(entry.name) > best - 0.3);
  }
}

TEST_CASE("A toile gets as much as its widest seam could lie outside, and a centimetre to sew") {
  const Session person = a_person();
  const BlockBands bands = bands_of(person);
  double most = 0.0;
  for (const char* edge : {"side", "shoulder"}) {
    for (const char* piece : {"front", "back"}) {
      most = std::max(most, edge_in(bands, piece, edge).aside.mm());
    }
  }
  most = std::max(most, edge_in(bands, "back", "centre_back").aside.mm());
  CHECK(toile_allowance(bands, block_of(fill_in(person))).mm() == Approx(most + 10.0));
}
