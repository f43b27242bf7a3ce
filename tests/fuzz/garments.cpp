// Any list of a style's steps on a block, those that finish edges among them, right and wrong
// values, steps that come twice: each done, or refused by name. What comes out is a garment: whole
// pieces whose seams and notches meet, lines to cut along that are closed and simple and leave
// nothing of a piece outside, and words of what it takes and how it is sewn.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/garment/cloth.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/layout/cut_line.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/style/style.hpp"
#include "fitting.hpp"
#include "must.hpp"
#include "steps.hpp"

#include <string>
#include <vector>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr int kMostSteps = 8;
constexpr double kOutside = 0.05;  // mm
constexpr double kClosed = 1e-6;   // mm
constexpr const char* kPlace = "style.json:1:1 steps[";

// As drafted, or as a correction left it.
Pattern corrected_block(Bytes& bytes) {
  const Pattern& drafted = bytes.one_of(ready_blocks());
  if (bytes.below(4) > 0) return drafted;
  try {
    return apply_corrections(drafted, some_corrections(bytes, 1)).pattern;
  } catch (const InputError& error) {
    must_tell(error.problem(), "", "fit.");
    return drafted;
  }
}

void must_be_of_a_step(const Problem& problem) {
  const bool of_step = problem.code.starts_with("garment.") || problem.code.starts_with("dart.") ||
                       problem.code.starts_with("style.");
  must(of_step, "a refusal has a code of a step", to_text(problem));
  must_tell(problem, kPlace, "");
}

// The pattern with one step more, which stays in the style; without it where it is refused.
Pattern with_step(const Pattern& block, const Pattern& so_far, Style& style, const StyleStep& step,
                  double cup) {
  style.steps.push_back(step);
  style.places.push_back({kPlace + std::to_string(style.steps.size() - 1) + "]", {}});
  try {
    return apply_style(block, style, cup).pattern;
  } catch (const InputError& error) {
    must_be_of_a_step(error.problem());
    style.steps.pop_back();
    style.places.pop_back();
    return so_far;
  }
}

// Facings are traced from trued pieces: before that they may miss what they face by what trueing
// moves of it.
void must_meet(const Pattern& pattern) {
  must_be_whole(pattern, "steps leave whole pieces");
  for (const Problem& problem : check_pattern(pattern)) {
    const bool of_facing = problem.where.find("_facing") != std::string::npos;
    must(problem.severity != Severity::Error || of_facing, "seams and notches meet",
         to_text(problem));
  }
}

ClothPiece must_be_cut(const Piece& piece) {
  PrintOptions options;
  options.cut = CutStyle::Garment;
  const Path cut = outline_to_cut(piece, options);
  must(distance(cut.start(), cut.end()) < kClosed, "a line to cut along is closed", piece.name);
  must(!find_crossing(cut, kFlattening), "a line to cut along is simple", piece.name);
  const Box box = box_of(cut), inside = box_of(flat_outline(piece));
  must(inside.left > box.left - kOutside && inside.right < box.right + kOutside &&
           inside.bottom > box.bottom - kOutside && inside.top < box.top + kOutside,
       "nothing of a piece lies outside its cut line", piece.name);
  return {piece.name, piece.cut_on, box.height(), box.width()};
}

void must_be_made(const Pattern& garment) {
  std::vector<ClothPiece> pieces;
  for (const Piece& piece : garment.pieces) pieces.push_back(must_be_cut(piece));
  const MakingOf making = making_of(garment);
  must(!making.to_cut.empty() && !making.to_sew.empty(), "a garment is cut and sewn");
  (void)getting_in(garment, {900.0, 950.0});
  const ClothLength cloth = cloth_length(pieces, {.width = 1400.0});
  must(cloth.too_wide.empty() ? cloth.buy > cloth.cut : cloth.buy == 0.0, "cloth has a length");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  const Pattern block = corrected_block(bytes);
  const double cup = bytes.between(-50.0, 350.0);
  Style style;
  style.name = "garment";
  Pattern pattern = block;
  for (int i = 0; i < kMostSteps && !bytes.done(); ++i) {
    const StyleStep step =
        bytes.below(2) == 0 ? some_finishing(bytes, pattern) : some_step(bytes, pattern);
    pattern = with_step(block, pattern, style, step, cup);
  }
  if (style.steps.empty()) return 0;
  must_meet(pattern);
  must_have_whole_darts(pattern, "steps leave whole darts");
  const Pattern trued = true_darts(pattern).pattern;
  must_be_whole(trued, "trued pieces are whole");
  must_be_made(trued);
  return 0;
}
