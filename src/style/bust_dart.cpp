#include "blockwright/style/bust_dart.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "steps.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

constexpr std::string_view kShoulder = "shoulder", kSide = "side";

// A divided dart keeps at most this in the shoulder, and this much of the widest mouth: room for
// what a fitting adds there. Ours.
constexpr Angle kKept = Angle::degrees(22.0);
constexpr double kKeptMouth = 80.0;
// What goes to the side is no less than this, about 17 mm at the seam: a narrower dart is not
// worth its sewing. Ours.
constexpr Angle kLeastAtSide = Angle::degrees(6.0);
// A side dart wider than this, or with a mouth as wide as the shoulder's may be, is sewn as two
// that fan out from the bust point, as far apart on the closed seam as there is room, in mm. Ours.
constexpr Angle kMostAtSide = Angle::degrees(22.0);
constexpr double kSideDartsApart[] = {35.0, 20.0, 10.0};

const DartPosition& shoulder_position() {
  return *std::ranges::find(kBodiceFront.dart_positions, kShoulder, &DartPosition::name);
}

double mouth(Angle angle, double leg) { return 2.0 * leg * std::sin(0.5 * angle.radians()); }
Angle angle_of(double mouth, double leg) {
  return Angle::radians(2.0 * std::asin(std::min(1.0, 0.5 * mouth / leg)));
}

bool is_too_wide(Angle angle, double leg) {
  return angle > kWideToSew || mouth(angle, leg) > shoulder_position().widest_mouth;
}

// To a tenth of a degree, so that the move can be repeated as it is reported.
Angle rounded(Angle angle) { return Angle::degrees(std::ceil(10.0 * angle.degrees()) / 10.0); }

Angle share_of_side(Angle whole, double leg) {
  if (!is_too_wide(whole, leg)) return {};
  const Angle kept = std::min({kKept, angle_of(kKeptMouth, leg), whole - kLeastAtSide});
  return rounded(whole - kept);
}

// As drafted where what is left suits the shoulder; else anew.
Angle share_of_side(const Dart& drafted, const Dart& fitted) {
  const Angle before = share_of_side(drafted.angle(), drafted.leg());
  const Angle left = fitted.angle() - before;
  const bool suits = left >= kLeastAtSide && !is_too_wide(left, fitted.leg());
  return suits ? before : share_of_side(fitted.angle(), fitted.leg());
}

PivotMove move_to_side(const std::string& piece, Angle share) {
  PivotMove move{piece + "." + std::string(kShoulder), piece + "." + std::string(kSide)};
  move.angle = share;
  return move;
}

// What a move is tried on.
struct Tried {
  const Pattern& pattern;
  const SidePlaces& sides;
};

bool is_whole_after(const Pattern& pattern, const SplitMove& split) {
  try {
    (void)apply_style(pattern, {"", {split}}, kUsualCup);
    return true;
  } catch (const InputError&) {
    return false;  // a waist dart is in the way
  }
}

// Two darts of a very wide one at the side; none where it is not, or where they have no room.
std::optional<SplitMove> split_at_side(const Tried& on, const PivotMove& move) {
  const Pattern moved = apply_style(on.pattern, {"", {move}}, kUsualCup, on.sides).pattern;
  SplitMove two{move.to};
  const Dart& side = moved.piece(move.to.substr(0, move.to.find('.'))).dart(kSide);
  if (side.angle() <= kMostAtSide && side.intake() <= shoulder_position().widest_mouth) return {};
  for (const double apart : kSideDartsApart) {
    two.spacing = apart;
    if (is_whole_after(moved, two)) return two;
  }
  return {};
}

bool is_bust_dart(std::string_view place) {
  const std::size_t dot = place.find('.');
  if (dot == std::string_view::npos) return false;
  const std::string_view piece = place.substr(0, dot);
  const std::string_view dart = place.substr(dot + 1, place.find(':') - dot - 1);
  return piece.starts_with(kBodiceFront.name) && dart == kShoulder;
}

bool is_on_front(const OneDart& move) {
  return move.into.substr(0, move.into.find('.')).starts_with(kBodiceFront.name);
}

}  // namespace

Style bust_dart_division(const BlockVersions& block) {
  Style division{"bust dart divided", {}};
  const Dart* before = find_named(piece_of(block.drafted, kBodiceFront).darts, kShoulder);
  if (before == nullptr) return division;
  const SidePlaces sides = side_places(block);
  for (const Piece& piece : block.fitted.pieces) {
    if (!is_a(piece, kBodiceFront) || find_named(piece.darts, kSide) != nullptr) continue;
    const Dart* now = find_named(piece.darts, kShoulder);
    const Angle share = now == nullptr ? Angle{} : share_of_side(*before, *now);
    if (share == Angle{}) continue;
    const PivotMove move = move_to_side(piece.name, share);
    division.steps.emplace_back(move);
    if (const auto two = split_at_side({block.fitted, sides}, move))
      division.steps.emplace_back(*two);
  }
  return division;
}

bool moves_bust_dart(const Style& style) {
  return std::ranges::any_of(style.steps, [](StyleStep step) {
    if (const auto* one = std::get_if<OneDart>(&step)) return is_on_front(*one);
    const StepRow row = row_of(step);
    return std::ranges::any_of(row.keys, [](const StepKey& key) {
      return key.text != nullptr && is_bust_dart(*key.text);
    });
  });
}

}  // namespace blockwright
