#include "cloth_lines.hpp"

#include "blockwright/garment/binding.hpp"
#include "blockwright/geometry/box.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>

namespace blockwright {
namespace {

constexpr double kMmPerInch = 25.4;
// Widths in which dress cloth is sold, and the one of interfacing; lengths are sold by 5 cm or an
// eighth of a yard. Common practice, no source.
constexpr double kCmWidths[] = {900.0, 1140.0, 1400.0, 1500.0};
constexpr double kInchWidths[] = {36.0, 45.0, 54.0, 60.0};
constexpr double kSoldByCm = 50.0;
constexpr double kSoldByInch = 4.5;
constexpr int kEighthsOfYard = 8;

std::vector<double> widths_of(Material material, Unit unit) {
  std::vector<double> widths(std::begin(kCmWidths), std::end(kCmWidths));
  if (unit == Unit::Inch) {
    widths.clear();
    for (const double inches : kInchWidths) widths.push_back(inches * kMmPerInch);
  }
  if (material == Material::Interfacing) widths.resize(1);
  return widths;
}

double sold_by(Unit unit) { return unit == Unit::Cm ? kSoldByCm : kSoldByInch * kMmPerInch; }

// "105 cm", or "40 1/2 in or 1 1/8 yd".
std::string sold_words(double length, Unit unit) {
  std::string words = length_text(Length::mm(length), unit);
  if (unit == Unit::Cm) return words;
  const int eighths = static_cast<int>(std::lround(length / sold_by(unit)));
  const int yards = eighths / kEighthsOfYard, rest = eighths % kEighthsOfYard;
  const int shared = std::gcd(rest, kEighthsOfYard);
  std::string in_yards = yards > 0 || rest == 0 ? std::to_string(yards) : "";
  if (rest > 0) {
    if (yards > 0) in_yards += " ";
    in_yards += fmt::format("{}/{}", rest / shared, kEighthsOfYard / shared);
  }
  return words + " or " + in_yards + " yd";
}

// "105 cm (98.4 cm once washed)", or why not.
std::string length_words(const ClothLength& length, const Cloth& cloth, Unit unit) {
  if (!length.too_wide.empty()) {
    const bool square = length.too_wide == kStripSquare;
    return "too narrow for the " +
           (square ? "square for the bias strips" : name_text(length.too_wide));
  }
  std::string words = sold_words(length.buy, unit) + " (" +
                      length_text(Length::mm(length.cut), unit) + " once washed)";
  if (length.open) words += ", laid open in one layer";
  if (cloth.square > 0.0) {
    words += length.square_free ? "; bias strips from what is left over" : "; bias strips included";
  }
  return words;
}

// Widths that take the same, and what they take.
struct SameWidths {
  std::string widths, takes;
};

std::vector<SameWidths> by_width(const std::vector<ClothPiece>& pieces, Material material,
                                 double square, Unit unit) {
  std::vector<SameWidths> all;
  for (const double width : widths_of(material, unit)) {
    const Cloth cloth{width, sold_by(unit), square};
    const std::string takes = length_words(cloth_length(pieces, cloth), cloth, unit);
    const std::string words = length_text(Length::mm(width), unit);
    if (!all.empty() && all.back().takes == takes) {
      all.back().widths += " or " + words;
    } else {
      all.push_back({words, takes});
    }
  }
  return all;
}

void add_cloth(const Pattern& pattern, Material material, Unit unit,
               std::vector<std::string>& lines) {
  const std::vector<ClothPiece> pieces = cloth_pieces(pattern, material);
  if (pieces.empty()) return;
  const double square = material == Material::Cloth ? square_of_strips(pattern) : 0.0;
  for (const SameWidths& one : by_width(pieces, material, square, unit)) {
    lines.push_back(fmt::format("{}, {} wide: {}", material_name(material), one.widths, one.takes));
  }
}

// The grain of a piece is upright in its frame.
ClothPiece cloth_piece(const Piece& piece, const Path& cut) {
  const Box box = box_of(cut);
  return {piece.name, piece.cut_on, box.height(), box.width()};
}

}  // namespace

std::vector<ClothPiece> cloth_pieces(const Pattern& pattern, Material material) {
  PrintOptions options;
  options.cut = material == Material::Cloth ? CutStyle::Garment : CutStyle::Net;
  std::vector<ClothPiece> pieces;
  for (const Piece& piece : pattern.pieces) {
    if (std::ranges::count(piece.cut_from, material) == 0) continue;
    pieces.push_back(cloth_piece(piece, outline_to_cut(piece, options)));
  }
  return pieces;
}

std::vector<std::string> cloth_lines(const Pattern& pattern, Unit unit) {
  std::vector<std::string> lines;
  for (const Material material : {Material::Cloth, Material::Interfacing}) {
    add_cloth(pattern, material, unit, lines);
  }
  lines.push_back(fmt::format(
      "counted for that: cloth folded in half along its length, all pieces one way up, {} for the "
      "ends, {:.0f} % for shrinking; more for checks or a large pattern",
      length_text(Length::mm(kClothEnds), unit), 100.0 * kShrinking));
  return lines;
}

}  // namespace blockwright
