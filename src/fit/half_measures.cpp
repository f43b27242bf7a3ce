#include "halves.hpp"
#include "parts.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// From the centre line out to a point, level.
double width_to(const Opened& open, Point p) { return p.x - centre_at(open, p.y); }

double bust_line(const HalfBlock& half) {
  return width_to(half.front, side_notch_point(half.front)) +
         width_to(half.back, side_notch_point(half.back));
}

double across_front(const HalfBlock& half) {
  return width_to(half.front, closed_across_of(half.front));
}

double across_back(const HalfBlock& half) { return width_to(half.back, across_of(half.back)); }

double bust_points(const HalfBlock& half) { return width_to(half.front, apex_of(half.front)); }

template <BlockEdge edge>
double both(const HalfBlock& half) {
  return closed_length(half.front, edge) + closed_length(half.back, edge);
}

// What both halves of the body make together, by its name in Effect.
constexpr struct {
  std::string_view name;
  double (*of)(const HalfBlock&);
} kWhole[] = {{"bust_line", bust_line},       {"waist", both<BlockEdge::Waist>},
              {"across_front", across_front}, {"across_back", across_back},
              {"bust_points", bust_points},   {"neckline", both<BlockEdge::Neckline>}};

void add_piece(std::vector<FitLength>& lengths, const Opened& open) {
  const std::string piece = open.piece.name + ".";
  for (const OpenEdge& edge : open.edges) {
    lengths.push_back({piece + edge.name, closed_length(edge)});
  }
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      lengths.push_back({piece + dart.name + " dart", dart.intake()});
      lengths.push_back({piece + dart.name + " dart point", distance(dart.apex, dart.point)});
    }
  }
}

}  // namespace

bool is_whole(std::string_view name) {
  return std::ranges::any_of(kWhole, [&](const auto& whole) { return whole.name == name; });
}

std::vector<FitLength> fit_lengths(const HalfBlock& half, const HalfBlock& other) {
  std::vector<FitLength> lengths;
  add_piece(lengths, half.front);
  add_piece(lengths, half.back);
  for (const auto& whole : kWhole) {
    lengths.push_back({std::string(whole.name), whole.of(half) + whole.of(other)});
  }
  lengths.push_back({"armhole", both<BlockEdge::Armhole>(half)});
  lengths.push_back(
      {"neck_to_bust", distance(corner_of(half.front, Corner::SideNeck), apex_of(half.front))});
  return lengths;
}

}  // namespace blockwright
