#include "half_measures.hpp"

#include "closed_shoulder.hpp"
#include "parts.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr std::string_view kWhole[] = {"bust_line",   "waist",       "across_front",
                                       "across_back", "bust_points", "neckline"};

Point side_notch_point(const Opened& open) {
  const Path& side = open.edges[static_cast<std::size_t>(BlockEdge::Side)].stretches.front();
  return point_at_length(side, side_notch(open));
}

// From the centre line out to a point, level.
double width_to(const Opened& open, Point p) { return p.x - centre_at(open, p.y); }

double bust_line(const HalfBlock& half) {
  return width_to(half.front, side_notch_point(half.front)) +
         width_to(half.back, side_notch_point(half.back));
}

double across_front(const Opened& front) {
  const Dart& dart = front.at(shoulder_dart(front));
  return width_to(front, rotated_about(across_of(front), dart.apex, dart.angle()));
}

double both(const HalfBlock& half, BlockEdge edge) {
  return closed_length(half.front, edge) + closed_length(half.back, edge);
}

double whole_of(const HalfBlock& half, std::string_view name) {
  const Point bust = half.front.at(shoulder_dart(half.front)).apex;
  if (name == "bust_line") return bust_line(half);
  if (name == "waist") return both(half, BlockEdge::Waist);
  if (name == "across_front") return across_front(half.front);
  if (name == "across_back") return width_to(half.back, across_of(half.back));
  if (name == "bust_points") return width_to(half.front, bust);
  return both(half, BlockEdge::Neckline);
}

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
  return std::find(std::begin(kWhole), std::end(kWhole), name) != std::end(kWhole);
}

std::vector<FitLength> fit_lengths(const HalfBlock& half, const HalfBlock& other) {
  std::vector<FitLength> lengths;
  add_piece(lengths, half.front);
  add_piece(lengths, half.back);
  for (const std::string_view name : kWhole) {
    lengths.push_back({std::string(name), whole_of(half, name) + whole_of(other, name)});
  }
  lengths.push_back({"armhole", both(half, BlockEdge::Armhole)});
  lengths.push_back({"neck_to_bust", distance(corner_of(half.front, Corner::SideNeck),
                                              half.front.at(shoulder_dart(half.front)).apex)});
  return lengths;
}

}  // namespace blockwright
