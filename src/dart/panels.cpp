#include "blockwright/dart/panels.hpp"

#include "aim.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/path_parts.hpp"
#include "blockwright/pattern/sides.hpp"
#include "grain.hpp"
#include "moving.hpp"
#include "part.hpp"
#include "reach.hpp"
#include "rounding.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Notches over the bust are this far either side of the apex, outside the rounding. From memory.
constexpr double kNotchFromApex = 50.0;
// ... and this far from the seam's ends at least. Common practice, no source.
constexpr double kNotchFromEnd = 10.0;

// The cut as it is planned: both ends as darts of the opened piece, of no width at a mere place.
struct Cut {
  DartSpot first, second;
  std::string edge;  // the new edges' name
};

// Which of the two panels a stretch of the outline belongs to.
bool on_side(const Cut& cut, std::size_t edge, std::size_t stretch) {
  const bool after_first =
      edge > cut.first.edge || (edge == cut.first.edge && stretch > cut.first.dart);
  const bool before_second =
      edge < cut.second.edge || (edge == cut.second.edge && stretch <= cut.second.dart);
  return after_first && before_second;
}

// A place becomes a dart of no width about the apex of the seam's other end.
std::string slit_at_place(Opened& open, const std::string& other, const std::string& place) {
  const DartSpot from = dart_named(open, other);
  const Aim aim = aim_of(open, from, place);
  if (aim.onto) return *aim.onto;
  require_reachable(open, from, aim);
  const Point apex = open.at(from).apex;
  std::string name = free_name(open, "seam_end");
  slit(open, spot_at(open, aim.edge, aim.along), apex, name);
  return name;
}

