#include "ink.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Half the widest line and the error of flattened curves together stay below this, in mm.
constexpr double kReach = 0.5;
constexpr double kInkFlattening = 0.2;
// Chords follow one another on paths, so a box round a few of them tells most windows apart.
constexpr std::size_t kInBunch = 16;

Box widened(const Box& box) {
  return {box.left - kReach, box.bottom - kReach, box.right + kReach, box.top + kReach};
}

bool share_a_point(const Box& a, const Box& b) {
  return a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top;
}

// True if all corners of the box lie on one side of the endless line through a and b.
bool all_on_one_side(const Box& box, Point a, Point b) {
  const Vec along = b - a;
  int left = 0, right = 0;
  for (const Point corner : {Point{box.left, box.bottom}, Point{box.right, box.bottom},
                             Point{box.right, box.top}, Point{box.left, box.top}}) {
    const double side = cross(along, corner - a);
    left += side > 0.0 ? 1 : 0;
    right += side < 0.0 ? 1 : 0;
  }
  return left == 4 || right == 4;
}

}  // namespace

PieceInk::PieceInk(const LaidPiece& piece) : piece_(piece.piece.name) {
  const Placement to_sheet = Placement::shift(piece.at);
  for (const Stroke& stroke : piece.lines.strokes) {
    const Path path = placed(stroke.path, to_sheet);
    auto points = flattened(path, kInkFlattening);
    if (stroke.closed && !points.empty()) points.push_back(points.front());
    for (std::size_t i = 1; i < points.size(); ++i) add({points[i - 1], points[i]});
    box_.include(widened(box_of(path)));
    if (stroke.role == LineRole::CutLine) outline_ = path;
  }
}

void PieceInk::add(const Chord& chord) {
  if (chords_.size() % kInBunch == 0) bunches_.emplace_back();
  chords_.push_back(chord);
  bunches_.back().include(chord.a);
  bunches_.back().include(chord.b);
}

bool PieceInk::bunch_touches(std::size_t bunch, const Box& reach) const {
  const std::size_t to = std::min(chords_.size(), (bunch + 1) * kInBunch);
  for (std::size_t i = bunch * kInBunch; i < to; ++i) {
    const Chord& chord = chords_[i];
    Box box;
    box.include(chord.a);
    box.include(chord.b);
    if (share_a_point(box, reach) && !all_on_one_side(reach, chord.a, chord.b)) return true;
  }
  return false;
}

// A window that no line touches lies either wholly inside the piece or wholly outside it. Where
// nothing is cut, there is nothing to see in it.
bool PieceInk::touches(const Box& window) const {
  const Box reach = widened(window);
  if (!share_a_point(box_, reach)) return false;
  for (std::size_t bunch = 0; bunch < bunches_.size(); ++bunch) {
    if (share_a_point(bunches_[bunch], reach) && bunch_touches(bunch, reach)) return true;
  }
  return !outline_.empty() && contains(outline_, {window.left, window.bottom}, kInkFlattening);
}

Ink::Ink(const Layout& layout) {
  for (const LaidPiece& piece : layout.pieces) {
    pieces_.emplace_back(piece);
    box_.include(pieces_.back().box());
  }
}

bool Ink::touches(const Box& window) const {
  return std::any_of(pieces_.begin(), pieces_.end(),
                     [&](const PieceInk& piece) { return piece.touches(window); });
}

std::vector<std::string> Ink::pieces_in(const Box& window) const {
  std::vector<std::string> names;
  for (const PieceInk& piece : pieces_) {
    if (piece.touches(window)) names.push_back(piece.piece());
  }
  return names;
}

}  // namespace blockwright
