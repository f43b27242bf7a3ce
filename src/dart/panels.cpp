#include "blockwright/dart/panels.hpp"

#include "blending.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"
#include "seam_course.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>

namespace blockwright {
namespace {

// Notches over the bust are this far either side of the apex, outside the rounding. From memory.
constexpr double kNotchFromApex = 50.0;
// ... and this far from the seam's ends at least. Common practice, no source.
constexpr double kNotchFromEnd = 10.0;

constexpr double kOnLeg = 1e-6;  // mm
// A balance line is led on to the seam over this at most, in mm.
constexpr double kLedOnWithin = 40.0;
constexpr double kShownFrom = 0.05;  // mm
constexpr const char* kPrincess = "princess";

// The cut as it is planned: both ends as darts of the opened piece, of no width at a mere place.
struct Cut {
  SeamEnds ends;
  std::string edge;  // the new edges' name

  [[nodiscard]] bool is_princess() const { return edge == kPrincess; }
};

// Cuts an edge in two at a dart, which goes; both halves have its name.
void cut_edge(Opened& open, DartSpot at) {
  OpenEdge& edge = open.edges[at.edge];
  const auto cut = static_cast<std::ptrdiff_t>(at.dart) + 1;
  const OpenEdge rest{edge.name,
                      edge.role,
                      {edge.stretches.begin() + cut, edge.stretches.end()},
                      {edge.darts.begin() + cut, edge.darts.end()},
                      edge.part,
                      edge.finish};
  edge.stretches.resize(at.dart + 1);
  edge.darts.resize(at.dart);
  open.edges.insert(open.edges.begin() + static_cast<std::ptrdiff_t>(at.edge) + 1, rest);
  change_anchors(open, [&](Anchor& mark) {
    const bool behind = mark.edge == at.edge && mark.stretch > at.dart;
    if (behind) mark.stretch -= at.dart + 1;
    if (behind || mark.edge > at.edge) ++mark.edge;
  });
}

// Both ends of the seam cut; the side panel's edges are then those from `first` to before `last`.
struct CutUp {
  Opened open;
  std::size_t first, last;

