#pragma once

#include "blockwright/measure/client.hpp"
#include "survey.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

// The slips of tape and pen, each declared once: the prompt, the reader of client files and judge()
// look them up here. That makers make them is common practice, no source; how often each is made,
// its cost, is ours. The costs were tried on the survey's women with slips planted
// (docs/decisions/018-the-likeliest-slip.md).

/// A number as it was written, in its unit; of an angle in degrees.
struct Written {
  std::string typed;  ///< "92.5", "36 1/2"; empty where several readings agree
  double number = 0.0;
  Unit unit = Unit::Cm;
};
/// The median of the readings as a client file has it.
Written written_of(const Readings& readings, Unit unit);

/// A slip of which it is known what was meant.
struct SlipRow {
  enum class In { Any, Cm, Inch, Degrees, Lengths };
  enum class Of { All, Whole, OfStature };  ///< Whole: girths and widths, of which some write half

  std::string_view name;   ///< in reports: "swapped_digits"
  std::string_view words;  ///< "two digits swapped"
  double cost;             ///< -2 ln of how often it is made for each pair of digits swapped
  /// What was meant lies within so many SD of what is expected, or it is not offered: digits make
  /// any number, a lost point hardly another. Ours.
  double guessed_within;
  bool of_pen;  ///< in writing; else in reading the tape
  In in;
  Of of;
  double factor;                                           ///< what cures it, or 0:
  std::vector<double> (*meant)(const Written&) = nullptr;  ///< what was meant, in the unit written
};

/// What a number was meant to be.
struct Meant {
  const SlipRow* slip = nullptr;
  Measure value;
};

/// Every slip that would explain what was written, each with a value that the measurement can have.
std::vector<Meant> possibly_meant(const MeasurementInfo& entry, const Written& written);

/// Those of them that are ordinary for her, within `most_sd` of what is expected, the likeliest
/// first; none that is much less likely.
std::vector<Meant> likely_ones(std::vector<Meant> all, const Expectation& expected, double most_sd);
/// The first that would not be doubted itself.
std::optional<Meant> likeliest(std::vector<Meant> all, const Expectation& expected);
/// Those that may be offered of a fuller waist: slips of the pen, but up to the size of the bust,
/// an ordinary build, no swapped digits.
std::vector<Meant> meant_of_fuller_waist(std::vector<Meant> all, bool within_bust);

/// "79 cm (two digits swapped)"
std::string meant_text(const Meant& meant, Unit unit);

/// What to do about a value outside its limits: take it again, or if one slip brings it to what is
/// plausible, with that bust if it is known, "did you mean 92.5 cm? What is written looks like
/// ...".
std::string range_hint(const MeasurementInfo& entry, const Written& written,
                       const std::optional<Measure>& bust);

/// "47 cm looks like 74 cm with two digits swapped; ", of the one reading without which the others
/// agree; empty where there is none.
Wording odd_reading_words(const MeasurementInfo& entry, const Readings& readings, Unit typed_in);

/// Several measurements that one mistake moves together.
struct CommonCause {
  /// For each mm that the tape begins or ends too low or too far out.
  struct Part {
    MeasurementName name;
    double per_mm;
    bool may_stay = false;  ///< taken from elsewhere, it did not move with the others
  };
  std::string_view name;        ///< in reports: "waist_level"
  std::string_view more, less;  ///< what happened, by the sign; empty: never
  std::string_view cure;
  Length usual;  ///< SD of how far it goes
  double cost;   ///< as SlipRow::cost
  double gate;   ///< in SD: at most one woman in a hundred has a body like that
  std::vector<Part> parts;
};
const std::vector<CommonCause>& common_causes();

/// A waist that the survey's women, of 18 to 50 years, did not have, although many bodies do: over
/// 0.92 of the bust. Size alone is no slip then.
bool is_fuller_waist(MeasurementName name, Measure value, const std::optional<Measure>& bust);

}  // namespace blockwright
