#include "tally.hpp"

#include "support/armhole_shape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>

namespace blockwright {
namespace {

using enum MeasurementName;

double bust_dart_of(const Piece& front) {
  double degrees = 0.0;
  for (const Dart& dart : front.darts) {
    if (dart.edge != "waist") degrees += dart.angle().degrees();
  }
  return degrees;
}

// Shapes that no maker wants, in mm. Ours, by eye.
constexpr double kLeastArmholeRadius = 12.0, kLeastNecklineRadius = 10.0;
constexpr double kBelowUnderarm = 1.0;
constexpr int kSamples = 32;
double lowest(const Path& path) {
  double y = INFINITY;
  for (const Curve& curve : path.curves()) {
    for (int i = 0; i <= kSamples; ++i) {
      y = std::fmin(y, point_at(curve, static_cast<double>(i) / kSamples).y);
    }
  }
  return y;
}

std::vector<std::string> faults_of(const Pattern& pattern) {
  std::vector<std::string> faults;
  const Piece& front = pattern.piece("front");
  const double underarm = front.landmark("underarm_point").y;
  if (lowest(front.edge("armhole").path) < underarm - kBelowUnderarm) {
    faults.emplace_back("front armhole below the underarm");
  }
  for (const char* name : {"front", "back"}) {
    const Piece& piece = pattern.piece(name);
    const std::string piece_name = name;
    if (least_radius(piece.edge("armhole").path) < kLeastArmholeRadius) {
      faults.push_back(piece_name + " armhole sharp");
    }
    if (least_radius(piece.edge("neckline").path) < kLeastNecklineRadius) {
      faults.push_back(piece_name + " neckline sharp");
    }
  }
  return faults;
}

double front_darts_of(const Piece& front) {
  double degrees = 0.0;
  for (const Dart& dart : front.darts) degrees += dart.angle().degrees();
  return degrees;
}

void print_spread(const char* name, const std::vector<double>& values) {
  if (values.empty()) return;
  const auto at = [&](double share) { return at_share(values, share); };
  fmt::print("  {:<28} least {:8.3f}  5 % {:8.3f}  middle {:8.3f}  95 % {:8.3f}  most {:8.3f}\n",
             name, at(0.0), at(0.05), at(0.5), at(0.95), at(1.0));
}

/// A reason without its numbers, so that like ones are counted together.
std::string without_numbers(const std::string& reason) {
  return std::regex_replace(reason, std::regex("[0-9]+([.][0-9]+)?"), "#");
}

}  // namespace

std::string counts_text(const std::map<std::string, int>& counts) {
  std::string text;
  for (const auto& [what, count] : counts) {
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", what, count);
  }
  return text;
}

double at_share(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  return values.at(static_cast<std::size_t>(share * static_cast<double>(values.size() - 1)));
}

void Tally::count(const Session& session, const std::string& id) {
  const CheckedBlock checked = checked_block(session);
  ++people_;
  count_problems(checked, id);
  count_measures(checked);
  count_faults(checked);
  count_armhole(checked);
}

void Tally::count_armhole(const CheckedBlock& checked) {
  const ArmholeShape shape = armhole_shape(checked.block.pattern);
  back_hollows_.push_back(shape.back_hollow);
  back_shares_.push_back(shape.back_share);
  radii_.push_back(shape.least_radius);
  if (!errors_of(checked.report).empty()) return;
  const std::vector<std::string> broken = broken_laws(shape);
  for (const std::string& law : broken) ++laws_broken_[law];
  odd_armholes_ += broken.empty() ? 0 : 1;
}

void Tally::count_faults(const CheckedBlock& checked) {
  const std::vector<std::string> faults = faults_of(checked.block.pattern);
  for (const std::string& fault : faults) ++faults_[fault];
  silent_ += !faults.empty() && errors_of(checked.report).empty() ? 1 : 0;
}

void Tally::count_problems(const CheckedBlock& checked, const std::string& id) {
  std::set<std::string> codes;
  bool warned = false, unnamed = false;
  for (const Problem& problem : checked.report.problems) {
    warned = warned || problem.severity == Severity::Warning;
    if (problem.severity == Severity::Warning && problem.code == "draft.adjusted") {
      ++moved_with_warning_[problem.where];
    }
    if (problem.severity != Severity::Error) continue;
    codes.insert(problem.code);
    unnamed = unnamed || problem.where.empty();
    refusals_.push_back(id + ": " + to_text(problem));
  }
  for (const std::string& code : codes) ++errors_[code];
  refused_ += codes.empty() ? 0 : 1;
  warned_ += warned ? 1 : 0;
  refused_unnamed_ += unnamed ? 1 : 0;
}

void Tally::count_measures(const CheckedBlock& checked) {
  for (const MeasureBack& row : checked.report.measure_back) {
    const Measure off = abs(row.residual() - row.adjustment);
    off_measure_ += off > kMeasureBackTolerance.of(row.name) ? 1 : 0;
    if (row.name == ShoulderSlope) slopes_.push_back(row.pattern.number());
  }
  for (const Adjustment& a : checked.block.adjustments) {
    gave_way_[fmt::format("{}: {}", info(a.name).key, without_numbers(a.why.plain()))].push_back(
        a.by.number());
    moved_[std::string(info(a.name).key)].push_back(std::abs(a.by.number()));
  }
  const Piece& front = checked.block.pattern.piece("front");
  bust_darts_.push_back(bust_dart_of(front));
  front_darts_.push_back(front_darts_of(front));
  neck_shares_.push_back(length_of(checked.report, "back.neckline") /
                         checked.body[NeckBaseGirth].number());
  armholes_.push_back(length_of(checked.report, "armhole") - checked.body[ArmscyeGirth].number());
  drops_.push_back(-checked.block.ease[SideLength].number());
}

void Tally::print_refused() const {
  for (const std::string& refusal : refusals_) fmt::print("refused {}\n", refusal);
}

void Tally::print_spreads() const {
  print_spread("bust dart, degrees", bust_darts_);
  print_spread("all front darts, degrees", front_darts_);
  print_spread("back neckline / neck base", neck_shares_);
  print_spread("shoulder slope, degrees", slopes_);
  print_spread("armhole less armscye, mm", armholes_);
  print_spread("underarm drop, mm", drops_);
  print_spread("back armhole: hollow / chord", back_hollows_);
  print_spread("back / width of the armhole", back_shares_);
  print_spread("least armhole radius, mm", radii_);
}

void Tally::print_adjustments() const {
  for (const auto& [key, sizes] : moved_) {
    const auto warned = moved_with_warning_.find(key);
    fmt::print("  {:5} times, middle size {:.1f}, {} with a warning: {}\n", sizes.size(),
               median_of(sizes), warned == moved_with_warning_.end() ? 0 : warned->second, key);
  }
  for (const auto& [what, amounts] : gave_way_) {
    fmt::print("  {:5} times, middle {:+.1f}: {}\n", amounts.size(), median_of(amounts), what);
  }
}

}  // namespace blockwright
