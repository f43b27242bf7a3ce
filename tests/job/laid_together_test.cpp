// Where a block is laid together with what a correction made of it: what moved shows as moved.
#include "blockwright/block/kinds.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/layout/versions.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <set>

using namespace blockwright;

namespace {

// Of a point that stays where it is, mm: a twentieth of what a ruler shows. Ours.
constexpr double kStays = 0.05;

Pattern block_of(const std::string& person) {
  std::string file = BLOCKWRIGHT_SOURCE_DIR;
  file.append("/examples/wardrobe/").append(person).append(".json");
  std::ifstream in(file);
  const Client client = read_client(in, file);
  return draft_block(fill_in(session_of(client, "", file)), Ease::of(client)).pattern;
}

Correction correction_of(const std::string& action, const std::string& place, Length by) {
  Correction correction;
  correction.action = action;
  correction.place = place;
  correction.by = by;
  return correction;
}

Correction usual(const CorrectionWords& words) {
  Correction correction = correction_of(std::string(words.action), std::string(words.place),
                                        fitting_row(words.row).amount.usual);
  const bool per_half = std::ranges::count(words.readings, AmountAs::PerHalf) > 0;
  correction.as = per_half ? AmountAs::PerHalf : words.readings.front();
  if (words.one_sided) correction.side = BodySide::Right;
  return correction;
}

/// "front.bust_point" of the points that lie elsewhere.
using Points = std::set<std::string>;
Points moved(const Pattern& before, const Pattern& after, const auto& lies) {
  Points names;
  for (const Piece& piece : after.pieces) {
    const Piece* old = earlier_version(piece, before);
    REQUIRE(old != nullptr);
    const Placement by = lies(piece, *old);
    for (const Landmark& point : piece.landmarks) {
      if (distance(by(old->landmark(point.name)), point.at) > kStays) {
        names.insert(piece.name + "." + point.name);
      }
    }
  }
  return names;
}

Placement in_its_frame(const Piece& piece, const Piece& old) {
  return is_mirrored(piece) == is_mirrored(old) ? Placement() : Placement::mirror();
}
Placement laid_still(const Piece& piece, const Piece& old) {
  return laid_under(piece, old, Alignment::Still);
}

Points moved_by(const Pattern& block, const Correction& correction) {
  return moved(block, apply_corrections(block, {correction}).pattern, laid_still);
}

}  // namespace

// Common practice, no source: a hem is judged with the rest of the bodice in its place.
TEST_CASE("Of a lowered hem the hem alone is told") {
  const Pattern block = block_of("ondine-marsh");
  CHECK(moved_by(block, correction_of("lower", "front_hem", Length::mm(10))) ==
        Points{"front.centre_waist"});
  CHECK(moved_by(block, correction_of("raise", "back_hem", Length::mm(8))) ==
        Points{"back.centre_waist"});
  // With a strip let in under the bust it is the waist that comes down, front and back.
  CHECK(moved_by(block, correction_of("lengthen", "below_bust", Length::mm(13))) ==
        Points{"back.centre_waist", "back.side_waist_point", "front.centre_waist",
               "front.side_waist_point"});
}

// Outside source: the rows' own promise of what stays where it was drafted (fit/apply.hpp). Row 39
// keeps the waist in the frame and lifts all the rest; there fewer points are told.
TEST_CASE("No point is told that a correction leaves where it is") {
  std::size_t told = 0;
  for (const char* person : {"ondine-marsh", "tamsin-reed"}) {
    const Pattern block = block_of(person);
    for (const CorrectionWords& words : each(correction_words())) {
      const Correction correction = usual(words);
      CAPTURE(person, words.action, words.place);
      const Pattern fitted = apply_corrections(block, {correction}).pattern;
      const Points still = moved(block, fitted, laid_still);
      const Points drafted = moved(block, fitted, in_its_frame);
      CHECK(still.size() <= drafted.size());
      if (words.row != CorrectionRow::LongerBelowBust) {
        for (const std::string& name : still) {
          CAPTURE(name);
          CHECK(drafted.count(name) == 1);
        }
      }
      told += still.size();
    }
  }
  CHECK(told > 100);
}

TEST_CASE("An alignment that is asked for lays its point on itself") {
  const Pattern block = block_of("ondine-marsh");
  const Pattern fitted =
      apply_corrections(block, {correction_of("lower", "front_neck", Length::mm(10))}).pattern;
  const Piece &front = fitted.piece("front"), &old = block.piece("front");
  const auto off = [&](Alignment alignment, const char* point) {
    const Vec by = front.landmark(point) - laid_under(front, old, alignment)(old.landmark(point));
    CHECK(by.x == Approx(0.0).margin(1e-9));
    return by.y;
  };
  CHECK(off(Alignment::Neck, "front_neck_point") == Approx(0.0).margin(1e-9));
  CHECK(off(Alignment::Neck, "bust_point") == Approx(10.0).margin(1e-6));
  CHECK(off(Alignment::Waist, "front_neck_point") == Approx(-10.0).margin(1e-6));
  CHECK(off(Alignment::Bust, "centre_waist") == Approx(0.0).margin(1e-9));
  CHECK(off(Alignment::Still, "front_neck_point") == Approx(-10.0).margin(1e-6));
}

TEST_CASE("A piece of one side is laid on the half that it was made from, and back") {
  const Pattern block = block_of("ondine-marsh");
  Correction one_side = correction_of("lower", "one_shoulder", Length::mm(8));
  one_side.side = BodySide::Right;
  const Pattern fitted = apply_corrections(block, {one_side}).pattern;
  for (const Piece& piece : fitted.pieces) {
    CAPTURE(piece.name);
    const Piece* old = earlier_version(piece, block);
    REQUIRE(old != nullptr);
    CHECK(old->kind == piece.kind);
    const Point lies = laid_still(piece, *old)(old->landmark("side_waist_point"));
    CHECK(distance(lies, piece.landmark("side_waist_point")) < kStays);
    if (&piece == &fitted.pieces.front()) continue;
    CHECK(earlier_version(*old, fitted) != nullptr);
  }
}
