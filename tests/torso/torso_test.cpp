#include "blockwright/dart/pivot.hpp"
#include "blockwright/draft/draft.hpp"
#include "torso/files.hpp"
#include "torso/readings.hpp"
#include "torso/tape.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>

using namespace blockwright;
using namespace blockwright::torso;

namespace {

// Coarser than the tool's cloth, to be quick.
constexpr double kSpacing = 18.0;

TorsoForm form_named(const std::string& name) {
  for (const TorsoForm& form : torso_forms()) {
    if (form.name == name) return form;
  }
  throw std::out_of_range(name);
}

/// A torso with its tape, made once for all tests.
struct Person {
  explicit Person(const std::string& name) : body(form_named(name)), tape(tape_session(body)) {}
  Torso body;
  Session tape;
};
const Person& middle() {
  static const Person person("t12");
  return person;
}
const Person& slim() {
  static const Person person("t04");
  return person;
}

/// The toile's ease with changes that make the block sit well on these torsos, so that a spoiled
/// line shows beside it.
Ease sound_ease() {
  using enum MeasurementName;
  Ease ease = Ease::of_toile();
  ease.set(SideNeckToBustPoint, Length::mm(14.0));
  ease.set(SideNeckToWaist, Length::mm(24.0));
  ease.set(BackWaistLength, Length::mm(12.0));
  ease.set(FrontWaistLength, Length::mm(-4.0));
  ease.set(FrontShoulderSlant, Length::mm(4.0));
  ease.set(BackShoulderSlant, Length::mm(24.0));
  ease.set(NeckBaseGirth, Length::mm(4.0));
  return ease;
}

Ease more(MeasurementName name, double mm) {
  Ease ease = sound_ease();
  ease.set(name, ease[name] + Length::mm(mm));
  return ease;
}

Pattern block_of(const Person& person, const Ease& ease) {
  return draft_block(fill_in(person.tape), ease).pattern;
}

FitReadings worn(const Person& person, const Pattern& pattern) {
  const Cloth cloth = sewn_cloth(pattern, kSpacing);
  return read_off(cloth, relaxed(cloth, person.body, {}, {.lifted = 15.0, .off = 20.0}),
                  person.body);
}

/// Half of the bust dart left unsewn, opening into the armhole.
Pattern with_half_a_bust_dart(const Pattern& block) {
  PivotMove move{"front.shoulder", "front.armhole", 0.5, {}, {}};
  Pattern halved = pivot(block, move).pattern;
  for (Piece& piece : halved.pieces) {
    if (piece.name == "front") {
      std::erase_if(piece.darts, [](const Dart& dart) { return dart.edge == "armhole"; });
    }
  }
  return halved;
}

}  // namespace

TEST_CASE("a spoiled pattern scores worse than the sound one, and the spoiled place is named") {
  using enum ReadingName;
  for (const Person* person : {&middle(), &slim()}) {
    const Pattern block = block_of(*person, sound_ease());
    const FitReadings sound = worn(*person, block);
    const auto spoiled = [&](const Pattern& pattern, ReadingName at, double by) {
      const FitReadings read = worn(*person, pattern);
      CAPTURE(person->body.form().name, reading_table()[static_cast<std::size_t>(at)].head,
              sound[at], read[at], excess(sound), excess(read));
      CHECK(excess(read) > excess(sound) + 1.0);
      CHECK(read[at] > sound[at] + by);
    };
    spoiled(block_of(*person, more(MeasurementName::WaistGirth, 40.0)), WaistEase, 30.0);
    spoiled(block_of(*person, more(MeasurementName::NeckBaseGirth, 10.0)), NeckGirth, 7.0);
    spoiled(block_of(*person, more(MeasurementName::ShoulderLength, 10.0)), ShoulderPoint, 6.0);
    spoiled(with_half_a_bust_dart(block), FrontArmholeEdge, 5.0);
  }
}
