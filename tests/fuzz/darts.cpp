// Any sequence of corrections and dart moves on a block: each done, or refused by name. Moves by
// rotation keep the sum of the angles at the apexes. In the end the pieces are whole, before and
// after trueing, and their seams and notches meet.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/style/style.hpp"
#include "fitting.hpp"
#include "must.hpp"

#include <array>
#include <cmath>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr std::size_t kMostCorrections = 2;
constexpr int kMostMoves = 4;
constexpr double kAngleKept = 1e-9;  // radians

std::string some_dart(Bytes& bytes, const Pattern& pattern) {
  const Piece& piece = bytes.one_of(pattern.pieces);
  if (piece.darts.empty()) return piece.name + ".waist";
  return piece.name + "." + bytes.one_of(piece.darts).name;
}

std::string some_edge(Bytes& bytes, const Pattern& pattern) {
  const Piece& piece = bytes.one_of(pattern.pieces);
  return piece.name + "." + bytes.one_of(piece.edges).name;
}

// "0.25", "61.5mm", "2in", or whatever the bytes say.
std::string somewhere(Bytes& bytes) {
  switch (bytes.below(8)) {
    case 0:
    case 1:
      return "";
    case 2:
    case 3:
    case 4:
      return ":" + std::to_string(bytes.between(0.0, 1.0));
    case 5:
      return ":" + std::to_string(bytes.between(-20.0, 400.0)) + "mm";
    case 6:
      return ":" + std::to_string(bytes.any_finite()) + "in";
    default:
      return ":" + bytes.text(8);
  }
}

std::string some_place(Bytes& bytes, const Pattern& pattern) {
  if (bytes.below(4) == 0) {
    const std::string edge = some_edge(bytes, pattern);  // first: compilers differ in their order
    return edge + somewhere(bytes);
  }
  const auto& front = kBodiceFront.dart_positions;
  const auto& back = kBodiceBack.dart_positions;
  const std::size_t place = bytes.below(front.size() + back.size());
  const bool on_front = place < front.size();
  const DartPosition& position = on_front ? front[place] : back[place - front.size()];
  return std::string(on_front ? kBodiceFront.name : kBodiceBack.name) + "." +
         std::string(position.name) + somewhere(bytes);
}

std::string some_end(Bytes& bytes, const Pattern& pattern) {
  return bytes.flag() ? some_dart(bytes, pattern) : some_place(bytes, pattern);
}

PivotMove some_pivot(Bytes& bytes, const Pattern& pattern) {
  PivotMove move{some_dart(bytes, pattern), some_end(bytes, pattern), 1.0, {}, {}};
  const std::size_t kind = bytes.below(4);
  if (kind == 1) move.part = bytes.amount(0.0, 1.0);
  if (kind == 2) move.angle = Angle::degrees(bytes.amount(0.0, 40.0));
  if (kind == 3) move.hold_back = bytes.amount(0.0, 120.0);
  return move;
}

SplitMove some_split(Bytes& bytes, const Pattern& pattern) {
  SplitMove move{some_dart(bytes, pattern), {}, 0.0, {}};
  const std::size_t count = 1 + bytes.below(7);
  double rest = 1.0;
  for (std::size_t i = 1; i < count; ++i) {
    move.shares.push_back(bytes.amount(0.0, 1.0) * rest);
    rest -= move.shares.back();
  }
  move.shares.push_back(rest);
  move.spacing = bytes.amount(5.0, 90.0);
  move.group = bytes.flag() ? DartGroup::Parallel : DartGroup::Fanned;
  return move;
}

SpreadMove some_spread(Bytes& bytes, const Pattern& pattern) {
  SpreadMove move{some_place(bytes, pattern), some_place(bytes, pattern)};
  move.by = bytes.amount(0.5, 310.0);
  move.lines = static_cast<int>(bytes.below(14));
  move.apart = bytes.amount(4.0, 110.0);
  move.hinged = bytes.flag();
  move.gathered = bytes.flag();
  move.over = bytes.amount(5.0, 410.0);
  return move;
}

GatherMove some_gather(Bytes& bytes, const Pattern& pattern) {
  const auto kind = bytes.flag() ? Fullness::Kind::Gathers : Fullness::Kind::Ease;
  return {some_dart(bytes, pattern), kind, bytes.amount(5.0, 410.0)};
}

PressMove some_press(Bytes& bytes, const Pattern& pattern) {
  using enum PressMove::Towards;
  constexpr std::array<PressMove::Towards, 4> ways = {Centre, Side, Down, Up};
  return {some_dart(bytes, pattern), bytes.one_of(ways)};
}

