#pragma once

#include "blockwright/fit/apply.hpp"
#include "blockwright/report/report.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// What the paper shows of the length that a correction is watched by.
struct DraftedInstead {
  std::string length;  ///< "front.side"
  Length corrected;    ///< the change that the correction made, as it is printed
  Length drafted;      ///< the change that another value of the tape makes in its place
  bool same = false;   ///< as far as a tape written down so can do it
};

/// What a correction says of a measurement.
struct Doubt {
  MeasurementName name;
  Measure taped;     ///< or estimated, in the session drafted
  Measure would_do;  ///< as a tape is written down; by the correction's rule where no value near it
                     ///< drafts the same
  bool estimated = false;                 ///< it was never taped
  std::optional<DraftedInstead> instead;  ///< nothing where nobody has `would_do`
};

/// A tape of that measurement can do a good part of the correction.
bool is_worth_taping(const Doubt& doubt);
/// Of what the correction does; less is not worth a tape. Ours.
inline constexpr double kLeastHelp = 0.25;

/// A correction and what came of it.
struct FittingLine {
  NumberedCorrection correction;
  OrderedCorrection order;  ///< its row, its stage, and what to look for next
  std::optional<Change> change;
  std::size_t counted_with = 0;  ///< number of the correction that it was added to; 0: none
  std::optional<Doubt> doubt;
  std::vector<NumberedCorrection> voids;  ///< those that it makes void
};

/// The corrections of a client, in the order of work.
struct FittingReport {
  std::string client, session;
  Unit unit = Unit::Cm;
  std::vector<FittingLine> lines;
  std::vector<Fitting> fittings;        ///< of the file, with what was withdrawn
  std::vector<std::string> next_toile;  ///< what to look for
  std::vector<NumberedCorrection> withdrawn;
  std::vector<NumberedCorrection> in_the_tape;  ///< left out: a newer tape has what they asked for
  Problems problems;
  std::vector<std::string> files = {};  ///< written
  std::string ask_command = {};         ///< what to type to find corrections by what is seen
};

/// What to look at first on the next toile because of these corrections, in the order of work, at
/// most kMostLookedAt lines: "front neck edge taken in: a loose fold from the front neck edge ...".
std::vector<std::string> look_first(const std::vector<Correction>& corrections);
inline constexpr std::size_t kMostLookedAt = 5;

/// What to type where there is no fitting yet; may be empty.
std::string how_to_begin(const FittingReport& report);

/// The fittings toile by toile: what was seen, what was done, what to look at first on the next
/// toile; and which tapes to take again.
std::string story_text(const FittingReport& report);

std::string fitting_text(const FittingReport& report);
/// The same as JSON (docs/formats.md).
std::string fitting_json(const FittingReport& report);

}  // namespace blockwright
