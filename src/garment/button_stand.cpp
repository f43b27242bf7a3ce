#include "button_stand.hpp"

#include "blockwright/block/kinds.hpp"
#include "button_row.hpp"
#include "named_edges.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr const char* kStandCode = "garment.opening";
constexpr const char* kFrontEdge = "front_edge";
// An edge that meets the centre more steeply runs along it: its way to the edge of the front would
// be about six times as long as that is wide, as is its facing. Ours.
constexpr double kLeastOutward = 0.17;
// A centre line is straight to within this, in mm.
constexpr double kStraight = 1e-6;

struct StandRefusal {
  const char* key;
  std::string where;
  Wording message, hint;
};

[[noreturn]] void refuse_stand(const StandRefusal& refused) {
  refuse({kStandCode, refused.key, refused.where, refused.message, refused.hint});
}

// --- what is asked for --------------------------------------------------------------------------

struct LengthLimits {
  double least, most;
};

double asked_length(const char* key, const std::optional<double>& asked, const Wording& what,
                    LengthLimits limits) {
  if (*asked < limits.least || *asked > limits.most) {
    refuse_stand({key, key, what + " of " + Length::mm(*asked) + " cannot be sewn",
                  "write " + Length::mm(limits.least) + " to " + Length::mm(limits.most)});
  }
  return *asked;
}

double button_of(const OpeningPlan& plan) {
  if (!plan.button) return kUsualButton;
  return asked_length("button", plan.button, "a button", {kLeastButton, kMostButton});
}

std::optional<double> spacing_of(const OpeningPlan& plan) {
  if (!plan.spacing) return std::nullopt;
  return asked_length("spacing", plan.spacing, "a spacing of buttons",
                      {kLeastSpacing, kMostSpacing});
}

// From the centre line to the edge of the front.
double stand_width(double button) { return std::max(button, 0.5 * button + kBeyondButton); }

// --- where the front is led on ------------------------------------------------------------------

// A front with its centre edge and the two that meet it, in the order of the outline.
struct OpenFront {
  Piece piece;
  std::size_t before, centre, after;
  Segment line;      // the centre, from the upper to the lower edge
  Vec outward;       // beyond it, square to it
  Vec upper, lower;  // how the edges that meet it run on beyond it
};

OpenFront open_front(const Pattern& pattern, const EdgeOf& at) {
  OpenFront front{pattern.piece(at.piece), 0, 0, 0, {}, {}, {}, {}};
  const auto& edges = front.piece.edges;
  front.centre = static_cast<std::size_t>(&pattern.piece(at.piece).edge(at.edge) -
                                          pattern.piece(at.piece).edges.data());
  front.before = (front.centre + edges.size() - 1) % edges.size();
  front.after = (front.centre + 1) % edges.size();
  const Path& centre = edges[front.centre].path;
  front.line = {centre.start(), centre.end()};
  front.outward = right_of(unit(centre.end() - centre.start()));
  front.upper = end_tangent(edges[front.before].path);
  front.lower = -start_tangent(edges[front.after].path);
  // Of a mirror image the outline runs up the centre.
  if (front.line.a.y < front.line.b.y) {
    std::swap(front.line.a, front.line.b);
    std::swap(front.upper, front.lower);
  }
  return front;
}

bool has_straight_centre(const OpenFront& front) {
  const Edge& centre = front.piece.edges[front.centre];
  const auto is_on = [&](const auto& mark) { return mark.edge == centre.name; };
  return std::abs(length(centre.path) - distance(front.line.a, front.line.b)) < kStraight &&
         std::ranges::none_of(front.piece.darts, is_on) &&
         std::ranges::none_of(front.piece.fullness, is_on);
}

void require_can_lap(const OpenFront& front) {
  const std::string where = front.piece.name;
  if (!has_straight_centre(front)) {
    refuse_stand({"at", where, "its centre front is not straight, or a dart or gathers open there",
                  "move them to another edge first"});
  }
  for (const std::size_t edge : {front.before, front.after}) {
    const Vec on = edge == front.before ? end_tangent(front.piece.edges[edge].path)
                                        : -start_tangent(front.piece.edges[edge].path);
    if (dot(on, front.outward) >= kLeastOutward) continue;
    refuse_stand({"at", where,
                  "its " + front.piece.edges[edge].name +
                      " meets the centre front so steeply that it cannot be led on beyond it",
                  "draw that edge flatter at the centre"});
  }
}

// From the centre on, as the edge meets it, to the edge of the front.
Vec led_on_by(const OpenFront& front, Vec along, double width) {
  return width / dot(along, front.outward) * along;
}

// Marks of an edge that begins earlier by that length.
void shift_marks(Piece& piece, const std::string& edge, double by) {
  for (Notch& notch : piece.notches) {
    if (notch.edge == edge) notch.along += by;
  }
  for (Fullness& fullness : piece.fullness) {
    if (fullness.edge != edge) continue;
    fullness.from += by;
    fullness.to += by;
  }
}

void mark_centre(OpenFront& front, std::size_t edge, double along) {
  const std::string name = front.piece.edges[edge].name;
  front.piece.notches.push_back({name + ".centre_front", name, along, 1, {}, {}});
}

