#include "steps.hpp"

#include "blockwright/block/kinds.hpp"

#include <array>
#include <string>
#include <vector>

namespace blockwright_fuzz {

using namespace blockwright;

namespace {

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

// "neckline", "front.side", "strap", or whatever the bytes say.
std::string some_edge_name(Bytes& bytes, const Pattern& pattern) {
  constexpr std::array<const char*, 6> usual = {"neckline", "armhole", "waist",
                                                "side",     "strap",   "top_edge"};
  switch (bytes.below(8)) {
    case 0:
      return bytes.text(8);
    case 1:
    case 2:
      return some_edge(bytes, pattern);
    default:
      return bytes.one_of(usual);
  }
}

std::vector<std::string> some_edge_names(Bytes& bytes, const Pattern& pattern, std::size_t most) {
  std::vector<std::string> names(bytes.below(most + 1));
  for (std::string& name : names) name = some_edge_name(bytes, pattern);
  return names;
}

OpeningPlan some_opening(Bytes& bytes) {
  using enum OpeningPlan::At;
  constexpr std::array<OpeningPlan::At, 3> places = {CentreBack, CentreFront, LeftSide};
  constexpr std::array<Closure, 3> closures = {Closure::Zip, Closure::OpenZip, Closure::Buttons};
  OpeningPlan opening;
  opening.at = bytes.one_of(places);
  opening.with = bytes.one_of(closures);
  if (bytes.flag()) opening.from_edge = bytes.amount(-5.0, 90.0);
  if (bytes.below(4) == 0) opening.button = bytes.amount(5.0, 35.0);
  if (bytes.below(4) == 0) opening.spacing = bytes.amount(20.0, 130.0);
  return opening;
}

BindingPlan some_binding(Bytes& bytes, const Pattern& pattern) {
  BindingPlan binding;
  const std::size_t runs = bytes.below(4);
  for (std::size_t i = 0; i < runs; ++i) {
    binding.runs.push_back(some_edge_names(bytes, pattern, 3));
  }
  if (bytes.flag()) binding.shows = bytes.amount(2.0, 28.0);
  if (bytes.flag()) binding.stretch = bytes.amount(-1.0, 9.0);
  return binding;
}

FacingPlan some_facing(Bytes& bytes, const Pattern& pattern) {
  FacingPlan facing;
  facing.edges = some_edge_names(bytes, pattern, 3);
  if (bytes.flag()) facing.width = bytes.amount(30.0, 80.0);
  if (bytes.flag()) facing.roll = bytes.amount(0.0, 4.0);
  facing.interfaced = bytes.flag();
  facing.in_one = bytes.below(4) == 0;
  return facing;
}

Allowances some_allowances(Bytes& bytes, const Pattern& pattern) {
  Allowances allowances;
  for (double* width : {&allowances.seams, &allowances.shoulder, &allowances.centre,
                        &allowances.hem, &allowances.enclosed}) {
    if (bytes.below(4) == 0) *width = bytes.amount(0.0, 65.0);
  }
  const std::size_t edges = bytes.below(3);
  for (std::size_t i = 0; i < edges; ++i) {
    std::string edge = some_edge_name(bytes, pattern);
    allowances.edges.push_back({std::move(edge), bytes.amount(0.0, 65.0)});
  }
  return allowances;
}

}  // namespace

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

StyleStep some_finishing(Bytes& bytes, const Pattern& pattern) {
  switch (bytes.below(5)) {
    case 0:
      return some_opening(bytes);
    case 1:
      return some_binding(bytes, pattern);
    case 2:
      return some_facing(bytes, pattern);
    default:
      return some_allowances(bytes, pattern);
  }
}

}  // namespace blockwright_fuzz
