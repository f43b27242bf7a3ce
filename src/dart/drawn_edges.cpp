#include "drawn_edges.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "words.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

// The longest part of a line that lies on the piece; empty where none does.
Path on_piece(const Path& line, const Path& outline) {
  std::vector<PathPlace> cuts;
  for (const PathCrossing& crossing : intersections(line, outline)) cuts.push_back(crossing.on_a);
  Path kept;
  PathPlace from;
  const auto take = [&](const Path& part) {
    if (part.empty() || length(part) <= length(kept)) return;
    if (!contains(outline, point_at_length(part, 0.5 * length(part)), 0.01)) return;
    kept = without_specks(part);
  };
  for (const PathPlace& to : cuts) {
    take(part_between(line, from, to));
    from = to;
  }
  take(part_after(line, from));
  return kept;
}

// A dart whose apex lies this near to a point is one that turns about it. Ours, in mm.
constexpr double kOfThePoint = 60.0;

}  // namespace

bool is_bodice(const Piece& piece) { return is_a(piece, kBodiceFront) || is_a(piece, kBodiceBack); }

Piece as_drafted(const Piece& piece) { return is_mirrored(piece) ? mirrored(piece) : piece; }

void require_whole_bodice(const Pattern& pattern, const char* code, const std::string& edge) {
  for (const Piece& piece : pattern.pieces) {
    if (!is_bodice(piece) || is_whole(piece)) continue;
    refuse(code, piece.name, "the piece is cut into panels",
           "draw the " + edge + " before the step that cuts it");
  }
}

std::vector<std::size_t> pieces_of(const Pattern& pattern, const PieceKind& kind) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
    if (is_a(pattern.pieces[i], kind)) found.push_back(i);
  }
  return found;
}

std::size_t mate_of(const Pattern& pattern, const Piece& piece, const PieceKind& kind) {
  const std::vector<std::size_t> all = pieces_of(pattern, kind);
  const auto same_side = std::ranges::find_if(all, [&](std::size_t i) {
    return sided_name(pattern.pieces[i].name).side == sided_name(piece.name).side;
  });
  return same_side == all.end() ? all.front() : *same_side;
}

void require_bounded(const char* code, const std::string& piece, const Bounded& b) {
  if (b.value >= b.least && b.value <= b.most) return;
  const double most = std::max(b.most, b.least);
  const Wording least = b.least == 0.0 ? Wording("0") : Wording(Length::mm(b.least));
  refuse(code, piece, b.what + (" is " + Length::mm(b.value)) + "; " + b.why,
         "on this block " + std::string(b.what) + " can be " + least + " to " + Length::mm(most),
         b.key);
}

bool is_gathered(const Opened& open, std::initializer_list<std::size_t> edges) {
  return std::ranges::any_of(open.fullness, [&](const auto& ends) {
    return std::ranges::any_of(
        ends, [&](const Anchor& at) { return std::ranges::count(edges, at.edge) > 0; });
  });
}

const Dart* widest_dart_about(const Opened& open, Point apex) {
  const Dart* widest = nullptr;
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      if (distance(dart.apex, apex) > kOfThePoint) continue;
      if (widest == nullptr || dart.angle() > widest->angle()) widest = &dart;
    }
  }
  return widest;
}

void judge_off_bust(const char* code, const Piece& front, const Edge& edge, Problems& remarks) {
  const double off = nearest(edge.path, apex_point(front)).distance;
  if (off < kLeastOffBust) {
    refuse(code, front.name,
           "its " + edge.name + " would run " + Length::mm(off) +
               " past the bust point; it keeps " + Length::mm(kLeastOffBust) + " off it",
           "draw it higher or wider");
  }
  if (off >= kUsualOffBust) return;
  remarks.push_back({Severity::Warning, code, front.name,
                     "its " + edge.name + " runs " + Length::mm(off) +
                         " past the bust point; nearer than " + Length::mm(kUsualOffBust) +
                         " it gapes and shows what is worn beneath",
                     "try it on a toile, or draw it higher"});
}

void end_darts_on(std::vector<Path> parts, OpenEdge& edge) {
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    edge.darts[d].legs = {parts[d].end(), parts[d + 1].start()};
    edge.darts[d].edge = edge.name;
  }
  edge.stretches = std::move(parts);
}

Problem told_closer(const char* code, const std::string& piece, const DrawnCloser& closer) {
  const std::string edge = closer.edge;
  if (closer.into == nullptr) {
    return {Severity::Note, code, piece,
            "no dart of the bust can take up what its " + edge + " should be shorter, " +
                Length::mm(closer.by) + " a half, to lie close",
            "ease that much in on a tape when the edge is finished"};
  }
  return {Severity::Note, code, piece,
          "so that its " + edge + " lies close, each half is drawn " + Length::mm(closer.by) +
              " shorter; the dart " + closer.into->name + " takes it up",
          "see on a toile whether the edge lies close; \"closer\" sets by how much"};
}

void drop_notches(Opened& open, const std::function<bool(const Anchor&)>& is_cut_off) {
  std::vector<Notch> notches;
  std::vector<Anchor> anchors;
  for (std::size_t i = 0; i < open.notches.size(); ++i) {
    if (is_cut_off(open.notches[i])) continue;
    notches.push_back(open.piece.notches[i]);
    anchors.push_back(open.notches[i]);
  }
  open.piece.notches = std::move(notches);
  open.notches = std::move(anchors);
}

void drop_lone_notches(Pattern& pattern) {
  const Pattern all = pattern;
  for (Piece& piece : pattern.pieces) {
    std::erase_if(piece.notches, [&](const Notch& notch) {
      const Piece* mate = find_named(all.pieces, notch.mate_piece);
      return mate != nullptr && find_named(mate->notches, notch.name) == nullptr;
    });
  }
}

void trim_lines(const Path& outline, std::vector<BalanceLine>& lines) {
  for (BalanceLine& line : lines) line.path = on_piece(line.path, outline);
  std::erase_if(lines, [](const BalanceLine& line) { return line.path.empty(); });
}

}  // namespace blockwright
