#include "blockwright/pattern/dart_position.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/pattern/sides.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A stitched dart keeps at least this share of its legs. Our bound.
constexpr double kLeastStitched = 0.5;
// Where the hold-backs of a small and of a full bust are reached. Ours: about one and a half
// standard deviations of the 1988 survey to either side.
constexpr double kSmallCup = 80.0;
constexpr double kFullCup = 200.0;

}  // namespace

const std::vector<DartPosition>& dart_positions() {
  constexpr Leg first = Leg::First, second = Leg::Second;
  static const std::vector<DartPosition> positions = {
      {"front", "shoulder", "shoulder", true, second, 25, 50, 60, 50},
      {"front", "neck", "neckline", true, second, 25, 40, 50, 40},
      {"front", "centre_front", "centre_front", false, second, 15, 20, 25, 40},
      {"front", "armhole", "armhole", false, first, 15, 25, 40, 35},
      {"front", "side", "side", true, first, 20, 25, 40, 35},
      {"front", "french", "side", true, first, 13, 20, 30, 40},
      {"front", "waist", "waist", false, first, 13, 20, 30, 40},
      {"back", "shoulder", "shoulder", true, second, 25, 25, 25, 25},
      {"back", "neck", "neckline", true, second, 25, 25, 25, 25},
      {"back", "armhole", "armhole", false, first, 25, 25, 25, 25},
      {"back", "waist", "waist", false, first, 15, 15, 15, 40},
      {"back", "centre_back", "centre_back", false, second, 15, 15, 15, 25},
  };
  return positions;
}

const DartPosition* find_position(std::string_view piece, std::string_view name) {
  const auto& all = dart_positions();
  const std::string_view whole = sided_name(piece).whole;
  const auto by = [&](auto member) {
    return std::find_if(all.begin(), all.end(), [&](const DartPosition& p) {
      return p.piece == whole && p.*member == name;
    });
  };
  auto found = by(&DartPosition::name);
  if (found == all.end()) found = by(&DartPosition::edge);
  return found == all.end() ? nullptr : &*found;
}

double hold_back(const DartPosition& position, double cup) {
  const double usual = position.usual_hold_back;
  const double less = std::clamp((kUsualCup - cup) / (kUsualCup - kSmallCup), 0.0, 1.0);
  const double more = std::clamp((cup - kUsualCup) / (kFullCup - kUsualCup), 0.0, 1.0);
  return usual + less * (position.small_hold_back - usual) +
         more * (position.full_hold_back - usual);
}

double hold_back(std::string_view piece, std::string_view position, double cup) {
  const DartPosition* found = find_position(piece, position);
  require(found != nullptr, "no such dart position");
  return hold_back(*found, cup);
}

Dart held_back(Dart dart, double by) {
  const Vec centre = unit(unit(dart.legs[0] - dart.apex) + unit(dart.legs[1] - dart.apex));
  dart.point = dart.apex + std::min(by, (1.0 - kLeastStitched) * dart.leg()) * centre;
  return dart;
}

}  // namespace blockwright
