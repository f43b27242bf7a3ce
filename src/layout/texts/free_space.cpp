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

constexpr int kWord = 64;  // cells in a word

int next_word(int column) { return (column / kWord + 1) * kWord; }

std::size_t word_of(int column) { return static_cast<std::size_t>(column / kWord); }

Box box_about(Point middle, Vec size) {
  const Vec half = 0.5 * size;
  return {middle.x - half.x, middle.y - half.y, middle.x + half.x, middle.y + half.y};
}

}  // namespace

FreeSpace::FreeSpace(const Box& area, double cell)
    : area_(area),
      cell_(cell),
      columns_(cells_in(area.width(), cell)),
      rows_(cells_in(area.height(), cell)),
      open_{0, rows_, {0, columns_}},
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

FreeSpace::Columns FreeSpace::columns(double left, double right) const {
  return {std::max(0, column(left)), std::min(columns_, column(right) + 1)};
}

FreeSpace::Cells FreeSpace::cells(const Box& box) const {
  return {std::max(0, row(box.bottom)), std::min(rows_, row(box.top) + 1),
          columns(box.left, box.right)};
}

std::size_t FreeSpace::first_word(int row) const { return static_cast<std::size_t>(row) * words_; }

FreeSpace::Word FreeSpace::bits_of(Columns columns) {
  const int first = columns.from % kWord;
  const int count = std::min(columns.to - columns.from, kWord - first);
  const Word bits = count == kWord ? ~Word{0} : (Word{1} << count) - 1;
  return bits << first;
}

int FreeSpace::run_end(std::span<const Word> words, Columns columns, State state) {
  for (int at = columns.from; at < columns.to; at = next_word(at)) {
    const Word word = words[word_of(at)];
    const Word others = (state == State::Taken ? ~word : word) >> (at % kWord);
    if (others != 0) return std::min(columns.to, at + std::countr_zero(others));
  }
  return columns.to;
}

void FreeSpace::take_cells(int row, Columns columns) {
  for (; columns.from < columns.to; columns.from = next_word(columns.from)) {
    taken_[first_word(row) + word_of(columns.from)] |= bits_of(columns);
  }
}

void FreeSpace::take(const Box& box) {
  const Cells touched = cells(box);
  for (int r = touched.from; r < touched.to; ++r) take_cells(r, touched.columns);
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
  const int first = std::max(0, row(a.y));
  double enters = x_at(area_.bottom + first * cell_);
  for (int r = first; r <= last; ++r) {
    const double leaves = a.y == b.y ? b.x : x_at(area_.bottom + (r + 1) * cell_);
    take_cells(r, columns(std::min(enters, leaves), std::max(enters, leaves)));
    enters = leaves;
  }
}

// A row begins outside; where the outline passes between two middles of cells, what follows is on
// the other side of it.
void FreeSpace::take_outside(const Path& closed) {
  std::vector<Word> outside(taken_.size(), ~Word{0});
  const auto points = flattened(closed, kFlatteningShare * cell_);
  for (std::size_t i = 0; i < points.size(); ++i) {
    Point low = points[i], high = points[(i + 1) % points.size()];
    if (low.y > high.y) std::swap(low, high);
    for (int r = std::max(0, row(low.y) - 1); r < rows_; ++r) {
      const double y = area_.bottom + (r + 0.5) * cell_;
      if (y >= high.y) break;
      if (y < low.y) continue;
      const double x = low.x + (y - low.y) / (high.y - low.y) * (high.x - low.x);
      Columns beyond = {std::max(0, column(x + 0.5 * cell_)), columns_};
      for (; beyond.from < columns_; beyond.from = next_word(beyond.from)) {
        outside[first_word(r) + word_of(beyond.from)] ^= bits_of(beyond);
      }
    }
  }
  for (std::size_t i = 0; i < taken_.size(); ++i) taken_[i] |= outside[i];
  take(closed);
}

void FreeSpace::take(const FreeSpace& other) {
  for (std::size_t i = 0; i < taken_.size(); ++i) taken_[i] |= other.taken_[i];
}

