#pragma once

#include "support/blocks.hpp"

#include <map>
#include <string>
#include <vector>

namespace blockwright {

/// What came of drafting many people.
class Tally {
 public:
  /// `id` names the person where she is refused.
  void count(const Session& session, const std::string& id);

  [[nodiscard]] int people() const { return people_; }
  [[nodiscard]] int refused() const { return refused_; }
  [[nodiscard]] int warned() const { return warned_; }
  /// How many people met each error, by its code.
  [[nodiscard]] const std::map<std::string, int>& errors() const { return errors_; }
  /// How many blocks have each fault of shape, measured here and not by the program's checks.
  [[nodiscard]] const std::map<std::string, int>& faults() const { return faults_; }
  /// Blocks with such a fault that are not refused.
  [[nodiscard]] int silent() const { return silent_; }
  /// Blocks drafted whose armhole breaks a law of support/armhole_shape.hpp, and each law.
  [[nodiscard]] int odd_armholes() const { return odd_armholes_; }
  [[nodiscard]] const std::map<std::string, int>& laws_broken() const { return laws_broken_; }
  /// Each person refused with an error that names no measurement or place.
  [[nodiscard]] int refused_unnamed() const { return refused_unnamed_; }
  /// Measurements that do not come back as the report says.
  [[nodiscard]] int off_measure() const { return off_measure_; }
  /// Whole bust darts in degrees, wherever they open but at the waist.
  [[nodiscard]] const std::vector<double>& bust_darts() const { return bust_darts_; }

  /// The errors of each person refused, one a line.
  void print_refused() const;
  void print_spreads() const;
  /// What gave way, how often, by how much, why, and how often with a warning.
  void print_adjustments() const;

 private:
  void count_problems(const CheckedBlock& checked, const std::string& id);
  void count_measures(const CheckedBlock& checked);
  void count_faults(const CheckedBlock& checked);
  void count_armhole(const CheckedBlock& checked);

  int people_ = 0, refused_ = 0, warned_ = 0, refused_unnamed_ = 0, off_measure_ = 0, silent_ = 0;
  int odd_armholes_ = 0;
  std::map<std::string, int> errors_, faults_, laws_broken_;
  std::vector<std::string> refusals_;
  std::map<std::string, std::vector<double>> gave_way_;  // "key: why" -> amounts
  std::map<std::string, std::vector<double>> moved_;     // key -> sizes of the amounts
  std::map<std::string, int> moved_with_warning_;        // by key
  std::vector<double> bust_darts_, front_darts_, neck_shares_, slopes_, armholes_, drops_,
      back_hollows_, back_shares_, radii_;
};

/// "check.armhole 3, draft.adjusted 1".
std::string counts_text(const std::map<std::string, int>& counts);

/// The value below which that share of the values lies. Requires: there are any.
double at_share(std::vector<double> values, double share);

}  // namespace blockwright
