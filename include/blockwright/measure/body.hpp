#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/client.hpp"

#include <algorithm>
#include <cstddef>

namespace blockwright {

/// Where a body measurement comes from.
enum class Source {
  Taped,      ///< read from the tape in this session
  Estimated,  ///< expected from what was taped, by the survey's statistics
};

/// One measurement of a filled-in body.
struct BodyMeasurement {
  Measure value;
  Source source = Source::Estimated;
  /// Estimated: residual SD of the estimate. Taped: spread of the repeated readings (0 for one).
  Measure doubt;
  bool sure = false;  ///< taped, and the maker is sure of it: it comes back exactly
  /// Estimated for a bust beyond the survey's (74 to 117 cm), by rules for larger and smaller
  /// bodies.
  bool extrapolated = false;
  std::size_t readings = 1;  ///< taped: how many the value is the median of
};

/// A person in numbers after filling in. Every measurement has a value, except that those which the
/// draft derives by rule (FillIn::By::Draft: the shoulder slants, the front bust width) stay empty
/// unless taped.
struct Body {
  PerMeasurement<BodyMeasurement> measurements;

  [[nodiscard]] bool has(MeasurementName name) const { return measurements[name].has_value(); }
  /// Requires: has(name).
  [[nodiscard]] Measure operator[](MeasurementName name) const { return measurements[name]->value; }
  [[nodiscard]] Length length(LengthName name) const { return (*this)[name].length(); }
  [[nodiscard]] bool taped(MeasurementName name) const {
    return has(name) && measurements[name]->source == Source::Taped;
  }
  [[nodiscard]] bool sure(MeasurementName name) const {
    return has(name) && measurements[name]->sure;
  }
};

/// The SD of one careful reading by a home maker (src/measure/tape_error.hpp).
Measure tape_sd(MeasurementName name);

/// The SD of a taped value: that of one reading; less for several, since half of its variance is of
/// the reading and half of where the tape was laid, which repeats; more where they lie further
/// apart than such readings do. Continuous in the spread. Requires: body.taped(name).
Measure taped_sd(const Body& body, MeasurementName name);

/// The most that an ease may be, either way. Common practice, no source: no block has more.
Measure most_ease(MeasurementName name);

/// What is added to each measurement, on the whole girth, width or length.
class Ease {
 public:
  /// The defaults of a close-fitting toile: the eases of the table of measurements.
  static Ease of_toile() { return {}; }
  /// The defaults with the client's overrides.
  static Ease of(const Client& client);

  [[nodiscard]] Measure operator[](MeasurementName name) const {
    return values_[static_cast<std::size_t>(name)];
  }
  [[nodiscard]] Length length(LengthName name) const { return (*this)[name].length(); }
  /// The same whatever the cup.
  void set(MeasurementName name, Measure ease) {
    values_[static_cast<std::size_t>(name)] = ease;
    per_cup_[static_cast<std::size_t>(name)] = 0.0;
  }
  /// For that person: what a default has more for each mm of cup is in its values. Asked again, it
  /// is the same. Continuous in bust and underbust girth.
  [[nodiscard]] Ease worn_by(const Body& body) const;

 private:
  std::array<Measure, kMeasurementCount> values_ = [] {
    std::array<Measure, kMeasurementCount> eases;
    std::ranges::transform(kMeasurements, eases.begin(), [](auto& row) { return row.ease.by; });
    return eases;
  }();
  std::array<double, kMeasurementCount> per_cup_ = [] {
    std::array<double, kMeasurementCount> more;
    std::ranges::transform(kMeasurements, more.begin(), [](auto& row) { return row.ease.per_cup; });
    return more;
  }();
};

/// What reconciling did to one measurement so that the set is consistent: the pattern carries the
/// measurement plus its ease plus `by`.
struct Adjustment {
  MeasurementName name;
  Measure by;
  Wording why;  ///< the bound that was reached, in the words of the trade
};

using Adjustments = std::vector<Adjustment>;

/// Fills in what was not taped with the expected value given everything that was (normal regression
/// on the 1988 survey of 2,208 women, src/measure/survey.cpp), and marks it estimated with its
/// residual SD. Taped values are taken as they are. For a bust beyond the survey each measurement
/// goes on from its edge by a rate of its own (docs/decisions/013-larger-and-smaller-bodies.md), is
/// marked extrapolated and doubted more the farther it is.
///
/// Guarantees: (1) each estimate lies within the catalogue's limits; (2) where a draft would become
/// absurd an estimate keeps its order to its neighbours, such as side neck to waist beyond side
/// neck to bust point, and a girth its share of the bust (src/measure/survey.cpp); (3) linear in
/// every taped value up to these bounds and continuous everywhere: a small change of the tape makes
/// a small change of the body. One that follows another (FillIn::By::Another: across front) is
/// evidence for it the same way. Cost: a few microseconds. Requires: the bust girth is taped.
Body fill_in(const Session& session);

/// Which likely slips judge() tells.
enum class Slips {
  All,    ///< the likeliest first
  First,  ///< that one, and how many more there are
};

/// How a session is judged.
struct JudgedAs {
  Unit typed_in = Unit::Cm;  ///< the client file's: digits swap as they were written
  Slips slips = Slips::All;
};

/// Judges a tape session: what most likely went wrong with the tape (likely_slips():
/// "measure.slip", "measure.doubtful", "measure.retake"), then readings that repeat badly
/// ("measure.spread"), and orderings that hold on every body of the survey ("measure.order") where
/// no slip explains them. None is an Error. Requires: `body` is fill_in(session).
Problems judge(const Session& session, const Body& body, const JudgedAs& as = {});

/// How far two readings of a length over the front of the body usually differ. They repeat less
/// well than other lengths. Ours.
inline constexpr Length kFrontLengthsRepeat = Length::mm(15);

/// A front neck that no body of that neck girth has, with the ease of the pattern: how deep the
/// front waist length and the length over the bust ask for it, and how deep such necks are.
struct OddNeck {
  Length asked;
  Length least, most;
};

/// "measure.neck_depth": which of the two front lengths is to be doubted, and what to take again.
/// Each is compared with what all other tapes but these two lead one to expect; the one is named
/// that is more of its residual SDs off to the side that makes the neck odd, or both where neither
/// clearly is. What was not taped, and what the maker is sure of (unless of both), is not doubted.
/// Nothing within 5 mm, a Note up to kFrontLengthsRepeat, then a Warning.
/// Requires: a body from fill_in().
Problems judge_neck(const Body& body, const OddNeck& neck);

}  // namespace blockwright
