#include "piece_change.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/layout/change_page.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace blockwright {
namespace {

// Places along a line where it is asked, mm.
constexpr double kAskedEvery = 2.0;
// A named point is shown rather than a place without a name that moved a little farther.
constexpr double kNamedIsEnough = 0.75;
constexpr double kAskedFlattening = 0.01;
// Chords follow one another on lines: a box round a few of them tells most places apart.
constexpr std::size_t kInAskedBunch = 12;
// Points nearer than this to where they were did not move, mm.
constexpr double kStill = 0.05;

// A narrower dart, in mm, is one stroke on the page. It is left unsewn (dart.narrow). Ours.
constexpr double kNarrowestSeen = 2.0;

bool is_seen(const Dart& dart) { return dart.intake() >= kNarrowestSeen; }

Path legs_of(const Dart& dart) { return Path::through({dart.legs[0], dart.point, dart.legs[1]}); }

double distance_to(const Box& box, Point p) {
  const double x = std::max({box.left - p.x, 0.0, p.x - box.right});
  const double y = std::max({box.bottom - p.y, 0.0, p.y - box.top});
  return std::hypot(x, y);
}

Point nearest_on(const Segment& chord, Point to) {
  const Vec along = chord.b - chord.a;
  const double whole = dot(along, along);
  if (whole == 0.0) return chord.a;
  return chord.a + std::clamp(dot(to - chord.a, along) / whole, 0.0, 1.0) * along;
}

/// How far each of a line's steps lies off the others.
std::vector<double> distances_off(const Path& path, std::size_t count, const LinesAsked& others) {
  std::vector<double> far(count);
  if (others.has(path)) return far;
  const double step = length(path) / static_cast<double>(count);
  for (std::size_t i = 0; i < count; ++i) {
    far[i] = others.nearest(point_at_length(path, (static_cast<double>(i) + 0.5) * step)).distance;
  }
  return far;
}

std::size_t run_end(const std::vector<bool>& steps, std::size_t from) {
  std::size_t to = from;
  while (to < steps.size() && steps[to] == steps[from]) ++to;
  return to;
}

/// A moved line that crosses the old one is still one moved line.
void bridge_crossings(std::vector<bool>& off, double step, double crossing) {
  for (std::size_t from = 0; from < off.size();) {
    const std::size_t to = run_end(off, from);
    const bool inside = from > 0 && to < off.size();
    if (!off[from] && inside && static_cast<double>(to - from) * step < crossing) {
      for (std::size_t i = from; i < to; ++i) off[i] = true;
    }
    from = to;
  }
}

void drop_stubs(std::vector<bool>& off, const std::vector<double>& far, double step,
                const MovedFrom& moved) {
  for (std::size_t from = 0; from < off.size();) {
    const std::size_t to = run_end(off, from);
    const double most = *std::max_element(far.begin() + static_cast<std::ptrdiff_t>(from),
                                          far.begin() + static_cast<std::ptrdiff_t>(to));
    if (off[from] && static_cast<double>(to - from) * step < moved.stub && most < 2.0 * moved.by) {
      for (std::size_t i = from; i < to; ++i) off[i] = false;
    }
    from = to;
  }
}

/// Whether each of a line's steps counts as moved.
std::vector<bool> steps_off(const std::vector<double>& far, double step, const MovedFrom& moved) {
  std::vector<bool> off(far.size());
  for (std::size_t i = 0; i < far.size(); ++i) off[i] = far[i] > moved.by;
  bridge_crossings(off, step, moved.crossing);
  drop_stubs(off, far, step, moved);
  return off;
}

void add_named(const std::string& name, Point was, Point is, std::vector<MovedPoint>& moves) {
  if (distance(was, is) > kMovedAtAll.by) moves.push_back({name, was, is});
}

std::vector<MovedPoint> moved_landmarks(const Piece& piece, const Piece& earlier,
                                        const Placement& lies) {
  std::vector<MovedPoint> moves;
  for (const Landmark& landmark : piece.landmarks) {
    const auto* was = find_named(earlier.landmarks, landmark.name);
    if (was != nullptr) add_named(landmark.name, lies(was->at), landmark.at, moves);
  }
  return moves;
}

std::vector<MovedPoint> moved_darts(const Piece& piece, const Piece& earlier,
                                    const Placement& lies) {
  std::vector<MovedPoint> moves;
  for (const Dart& dart : piece.darts) {
    const auto* was = find_named(earlier.darts, dart.name);
    if (was == nullptr || !(is_seen(dart) || is_seen(*was))) continue;
    add_named(dart.name + " dart point", lies(was->point), dart.point, moves);
    for (const std::size_t leg : {std::size_t{0}, std::size_t{1}}) {
      const std::size_t same = lies.mirrors() ? 1 - leg : leg;  // an edge meets them in its order
      add_named(dart.name + " dart", lies(was->legs[same]), dart.legs[leg], moves);
    }
  }
  return moves;
}

/// Where the bust line meets the side: its end farther from the centre line.
std::optional<Point> bust_line_at_side(const Piece& piece) {
  const BalanceLine* line = find_line(piece, LineUse::Bust);
  if (line == nullptr) return std::nullopt;
  const Point a = line->path.start(), b = line->path.end();
  return std::abs(a.x) > std::abs(b.x) ? a : b;
}

/// The middle of the shoulder seam between its dart, or the side neck, and the shoulder point.
std::optional<Point> outer_shoulder(const Piece& piece) {
  const auto* tip = find_named(piece.landmarks, "shoulder_point");
  const auto* neck = find_named(piece.landmarks, "side_neck_point");
  if (tip == nullptr || neck == nullptr) return std::nullopt;
  Point inner = neck->at;
  for (const Dart& dart : piece.darts) {
    if (!is_part(piece, dart.edge, BlockEdge::Shoulder)) continue;
    for (const Point leg : dart.legs) {
      if (distance(leg, tip->at) < distance(inner, tip->at)) inner = leg;
    }
  }
  return midpoint(inner, tip->at);
}

/// Along the neckline, so far from the centre line.
Point on_neckline(const Path& neckline, double from_centre) {
  const bool back = std::abs(neckline.end().x) < std::abs(neckline.start().x);
  return point_at_length(neckline, back ? length(neckline) - from_centre : from_centre);
}

/// The middle of the neckline, as far from the centre line as it was.
std::optional<MovedPoint> moved_neckline(const Piece& piece, const Piece& earlier,
                                         const Placement& lies) {
  const auto neckline_of = [](const Piece& of) {
    return first_where(
        of.edges, [&](const Edge& edge) { return is_part(of, edge.name, BlockEdge::Neckline); });
  };
  const Edge *is = neckline_of(piece), *was = neckline_of(earlier);
  if (is == nullptr || was == nullptr) return std::nullopt;
  const double middle = 0.5 * std::min(length(is->path), length(was->path));
  return MovedPoint{std::string(kNecklinePlace), lies(on_neckline(was->path, middle)),
                    on_neckline(is->path, middle)};
}

double size_of(const MovedPoint& move) { return distance(move.was, move.is); }

void farthest_first(std::vector<MovedPoint>& moves) {
  std::stable_sort(moves.begin(), moves.end(),
                   [](const auto& a, const auto& b) { return size_of(a) > size_of(b) + kStill; });
}

/// Of all places along the lines the one that lies farthest from the old ones.
MovedPoint farthest_place(const std::vector<PieceLine>& moved, const LinesAsked& before) {
  MovedPoint farthest;
  for (const PieceLine& line : moved) {
    if (line.dart) continue;  // its ends have names; a new one has not moved
    const double whole = length(line.path);
    for (double s = 0.5 * kAskedEvery; s < whole; s += kAskedEvery) {
      const Point here = point_at_length(line.path, s);
      const Point was = before.nearest(here).point;
      if (distance(was, here) > size_of(farthest) + kStill) farthest = {line.name, was, here};
    }
  }
  return farthest;
}

struct StillPlace {
  std::string_view landmark, words;
};
// The first two of them that did not move are told. What is not on a piece is passed over.
constexpr std::array<StillPlace, 9> kStillPlaces = {{{"underarm_point", "the underarm"},
                                                     {"bust_point", "the bust point"},
                                                     {"blade_point", "the blade point"},
                                                     {"centre_waist", "the centre waist"},
                                                     {"side_waist_point", "the side waist"},
                                                     {"side_neck_point", "the side neck"},
                                                     {"nape", "the nape"},
                                                     {"front_neck_point", "the front neck"},
                                                     {"shoulder_point", "the shoulder point"}}};
constexpr std::size_t kStillTold = 2;

bool is_still(const Piece& piece, const Piece& earlier, const Placement& lies,
              std::string_view landmark) {
  const auto* is = find_named(piece.landmarks, landmark);
  const auto* was = find_named(earlier.landmarks, landmark);
  return is != nullptr && was != nullptr && distance(lies(was->at), is->at) < kStill;
}

std::vector<std::string> still_places(const Piece& piece, const Piece& earlier,
                                      const Placement& lies) {
  std::vector<std::string> words;
  for (const StillPlace& place : kStillPlaces) {
    if (words.size() == kStillTold) break;
    if (is_still(piece, earlier, lies, place.landmark)) words.emplace_back(place.words);
  }
  return words;
}

}  // namespace

