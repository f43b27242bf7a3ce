#include "words.hpp"

#include "allowances.hpp"
#include "blockwright/base/length.hpp"
#include "blockwright/block/kinds.hpp"

#include <algorithm>
#include <functional>
#include <span>

namespace blockwright {
namespace {

// The name of a panel's seam alone does not say what it is.
std::string edge_words(const Piece& piece, const Edge& edge) {
  const bool of_panel = piece.kind != nullptr && kind_edge(piece, edge.name) == nullptr;
  return of_panel ? "the " + plain_name(edge.name) + " seam" : plain_name(edge.name);
}

// An edge of a garment, as its allowance is told.
struct ToldEdge {
  std::string name, piece;
  EdgeFinish finish;
};

std::vector<ToldEdge> edges_to_cut(std::span<const Piece> pieces) {
  std::vector<ToldEdge> told;
  for (const Piece& piece : pieces) {
    for (const Edge& edge : piece.edges) {
      if (edge.finish.how == Finish::Fold) continue;
      told.push_back({edge_words(piece, edge), plain_name(piece.name), edge.finish});
    }
  }
  return told;
}

// Where edges of one name are not all finished alike, each is told with its piece.
std::string told_name(const ToldEdge& edge, const std::vector<ToldEdge>& all) {
  const bool alike = std::ranges::all_of(all, [&](const ToldEdge& other) {
    return other.name != edge.name || other.finish == edge.finish;
  });
  return alike ? edge.name : edge.piece + " " + edge.name;
}

// Edges that have the same allowance for the same reason.
struct AllowanceGroup {
  std::string words;
  double width = 0.0;
  std::vector<std::string> names;
};

std::string width_words(const EdgeFinish& finish, Unit unit) {
  return finish.allowance == 0.0 ? "none" : length_text(Length::mm(finish.allowance), unit);
}

std::vector<AllowanceGroup> allowance_groups(const std::vector<ToldEdge>& edges, Unit unit) {
  std::vector<AllowanceGroup> groups;
  for (const ToldEdge& edge : edges) {
    std::string name = told_name(edge, edges);
    if (edge.finish.how == Finish::Bound) name += " (bound)";
    if (edge.finish.how == Finish::FoldedBack) name += " (facing)";
    const std::string words = width_words(edge.finish, unit);
    auto* group = first_where(groups, [&](const auto& one) { return one.words == words; });
    if (group == nullptr) {
      groups.push_back({words, edge.finish.allowance, {}});
      group = &groups.back();
    }
    if (std::ranges::count(group->names, name) == 0) group->names.push_back(name);
  }
  return groups;
}

// "seam allowance 2.5 cm at hem, 1.5 cm at side and shoulder, none at neckline (bound)", the widest
// first.
std::string garment_text(const std::vector<ToldEdge>& edges, Unit unit) {
  std::vector<AllowanceGroup> groups = allowance_groups(edges, unit);
  std::ranges::stable_sort(groups, std::ranges::greater{}, &AllowanceGroup::width);
  std::string text;
  for (const AllowanceGroup& group : groups) {
    text += (text.empty() ? "" : "; ") + group.words + " at " + listed(group.names);
  }
  return "seam allowance " + text;
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

std::string cut_instruction(const Piece& piece) {
  const bool one = piece.cut_on == CutOn::One;
  std::string text = one                           ? "cut 1, right side up"
                     : piece.cut_on == CutOn::Fold ? "cut 1 on the fold"
                                                   : "cut 2, a pair";
  const bool interfaced = std::ranges::count(piece.cut_from, Material::Interfacing) > 0;
  if (interfaced) {
    text += piece.cut_on == CutOn::Pair ? ": cloth, 2 of interfacing" : ": cloth, 1 of interfacing";
  }
  return text;
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
  if (options.cut == CutStyle::Garment) return garment_text(edges_to_cut({&piece, 1}), unit);
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

std::string allowance_text(const Layout& layout) {
  const PrintOptions& options = layout.options;
  const Unit unit = layout.notes.unit;
  if (options.cut == CutStyle::Garment) {
    std::vector<Piece> pieces;
    for (const LaidPiece& laid : layout.pieces) pieces.push_back(laid.piece);
    return garment_text(edges_to_cut(pieces), unit);
  }
  if (options.cut != CutStyle::Toile || options.allowance <= Length()) return "no seam allowance";
  return "seam allowance " + length_text(options.allowance, unit) +
         " at seams and opening; none elsewhere";
}

}  // namespace blockwright