// A dart that is merged into itself stands for all darts made one.
StyleStep some_merge(Bytes& bytes, const Pattern& pattern) {
  const std::string dart = some_dart(bytes, pattern);
  const std::string into = some_dart(bytes, pattern);
  if (dart == into) return OneDart{into};
  return MergeMove{dart, into};
}

HemDesign some_hem(Bytes& bytes) {
  HemDesign hem;
  (bytes.flag() ? hem.above_waist : hem.below_bust_point) = bytes.amount(-20.0, 300.0);
  if (bytes.flag()) hem.side_above_waist = bytes.amount(-10.0, 200.0);
  if (bytes.flag()) hem.back_above_waist = bytes.amount(-10.0, 200.0);
  if (bytes.flag()) hem.point_drop = bytes.amount(-10.0, 130.0);
  if (bytes.flag()) hem.point_from_centre = bytes.amount(-10.0, 130.0);
  return hem;
}

NecklineDesign some_neckline(Bytes& bytes) {
  using enum NeckShape;
  constexpr std::array<NeckShape, 6> shapes = {Round, Scoop, Boat, V, Square, Sweetheart};
  NecklineDesign neckline;
  neckline.shape = bytes.one_of(shapes);
  if (bytes.flag()) neckline.from_neck = bytes.amount(-10.0, 120.0);
  if (bytes.flag()) neckline.front_depth = bytes.amount(-10.0, 300.0);
  if (bytes.flag()) neckline.back_depth = bytes.amount(-10.0, 300.0);
  if (bytes.flag()) neckline.closer = bytes.amount(-5.0, 25.0);
  return neckline;
}

TopEdgeDesign some_top_edge(Bytes& bytes) {
  using enum TopShape;
  constexpr std::array<TopShape, 3> shapes = {Straight, Curved, Sweetheart};
  TopEdgeDesign top;
  top.shape = bytes.one_of(shapes);
  if (bytes.flag()) top.over_bust_level = bytes.amount(-30.0, 250.0);
  if (bytes.flag()) top.over_bust_point = bytes.amount(20.0, 300.0);
  if (bytes.flag()) top.under_underarm = bytes.amount(-15.0, 200.0);
  if (bytes.flag()) top.back_depth = bytes.amount(-200.0, 200.0);
  if (bytes.flag()) top.back_share = bytes.amount(-0.2, 1.2);
  if (bytes.flag()) top.back_nearer = bytes.amount(-50.0, 100.0);
  if (bytes.flag()) top.straps = StrapDesign{bytes.amount(4.0, 65.0), bytes.amount(-5.0, 110.0)};
  if (bytes.flag()) top.closer = bytes.amount(-5.0, 25.0);
  return top;
}

ArmholeDesign some_armhole(Bytes& bytes) {
  ArmholeDesign armhole;
  armhole.shoulder_in = bytes.amount(-5.0, 100.0);
  if (bytes.flag()) armhole.front_in = bytes.amount(-5.0, 85.0);
  if (bytes.flag()) armhole.back_in = bytes.amount(-5.0, 85.0);
  armhole.raise = bytes.amount(-5.0, 25.0);
  if (bytes.flag()) armhole.close = bytes.amount(-5.0, 20.0);
  return armhole;
}

StyleStep some_edge_of_garment(Bytes& bytes) {
  if (bytes.flag()) return some_top_edge(bytes);
  if (bytes.flag()) return CentreSeam{};
  return some_neckline(bytes);
}

StyleStep some_step(Bytes& bytes, const Pattern& pattern) {
  switch (bytes.below(17)) {
    case 0:
    case 1:
      return some_split(bytes, pattern);
    case 2:
      return some_merge(bytes, pattern);
    case 3:
      return PointMove{some_dart(bytes, pattern), bytes.amount(0.0, 150.0)};
    case 4:
      return some_press(bytes, pattern);
    case 5:
    case 6:
      return some_gather(bytes, pattern);
    case 7:
    case 8:
      return some_spread(bytes, pattern);
    case 9:
    case 10:
      return PanelSeam{some_end(bytes, pattern), some_end(bytes, pattern), bytes.text(4),
                       bytes.text(4)};
    case 11:
      return some_hem(bytes);
    case 12:
      return some_edge_of_garment(bytes);
    case 13:
      return some_armhole(bytes);
    default:
      return some_pivot(bytes, pattern);
  }
}

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