void refuse_cut_gathers(const Opened& open, const Cut& cut, const PanelSeam& seam) {
  for (std::size_t i = 0; i < open.fullness.size(); ++i) {
    const auto& [from, to] = open.fullness[i];
    if (on_side(cut, from.edge, from.stretch) == on_side(cut, to.edge, to.stretch)) continue;
    refuse("dart.blocked", seam.from,
           "the seam would cut through the gathers " + open.piece.fullness[i].name,
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

Cut planned_cut(Opened& open, const PanelSeam& seam, const std::string& from,
                const std::string& to) {
  std::string a = from, b = to;
  const bool a_is_dart = find_dart(open, a).has_value();
  const bool b_is_dart = find_dart(open, b).has_value();
  if (!a_is_dart && !b_is_dart) {
    refuse("dart.panel", seam.from, "neither end of the seam is a dart",
           "move a dart to one of its ends first, and name that dart");
  }
  if (!a_is_dart) a = slit_at_place(open, b, a);
  if (!b_is_dart) b = slit_at_place(open, a, b);
  const DartSpot one = dart_named(open, a), other = dart_named(open, b);
  if (one.edge == other.edge) {
    refuse("dart.panel", seam.from, "both ends of the seam lie on one edge", "end it on two edges");
  }
  Cut cut{std::min(one, other), std::max(one, other), "yoke"};
  if (is_part(open.piece, open.edges[cut.first.edge].name, BlockEdge::Waist)) cut.edge = "princess";
  require_way_between(open, seam, open.at(cut.first).apex, open.at(cut.second).apex);
  return cut;
}

std::vector<Point> corners_of(const Dart& first, Point leg, const Dart& second, Point end) {
  std::vector<Point> corners = {leg, first.apex};
  if (distance(first.apex, second.apex) > 1e-6) corners.push_back(second.apex);
  corners.push_back(end);
  return corners;
}

// The stretches from `from` to before `to` of an edge, with the darts between them.
OpenEdge part_of(const OpenEdge& edge, std::size_t from, std::size_t to) {
  const auto at = [](const auto& items, std::size_t i) {
    return items.begin() + static_cast<std::ptrdiff_t>(i);
  };
  OpenEdge part{edge.name, edge.role, {}, {}};
  part.stretches.assign(at(edge.stretches, from), at(edge.stretches, to));
  part.darts.assign(at(edge.darts, from), at(edge.darts, to - 1));
  return part;
}

OpenEdge seam_edge(const std::string& name, const Path& path) {
  return {name, EdgeRole::Seam, {path}, {}};
}

std::vector<OpenEdge> centre_edges(const Opened& open, const Cut& cut, const SeamLines& lines) {
  std::vector<OpenEdge> edges(open.edges.begin(),
                              open.edges.begin() + static_cast<std::ptrdiff_t>(cut.first.edge));
  edges.push_back(part_of(open.edges[cut.first.edge], 0, cut.first.dart + 1));
  edges.push_back(seam_edge(cut.edge, lines.centre));
  const OpenEdge& last = open.edges[cut.second.edge];
  edges.push_back(part_of(last, cut.second.dart + 1, last.stretches.size()));
  edges.insert(edges.end(), open.edges.begin() + static_cast<std::ptrdiff_t>(cut.second.edge) + 1,
               open.edges.end());
  return edges;
}

std::vector<OpenEdge> side_edges(const Opened& open, const Cut& cut, const SeamLines& lines) {
  const OpenEdge& first = open.edges[cut.first.edge];
  std::vector<OpenEdge> edges = {part_of(first, cut.first.dart + 1, first.stretches.size())};
  edges.insert(edges.end(), open.edges.begin() + static_cast<std::ptrdiff_t>(cut.first.edge) + 1,
               open.edges.begin() + static_cast<std::ptrdiff_t>(cut.second.edge));
  edges.push_back(part_of(open.edges[cut.second.edge], 0, cut.second.dart + 1));
  edges.push_back(seam_edge(cut.edge, reversed(lines.side)));
  return edges;
}

bool has_edge(const Piece& piece, std::string_view name) { return has_name(piece.edges, name); }

// Marks of the old piece that are on the panel, with their places there.
void take_marks(const Opened& open, const Cut& cut, bool side, Opened& panel) {
  const auto moved = [&](Anchor anchor) {
    const std::string& name = open.edges[anchor.edge].name;
    if (side && anchor.edge == cut.first.edge) anchor.stretch -= cut.first.dart + 1;
    if (!side && anchor.edge == cut.second.edge) anchor.stretch -= cut.second.dart + 1;
    anchor.edge = *find_edge(panel, name);
    return anchor;
  };
  panel.piece.notches.clear();
  panel.notches.clear();
  for (std::size_t i = 0; i < open.notches.size(); ++i) {
    if (on_side(cut, open.notches[i].edge, open.notches[i].stretch) != side) continue;
    panel.piece.notches.push_back(open.piece.notches[i]);
    panel.notches.push_back(moved(open.notches[i]));
  }
  panel.piece.fullness.clear();
  panel.fullness.clear();
  for (std::size_t i = 0; i < open.fullness.size(); ++i) {
    const auto& [from, to] = open.fullness[i];
    if (on_side(cut, from.edge, from.stretch) != side) continue;
    panel.piece.fullness.push_back(open.piece.fullness[i]);
    panel.fullness.push_back({moved(from), moved(to)});
  }
}

void take_lines(const Piece& piece, const Part& side_part, bool side, Piece& panel) {
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
    panel.balance_lines.push_back({line.name, without_straight_joints(std::move(mine))});
  }
}

void name_panels(const Piece& piece, const PanelSeam& seam, const Cut& cut, PanelWalk& walk) {
  const bool princess = cut.edge.substr(0, 8) == "princess";
  walk.centre_panel = seam.centre_panel;
  walk.side_panel = seam.side_panel;
  if (walk.centre_panel.empty()) walk.centre_panel = princess ? "centre_" + piece.name : piece.name;
  if (walk.side_panel.empty()) {
    const SidedName name = sided_name(piece.name);
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

Opened panel_of(const Opened& open, const Cut& cut, const SeamLines& lines, bool side) {
  Opened panel;
  panel.piece = open.piece;
  panel.edges = side ? side_edges(open, cut, lines) : centre_edges(open, cut, lines);
  take_marks(open, cut, side, panel);
  take_lines(open.piece, Part(open, cut.first, cut.second), side, panel.piece);
  return panel;
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
void set_seam_notches(const SeamLines& lines, PanelWalk& walk, Piece& centre, Piece& side) {
  const double c = length(lines.centre), s = length(lines.side);
  const double low = std::clamp(lines.centre_apexes.front() - kNotchFromApex,
                                std::fmin(kNotchFromEnd, lines.zone_from), lines.zone_from);
  const double high = std::clamp(c - lines.centre_apexes.back() - kNotchFromApex,
                                 std::fmin(kNotchFromEnd, lines.zone_to), lines.zone_to);
  const int count = find_part(centre, BlockEdge::Centre) ? centre.kind->notch_count : 1;
  const auto add = [&](const std::string& name, double on_centre, double on_side) {
    centre.notches.push_back({name, walk.edge, on_centre, count, side.name, walk.edge});
    side.notches.push_back({name, walk.edge, s - on_side, count, centre.name, walk.edge});
  };
  add(walk.edge + "_below", low, low);
  for (std::size_t i = 0; i < lines.centre_apexes.size(); ++i) {
    const std::string number = i == 0 ? "" : "_" + std::to_string(i + 1);
    const double apex = lines.centre_apexes[i], shifted = apex + s - c;
    add(walk.edge + "_apex" + number, apex,
        std::clamp(lines.side_apexes[i], std::fmin(apex, shifted), std::fmax(apex, shifted)));
  }
  add(walk.edge + "_above", c - high, s - high);
  walk.ease_from = low;
  walk.ease_to = c - high;
  walk.centre_length = c;
  walk.side_length = s;
  walk.ease = s - c;
  walk.bulge = lines.bulge;
}

// Every seam and notch that named the old piece now names the panel that has the edge; an edge that
// was cut is sewn in two parts, in the order of the old one. Notches of the new seam name their
// mates already, one of which may have the old piece's name.
void rename_in(Pattern& pattern, const std::string& old, const Cut& cut, const Opened& open,
               const Piece& centre, const Piece& side) {
  const auto parts_of = [&](const EdgeOf& edge) -> std::vector<EdgeOf> {
    if (edge.piece != old) return {edge};
    const bool in_centre = has_edge(centre, edge.edge), in_side = has_edge(side, edge.edge);
    if (!in_side) return {{centre.name, edge.edge}};
    if (!in_centre) return {{side.name, edge.edge}};
    const bool centre_first = edge.edge == open.edges[cut.first.edge].name;
    const EdgeOf c{centre.name, edge.edge}, s{side.name, edge.edge};
    return centre_first ? std::vector{c, s} : std::vector{s, c};
  };
  for (Seam& seam : pattern.seams) {
    for (auto* edges : {&seam.a, &seam.b}) {
      std::vector<EdgeOf> renamed;
      for (const EdgeOf& edge : *edges) {
        const auto parts = parts_of(edge);
        renamed.insert(renamed.end(), parts.begin(), parts.end());
      }
      *edges = renamed;
    }
  }
  const auto has_notch = [](const Piece& piece, const Notch& notch) {
    return std::any_of(piece.notches.begin(), piece.notches.end(), [&](const Notch& mate) {
      return mate.name == notch.name && mate.edge == notch.mate_edge;
    });
  };
  for (Piece& piece : pattern.pieces) {
    const bool panel = piece.name == centre.name || piece.name == side.name;
    for (Notch& notch : piece.notches) {
      const bool on_new_seam = panel && notch.edge == cut.edge;
      if (notch.mate_piece == old && !on_new_seam) {
        notch.mate_piece = has_notch(side, notch) ? side.name : centre.name;
      }
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

void replace_piece(Pattern& pattern, std::size_t old, const Piece& centre, const Piece& side) {
  pattern.pieces[old] = centre;
  pattern.pieces.insert(pattern.pieces.begin() + static_cast<std::ptrdiff_t>(old) + 1, side);
}

Problem walk_remark(const PanelWalk& walk) {
  const bool side_longer = walk.ease >= 0.0;
  return {Severity::Note, "dart.panel", walk.side_panel + "." + walk.edge,
          "between the outer notches the " + (side_longer ? walk.side_panel : walk.centre_panel) +
              " panel is " + Length::mm(std::abs(walk.ease)) +
              " longer; elsewhere both edges are equally long",
          "ease it in there"};
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
  Cut cut = planned_cut(open, seam, from.name, to.name);
  cut.edge = first_free(cut.edge, [&](const std::string& name) { return has_edge(old, name); });
  refuse_cut_gathers(open, cut, seam);

  Panels panels{pattern, {}, {}};
  PanelWalk& walk = panels.walk;
  walk.edge = cut.edge;
  name_panels(old, seam, cut, walk);
  require_plain_name(walk.centre_panel);
  require_plain_name(walk.side_panel);
  require_free_names(pattern, old.name, walk);
  const Dart &first = open.at(cut.first), &second = open.at(cut.second);
  const SeamLines lines = rounded_seam(corners_of(first, first.legs[0], second, second.legs[1]),
                                       corners_of(first, first.legs[1], second, second.legs[0]));

  Piece centre = put_together(panel_of(open, cut, lines, false));
  Piece side = put_together(panel_of(open, cut, lines, true));
  centre.name = walk.centre_panel;
  side.name = walk.side_panel;
  centre.cut_on = cut_of(centre, old);
  side.cut_on = cut_of(side, old);
  set_seam_notches(lines, walk, centre, side);
  for (Piece* panel : {&centre, &side}) {
    *panel = with_grain_off_edges(*panel);
    require_whole(*panel, seam);
  }
  replace_piece(panels.pattern, from.piece, centre, side);
  rename_in(panels.pattern, old.name, cut, open, centre, side);
  panels.pattern.seams.push_back({cut.edge + " " + old.name,
                                  {{side.name, cut.edge}},
                                  {{centre.name, cut.edge}},
                                  walk.ease,
                                  true});
  panels.remarks.push_back(walk_remark(walk));
  return panels;
}

}  // namespace blockwright
