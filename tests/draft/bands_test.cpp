// How far the lines of a block could be off, tried by taping people again and again.
#include "blockwright/draft/bands.hpp"

#include "support/each_person.hpp"
#include "support/random.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <set>

using namespace blockwright;
using enum MeasurementName;

namespace {

using Names = std::set<MeasurementName>;

// The person as somebody tapes her: each reading errs by tape_sd().
Session taped_by_hand(const Session& person, Random& random) {
  Session session = person;
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!person.tape[entry.name]) continue;
    const Measure error = measure_of(entry.name, tape_sd(entry.name).number() * random.normal());
    const Measure read = person.tape[entry.name]->median() + error;
    session.tape[entry.name] = Readings{{std::clamp(read, entry.least, entry.most)}};
  }
  return session;
}

Session only(Session session, const Names& names) {
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!names.contains(entry.name)) session.tape[entry.name].reset();
  }
  return session;
}

BlockBands bands_of(const Session& session) {
  const Body body = fill_in(session);
  const Ease ease = Ease::of_toile();
  return block_bands(body, spread_of(session, body), ease, draft_block(body, ease));
}

// The share of the bands' places that hold the place of the person herself.
struct Held {
  double held = 0.0, all = 0.0;
  [[nodiscard]] double share() const { return held / all; }
};

std::map<std::string, Held> by_point;

void count_points(const Session& person, const Session& session, Held& held) {
  const Pattern own = draft_block(fill_in(person), Ease::of_toile()).pattern;
  const Pattern drafted = draft_block(fill_in(session), Ease::of_toile()).pattern;
  if (getenv("FILT")) for (int i : {0, 1}) if (own.pieces[i].darts.size() != drafted.pieces[i].darts.size()) return;
  for (const PointBand& band : bands_of(session).points) {
    const Vec off =
        drafted.piece(band.piece).landmark(band.point) - own.piece(band.piece).landmark(band.point);
    if (band.x.mm() > 0.01) {
      held.all += 1.0;
      held.held += std::abs(off.x) <= band.x.mm() ? 1.0 : 0.0;
      auto& p = by_point[band.piece + '.' + band.point + " x"]; p.all += 1; p.held += std::abs(off.x) <= band.x.mm() ? 1.0 : 0.0;
    }
    if (band.y.mm() > 0.01) {
      held.all += 1.0;
      held.held += std::abs(off.y) <= band.y.mm() ? 1.0 : 0.0;
      auto& p = by_point[band.piece + '.' + band.point + " y"]; p.all += 1; p.held += std::abs(off.y) <= band.y.mm() ? 1.0 : 0.0;
    }
  }
}

Held held_by_bands(const Names& names, unsigned seed) {
  Held held;
  Random random(seed);
  for (const Session& person : each_person(people(400), seed)) {
    const Session read = taped_by_hand(person, random);
    count_points(person, names.empty() ? read : only(read, names), held);
  }
  return held;
}

}  // namespace

TEST_CASE("trial") {
  WARN(held_by_bands({}, 71).share());
  WARN(held_by_bands({BustGirth}, 72).share());
  WARN(held_by_bands({BustGirth, WaistGirth, BackWaistLength}, 73).share());
  for (auto& [n, h] : by_point) UNSCOPED_INFO(n << " " << h.share());
  CHECK(false);
}
