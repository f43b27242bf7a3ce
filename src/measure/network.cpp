#include "network.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace blockwright {
namespace {

// A push that changes a movement by less than this, in SDs, is rounding.
constexpr double kNoChange = 1e-13;
// Most tapes need one round, contradictory ones up to 50; of 20,000 whose every value was drawn
// from within its limits the slowest needed 10,000.
constexpr int kMostRounds = 20'000;
// A bound that follows from others up to this part of it says nothing of its own.
constexpr double kDependent = 1e-9;

// A bound in units of the SDs, where all observations weigh alike.
struct Row {
  std::array<Bound::Term, 3> terms{};
  double passed = 0.0;
  double squares = 0.0;
};

Row weighed(const Bound& bound, std::span<const Observation> observations) {
  Row row{bound.terms, bound.passed_by(observations), 0.0};
  for (Bound::Term& term : row.terms) {
    term.times *= observations[term.observation].sd;
    row.squares += term.times * term.times;
  }
  return row;
}

double along(const Row& row, const std::vector<double>& movement) {
  double sum = 0.0;
  for (const auto& [observation, times] : row.terms) sum += times * movement[observation];
  return sum;
}

// Gives one bound the push that keeps it; how far that moved things.
double push_one(const Row& row, double most_push, std::vector<double>& movement, double& push) {
  if (row.squares == 0.0) return 0.0;
  const double still_passed = row.passed + along(row, movement);
  const double wanted = std::clamp(push + still_passed / row.squares, 0.0, most_push);
  const double change = wanted - push;
  push = wanted;
  for (const auto& [observation, times] : row.terms) movement[observation] -= change * times;
  return std::abs(change) * std::sqrt(row.squares);
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

void add(std::vector<double>& to, double times, const std::vector<double>& what) {
  for (std::size_t i = 0; i < to.size(); ++i) to[i] += times * what[i];
}

// Independent directions, each of length 1 and square to the others, and how far along each one
// moves to meet all bounds.
struct Directions {
  explicit Directions(std::size_t observations) : size(observations) {}

  std::size_t size;
  std::vector<std::vector<double>> directions;
  std::vector<double> moves;

  void take(const Row& row) {
    std::vector<double> rest(size, 0.0);
    for (const auto& [observation, times] : row.terms) rest[observation] += times;
    double missing = -row.passed;
    for (std::size_t k = 0; k < directions.size(); ++k) {
      const double part = dot(rest, directions[k]);
      add(rest, -part, directions[k]);
      missing -= part * moves[k];
    }
    const double length = std::sqrt(dot(rest, rest));
    if (length <= kDependent * std::sqrt(row.squares)) return;
    for (double& r : rest) r /= length;
    directions.push_back(std::move(rest));
    moves.push_back(missing / length);
  }
};

}  // namespace

double Bound::passed_by(std::span<const Observation> observations) const {
  double sum = -most;
  for (const auto& [observation, times] : terms) sum += times * observations[observation].value;
  return sum;
}

double Bound::sd(std::span<const Observation> observations) const {
  return std::sqrt(weighed(*this, observations).squares);
}

Movement least_movement(std::span<const Observation> observations, std::span<const Bound> bounds) {
  std::vector<Row> rows;
  for (const Bound& bound : bounds) rows.push_back(weighed(bound, observations));
  Movement m{std::vector<double>(observations.size()), std::vector<double>(bounds.size())};
  for (int round = 0; round < kMostRounds; ++round) {
    double most = 0.0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      most = std::max(most, push_one(rows[i], bounds[i].most_push, m.by, m.push[i]));
    }
    if (most < kNoChange) break;
  }
  for (std::size_t i = 0; i < m.by.size(); ++i) m.by[i] *= observations[i].sd;
  return m;
}

Reliability reliability(std::span<const Observation> observations, std::span<const Bound> met) {
  Directions all(observations.size());
  for (const Bound& bound : met) all.take(weighed(bound, observations));
  Reliability r{std::vector<double>(observations.size()), std::vector<double>(observations.size())};
  for (std::size_t i = 0; i < observations.size(); ++i) {
    double moves = 0.0;
    for (std::size_t k = 0; k < all.moves.size(); ++k) {
      const double part = all.directions[k][i];
      r.redundancy[i] += part * part;
      moves += part * all.moves[k];
    }
    if (r.redundancy[i] > kDependent) r.residual[i] = moves / std::sqrt(r.redundancy[i]);
  }
  return r;
}

}  // namespace blockwright
