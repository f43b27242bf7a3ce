#include "drawn_edges.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "words.hpp"

#include <algorithm>

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