  [[nodiscard]] bool on_side(const Anchor& mark) const {
    return mark.edge >= first && mark.edge < last;
  }
};

CutUp cut_up(Opened open, const Cut& cut) {
  cut_edge(open, cut.ends.second);
  cut_edge(open, cut.ends.first);
  return {std::move(open), cut.ends.first.edge + 1, cut.ends.second.edge + 2};
}

// A place becomes a dart of no width about the apex of the seam's other end.
std::string slit_at_place(Opened& open, DartSpot other_end, const std::string& place) {
  const Aim aim = aim_of(open, other_end, place);
  if (aim.onto) return *aim.onto;
  require_reachable(open, other_end, aim);
  const Point apex = open.at(other_end).apex;
  std::string name = free_name(open, "seam_end");
  slit(open, anchor_at(open, aim.edge, aim.along), apex, name);
  return name;
}

void refuse_cut_gathers(const CutUp& halves, const PanelSeam& seam) {
  for (std::size_t i = 0; i < halves.open.fullness.size(); ++i) {
    const auto& [from, to] = halves.open.fullness[i];
    if (halves.on_side(from) == halves.on_side(to)) continue;
    refuse("dart.blocked", seam.from,
           "the seam would cut through the gathers " + halves.open.piece.fullness[i].name,
           "end it to one side of them, or make the gathers on the panels");
  }
}

void require_way_between(const Opened& open, const PanelSeam& seam, Point a, Point b) {
  if (distance(a, b) < 1e-6) return;
  const auto bar = barrier(open, a, b);
  if (!bar) return;
  refuse("dart.blocked", seam.from,
         "the way from its apex to that of " + seam.to + " is blocked by " + *bar,
         "run the seam through other darts");
}

Cut planned_cut(Opened& open, const PanelSeam& seam, std::array<std::string, 2> ends) {
  const std::array is_place = {!find_dart(open, ends[0]), !find_dart(open, ends[1])};
  if (is_place[0] && is_place[1]) {
    refuse("dart.panel", seam.from, "neither end of the seam is a dart",
           "move a dart to one of its ends first, and name that dart");
  }
  for (const std::size_t end : {0U, 1U}) {
    if (!is_place[end]) continue;
    ends[end] = slit_at_place(open, dart_named(open, ends[1 - end]), ends[end]);
  }
  const auto [first, second] = std::minmax({dart_named(open, ends[0]), dart_named(open, ends[1])});
  if (first.edge == second.edge) {
    refuse("dart.panel", seam.from, "both ends of the seam lie on one edge", "end it on two edges");
  }
  require_way_between(open, seam, open.at(first).apex, open.at(second).apex);
  const bool princess = is_part(open.piece, open.edges[first.edge].part_name(), BlockEdge::Waist);
  return {{first, second}, princess ? kPrincess : "yoke"};
}

std::vector<Point> corners_of(const Dart& first, Point leg, const Dart& second, Point end) {
  std::vector<Point> corners = {leg, first.apex};
  if (distance(first.apex, second.apex) > 1e-6) corners.push_back(second.apex);
  corners.push_back(end);
  return corners;
}

// The panel's edges, and the marks of the old piece that are on them.
Opened edges_of(const CutUp& halves, bool side, const OpenEdge& seam) {
  const auto& edges = halves.open.edges;
  const auto first = edges.begin() + static_cast<std::ptrdiff_t>(halves.first);
  const auto last = edges.begin() + static_cast<std::ptrdiff_t>(halves.last);
  Opened panel{halves.open.piece, {side ? first : edges.begin(), side ? last : first}, {}, {}};
  panel.edges.push_back(seam);
  if (!side) panel.edges.insert(panel.edges.end(), last, edges.end());
  const auto moved = [&](Anchor mark) {
    if (side) mark.edge -= halves.first;
    if (!side && mark.edge >= halves.last) mark.edge -= halves.last - halves.first - 1;
    return mark;
  };
  panel.piece.notches.clear();
  panel.piece.fullness.clear();
  for (std::size_t i = 0; i < halves.open.notches.size(); ++i) {
    if (halves.on_side(halves.open.notches[i]) != side) continue;
    panel.piece.notches.push_back(halves.open.piece.notches[i]);
    panel.notches.push_back(moved(halves.open.notches[i]));
  }
  for (std::size_t i = 0; i < halves.open.fullness.size(); ++i) {
    const auto& [from, to] = halves.open.fullness[i];
    if (halves.on_side(from) != side) continue;
    panel.piece.fullness.push_back(halves.open.piece.fullness[i]);
    panel.fullness.push_back({moved(from), moved(to)});
  }
  return panel;
}

// The seam's edge of one of the panels.
struct SeamOn {
  bool side;
  const Path& line;
};

// A line of the panel that ended at the leg of a dart, led on straight to the seam or cut off
// there.
Path led_to_seam(Path line, const Path& seam, const Part& side_part) {
  const auto borders = side_part.borders();
  const Point end = line.end();
  const bool at_leg = std::ranges::any_of(
      borders, [&](const Path& leg) { return nearest(leg, end).distance < kOnLeg; });
  if (!at_leg) return line;
  std::optional<Point> meets;
  for (const LineCrossing& hit : intersections(seam, end, end_tangent(line))) {
    if (std::abs(hit.along_line) > kLedOnWithin) continue;
    if (!meets || distance(hit.point, end) < distance(*meets, end)) meets = hit.point;
  }
  if (!meets) return line;
  const NearestOnPath on_line = nearest(line, *meets);
  if (on_line.distance > kOnLeg) {
    line.add(Segment{end, *meets});
    return line;
  }
  const Path cut = part_before(line, on_line.place);
  return cut.empty() ? line : cut;
}

// The landmarks and balance lines of the old piece that are on the panel.
void take_lines(const Piece& piece, const Part& side_part, const SeamOn& seam, Piece& panel) {
  const bool side = seam.side;
  panel.landmarks.clear();
  for (const Landmark& landmark : piece.landmarks) {
    const bool of_side = side_part.holds(landmark.at) && !side_part.is_apex(landmark.at);
    if (of_side == side) panel.landmarks.push_back(landmark);
  }
  panel.balance_lines.clear();
  for (const BalanceLine& line : piece.balance_lines) {
    Path mine;
    for (const auto& [path, where] : parted(line.path, side_part)) {
      if (where == (side ? Part::Where::Inside : Part::Where::Outside)) append(mine, path);
    }
    if (mine.empty()) continue;
    mine = led_to_seam(std::move(mine), seam.line, side_part);
    mine = reversed(led_to_seam(reversed(mine), seam.line, side_part));
    panel.balance_lines.push_back({line.name, without_straight_joints(std::move(mine))});
  }
}

void name_panels(const Piece& piece, const PanelSeam& seam, PanelWalk& walk) {
  const bool princess = walk.edge.starts_with(kPrincess);
  const SidedName name = sided_name(piece.name);
  walk.centre_panel = seam.centre_panel;
  walk.side_panel = seam.side_panel;
  if (walk.centre_panel.empty()) walk.centre_panel = princess ? "centre_" + piece.name : piece.name;
  if (walk.side_panel.empty()) {
    walk.side_panel = princess ? "side_" + piece.name
                               : std::string(name.whole) + "_yoke" + std::string(name.side);
  }
}

// Names of panels come before a dot in later steps, and in the file's ids.
void require_plain_name(const std::string& name) {
  const bool plain =
      !name.empty() && name.size() <= 40 &&
      name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos;
  if (plain) return;
  refuse("dart.panel", name, "a panel cannot have this name",
         "use 1 to 40 small letters, digits and underscores, such as side_front");
}

void require_free_names(const Pattern& pattern, const std::string& old, const PanelWalk& walk) {
  for (const Piece& piece : pattern.pieces) {
    const bool taken = piece.name == walk.centre_panel || piece.name == walk.side_panel;
    if (piece.name == old ? walk.centre_panel != walk.side_panel : !taken) continue;
    refuse("dart.panel", piece.name, "a panel cannot have the name of another piece",
           "choose other names");
  }
}

CutOn cut_of(const Piece& panel, const Piece& old) {
  if (old.cut_on == CutOn::One) return CutOn::One;
  return old.cut_on == CutOn::Fold && find_part(panel, BlockEdge::Centre) ? CutOn::Fold
                                                                          : CutOn::Pair;
}

// Notches at the apexes and at both ends of the zone in which the lengths may differ. Where one
// part of the zone is longer on the side panel and another shorter, mates would miss each other by
// more than is eased in: the side's is a trifle off its apex then. On the side panel the edge
// runs the other way.
void set_seam_notches(const SeamLines& lines, const std::string& edge, Piece& centre, Piece& side) {
  const double c = length(lines.centre), s = length(lines.side);
  const double low = std::clamp(lines.centre_apexes.front() - kNotchFromApex,
                                std::fmin(kNotchFromEnd, lines.zone_from), lines.zone_from);
  const double high = std::clamp(c - lines.centre_apexes.back() - kNotchFromApex,
                                 std::fmin(kNotchFromEnd, lines.zone_to), lines.zone_to);
  const int count = find_part(centre, BlockEdge::Centre) ? centre.kind->notch_count : 1;
  struct Along {
    double centre, side;
  };
  const auto add = [&](const std::string& name, Along along) {
    centre.notches.push_back({edge + name, edge, along.centre, count, side.name, edge});
    side.notches.push_back({edge + name, edge, s - along.side, count, centre.name, edge});
  };
  add("_below", {low, low});
  for (std::size_t i = 0; i < lines.centre_apexes.size(); ++i) {
    const double apex = lines.centre_apexes[i], shifted = apex + s - c;
    add("_apex" + (i == 0 ? "" : "_" + std::to_string(i + 1)),
        {apex,
         std::clamp(lines.side_apexes[i], std::fmin(apex, shifted), std::fmax(apex, shifted))});
  }
  add("_above", {c - high, s - high});
}

// Every seam and notch that named the old piece now names the panel that has the edge; an edge that
// was cut is sewn in two parts, in the order of the old one.
void rename_in(Pattern& pattern, const Piece& old, const std::string& first_cut,
               const std::array<Piece, 2>& panels) {
  const auto parts_of = [&](const EdgeOf& edge) {
    if (edge.piece != old.name) return std::vector{edge};
    std::vector<EdgeOf> parts;
    for (const Piece& panel : panels) {
      if (find_named(panel.edges, edge.edge)) parts.push_back({panel.name, edge.edge});
    }
    if (edge.edge != first_cut) std::ranges::reverse(parts);
    return parts;
  };
  for (Seam& seam : pattern.seams) {
    for (auto* edges : {&seam.a, &seam.b}) {
      std::vector<EdgeOf> renamed;
      for (const EdgeOf& edge : *edges)
        std::ranges::copy(parts_of(edge), std::back_inserter(renamed));
      *edges = renamed;
    }
  }
  const auto& [centre, side] = panels;
  for (Piece& piece : pattern.pieces) {
    for (Notch& notch : piece.notches) {
      if (notch.mate_piece != old.name) continue;
      const Notch* on_side = find_named(side.notches, notch.name);
      const bool is_mate = on_side != nullptr && on_side->edge == notch.mate_edge;
      notch.mate_piece = is_mate ? side.name : centre.name;
    }
  }
}

void require_whole(const Piece& panel, const PanelSeam& seam) {
  if (const auto cut = find_cut_dart(panel)) {
    refuse("dart.blocked", seam.from,
           "the " + cut->edge + " seam would cut through the dart " + cut->dart,
           "merge the darts that lie side by side first, or run the seam elsewhere");
  }
  if (const auto problem = find_problem_on_paper(panel)) {
    refuse("dart.blocked", seam.from, "the panels would not hold together: " + problem->message,
           "run the seam elsewhere");
  }
}

// What the waist of the side panel was changed by at the seam, in words.
Wording let_down_words(double mm) {
  if (std::abs(mm) < kShownFrom) return "";
  if (mm > 0.0) return "; its waist is let down by " + Length::mm(mm) + " at the seam for that";
  return "; its waist is trimmed by " + Length::mm(-mm) + " at the seam, it would be still longer";
}

Problem walk_remark(const PanelWalk& walk) {
  const bool side_longer = walk.ease >= 0.0;
  return {Severity::Note, "dart.panel", walk.side_panel + "." + walk.edge,
          "between the outer notches the " + (side_longer ? walk.side_panel : walk.centre_panel) +
              " panel is " + Length::mm(std::abs(walk.ease)) +
              " longer; elsewhere both edges are equally long" + let_down_words(walk.let_down),
          "ease it in there"};
}

// A seam that is not plain: it starts at the waist, and ends on an edge over the bust.
bool is_smooth(const Opened& open, const Cut& cut, const PanelSeam& seam) {
  const std::string& upper = open.edges[cut.ends.second.edge].part_name();
  return !seam.plain && cut.is_princess() && !is_part(open.piece, upper, BlockEdge::Centre);
}

// The seam's lines; what they change of the piece beside them is done.
SeamLines drawn_lines(Opened& open, const Cut& cut, const PanelSeam& seam) {
  const DartSpot at = cut.ends.first;
  if (!is_smooth(open, cut, seam)) {
    const Dart &first = open.at(at), &second = open.at(cut.ends.second);
    return rounded_seam(corners_of(first, first.legs[0], second, second.legs[1]),
                        corners_of(first, first.legs[1], second, second.legs[0]));
  }
  SeamCourse course = course_of(open, cut.ends, seam);
  SeamLines lines = lines_of(course, open.piece, seam);
  lines.let_down = course.let_down;
  Path& waist = open.edges[at.edge].stretches[at.dart + 1];
  if (!waist.empty()) waist = with_start_moved(waist, lines.side.start() - waist.start());
  return lines;
}

}  // namespace

Panels cut_into_panels(const Pattern& pattern, const PanelSeam& seam) {
  const PieceWords from = piece_and_name(pattern, seam.from);
  const PieceWords to = piece_and_name(pattern, seam.to);
  if (from.piece != to.piece) {
    refuse("dart.panel", seam.from, "the seam's ends lie on two pieces", "name one piece");
  }
  const Piece& old = pattern.pieces[from.piece];
  Opened open = opened(old);
  const Cut cut = planned_cut(open, seam, {from.name, to.name});
  const Part side_part(open, cut.ends.first, cut.ends.second);
  const SeamLines lines = drawn_lines(open, cut, seam);
  const CutUp halves = cut_up(open, cut);
  refuse_cut_gathers(halves, seam);

  Panels result{pattern, {}, {}};
  PanelWalk& walk = result.walk;
  walk.edge = first_free(
      cut.edge, [&](const std::string& name) { return find_named(old.edges, name) != nullptr; });
  name_panels(old, seam, walk);
  require_plain_name(walk.centre_panel);
  require_plain_name(walk.side_panel);
  require_free_names(pattern, old.name, walk);
  walk.ease = length(lines.side) - length(lines.centre);
  walk.bulge = lines.bulge;
  walk.let_down = lines.let_down;

  std::array<Piece, 2> panels;
  for (const bool is_side : {false, true}) {
    const Path line = is_side ? reversed(lines.side) : lines.centre;
    Piece& panel = panels[is_side ? 1 : 0];
    panel = put_together(edges_of(halves, is_side, {walk.edge, EdgeRole::Seam, {line}, {}}));
    take_lines(old, side_part, {is_side, line}, panel);
    panel.name = is_side ? walk.side_panel : walk.centre_panel;
    panel.cut_on = cut_of(panel, old);
  }
  std::vector<Piece>& pieces = result.pattern.pieces;
  pieces[from.piece] = panels[0];
  pieces.insert(pieces.begin() + static_cast<std::ptrdiff_t>(from.piece) + 1, panels[1]);
  rename_in(result.pattern, old, open.edges[cut.ends.first.edge].name, panels);
  Piece &centre = pieces[from.piece], &side = pieces[from.piece + 1];
  set_seam_notches(lines, walk.edge, centre, side);
  for (Piece* panel : {&centre, &side}) {
    *panel = with_clear_grain(std::move(*panel), kGrainOffEdges);
    require_whole(*panel, seam);
  }
  result.pattern.seams.push_back({walk.edge + " " + old.name,
                                  {{side.name, walk.edge}},
                                  {{centre.name, walk.edge}},
                                  walk.ease,
                                  true});
  result.remarks.push_back(walk_remark(walk));
  return result;
}

}  // namespace blockwright
