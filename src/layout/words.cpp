#include "words.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/length.hpp"
#include "blockwright/base/number_text.hpp"

#include <algorithm>

namespace blockwright {
namespace {

std::vector<std::string> edges_with(const Piece& piece, const PrintOptions& options,
                                    bool allowance) {
  std::vector<std::string> names;
  for (const Edge& edge : piece.edges) {
    if (edge.role == EdgeRole::Fold) continue;
    if ((allowance_at(edge, options) > 0.0) == allowance) names.push_back(plain_name(edge.name));
  }
  return names;
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
  switch (cut_on) {
    case CutOn::Fold:
      return "cut 1 on the fold";
    case CutOn::Pair:
      return "cut 2, a pair";
    case CutOn::One:
      return "cut 1, right side up";
  }
  require(false, "unknown cut instruction");
  return {};
}

std::string length_text(double mm, bool inches) {
  if (inches) return inch_fraction(Length::mm(mm).inches()) + " in";
  return trimmed(Length::mm(mm).cm(), 2) + " cm";
}

std::string listed(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::string allowance_text(const Piece& piece, const PrintOptions& options, bool inches) {
  const auto with = edges_with(piece, options, true);
  if (with.empty()) return "no seam allowance";
  const auto without = edges_with(piece, options, false);
  std::string text =
      "seam allowance " + length_text(options.allowance, inches) + " at " + listed(with);
  if (!without.empty()) text += "; none at " + listed(without);
  return text;
}

std::string allowance_text(const PrintOptions& options, bool inches) {
  if (options.cut != CutStyle::Toile || options.allowance <= 0.0) return "no seam allowance";
  return "seam allowance " + length_text(options.allowance, inches) +
         " at seams and opening; none at neckline, armhole and waist";
}

double allowance_at(const Edge& edge, const PrintOptions& options) {
  if (options.cut != CutStyle::Toile) return 0.0;
  const bool sewn = edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening;
  return sewn ? options.allowance : 0.0;
}

}  // namespace blockwright
