#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kGap = 45.0;      // between the panels, mm of the pieces
constexpr double kCloseUp = 1.25;  // scale of the close-up
constexpr Point kCloseUpAt{2.0 * kColumn + 112.0, 235.0};
constexpr double kShownLength = 75.0;  // of the seam to either side of the apex, mm

struct SeamPicture {
  Pattern before;  ///< untrued, with its darts at the seam's ends
  Panels panels;
  std::string edge;
};

SeamPicture cut_along(const Person& person, const std::vector<StyleStep>& steps,
                      const PanelSeam& seam) {
  const Pattern before = after(person, steps);
  const Panels panels = cut_into_panels(before, seam);
  return {before, panels, panels.walk.edge};
}

Piece trued(const Pattern& pattern, const std::string& piece) {
  return true_darts(pattern).pattern.piece(piece);
}

void draw_panel(const Sketch& s, const Piece& panel) {
  s.piece(panel, Look::New);
  s.notches(panel);
}

Box moved(Box box, Vec by) {
  return {box.left + by.x, box.bottom + by.y, box.right + by.x, box.top + by.y};
}

// Both panels, the second moved apart, over the second column.
void draw_apart(Diagram& d, const SeamPicture& p, Vec apart) {
  const Piece centre = trued(p.panels.pattern, p.panels.walk.centre_panel);
  const Piece side = trued(p.panels.pattern, p.panels.walk.side_panel);
  Box box = box_about({&centre});
  box.include(moved(box_about({&side}), apart));
  const Sketch s = in_column(d, 1, box);
  draw_panel(s, centre);
  draw_panel(s.moved(apart), side);
}

// The part of a panel's seam edge about the apex.
Path about_apex(const Piece& panel, const std::string& edge, Point apex) {
  const Path& path = panel.edge(edge).path;
  const double at = nearest(path, apex).along;
  return sub_path(path, {at - kShownLength, at + kShownLength});
}

// Notches that stand on the seam's edge within the shown part.
void draw_shown_notches(const Sketch& s, Piece panel, const std::string& edge, Point apex) {
  std::vector<Notch> shown;
  for (const Notch& notch : panel.notches) {
    const Point at = point_at_length(panel.edge(notch.edge).path, notch.along);
    if (notch.edge == edge && distance(at, apex) < kShownLength) shown.push_back(notch);
  }
  panel.notches = shown;
  s.notches(panel);
}

void draw_close_up(Diagram& d, const SeamPicture& p, Point apex, Vec apart) {
  const Sketch s(d, kCloseUp, kCloseUpAt, apex);
  const Piece& centre = p.panels.pattern.piece(p.panels.walk.centre_panel);
  const Piece& side = p.panels.pattern.piece(p.panels.walk.side_panel);
  s.line(about_apex(centre, p.edge, apex), Look::New);
  draw_shown_notches(s, centre, p.edge, apex);
  const Sketch t = s.moved(apart);
  t.line(about_apex(side, p.edge, apex), Look::New);
  draw_shown_notches(t, side, p.edge, apex);
}

// The legs that a panel's rounded edge departs from, about the apex.
void draw_legs(const Sketch& s, Point apex, Point up, Point down) {
  s.line(apex + kShownLength * unit(up - apex), apex, Look::Compass);
  s.line(apex + kShownLength * unit(down - apex), apex, Look::Compass);
}

void head_close_up(Diagram& d, const PanelWalk& walk) {
  d.label(kCloseUpAt, {-24.0, 0.0}, "ease zone:\nbetween the\nouter notches");
  head(d, 2, "Over the bust",
       "dashed: the darts' legs; in the ease zone\nthe side panel is " + fixed(walk.ease, 1) +
           " mm longer");
}

// A seam through a dart of the upper edge and the waist dart.
void draw_princess(Diagram& d, const SeamPicture& p, const char* upper_dart) {
  const Piece before = trued(p.before, "front");
  const Dart& upper = p.before.piece("front").dart(upper_dart);
  const Dart& waist = p.before.piece("front").dart("waist");
  in_column(d, 0, box_about({&before})).piece(before, Look::New);
  head(d, 0, "Before", "both darts point to the bust point");
  draw_apart(d, p, {kGap, 0.0});
  head(d, 1, "Two panels", "notches at the bust point and at both\nends of the ease zone");
  const Vec apart{kGap, 0.0};
  const Sketch s(d, kCloseUp, kCloseUpAt, upper.apex);
  draw_legs(s, upper.apex, upper.legs[1], waist.legs[0]);
  draw_legs(s.moved(apart), upper.apex, upper.legs[0], waist.legs[1]);
  draw_close_up(d, p, upper.apex, apart);
  head_close_up(d, p.panels.walk);
}

}  // namespace

void draw_princess_from_shoulder(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  const PanelSeam seam{"front.shoulder", "front.waist", "", ""};
  draw_princess(d, cut_along(person, {}, seam), "shoulder");
}

void draw_princess_from_armhole(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "bronislawa-slizewicz");
  const PivotMove move{"front.shoulder", "front.armhole", 1.0, {}, {}};
  const PanelSeam seam{"front.armhole", "front.waist", "", ""};
  draw_princess(d, cut_along(person, {move}, seam), "armhole");
}

void draw_yoke(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "tamsin-reed");
  const PivotMove move{"front.shoulder", "front.armhole", 1.0, {}, {}};
  const PanelSeam seam{"front.armhole", "front.centre_front", "", ""};
  const SeamPicture p = cut_along(person, {move}, seam);
  const Piece before = trued(p.before, "front");
  const Dart& dart = p.before.piece("front").dart("armhole");
  in_column(d, 0, box_about({&before})).piece(before, Look::New);
  head(d, 0, "Before", "a dart in the armhole");
  draw_apart(d, p, {0.0, kGap});
  head(d, 1, "Front and yoke", "the dart is gone into the seam");
  const Vec apart{0.0, kGap};
  draw_close_up(d, p, dart.apex, apart);
  head(d, 2, "Over the bust", "the corner is rounded; both edges\nare walked and notched");
}

}  // namespace blockwright_pictures
