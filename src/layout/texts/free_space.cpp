#include "free_space.hpp"

#include "blockwright/base/error.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

// Curves are flattened to this share of a cell.
constexpr double kFlatteningShare = 0.1;
// What is near to a path is taken in steps of so many cells.
constexpr double kNearSteps = 4.0;

// Whole cells only: what is left at the far edges counts as taken.
int cells_in(double extent, double cell) {
  return std::max(1, static_cast<int>(std::floor(extent / cell)));
}

int cells_for(double extent, double cell) {
  return std::max(1, static_cast<int>(std::ceil(extent / cell)));
}

constexpr int kWord = 64;  // cells in a word, the first in its lowest bit

int next_word(int column) { return (column / kWord + 1) * kWord; }

// The bits of the columns from `from` to before `to` that stand in the word of `from`.
std::uint64_t bits_of(int from, int to) {
  const int first = from % kWord, count = std::min(to - from, kWord - first);
  const std::uint64_t bits = count == kWord ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1;
  return bits << first;
}

// Where the run of columns from `from` on ends whose bits are all `taken`; at most at `end`.
int run_end(const std::vector<std::uint64_t>& words, int from, int end, bool taken) {
  for (int at = from; at < end; at = next_word(at)) {
    const std::uint64_t word = words[static_cast<std::size_t>(at / kWord)];
    const std::uint64_t others = (taken ? ~word : word) >> (at % kWord);
    if (others != 0) return std::min(end, at + std::countr_zero(others));
  }
  return end;
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
      words_(static_cast<std::size_t>(columns_ + kWord - 1) / kWord),
      taken_(words_ * static_cast<std::size_t>(rows_), 0) {
  require(cell > 0.0, "a cell needs a size");
}

int FreeSpace::column(double x) const {
  return static_cast<int>(std::floor((x - area_.left) / cell_));
}

int FreeSpace::row(double y) const {
  return static_cast<int>(std::floor((y - area_.bottom) / cell_));
}

void FreeSpace::take_cells(int row, int from, int to) {
  std::uint64_t* words = taken_.data() + static_cast<std::size_t>(row) * words_;
  for (int at = from; at < to; at = next_word(at)) words[at / kWord] |= bits_of(at, to);
}

void FreeSpace::take(const Box& box) {
  const int from = std::max(0, column(box.left)), to = std::min(columns_ - 1, column(box.right));
  for (int r = std::max(0, row(box.bottom)); r <= std::min(rows_ - 1, row(box.top)); ++r) {
    take_cells(r, from, to + 1);
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
    take_cells(r, std::max(0, column(enters)), std::min(columns_ - 1, column(leaves)) + 1);
  }
}

// Cells whose middles lie before the first crossing, between the second and the third, and so on.
void FreeSpace::take_row_outside(int row, std::vector<double> crossings) {
  std::sort(crossings.begin(), crossings.end());
  crossings.push_back(area_.right + cell_);
  int from = 0;
  for (std::size_t i = 0; i < crossings.size(); ++i) {
    const int to = std::clamp(column(crossings[i] + 0.5 * cell_), from, columns_);
    if (i % 2 == 0) take_cells(row, from, to);
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

void FreeSpace::take(const FreeSpace& other) {
  for (std::size_t i = 0; i < taken_.size(); ++i) taken_[i] |= other.taken_[i];
}

void FreeSpace::take_near(const Path& path, double reach) {
  const auto points = flattened(path, kFlatteningShare * cell_);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vec chord = points[i] - points[i - 1];
    const int steps = cells_for(distance(points[i - 1], points[i]), kNearSteps * cell_);
    for (int step = 1; step <= steps; ++step) {
      const Point p = points[i - 1] + (static_cast<double>(step) / steps) * chord;
      take(Box{p.x - reach, p.y - reach, p.x + reach, p.y + reach});
    }
  }
}

bool FreeSpace::is_free(const Box& box) const {
  if (box.left < area_.left || box.bottom < area_.bottom || box.right > area_.right ||
      box.top > area_.top) {
    return false;
  }
  const int from = column(box.left), to = std::min(columns_ - 1, column(box.right)) + 1;
  const int low = row(box.bottom), high = std::min(rows_ - 1, row(box.top)) - low + 1;
  const Words taken = taken_in_rows(low, high);
  for (int at = from; at < to; at = next_word(at)) {
    if ((taken[static_cast<std::size_t>(at / kWord)] & bits_of(at, to)) != 0) return false;
  }
  return true;
}

FreeSpace::Words FreeSpace::taken_in_rows(int row, int high) const {
  Words any(words_, 0);
  for (int r = row; r < row + high; ++r) {
    const std::uint64_t* words = taken_.data() + static_cast<std::size_t>(r) * words_;
    for (std::size_t i = 0; i < words_; ++i) any[i] |= words[i];
  }
  return any;
}

// Every run of free columns that is wide enough offers its column nearest to the wish.
std::optional<int> FreeSpace::free_column(const Words& taken, int wide, double wish) const {
  const double nearest = std::ceil(wish - 0.5);
  std::optional<int> best;
  for (int from = 0; from < columns_;) {
    const int to = run_end(taken, from, columns_, false);
    if (to - from >= wide) {
      const int column = static_cast<int>(std::clamp<double>(nearest, from, to - wide));
      if (!best || std::abs(column - wish) < std::abs(*best - wish)) best = column;
    }
    from = run_end(taken, to, columns_, true);
  }
  return best;
}

std::optional<Box> FreeSpace::find(double width, double height, Point wish) const {
  const Box as_wished = {wish.x - 0.5 * width, wish.y - 0.5 * height, wish.x + 0.5 * width,
                         wish.y + 0.5 * height};
  if (is_free(as_wished)) return as_wished;
  const int wide = cells_for(width, cell_), high = cells_for(height, cell_);
  const double wished_column = (wish.x - area_.left) / cell_ - 0.5 * wide;
  const double wished_row = (wish.y - area_.bottom) / cell_ - 0.5 * high;
  std::optional<Box> best;
  double best_distance = std::numeric_limits<double>::infinity();
  for (const int r : outwards(rows_ - high, wished_row)) {
    const double y = area_.bottom + (r + 0.5 * high) * cell_;
    if (std::abs(y - wish.y) >= best_distance) break;
    const auto c = free_column(taken_in_rows(r, high), wide, wished_column);
    if (!c) continue;
    const Point middle = {area_.left + (*c + 0.5 * wide) * cell_, y};
    if (distance(middle, wish) >= best_distance) continue;
    best_distance = distance(middle, wish);
    best = Box{middle.x - 0.5 * width, middle.y - 0.5 * height, middle.x + 0.5 * width,
               middle.y + 0.5 * height};
  }
  return best;
}

}  // namespace blockwright
