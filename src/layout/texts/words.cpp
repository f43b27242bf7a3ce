#include "words.hpp"

#include "blockwright/base/length.hpp"
#include "blockwright/block/kinds.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// The name of a panel's seam alone does not say what it is.
std::string edge_words(const Piece& piece, const Edge& edge) {
  const bool of_panel = piece.kind != nullptr && kind_edge(piece, edge.name) == nullptr;
  return of_panel ? "the " + plain_name(edge.name) + " seam" : plain_name(edge.name);
}

}  // namespace

std::string plain_name(std::string_view name) {
  std::string plain(name);
  std::replace(plain.begin(), plain.end(), '_', ' ');
  return plain;
}

std::string title_of(std::string_view name) {
  std::string title = plain_name(name);
  if (!title.empty() && title.front() >= 'a' && title.front() <= 'z') {
    title.front() = static_cast<char>(title.front() - 'a' + 'A');
  }
  return title;
}

std::string_view cut_instruction(CutOn cut_on) {
  if (cut_on == CutOn::One) return "cut 1, right side up";
  return cut_on == CutOn::Fold ? "cut 1 on the fold" : "cut 2, a pair";
}

std::string listed(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::string allowance_text(const Piece& piece, const PrintOptions& options, Unit unit) {
  std::vector<std::string> with, without;
  for (const Edge& edge : piece.edges) {
    if (edge.role == EdgeRole::Fold) continue;
    const bool bare = allowance_at(edge, options) == Length();
    (bare ? without : with).push_back(edge_words(piece, edge));
  }
  if (with.empty()) return "no seam allowance";
  std::string text =
      "seam allowance " + length_text(options.allowance, unit) + " at " + listed(with);
  if (!without.empty()) text += "; none at " + listed(without);
  return text;
}

std::string allowance_text(const PrintOptions& options, Unit unit) {
  if (options.cut != CutStyle::Toile || options.allowance <= Length()) return "no seam allowance";
  return "seam allowance " + length_text(options.allowance, unit) +
         " at seams and opening; none elsewhere";
}

Length allowance_at(const Edge& edge, const PrintOptions& options) {
  if (options.cut != CutStyle::Toile) return {};
  const bool sewn = edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening;
  return sewn ? options.allowance : Length();
}

}  // namespace blockwright
