#include "free_space.hpp"

#include "blockwright/base/error.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

// Curves are flattened to this share of a cell.
constexpr double kFlatteningShare = 0.1;

// Whole cells only: what is left at the far edges counts as taken.
int cells_in(double extent, double cell) {
  return std::max(1, static_cast<int>(std::floor(extent / cell)));
}

int cells_for(double extent, double cell) {
  return std::max(1, static_cast<int>(std::ceil(extent / cell)));
}

// The whole numbers from 0 to `last`, those nearest to `wish` first; none if last is negative.
std::vector<int> outwards(int last, double wish) {
  std::vector<int> order;
  for (int i = 0; i <= last; ++i) order.push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return std::abs(a - wish) < std::abs(b - wish); });
  return order;
}

}  // namespace

FreeSpace::FreeSpace(const Box& area, double cell)
    : area_(area),
      cell_(cell),
      columns_(cells_in(area.width(), cell)),
      rows_(cells_in(area.height(), cell)),
      taken_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 0) {
  require(cell > 0.0, "a cell needs a size");
}

int FreeSpace::column(double x) const {
  return static_cast<int>(std::floor((x - area_.left) / cell_));
}

int FreeSpace::row(double y) const {
  return static_cast<int>(std::floor((y - area_.bottom) / cell_));
}

std::size_t FreeSpace::index(int column, int row) const {
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
         static_cast<std::size_t>(column);
}

void FreeSpace::take_cell(int column, int row) {
  if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return;
  taken_[index(column, row)] = 1;
  sums_.reset();
}

void FreeSpace::take(const Box& box) {
  for (int r = std::max(0, row(box.bottom)); r <= std::min(rows_ - 1, row(box.top)); ++r) {
    for (int c = std::max(0, column(box.left)); c <= std::min(columns_ - 1, column(box.right));
         ++c) {
      take_cell(c, r);
    }
  }
}

void FreeSpace::take(const Path& path) {
  const auto points = flattened(path, kFlatteningShare * cell_);
  for (std::size_t i = 1; i < points.size(); ++i) take_chord(points[i - 1], points[i]);
}

// Row by row: the columns that the chord passes while it is in the row.
void FreeSpace::take_chord(Point a, Point b) {
  if (a.y > b.y) std::swap(a, b);
  const auto x_at = [&](double y) {
    return b.y > a.y ? a.x + (std::clamp(y, a.y, b.y) - a.y) / (b.y - a.y) * (b.x - a.x) : a.x;
  };
  const int last = std::min(rows_ - 1, row(b.y));
  for (int r = std::max(0, row(a.y)); r <= last; ++r) {
    double enters = x_at(area_.bottom + r * cell_), leaves = x_at(area_.bottom + (r + 1) * cell_);
    if (a.y == b.y) leaves = b.x;
    if (enters > leaves) std::swap(enters, leaves);
    for (int c = std::max(0, column(enters)); c <= std::min(columns_ - 1, column(leaves)); ++c) {
      take_cell(c, r);
    }
  }
}

// Cells whose middles lie before the first crossing, between the second and the third, and so on.
void FreeSpace::take_row_outside(int row, std::vector<double> crossings) {
  sums_.reset();
  std::sort(crossings.begin(), crossings.end());
  crossings.push_back(area_.right + cell_);
  int from = 0;
  for (std::size_t i = 0; i < crossings.size(); ++i) {
    const int to = std::clamp(column(crossings[i] + 0.5 * cell_), from, columns_);
    const auto first = taken_.begin() + static_cast<std::ptrdiff_t>(index(from, row));
    if (i % 2 == 0) std::fill_n(first, to - from, char{1});
    from = to;
  }
}

void FreeSpace::take_outside(const Path& closed) {
  std::vector<std::vector<double>> crossings(static_cast<std::size_t>(rows_));
  const auto points = flattened(closed, kFlatteningShare * cell_);
  for (std::size_t i = 0; i < points.size(); ++i) {
    Point low = points[i], high = points[(i + 1) % points.size()];
    if (low.y > high.y) std::swap(low, high);
    for (int r = std::max(0, row(low.y) - 1); r < rows_; ++r) {
      const double y = area_.bottom + (r + 0.5) * cell_;
      if (y >= high.y) break;
      if (y < low.y) continue;
      const double along = (y - low.y) / (high.y - low.y);
      crossings[static_cast<std::size_t>(r)].push_back(low.x + along * (high.x - low.x));
    }
  }
  for (int r = 0; r < rows_; ++r) {
    take_row_outside(r, std::move(crossings[static_cast<std::size_t>(r)]));
  }
  take(closed);
}

bool FreeSpace::is_free(const Box& box) const {
  if (box.left < area_.left || box.bottom < area_.bottom || box.right > area_.right ||
      box.top > area_.top) {
    return false;
  }
  for (int r = row(box.bottom); r <= std::min(rows_ - 1, row(box.top)); ++r) {
    for (int c = column(box.left); c <= std::min(columns_ - 1, column(box.right)); ++c) {
      if (taken_[index(c, r)] != 0) return false;
    }
  }
  return true;
}

const FreeSpace::Sums& FreeSpace::taken_sums() {
  if (sums_) return *sums_;
  Sums& sums = sums_.emplace(Sums{static_cast<std::size_t>(columns_) + 1, {}});
  sums.corner.assign(sums.stride * (static_cast<std::size_t>(rows_) + 1), 0);
  std::size_t at = sums.stride;
  for (std::size_t i = 0; i < taken_.size(); ++at) {
    int in_row = 0;
    for (int c = 0; c < columns_; ++c) {
      in_row += taken_[i++];
      ++at;
      sums.corner[at] = sums.corner[at - sums.stride] + in_row;
    }
  }
  return sums;
}

int FreeSpace::Sums::in(int column, int row, int wide, int high) const {
  const std::size_t low = static_cast<std::size_t>(row) * stride + static_cast<std::size_t>(column);
  const std::size_t up = low + static_cast<std::size_t>(high) * stride;
  const auto across = static_cast<std::size_t>(wide);
  return corner[up + across] - corner[up] - corner[low + across] + corner[low];
}

std::optional<Box> FreeSpace::find(double width, double height, Point wish) {
  const Box as_wished = {wish.x - 0.5 * width, wish.y - 0.5 * height, wish.x + 0.5 * width,
                         wish.y + 0.5 * height};
  if (is_free(as_wished)) return as_wished;
  const int wide = cells_for(width, cell_), high = cells_for(height, cell_);
  const auto columns = outwards(columns_ - wide, (wish.x - area_.left) / cell_ - 0.5 * wide);
  const auto rows = outwards(rows_ - high, (wish.y - area_.bottom) / cell_ - 0.5 * high);
  const Sums& taken = taken_sums();
  std::optional<Box> best;
  double best_distance = std::numeric_limits<double>::infinity();
  for (const int r : rows) {
    if (std::abs(area_.bottom + (r + 0.5 * high) * cell_ - wish.y) >= best_distance) break;
    for (const int c : columns) {
      const Point middle = {area_.left + (c + 0.5 * wide) * cell_,
                            area_.bottom + (r + 0.5 * high) * cell_};
      if (distance(middle, wish) >= best_distance) break;
      if (taken.in(c, r, wide, high) != 0) continue;
      best_distance = distance(middle, wish);
      best = Box{middle.x - 0.5 * width, middle.y - 0.5 * height, middle.x + 0.5 * width,
                 middle.y + 0.5 * height};
    }
  }
  return best;
}

}  // namespace blockwright
