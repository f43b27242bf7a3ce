#include "darts/sketch.hpp"

#include "blockwright/geometry/intersections.hpp"

#include <algorithm>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kHatchApart = 6.0;  // on the diagram
constexpr double kNotch = 5.0;       // on the diagram
constexpr double kNotchesApart = 4.0;
const Angle kHatchSlant = Angle::degrees(50.0);

// The ends of the stretches of an endless line that lie inside a closed path, two by two.
std::vector<Point> inside_of(const Path& closed, Point through, Vec along) {
  std::vector<LineCrossing> hits = intersections(closed, through, along);
  std::sort(hits.begin(), hits.end(), [](const LineCrossing& a, const LineCrossing& b) {
    return a.along_line < b.along_line;
  });
  std::vector<Point> ends;
  for (const LineCrossing& hit : hits) {
    if (ends.empty() || distance(ends.back(), hit.point) > 1e-3) ends.push_back(hit.point);
  }
  return ends.size() % 2 == 0 ? ends : std::vector<Point>();
}

}  // namespace

Point Sketch::operator()(Point p) const { return at_ + scale_ * (p - origin_); }

Sketch Sketch::moved(Vec by) const {
  Sketch other = *this;
  other.at_ = at_ + scale_ * by;
  return other;
}

Path Sketch::scaled(const Path& path) const {
  Path result;
  for (const Curve& curve : path.curves()) {
    if (const auto* s = std::get_if<Segment>(&curve)) {
      result.add(Segment{(*this)(s->a), (*this)(s->b)});
    } else {
      const auto& c = std::get<CubicCurve>(curve);
      result.add(CubicCurve{(*this)(c.p0), (*this)(c.p1), (*this)(c.p2), (*this)(c.p3)});
    }
  }
  return result;
}

void Sketch::line(const Path& path, Look look) const { diagram_->line(scaled(path), look); }

void Sketch::line(Point a, Point b, Look look) const {
  diagram_->line((*this)(a), (*this)(b), look);
}

void Sketch::hatch(const Path& closed, Angle turned) const {
  const Vec along = direction(kHatchSlant + turned);
  const Vec across = (kHatchApart / scale_) * left_of(along);
  const Box box = box_of(closed);
  const Point middle{0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)};
  const int count = static_cast<int>((box.width() + box.height()) / norm(across));
  for (int i = -count; i <= count; ++i) {
    const std::vector<Point> ends =
        inside_of(closed, middle + static_cast<double>(i) * across, along);
    for (std::size_t k = 0; k + 1 < ends.size(); k += 2) line(ends[k], ends[k + 1], Look::Guide);
  }
}

void Sketch::piece(const Piece& piece, Look look) const {
  line(flat_outline(piece), look);
  for (const Dart& dart : piece.darts) {
    line(Path::through({dart.legs[0], dart.point, dart.legs[1]}), look);
    if (look != Look::New) continue;
    line(dart.point, dart.apex, Look::Guide);
    diagram_->dot((*this)(dart.apex));
  }
}

void Sketch::notches(const Piece& piece) const {
  for (const Notch& notch : piece.notches) {
    const Path& edge = piece.edge(notch.edge).path;
    const Vec in = (kNotch / scale_) * left_of(tangent_at_length(edge, notch.along));
    for (int i = 0; i < notch.count; ++i) {
      const double aside = (i - 0.5 * (notch.count - 1)) * kNotchesApart / scale_;
      const Point at = point_at_length(edge, notch.along + aside);
      line(at, at + in, Look::New);
    }
  }
}

void Sketch::label(Point p, Vec off, const std::string& words) const {
  diagram_->label((*this)(p), off, words);
}

void Sketch::point(Point p, Vec off, const std::string& name) const {
  diagram_->point((*this)(p), off, name);
}

Box box_about(const std::vector<const Piece*>& pieces) {
  Box box;
  for (const Piece* piece : pieces) box.include(box_of(flat_outline(*piece)));
  return box;
}

}  // namespace blockwright_pictures