std::vector<PieceLine> lines_of(const Piece& piece, const Placement& lies) {
  std::vector<PieceLine> lines;
  for (const Edge& edge : piece.edges) lines.push_back({edge.name, placed(edge.path, lies)});
  for (const Dart& dart : piece.darts) {
    if (is_seen(dart)) lines.push_back({dart.name, placed(legs_of(dart), lies), true});
  }
  for (const BalanceLine& line : piece.balance_lines) {
    if (line_use(piece, line.name) != LineUse::Plain) continue;  // drafted, not stitched
    lines.push_back({line.name, placed(line.path, lies)});
  }
  return lines;
}

LinesAsked::LinesAsked(const std::vector<PieceLine>& lines) {
  for (const PieceLine& line : lines) {
    paths_.push_back(line.path);
    const std::vector<Point> points = flattened(line.path, kAskedFlattening);
    for (std::size_t i = 1; i < points.size(); ++i) add(Segment{points[i - 1], points[i]});
  }
}

void LinesAsked::add(const Segment& chord) {
  if (chords_.size() % kInAskedBunch == 0) bunches_.emplace_back();
  chords_.push_back(chord);
  bunches_.back().include(chord.a);
  bunches_.back().include(chord.b);
}

LinesAsked::Nearest LinesAsked::nearest(Point to) const {
  Nearest best{std::numeric_limits<double>::infinity(), to};
  for (std::size_t bunch = 0; bunch < bunches_.size(); ++bunch) {
    if (distance_to(bunches_[bunch], to) >= best.distance) continue;
    const std::size_t end = std::min(chords_.size(), (bunch + 1) * kInAskedBunch);
    for (std::size_t i = bunch * kInAskedBunch; i < end; ++i) {
      const Point here = nearest_on(chords_[i], to);
      const double far = distance(here, to);
      if (far < best.distance) best = {far, here};
    }
  }
  return best;
}

