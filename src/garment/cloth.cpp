#include "blockwright/garment/cloth.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <tuple>

namespace blockwright {
namespace {

// What rounding may take off a multiple of what is sold, in mm.
constexpr double kSoldTolerance = 1e-6;

// What is laid down once. On a fold it lies at the fold.
struct LayItem {
  std::string piece;
  double length = 0.0;
  double width = 0.0;
  bool on_fold = false;
};

// Pieces one after another along the cloth, none wider than the first.
struct LayColumn {
  double across = 0.0;
  double width = 0.0;
  double used = 0.0;
  bool on_fold = false;
};

// Columns side by side, as long as the first piece of the first.
struct LayRow {
  double along = 0.0;
  double length = 0.0;
  double used = 0.0;
  std::vector<LayColumn> columns = {};

  [[nodiscard]] auto folds() const {
    return std::ranges::count(columns, true, &LayColumn::on_fold);
  }
};

constexpr int kFoldsInRow = 2;

double after(double used) { return used > 0.0 ? used + kBetweenPieces : 0.0; }

class Lay {
 public:
  explicit Lay(double usable) : usable_(usable) {}

  // Requires: not wider than the lay.
  void put(const LayItem& item) {
    for (LayRow& row : rows_) {
      if (put_in(row, item)) return;
    }
    rows_.push_back({after(length_), item.length});
    length_ = rows_.back().along + item.length;
    put_in(rows_.back(), item);
  }

  [[nodiscard]] double length() const { return length_; }
  [[nodiscard]] const std::vector<ClothPlace>& places() const { return places_; }

 private:
  bool put_in(LayRow& row, const LayItem& item) {
    LayColumn* column = column_for(row, item);
    if (column == nullptr) column = new_column(row, item);
    if (column == nullptr) return false;
    const double along = after(column->used);
    places_.push_back({item.piece, column->across, row.along + along, item.width, item.length});
    column->used = along + item.length;
    return true;
  }

  static LayColumn* column_for(LayRow& row, const LayItem& item) {
    return first_where(row.columns, [&](const LayColumn& column) {
      return (column.on_fold || !item.on_fold) && item.width <= column.width &&
             after(column.used) + item.length <= row.length;
    });
  }

  [[nodiscard]] LayColumn* new_column(LayRow& row, const LayItem& item) const {
    const double across = after(row.used);
    const bool no_fold = item.on_fold && row.folds() == kFoldsInRow;
    if (no_fold || item.length > row.length || across + item.width > usable_) return nullptr;
    row.used = across + item.width;
    return &row.columns.emplace_back(LayColumn{across, item.width, 0.0, item.on_fold});
  }

  double usable_, length_ = 0.0;
  std::vector<LayRow> rows_;
  std::vector<ClothPlace> places_;
};

// As they are laid on folded cloth, which cuts two of each.
std::vector<LayItem> folded_items(const std::vector<ClothPiece>& pieces) {
  std::vector<LayItem> items;
  items.reserve(pieces.size());
  for (const ClothPiece& piece : pieces) {
    items.push_back({piece.name, piece.length, piece.width, piece.cut_on == CutOn::Fold});
  }
  return items;
}

std::vector<LayItem> open_items(const std::vector<ClothPiece>& pieces) {
  std::vector<LayItem> items;
  items.reserve(2 * pieces.size());
  for (const ClothPiece& piece : pieces) {
    const double whole = piece.cut_on == CutOn::Fold ? 2.0 : 1.0;
    items.push_back({piece.name, piece.length, whole * piece.width});
    if (piece.cut_on == CutOn::Pair) items.push_back(items.back());
  }
  return items;
}

void longest_first(std::vector<LayItem>& items) {
  std::ranges::stable_sort(items, [](const LayItem& a, const LayItem& b) {
    return std::tie(b.length, b.width, a.piece) < std::tie(a.length, a.width, b.piece);
  });
}

const LayItem* first_wider(const std::vector<LayItem>& items, double usable) {
  return first_where(items, [&](const LayItem& item) { return item.width > usable; });
}

double to_buy(double cut, double sold_by) {
  return std::ceil(cut / (1.0 - kShrinking) / sold_by - kSoldTolerance) * sold_by;
}

ClothLength laid(std::vector<LayItem> items, double usable, const Cloth& cloth) {
  longest_first(items);
  Lay lay(usable);
  for (const LayItem& item : items) lay.put(item);
  const double without_square = lay.length();
  if (cloth.square > 0.0) lay.put({std::string(kStripSquare), cloth.square, cloth.square});
  ClothLength length;
  length.cut = lay.length() + kClothEnds;
  length.buy = to_buy(length.cut, cloth.sold_by);
  length.square_free = lay.length() == without_square;
  length.places = lay.places();
  return length;
}

}  // namespace

ClothLength cloth_length(const std::vector<ClothPiece>& pieces, const Cloth& cloth) {
  const double usable = cloth.width - kSelvedges;
  const bool one_sided = std::ranges::count(pieces, CutOn::One, &ClothPiece::cut_on) > 0;
  std::vector<LayItem> items = folded_items(pieces);
  const bool fits = first_wider(items, usable / 2.0) == nullptr && cloth.square <= usable / 2.0;
  if (fits && !one_sided) return laid(std::move(items), usable / 2.0, cloth);
  items = open_items(pieces);
  ClothLength length;
  if (const LayItem* wide = first_wider(items, usable)) {
    length.too_wide = wide->piece;
  } else if (cloth.square > usable) {
    length.too_wide = kStripSquare;
  } else {
    length = laid(std::move(items), usable, cloth);
  }
  length.open = true;
  return length;
}

}  // namespace blockwright