// What is near in the rows themselves, then in those up to `reach` below and above them.
void FreeSpace::take_near(const Path& path, double reach) {
  FreeSpace beside({area_.left, area_.bottom - reach, area_.right, area_.top + reach}, cell_);
  const auto points = flattened(path, kFlatteningShare * cell_);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vec chord = points[i] - points[i - 1];
    const int steps = cells_for(norm(chord), kNearSteps * cell_);
    for (int step = 1; step <= steps; ++step) {
      const Point p = points[i - 1] + (static_cast<double>(step) / steps) * chord;
      beside.take(Box{p.x - reach, p.y, p.x + reach, p.y});
    }
  }
  const auto near = beside.taken_in_rows(2 * cells_for(reach, cell_) + 1);
  for (std::size_t i = 0; i < taken_.size(); ++i) taken_[i] |= near[i];
}

void FreeSpace::take_outside(const Box& box) {
  open_.from = std::max(open_.from, row(box.bottom) + 1);
  open_.to = std::max(open_.from, std::min(open_.to, row(box.top)));
  open_.columns.from = std::max(open_.columns.from, column(box.left) + 1);
  open_.columns.to = std::min(open_.columns.to, column(box.right));
}

bool FreeSpace::is_free(const Box& box) const {
  if (box.left < area_.left || box.bottom < area_.bottom || box.right > area_.right ||
      box.top > area_.top) {
    return false;
  }
  const auto [from, to, columns] = cells(box);
  if (from < open_.from || to > open_.to || columns.from < open_.columns.from ||
      columns.to > open_.columns.to) {
    return false;
  }
  for (int r = from; r < to; ++r) {
    const auto words = std::span(taken_).subspan(first_word(r), words_);
    if (run_end(words, columns, State::Free) < columns.to) return false;
  }
  return true;
}

// Twice as many rows together at each step.
std::vector<FreeSpace::Word> FreeSpace::taken_in_rows(int high) const {
  std::vector<Word> any = taken_;
  const std::size_t end = first_word(open_.to);
  for (int together = 1; together < high;) {
    const int more = std::min(together, high - together);
    const std::size_t above = first_word(more);
    for (std::size_t i = first_word(open_.from); i + above < end; ++i) any[i] |= any[i + above];
    together += more;
  }
  return any;
}

// Every run of free columns that is wide enough offers its column nearest to the wish.
std::optional<int> FreeSpace::free_column(std::span<const Word> taken, int wide,
                                          double wish) const {
  const double nearest = std::ceil(wish - 0.5);
  std::optional<int> best;
  const int end = open_.columns.to;
  for (int from = open_.columns.from; from < end;) {
    const int to = run_end(taken, {from, end}, State::Free);
    if (to - from >= wide) {
      const int column = static_cast<int>(std::clamp<double>(nearest, from, to - wide));
      if (!best || std::abs(column - wish) < std::abs(*best - wish)) best = column;
    }
    from = run_end(taken, {to, end}, State::Taken);
  }
  return best;
}

std::optional<Box> FreeSpace::find(Vec size, Point wish) const {
  const Box as_wished = box_about(wish, size);
  if (is_free(as_wished)) return as_wished;
  const int wide = cells_for(size.x, cell_), high = cells_for(size.y, cell_);
  const double wished_column = (wish.x - area_.left) / cell_ - 0.5 * wide;
  const double wished_row = (wish.y - area_.bottom) / cell_ - 0.5 * high;
  const std::vector<Word> taken = taken_in_rows(high);
  std::optional<Box> best;
  double best_distance = std::numeric_limits<double>::infinity();
  // The rows nearest to the wish first.
  const int first = open_.from, last = open_.to - high;
  int below = std::min(last, static_cast<int>(std::floor(std::max(first - 1.0, wished_row))));
  int above = below + 1;
  while (below >= first || above <= last) {
    const bool down = above > last || (below >= first && wished_row - below <= above - wished_row);
    const int r = down ? below-- : above++;
    const double y = area_.bottom + (r + 0.5 * high) * cell_;
    if (std::abs(y - wish.y) >= best_distance) break;
    const auto words = std::span(taken).subspan(first_word(r), words_);
    const auto c = free_column(words, wide, wished_column);
    if (!c) continue;
    const Point middle = {area_.left + (*c + 0.5 * wide) * cell_, y};
    if (distance(middle, wish) >= best_distance) continue;
    best_distance = distance(middle, wish);
    best = box_about(middle, size);
  }
  return best;
}

}  // namespace blockwright
