// Any sequence of corrections and dart moves on a block: each done, or refused by name. Moves by
// rotation keep the sum of the angles at the apexes. In the end the pieces are whole, before and
// after trueing, and their seams and notches meet.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/style/style.hpp"
#include "fitting.hpp"
#include "must.hpp"
#include "steps.hpp"

#include <cmath>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr std::size_t kMostCorrections = 2;
constexpr int kMostMoves = 4;
constexpr double kAngleKept = 1e-9;  // radians

bool is_drawn(const StyleStep& step) {
  return std::holds_alternative<HemDesign>(step) || std::holds_alternative<NecklineDesign>(step) ||
         std::holds_alternative<TopEdgeDesign>(step) || std::holds_alternative<ArmholeDesign>(step);
}

bool keeps_angles(const StyleStep& step) {
  return !std::holds_alternative<GatherMove>(step) && !std::holds_alternative<PanelSeam>(step) &&
         !is_drawn(step);
}

double sum_of_angles(const Pattern& pattern) {
  double sum = 0.0;
  for (const Piece& piece : pattern.pieces) {
    for (const Dart& dart : piece.darts) sum += dart.angle().radians();
  }
  return sum;
}

// Whether it was done.
bool take_step(Pattern& pattern, const StyleStep& step, double cup) {
  const std::string words = words_of(step).plain();
  try {
    const Pattern after =
        apply_style(pattern, {"garment", {step}, {{"style.json:1:1 steps[0]", {}}}}, cup).pattern;
    const double lost = sum_of_angles(pattern) - sum_of_angles(after);
    must(!keeps_angles(step) || std::abs(lost) < kAngleKept, "angles are kept", words);
    pattern = after;
    return true;
  } catch (const InputError& error) {
    const bool of_an_edge = is_drawn(step) && error.problem().code.starts_with("garment.");
    must_tell(error.problem(), "style.json:1:1 steps[0]: ", of_an_edge ? "garment." : "dart.");
    return false;
  }
}

// As drafted, or as a fitting left it: a correction of one side makes four pieces of two.
Pattern some_block(Bytes& bytes) {
  const std::size_t corrections = bytes.below(kMostCorrections + 1);
  const Pattern& drafted = bytes.one_of(ready_blocks());
  try {
    return apply_corrections(drafted, some_corrections(bytes, corrections)).pattern;
  } catch (const InputError& error) {
    must_tell(error.problem(), "", "fit.");
    return drafted;
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  Pattern pattern = some_block(bytes);
  const double cup = bytes.between(-50.0, 350.0);
  bool moved = false;
  for (int i = 0; i < kMostMoves && !bytes.done(); ++i) {
    if (take_step(pattern, some_step(bytes, pattern), cup)) moved = true;
  }
  if (!moved) return 0;
  must_pass_checks(pattern, "moves leave whole pieces, whose seams and notches meet");
  must_have_whole_darts(pattern, "moves leave whole darts");
  must_be_whole(true_darts(pattern).pattern, "trued pieces are whole");
  return 0;
}
