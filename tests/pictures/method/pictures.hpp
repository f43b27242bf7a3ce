#pragma once

#include "method/block.hpp"

namespace blockwright_pictures {

/// The pictures of docs/method.md. Each draws what one step adds in black on what stood there
/// before in grey, with the diagram placed at the front's origin at first.
void draw_necks(Diagram& d, const Block& b);
void draw_shoulders(Diagram& d, const Block& b);
void draw_waists(Diagram& d, const Block& b);
void draw_bust_dart(Diagram& d, const Block& b);
void draw_armholes(Diagram& d, const Block& b);
void draw_joined_seams(Diagram& d, const Block& b);

}  // namespace blockwright_pictures
