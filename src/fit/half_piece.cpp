#include "blockwright/block/balance_lines.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "halves.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Level through the side notch; on the front by way of the bust point.
Path bust_line(const Opened& open) {
  const Point notch = side_notch_point(open);
  const auto level = [&](double y) { return Point{centre_at(open, y), y}; };
  if (!is_a(open.piece, kBodiceFront)) return bust_line(level(notch.y), {}, notch);
  const Point bust = apex_of(open);
  return bust_line(level(bust.y), bust, notch);
}

// Level with the shoulder dart closed: to the dart, and its turned outer part to the across point.
Path across_line(const Opened& open) {
  const Dart& dart = open.at(shoulder_dart(open));
  const Point end = across_of(open), closed = closed_across_of(open);
  const double share = share_of_leg(dart, closed.y);
  const bool over_the_apex = share > 1e-9 && share < 1.0;
  if (!over_the_apex) return Path::through({{centre_at(open, end.y), end.y}, end});
  return across_line_over_dart({centre_at(open, closed.y), closed.y}, dart, dart.angle(), end);
}

void set_lines(Piece& piece, const Opened& open) {
  for (BalanceLine& line : piece.balance_lines) {
    const LineUse use = line_use(piece, line.name);
    if (use == LineUse::Bust) line.path = bust_line(open);
    if (use == LineUse::Across) line.path = across_line(open);
    if (use == LineUse::Waist) line.path = open.edges.front().stretches.back();
  }
}

// From the centre line out to a point, level.
double width_to(const Opened& open, Point p) { return p.x - centre_at(open, p.y); }

double whole_bust_line(const HalfBlock& half) {
  return bust_line_width(half.front) + bust_line_width(half.back);
}

double across_front(const HalfBlock& half) {
  return width_to(half.front, closed_across_of(half.front));
}

double across_back(const HalfBlock& half) { return width_to(half.back, across_of(half.back)); }

double bust_points(const HalfBlock& half) { return width_to(half.front, apex_of(half.front)); }

// How far the shoulder point lies under the side neck point, the dart closed.
double shoulder_drop(const Opened& open) {
  const Dart& dart = open.at(shoulder_dart(open));
  const Point tip = rotated_about(corner_of(open, Corner::ShoulderPoint), dart.apex, dart.angle());
  return corner_of(open, Corner::SideNeck).y - tip.y;
}

template <BlockEdge edge>
double both(const HalfBlock& half) {
  return closed_length(half.front, edge) + closed_length(half.back, edge);
}

// What both halves of the body make together, by its name in Effect.
constexpr struct {
  std::string_view name;
  double (*of)(const HalfBlock&);
} kWhole[] = {{"bust_line", whole_bust_line}, {"waist", both<BlockEdge::Waist>},
              {"across_front", across_front}, {"across_back", across_back},
              {"bust_points", bust_points},   {"neckline", both<BlockEdge::Neckline>}};

void add_piece(std::vector<FitLength>& lengths, const Opened& open) {
  const std::string piece = open.piece.name + ".";
  for (const OpenEdge& edge : open.edges) {
    lengths.push_back({piece + edge.name, closed_length(edge)});
  }
  lengths.push_back({piece + "shoulder_drop", shoulder_drop(open)});
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      lengths.push_back({piece + dart.name + " dart", dart.intake()});
      lengths.push_back({piece + dart.name + " dart point", distance(dart.apex, dart.point)});
    }
  }
}

}  // namespace

bool same_shape(const Opened& a, const Opened& b) {
  return a.edges == b.edges && a.notches == b.notches && a.fullness == b.fullness &&
         a.piece.balance_lines.size() == b.piece.balance_lines.size();
}

Piece finished_piece(const Opened& open, const Piece& before) {
  if (same_shape(open, opened(before))) return before;
  Piece piece = put_together(open);
  set_landmarks(piece);
  set_lines(piece, open);
  return piece;
}

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
  const Point bust = apex_of(half.front);
  lengths.push_back({"neck_to_bust", distance(corner_of(half.front, Corner::SideNeck), bust)});
  lengths.push_back({"bust_point_to_waist", bust.y - corner_of(half.front, Corner::CentreWaist).y});
  return lengths;
}

}  // namespace blockwright
