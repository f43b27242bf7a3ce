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
/// line shows beside it: the excess is under 10 mm on either. Found by trying.
Ease sound_ease() {
  using enum MeasurementName;
  Ease ease = Ease::of_toile();
  ease.set(SideNeckToBustPoint, Length::mm(26.0));
  ease.set(SideNeckToWaist, Length::mm(36.0));
  ease.set(BackWaistLength, Length::mm(6.0));
  ease.set(FrontWaistLength, Length::mm(8.0));
  ease.set(FrontShoulderSlant, Length::mm(18.0));
  ease.set(BackShoulderSlant, Length::mm(26.0));
  ease.set(NeckBaseGirth, Length::mm(4.0));
  ease.set(ShoulderLength, Length::mm(5.0));
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
    spoiled(with_half_a_bust_dart(block), FrontArmholeEdge, 3.0);
  }
}

TEST_CASE("the tape finds on a torso what it was made from") {
  using enum MeasurementName;
  for (const Person* person : {&middle(), &slim()}) {
    const TorsoForm& form = person->body.form();
    CAPTURE(form.name);
    CHECK(taped(person->tape, BustGirth) == Approx(form.bust).margin(3.0));
    CHECK(taped(person->tape, UnderbustGirth) == Approx(form.bust - form.cup).margin(3.0));
    CHECK(taped(person->tape, WaistGirth) == Approx(form.waist).margin(1.0));
    CHECK(taped(person->tape, NeckBaseGirth) == Approx(form.neck_base).margin(2.0));
    CHECK(taped(person->tape, ShoulderSlope) == Approx(form.slope).margin(2.0));
    // One body, one tape: nothing in it is doubtful by the statistics of the 1988 survey (Gordon et
    // al. 1989, NATICK/TR-89/044).
    const Problems doubts = judge(person->tape, fill_in(person->tape));
    CHECK(doubts.empty());
  }
}

TEST_CASE("the table of torsos spans the sizes, and every second one is kept for the check") {
  const std::vector<TorsoForm> forms = torso_forms();
  REQUIRE(forms.size() >= 20);
  const auto spans = [&](double TorsoForm::*value, double least, double most) {
    const auto [low, high] = std::ranges::minmax(forms, {}, value);
    CHECK(low.*value == least);
    CHECK(high.*value == most);
  };
  spans(&TorsoForm::bust, 760.0, 1300.0);
  spans(&TorsoForm::cup, 60.0, 260.0);
  spans(&TorsoForm::slope, 15.0, 32.0);
  for (std::size_t i = 0; i < forms.size(); ++i) CHECK(forms[i].kept == (i % 2 == 1));
}

TEST_CASE("a tape round points spans their hollows") {
  std::vector<Vec2> star;
  for (int i = 0; i < 720; ++i) {
    const double t = std::numbers::pi * i / 360.0, r = i % 2 == 0 ? 100.0 : 60.0;
    star.emplace_back(r * std::cos(t), r * std::sin(t));
  }
  CHECK(hull_girth(star) == Approx(200.0 * std::numbers::pi).epsilon(1e-4));
}

TEST_CASE("triangles cover the area of a piece once") {
  // An L with a dart's notch: 300 x 300 less 150 x 150 less the notch.
  const std::vector<Vec2> corners{{0, 0},     {100, 0},   {110, 90},  {120, 0}, {300, 0},
                                  {300, 150}, {150, 150}, {150, 300}, {0, 300}};
  std::vector<Vec2> chain;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 a = corners[i], b = corners[(i + 1) % corners.size()];
    const int parts = static_cast<int>((b - a).norm() / 15.0) + 1;
    for (int k = 0; k < parts; ++k) chain.push_back(a + (b - a) * k / parts);
  }
  const FlatMesh mesh = triangulated(chain, 15.0);
  double area = 0.0;
  for (const auto& t : mesh.triangles) {
    const auto at = [&](std::size_t k) { return mesh.points[static_cast<std::size_t>(t[k])]; };
    const Vec2 u = at(1) - at(0), v = at(2) - at(0);
    const double part = 0.5 * (u.x() * v.y() - u.y() * v.x());
    CHECK(part > 0.0);
    area += part;
  }
  CHECK(area == Approx(90000.0 - 22500.0 - 900.0));
}

TEST_CASE("the cloth stays outside the body, keeps its lengths, and two starts end alike") {
  const Cloth cloth = sewn_cloth(block_of(middle(), sound_ease()), kSpacing);
  const TriedOn tried = tried_on(cloth, middle().body);
  CHECK(tried.spread < 1.0);
  for (const Vec3& p : tried.rest.at) CHECK(middle().body.distance(p) > -2.0);
  // On the grain, within the 2 % that such cloth gives.
  double side = 0.0;
  const std::vector<int>& seam = cloth.edges.at("front.side");
  for (std::size_t i = 1; i < seam.size(); ++i) {
    side += (tried.rest.at[static_cast<std::size_t>(seam[i])] -
             tried.rest.at[static_cast<std::size_t>(seam[i - 1])])
                .norm();
  }
  CHECK(side == Approx(cloth.cut_lengths.at("front.side")).epsilon(0.02));
}

TEST_CASE("a pattern file is read whether it calls a dart's peak so or its cap") {
  for (const std::string peak : {"peak", "cap"}) {
    const std::filesystem::path file =
        std::filesystem::temp_directory_path() / ("blockwright-torso-" + peak + ".json");
    std::ofstream(file) << R"({"pieces": [{"name": "front", "edges": [{"name": "waist", "path":
      [["M", 0, 0], ["L", 40, 0], ["L", 50, -2], ["L", 60, 0], ["C", 70, 0, 80, 5, 90, 5]]}],
      "darts": [{"name": "waist", "edge": "waist", "apex": [50, 80], "point": [50, 60],
      "legs": [[40, 0], [60, 0]], ")"
                        << peak << R"(": [50, -2], "pressed_to": 1}]}]})";
    const Pattern pattern = read_pattern(file);
    std::filesystem::remove(file);
    const Piece& front = pattern.piece("front");
    CHECK(front.edge("waist").path.end() == Point{90.0, 5.0});
    CHECK(front.dart("waist").point == Point{50.0, 60.0});
    CHECK(front.dart("waist").peak == Point{50.0, -2.0});
    CHECK(sewn_stretches(front, front.edge("waist")).size() == 2);
  }
}