// The two edges that meet the centre run on to the front edge, which takes the centre's place.
void lead_on(OpenFront& front, double width) {
  auto& edges = front.piece.edges;
  Edge &before = edges[front.before], &centre = edges[front.centre], &after = edges[front.after];
  const Vec out_of = led_on_by(front, end_tangent(before.path), width);
  const Vec into = led_on_by(front, -start_tangent(after.path), width);
  const Point start = before.path.end() + out_of, end = after.path.start() + into;
  const double was = length(before.path);
  append_line(before.path, start);
  Path longer = Path::through({end, after.path.start()});
  append(longer, after.path);
  after.path = std::move(longer);
  shift_marks(front.piece, after.name, norm(into));
  std::erase_if(front.piece.notches, [&](const Notch& one) { return one.edge == centre.name; });
  mark_centre(front, front.before, was);
  mark_centre(front, front.after, norm(into));
  centre.part = centre.part_name();
  centre.name = kFrontEdge;
  centre.path = Path::through({start, end});
  centre.role = EdgeRole::Opening;
  centre.finish = {Finish::FoldedBack, 2.0 * width + kFacingMore};
  if (front.piece.cut_on == CutOn::Fold) front.piece.cut_on = CutOn::Pair;
}

// --- where the buttons go -----------------------------------------------------------------------

// Along the centre, so that a button's rim keeps that far off an edge which meets it at a slant.
double clear_of(const OpenFront& front, Vec edge, double button, double off) {
  return (0.5 * button + off) / dot(edge, front.outward);
}

// Of a front that is cut into panels the point may be on another one.
std::optional<double> bust_level(const Pattern& pattern, const OpenFront& front) {
  const Landmark* bust = find_landmark(front.piece, PointUse::Marked);
  for (const Piece& piece : pattern.pieces) {
    if (bust == nullptr && is_a(piece, kBodiceFront)) bust = find_landmark(piece, PointUse::Marked);
  }
  if (bust == nullptr) return std::nullopt;
  return front.line.a.y - bust->at.y;
}

double first_of(const OpenFront& front, const OpeningPlan& plan, double button) {
  if (!plan.from_edge) return clear_of(front, front.upper, button, kButtonFromEdge);
  const double least = clear_of(front, front.upper, button, kLeastButtonFromEdge);
  const double most = least + kMostUnderEdge;
  if (*plan.from_edge < least || *plan.from_edge > most) {
    refuse_stand(
        {"from_edge", "from_edge",
         "the first button cannot sit " + Length::mm(*plan.from_edge) + " below the upper edge",
         "write " + Length::mm(least) + " to " + Length::mm(most)});
  }
  return *plan.from_edge;
}

ButtonRow row_of(const Pattern& pattern, const OpenFront& front, const OpeningPlan& plan,
                 double button) {
  const double whole = distance(front.line.a, front.line.b);
  const double under = clear_of(front, front.lower, button, kButtonFromEdge);
  const ButtonLine line{first_of(front, plan, button), whole - under, bust_level(pattern, front),
                        spacing_of(plan)};
  const ButtonRow row = row_on(line);
  if (row.count > 1) return row;
  const double least = line.first + line.spacing.value_or(kCloseButtons) + under;
  refuse_stand({"at", front.piece.name,
                "its centre front is " + Length::mm(whole) + " long and takes no two buttons",
                "with such buttons it takes at least " + Length::mm(least) +
                    ": draw the neckline higher or the hem lower, or write a smaller \"button\" or "
                    "\"spacing\""});
}

std::vector<Point> middles(const OpenFront& front, const ButtonRow& row) {
  const Vec down = unit(front.line.b - front.line.a);
  std::vector<Point> points;
  points.reserve(static_cast<std::size_t>(row.count));
  for (int i = 0; i < row.count; ++i) {
    points.push_back(front.line.a + (row.first + i * row.spacing) * down);
  }
  return points;
}

// Of a pair, both halves are cut by the one piece.
ButtonStand stand_of(const OpenFront& front, const ButtonRow& row, double button) {
  ButtonStand stand{front.line, stand_width(button)};
  const std::string_view side = sided_name(front.piece.name).side;
  const std::vector<Point> points = middles(front, row);
  if (side != kRightEnding) stand.buttons = points;
  if (side == kLeftEnding) return stand;
  for (const Point middle : points) {
    const Point outer = middle + kHoleBeyondCentre * front.outward;
    stand.buttonholes.push_back({outer, outer - (button + kButtonThickness) * front.outward});
  }
  return stand;
}

Problem no_button_at_bust() {
  return {Severity::Note, kStandCode, "button",
          "no button sits at the bust level: there the front has no room for one with another",
          "where it gapes at the bust, sew a press stud in at that level"};
}

// The two halves are no longer sewn together.
void part_seam(Pattern& pattern, const EdgeOf& at) {
  std::erase_if(pattern.seams, [&](const Seam& seam) {
    return std::ranges::count(seam.a, at) > 0 || std::ranges::count(seam.b, at) > 0;
  });
}

}  // namespace

MovedDarts with_buttons(const Pattern& pattern, const OpeningPlan& plan,
                        const std::vector<EdgeOf>& edges, const std::string& place) {
  const double button = button_of(plan);
  MovedDarts opened{pattern, {}};
  Opening opening{place, {}, plan.with};
  opening.button = button;
  std::optional<ButtonRow> row;
  for (const EdgeOf& at : edges) {
    OpenFront front = open_front(pattern, at);
    require_can_lap(front);
    if (!row) row = row_of(pattern, front, plan, button);
    front.piece.stand = stand_of(front, *row, button);
    opening.length = distance(front.line.a, front.line.b) - row->first;
    lead_on(front, front.piece.stand->width);
    part_seam(opened.pattern, at);
    *find_named(opened.pattern.pieces, at.piece) = front.piece;
    opening.edges.push_back({at.piece, kFrontEdge});
  }
  opening.from_edge = row->first;
  opening.spacing = row->spacing;
  opening.buttons = row->count;
  opened.pattern.openings.push_back(opening);
  if (!row->at_bust) opened.remarks.push_back(no_button_at_bust());
  return opened;
}

}  // namespace blockwright