bool LinesAsked::has(const Path& path) const {
  return std::ranges::find(paths_, path) != paths_.end();
}

std::vector<PieceLine> parts(const std::vector<PieceLine>& lines, const LinesAsked& others,
                             Lies lies, MovedFrom from) {
  std::vector<PieceLine> found;
  for (const PieceLine& line : lines) {
    const double whole = length(line.path);
    const auto count = static_cast<std::size_t>(std::ceil(whole / kAskedEvery));
    if (count == 0) continue;
    const double step = whole / static_cast<double>(count);
    const std::vector<bool> off = steps_off(distances_off(line.path, count, others), step, from);
    for (std::size_t begin = 0; begin < count;) {
      const std::size_t end = run_end(off, begin);
      if (off[begin] == (lies == Lies::Off)) {
        const Stretch run{static_cast<double>(begin) * step, static_cast<double>(end) * step};
        found.push_back({line.name, sub_path(line.path, run), line.dart});
      }
      begin = end;
    }
  }
  return found;
}

PieceChange change_between(const Piece& piece, const Piece& earlier, const Placement& lies,
                           MovedFrom from) {
  const std::vector<PieceLine> lines = lines_of(piece), old = lines_of(earlier, lies);
  const LinesAsked now(lines), was(old);
  PieceChange change{.before = parts(old, now, Lies::Off, from),
                     .kept = parts(lines, was, Lies::On, from),
                     .moved = parts(lines, was, Lies::Off, from),
                     .points = moved_landmarks(piece, earlier, lies),
                     .largest = {},
                     .still = still_places(piece, earlier, lies)};
  farthest_first(change.points);
  std::vector<MovedPoint> named = change.points;
  for (const MovedPoint& move : moved_darts(piece, earlier, lies)) named.push_back(move);
  farthest_first(named);
  const MovedPoint place = farthest_place(change.moved, was);
  if (!named.empty() && size_of(named.front()) >= kNamedIsEnough * size_of(place)) {
    change.largest = {named.front()};
  } else if (size_of(place) > 0.0) {
    change.largest = {place};
  }
  std::erase_if(change.points, [](const MovedPoint& move) { return size_of(move) <= kToldMove; });
  return change;
}

double largest_move(const Piece& piece, const Piece& earlier, const Placement& lies) {
  const LinesAsked was(lines_of(earlier, lies));
  double most = size_of(farthest_place(lines_of(piece), was));
  for (const MovedPoint& move : moved_landmarks(piece, earlier, lies)) {
    most = std::max(most, size_of(move));
  }
  return most;
}

std::vector<MovedPoint> moved_places(const Piece& piece, const Piece& earlier,
                                     const Placement& lies) {
  std::vector<MovedPoint> places = moved_landmarks(piece, earlier, lies);
  for (const MovedPoint& dart : moved_darts(piece, earlier, lies)) places.push_back(dart);
  const auto add = [&](std::string_view name, std::optional<Point> was, std::optional<Point> is) {
    if (was && is) add_named(std::string(name), lies(*was), *is, places);
  };
  add(kBustLineAtSide, bust_line_at_side(earlier), bust_line_at_side(piece));
  add(kShoulderSeamPlace, outer_shoulder(earlier), outer_shoulder(piece));
  if (const auto neck = moved_neckline(piece, earlier, lies)) {
    add_named(neck->name, neck->was, neck->is, places);
  }
  const LinesAsked was(lines_of(earlier, lies));
  for (const PieceLine& line : lines_of(piece)) {
    const MovedPoint place = farthest_place({line}, was);
    if (size_of(place) > kMovedAtAll.by) places.push_back(place);
  }
  farthest_first(places);
  return places;
}

}  // namespace blockwright
