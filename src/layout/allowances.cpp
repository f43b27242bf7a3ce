#include "allowances.hpp"

namespace blockwright {
namespace {

bool is_pressed_open(Finish finish) {
  return finish == Finish::Seam || finish == Finish::PanelSeam;
}

// Of two edges, whether this one's allowance ends by a rule, whatever the other one's does.
bool is_ruled(Finish one, Finish other) {
  if (one == other) return false;
  if (one == Finish::Turned || other == Finish::Turned) return one == Finish::Turned;
  if (one == Finish::PanelSeam || other == Finish::PanelSeam) return one == Finish::PanelSeam;
  return is_pressed_open(one);
}

}  // namespace

CornerCut corner_between(const EdgeFinish& before, const EdgeFinish& after) {
  if (before.how == Finish::Fold || after.how == Finish::Fold) return CornerCut::OnFold;
  if (before.how == Finish::FoldedBack) return CornerCut::MirrorsBefore;
  if (after.how == Finish::FoldedBack) return CornerCut::MirrorsAfter;
  if (is_ruled(before.how, after.how)) {
    return before.how == Finish::PanelSeam ? CornerCut::SquareBefore : CornerCut::TurnsBefore;
  }
  if (is_ruled(after.how, before.how)) {
    return after.how == Finish::PanelSeam ? CornerCut::SquareAfter : CornerCut::TurnsAfter;
  }
  return CornerCut::Mitre;
}

Length allowance_at(const Edge& edge, const PrintOptions& options) {
  if (options.cut == CutStyle::Garment) return Length::mm(edge.finish.allowance);
  if (options.cut != CutStyle::Toile) return {};
  const bool sewn = edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening;
  return sewn ? options.allowance : Length();
}

Path outline_to_cut(const Piece& piece, const PrintOptions& options) {
  std::vector<Path> paths;
  std::vector<Length> widths;
  std::vector<CutEdge> edges;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Edge &edge = piece.edges[i], &next = piece.edges[(i + 1) % piece.edges.size()];
    paths.push_back(edge.path);
    widths.push_back(allowance_at(edge, options));
    edges.push_back({edge.path, widths.back(), corner_between(edge.finish, next.finish)});
  }
  return options.cut == CutStyle::Garment ? cut_line(edges) : cut_line(paths, widths);
}

Path outline_with_facings(const Piece& piece, const PrintOptions& options) {
  const auto is_cut_on = [](const Edge& edge) { return edge.finish.how == Finish::FoldedBack; };
  if (options.cut != CutStyle::Garment || !first_where(piece.edges, is_cut_on)) {
    return flat_outline(piece);
  }
  Piece bare = piece;
  for (Edge& edge : bare.edges) {
    if (!is_cut_on(edge)) edge.finish.allowance = 0.0;
  }
  return outline_to_cut(bare, options);
}

}  // namespace blockwright
