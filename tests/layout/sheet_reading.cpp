#include "sheet_reading.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright_tests {
namespace {

constexpr double kAbove = 0.76;  // cap height and a little, in shares of the em
constexpr double kBelow = 0.24;

std::string printed_name(std::string name) {
  std::replace(name.begin(), name.end(), '_', ' ');
  if (!name.empty()) name.front() = static_cast<char>(name.front() - 'a' + 'A');
  return name;
}

bool lies_in(const Box& box, Point p) {
  return p.x > box.left && p.x < box.right && p.y > box.bottom && p.y < box.top;
}

// In mm2, counted by points of a grid.
double shown_area(const Path& outline, const Box& window) {
  constexpr double kStep = 10.0;
  double area = 0.0;
  for (double x = window.left; x < window.right; x += kStep) {
    for (double y = window.bottom; y < window.top; y += kStep) {
      if (contains(outline, {x, y}, 0.1)) area += kStep * kStep;
    }
  }
  return area;
}

}  // namespace

Path room_of(const SheetText& text) {
  const double width = text.room.width;
  const Vec along = direction(text.turn), up = left_of(along);
  const double lead = text.anchor == TextAnchor::Start    ? 0.0
                      : text.anchor == TextAnchor::Middle ? 0.5 * width
                                                          : width;
  const Point foot = text.at - lead * along - kBelow * text.height * up;
  const Vec high = (kAbove + kBelow) * text.height * up;
  return Path::through(
      {foot, foot + width * along, foot + width * along + high, foot + high, foot});
}

bool touch(const Path& a, const Path& b) {
  return !intersections(a, b).empty() || contains(a, b.start(), 0.1) || contains(b, a.start(), 0.1);
}

bool runs_through(const Path& line, const SheetText& text) {
  const Path room = room_of(text);
  return !intersections(line, room).empty() || contains(room, line.start(), 0.1);
}

std::string text_in_the_way(const Sheet& sheet) {
  for (std::size_t i = 0; i < sheet.texts.size(); ++i) {
    const SheetText& text = sheet.texts[i];
    if (text.text.empty()) continue;
    for (std::size_t j = 0; j < i; ++j) {
      if (sheet.texts[j].text.empty()) continue;
      if (touch(room_of(text), room_of(sheet.texts[j]))) {
        return "'" + text.text + "' on '" + sheet.texts[j].text + "'";
      }
    }
    for (const Stroke& stroke : sheet.strokes) {
      if (runs_through(stroke.path, text)) return "'" + text.text + "' on " + stroke.name;
    }
  }
  return {};
}

std::string cut_text(const Sheet& sheet, const Box& window) {
  for (const SheetText& text : sheet.texts) {
    const Box room = box_of(room_of(text));
    const bool inside = room.left >= window.left && room.right <= window.right &&
                        room.bottom >= window.bottom && room.top <= window.top;
    if (room.overlaps(window) && !inside) return text.text;
  }
  return {};
}

std::string unnamed_piece(const PrintPlan& plan, const Page& page) {
  const std::string said = all_text(page.furniture);
  for (const Stroke& stroke : plan.sheet.strokes) {
    if (said.find(printed_name(stroke.piece)) != std::string::npos) continue;
    for (const Point p : flattened(stroke.path, 0.1)) {
      if (lies_in(*page.window, p)) return stroke.piece;
    }
  }
  return {};
}

std::string large_unnamed_part(const PrintPlan& plan, const Page& page, double large) {
  for (const Stroke* outline : strokes_of(plan.sheet, LineRole::CutLine)) {
    const bool named =
        std::any_of(plan.sheet.texts.begin(), plan.sheet.texts.end(), [&](const SheetText& text) {
          return text.piece == outline->piece && printed_name(text.piece).starts_with(text.text) &&
                 lies_in(*page.window, text.at);
        });
    if (!named && shown_area(outline->path, *page.window) >= large) return outline->piece;
  }
  return {};
}

Box drawn_box(const Sheet& sheet) {
  Box box;
  for (const Stroke& stroke : sheet.strokes) box.include(box_of(stroke.path));
  for (const SheetText& text : sheet.texts) box.include(box_of(room_of(text)));
  return box;
}

std::vector<const Stroke*> strokes_of(const Sheet& sheet, LineRole role, const std::string& piece) {
  std::vector<const Stroke*> found;
  for (const Stroke& stroke : sheet.strokes) {
    if (stroke.role == role && (piece.empty() || stroke.piece == piece)) found.push_back(&stroke);
  }
  return found;
}

std::vector<const Stroke*> strokes_named(const Sheet& sheet, const std::string& name) {
  std::vector<const Stroke*> found;
  for (const Stroke& stroke : sheet.strokes) {
    if (stroke.name == name) found.push_back(&stroke);
  }
  return found;
}

std::string all_text(const Sheet& sheet) {
  std::string all;
  for (const SheetText& text : sheet.texts) all += text.text + "\n";
  return all;
}

bool is_square(const Stroke& stroke, double side) {
  const Box box = box_of(stroke.path);
  return stroke.closed && std::abs(box.width() - side) < 1e-9 &&
         std::abs(box.height() - side) < 1e-9 &&
         std::abs(signed_area(stroke.path) - side * side) < 1e-6;
}

}  // namespace blockwright_tests
