#include "button_words.hpp"

#include "blockwright/garment/opening.hpp"
#include "named_edges.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace blockwright {
namespace {

Wording counted(const Opening& opening, const char* what) {
  return std::to_string(opening.buttons) + " " + what;
}

// How far up and down the facing of this front edge reaches: it is the mirror image of the front
// beside its fold.
double facing_length(const Piece& front, const Edge& fold) {
  const Point top = fold.path.start();
  const Vec down = unit(fold.path.end() - top);
  const double width = fold.finish.allowance;
  const auto off = [&](Point p) { return std::abs(cross(down, p - top)); };
  double least = 0.0, most = 0.0;
  const auto take = [&](Point p) {
    least = std::min(least, dot(p - top, down));
    most = std::max(most, dot(p - top, down));
  };
  const std::vector<Point> outline = flattened(flat_outline(front), 0.1);
  for (std::size_t i = 1; i < outline.size(); ++i) {
    const Point a = outline[i - 1], b = outline[i];
    const bool a_lies_in = off(a) <= width, b_lies_in = off(b) <= width;
    if (a_lies_in) take(a);
    if (b_lies_in) take(b);
    if (a_lies_in != b_lies_in) take(between(a, b, (width - off(a)) / (off(b) - off(a))));
  }
  return most - least;
}

}  // namespace

bool has_cut_on_facing(const Pattern& pattern, const Opening& opening) {
  return std::ranges::any_of(opening.edges, [&](const EdgeOf& at) {
    return edge_at(pattern, at).finish.how == Finish::FoldedBack;
  });
}

Wording facing_strips(const Pattern& pattern, const Opening& opening) {
  double longest = 0.0, width = 0.0;
  for (const EdgeOf& at : opening.edges) {
    const Edge& fold = edge_at(pattern, at);
    longest = std::max(longest, facing_length(pattern.piece(at.piece), fold));
    width = fold.finish.allowance;
  }
  return "interfacing for the facings that are cut on to the fronts: 2, " +
         Wording(Length::mm(longest)) + " long and " + Length::mm(width) +
         " wide, trimmed to the shape of their ends";
}

Wording buttons_line(const Opening& opening) {
  return counted(opening, "buttons, ") + Length::mm(opening.button) +
         " across, for the centre front";
}

Wording fold_facings() {
  return "interface the front facings; fold them to the right side along the front edges to sew "
         "their upper and lower ends, turn them in and press";
}

Wording set_buttons(const Opening& opening) {
  return "work " + counted(opening, "buttonholes in the right front, ") +
         Length::mm(opening.button + kButtonThickness) + " long and " +
         Length::mm(opening.spacing) +
         " apart; lay centre front on centre front and sew the buttons to the left one";
}

}  // namespace blockwright
