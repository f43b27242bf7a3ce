#include "dress.hpp"

#include "allowances.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "button_marks.hpp"
#include "drawing.hpp"
#include "piece_change.hpp"
#include "words.hpp"

namespace blockwright {
namespace {

// A hole to punch in a card is a ring with a dot in its middle, wide enough for a pencil's point.
// Common practice, no source.
constexpr double kHoleRadius = 2.0;
constexpr double kHoleDot = 0.25;
// Marks of a toile: a cross where a dart's stitching ends, a ringed cross at the bust point.
constexpr double kDartPointCross = 6.0;
// A drill mark lies this far short of the dart point, towards the mouth, so that the stitching
// covers it. Common practice (half an inch or less), no source.
constexpr double kDrillShort = 10.0;
constexpr double kDrillRadius = 1.0;
constexpr double kBustPointCross = 12.0;
constexpr double kBustPointRing = 3.0;
constexpr double kArrowHead = 6.0;
// The arrow beside an edge on the fold: where it lies along the edge, as shares of its length, and
// how far inside.
constexpr double kBracketFrom = 0.2;
constexpr double kBracketTo = 0.8;
constexpr double kBracketDepth = 8.0;

void draw_edges(const Piece& piece, Drawing& drawing) {
  for (const Edge& edge : piece.edges) {
    const bool fold = edge.role == EdgeRole::Fold || edge.finish.how == Finish::FoldedBack;
    drawing.line(SheetLayer::Stitch, fold ? LineRole::FoldLine : LineRole::StitchLine, edge.name,
                 edge.path);
  }
}

// Dashes start at the dart point, so that the point is drawn.
void draw_darts(const Piece& piece, Drawing& drawing) {
  for (const Dart& dart : piece.darts) {
    for (const Point end : dart.legs) {
      drawing.line(SheetLayer::Stitch, LineRole::DartLeg, dart.name,
                   Path::through({dart.point, end}));
    }
  }
}

void draw_notches(const Piece& piece, const Path& cut, Drawing& drawing) {
  const auto draw = [&](const std::string& name, const std::vector<Path>& marks) {
    for (const Path& mark : marks) drawing.line(SheetLayer::Marks, LineRole::Notch, name, mark);
  };
  for (const Notch& notch : piece.notches) draw(notch.name, notch_marks(piece, notch, cut));
  for (const Dart& dart : piece.darts) draw(dart.name, leg_notches(dart, cut));
}

void draw_grain(const Piece& piece, Drawing& drawing) {
  const Segment& grain = piece.grainline;
  if (grain.a == grain.b) return;
  const auto draw = [&](const Path& path) {
    drawing.line(SheetLayer::Marks, LineRole::Grainline, "grain", path);
  };
  draw(Path({grain}));
  draw(arrow_head(grain.b, grain.b - grain.a, kArrowHead));
  draw(arrow_head(grain.a, grain.a - grain.b, kArrowHead));
}

// The bracket that says "this edge on the fold": an arrow beside the edge, its ends turned back to
// it with a head on the edge. Common practice, no source.
void draw_fold_brackets(const Piece& piece, Drawing& drawing) {
  const auto draw = [&](const Path& path) {
    drawing.line(SheetLayer::Marks, LineRole::Grainline, "fold", path);
  };
  for (const Edge& edge : piece.edges) {
    if (edge.role != EdgeRole::Fold) continue;
    const double from = kBracketFrom * length(edge.path), to = kBracketTo * length(edge.path);
    const Point a = point_at_length(edge.path, from), b = point_at_length(edge.path, to);
    const Vec in_a = left_of(tangent_at_length(edge.path, from));
    const Vec in_b = left_of(tangent_at_length(edge.path, to));
    draw(Path::through({a, a + kBracketDepth * in_a, b + kBracketDepth * in_b, b}));
    draw(arrow_head(a, -in_a, kArrowHead));
    draw(arrow_head(b, -in_b, kArrowHead));
  }
}

void draw_cross(const std::string& name, Point at, double size, Drawing& drawing) {
  for (const Path& stroke : cross_mark(at, size)) {
    drawing.line(SheetLayer::Marks, LineRole::Hole, name, stroke);
  }
}

void draw_hole(const std::string& name, Point at, double radius, Drawing& drawing) {
  drawing.closed(SheetLayer::Marks, LineRole::Hole, name, circle(at, radius));
}

void draw_drill_mark(const Dart& dart, Drawing& drawing) {
  draw_hole(dart.name, dart.point + kDrillShort * unit(dart.peak - dart.point), kDrillRadius,
            drawing);
}

// Nothing is punched or drawn on good cloth that the sewing does not hide.
void draw_garment_marks(const Piece& piece, Drawing& drawing) {
  for (const Dart& dart : piece.darts) draw_drill_mark(dart, drawing);
}

void draw_toile_marks(const Piece& piece, Drawing& drawing) {
  for (const Dart& dart : piece.darts) {
    draw_cross(dart.name, dart.point, kDartPointCross, drawing);
    draw_drill_mark(dart, drawing);
  }
  if (const Landmark* marked = find_landmark(piece, PointUse::Marked)) {
    draw_cross(marked->name, marked->at, kBustPointCross, drawing);
    draw_hole(marked->name, marked->at, kBustPointRing, drawing);
  }
  for (const BalanceLine& line : piece.balance_lines) {
    drawing.line(SheetLayer::Marks, LineRole::BalanceLine, line.name, line.path);
  }
}

void draw_card_holes(const Piece& piece, Drawing& drawing) {
  const auto punch = [&](const std::string& name, Point at) {
    draw_hole(name, at, kHoleRadius, drawing);
    draw_hole(name, at, kHoleDot, drawing);
  };
  for (const Dart& dart : piece.darts) punch(dart.name, dart.point);
  if (const Landmark* marked = find_landmark(piece, PointUse::Marked)) {
    punch(marked->name, marked->at);
  }
}

void draw_previous(const PreviousPiece& previous, Drawing& drawing) {
  for (const Edge& edge : previous.piece->edges) {
    drawing.line(SheetLayer::Previous, LineRole::StitchLine, edge.name,
                 placed(edge.path, previous.lies));
  }
  for (const Dart& dart : previous.piece->darts) {
    drawing.line(SheetLayer::Previous, LineRole::DartLeg, dart.name,
                 placed(Path::through({dart.legs[0], dart.point, dart.legs[1]}), previous.lies));
  }
}

// Appends a point to a chain of straight strokes; a loop that it closes is cut off where they
// cross.
void add_without_loop(std::vector<Point>& chain, Point next) {
  for (std::size_t i = 0; i + 2 < chain.size(); ++i) {
    const auto crossings =
        intersections(Path::through({chain[i], chain[i + 1]}), Path::through({chain.back(), next}));
    if (crossings.empty()) continue;
    chain.resize(i + 1);
    chain.push_back(crossings.front().point);
    break;
  }
  chain.push_back(next);
}

// Where the line bends more sharply than the band is wide, the band's edge would cross itself.
void draw_band(const EdgeBand& band, double side, Drawing& drawing) {
  std::vector<Point> points;
  for (const BandPlace& place : band.places) {
    add_without_loop(points, place.at + side * place.off);
  }
  drawing.line(SheetLayer::Marks, LineRole::Band, band.edge, Path::through(points));
}

void draw_bands(const Piece& piece, std::span<const EdgeBand> bands, Drawing& drawing) {
  for (const EdgeBand& band : bands) {
    if (band.piece != piece.name) continue;
    draw_band(band, 1.0, drawing);
    draw_band(band, -1.0, drawing);
  }
}

void draw_change(const PieceChange& change, Drawing& drawing) {
  for (const PieceLine& line : change.before) {
    drawing.line(SheetLayer::Previous, LineRole::StitchLine, line.name, line.path);
  }
  for (const PieceLine& line : change.kept) {
    drawing.line(SheetLayer::Stitch, line.dart ? LineRole::AfterDart : LineRole::After, line.name,
                 line.path);
  }
  for (const PieceLine& line : change.moved) {
    drawing.line(SheetLayer::Stitch, LineRole::MovedEdge, line.name, line.path);
  }
  for (const MovedPoint& point : change.points) {
    for (const Path& stroke : arrow(point.was, point.is, kArrowHead)) {
      drawing.line(SheetLayer::Marks, LineRole::Arrow, point.name, stroke);
    }
  }
}

}  // namespace

LaidPiece dress(const Piece& piece, const PrintOptions& options,
                const std::optional<PreviousPiece>& previous, std::span<const EdgeBand> bands) {
  LaidPiece dressed{piece, {}, {}, {}, {}};
  Drawing drawing(dressed.lines, piece.name);
  const Path cut = outline_to_cut(piece, options);
  drawing.closed(SheetLayer::Cut, LineRole::CutLine, "cut", cut);
  const bool sewn_along = options.cut == CutStyle::Toile || options.cut == CutStyle::Garment;
  if (sewn_along) draw_edges(piece, drawing);
  draw_darts(piece, drawing);
  draw_notches(piece, cut, drawing);
  draw_grain(piece, drawing);
  draw_fold_brackets(piece, drawing);
  draw_button_marks(piece, drawing);
  if (options.cut == CutStyle::Toile) draw_toile_marks(piece, drawing);
  if (options.cut == CutStyle::Garment) draw_garment_marks(piece, drawing);
  if (options.cut == CutStyle::Card) draw_card_holes(piece, drawing);
  if (previous) draw_previous(*previous, drawing);
  draw_bands(piece, bands, drawing);
  dressed.room = room_on(outline_with_facings(piece, options), piece, dressed.lines);
  return dressed;
}

LaidPiece dress_compared(const Piece& piece, const std::optional<PreviousPiece>& previous) {
  LaidPiece dressed{piece, {}, {}, {}, {}};
  Drawing drawing(dressed.lines, piece.name);
  const PieceChange change = previous ? change_between(piece, *previous->piece, previous->lies)
                                      : PieceChange{.kept = lines_of(piece)};
  draw_change(change, drawing);
  dressed.moved = change.points;
  dressed.room = room_on(flat_outline(piece), piece, dressed.lines);
  return dressed;
}

}  // namespace blockwright
