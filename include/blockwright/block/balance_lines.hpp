#pragma once

#include "blockwright/pattern/piece.hpp"

#include <optional>

namespace blockwright {

/// The lines that a toile is read by, as they run across a piece with its darts open.

/// From the centre to the side, on the front by way of the bust point.
Path bust_line(Point centre, std::optional<Point> bust_point, Point side);

/// Level with the shoulder dart closed: from `centre` to the dart, and its turned outer part to the
/// across point. `angle` is the dart's.
Path across_line_over_dart(Point centre, const Dart& dart, Angle angle, Point across);

/// How far up the inner leg of the shoulder dart a level crosses it, from apex to mouth.
double share_of_leg(const Dart& dart, double level);

}  // namespace blockwright
