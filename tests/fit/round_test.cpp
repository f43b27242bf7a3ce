#include "blockwright/block/neckline.hpp"
#include "blockwright/geometry/path.hpp"
#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;
using namespace blockwright_tests;

// Necklines and armholes stay round. The bound is ours: a sharper one cannot be bound or faced.

namespace {

/// One of the pairs of words for both sides, by an amount within its row's range.
RowAmount any_row(Random& random) {
  const auto& words = correction_words();
  while (true) {
    const CorrectionWords& chosen =
        words[static_cast<std::size_t>(random.whole(0, static_cast<int>(words.size()) - 1))];
    const FittingRow& row = fitting_row(chosen.row);
    if (row.stage == kOneSideStage) continue;
    const double by = random.between(row.amount.least.mm(), row.amount.most.mm());
    return {chosen.row,       chosen.sign,    by,
            AmountAs::Length, BodySide::Both, std::string(chosen.place)};
  }
}

double radius_of(const Pattern& pattern, const char* piece, const char* edge) {
  return least_radius(pattern.piece(piece).edge(edge).path);
}

}  // namespace

TEST_CASE("No two rows in their ranges turn a neckline or an armhole within less than 8 mm") {
  int fitted = 0, tried = 0;
  for (Random& random : each_random(people(3000), 8)) {
    const Pattern& block =
        blocks()[static_cast<std::size_t>(random.whole(0, static_cast<int>(blocks().size()) - 1))];
    const Outcome got = outcome(block, {any_row(random), any_row(random)});
    ++tried;
    if (!got.fitted) continue;
    ++fitted;
    for (const char* piece : {"front", "back"}) {
      for (const char* edge : {"neckline", "armhole"}) {
        const double was = radius_of(block, piece, edge);
        const double is = radius_of(got.fitted->pattern, piece, edge);
        if (is >= 8.0 || is >= was - 1e-6) continue;
        INFO(piece << " " << edge);
        CHECK(is >= 8.0);
      }
    }
  }
  // Hardly any pair is refused for it, or for anything else.
  CHECK(fitted > tried * 93 / 100);
}

TEST_CASE("A front neck narrowed at the sides is redrawn as it would be drafted, not patched") {
  // The corner of the drafted neckline's end tangents keeps 0.55 of its width from the centre
  // front.
  for (const Pattern& block : each_block(10)) {
    const Outcome got =
        outcome(block, {{numbered(8), -1, 6.0, AmountAs::Length, BodySide::Both, ""}});
    if (!got.fitted) continue;
    const Path& was = block.piece("front").edge("neckline").path;
    const Path& is = got.fitted->pattern.piece("front").edge("neckline").path;
    const auto room = [](const Path& neck) {
      return neckline_room(neck.start(), start_tangent(neck), neck.end(), end_tangent(neck));
    };
    CHECK(room(is) >= std::fmin(room(was), 0.55) - 0.001);
    CHECK(least_radius(is) >= 0.65 * least_radius(was));
  }
}
