#pragma once

#include "blockwright/measure/body.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

// What a tape session at a prompt needs to know: what comes next, what is typed, and what is to be
// said of it at once.

/// So many of tape_order() make a good first block: of 100 survey people the named points of the
/// block lay 6.5 mm from those of a full session (median), and 17 mm after the bust girth alone.
/// Each next one is that which brought them nearest (computed), but that the waist girth, without
/// which nothing fits, has the place of the shoulder slope, which wants an angle meter.
inline constexpr std::size_t kFirstMeasurements = 8;

/// All measurements in the order in which a session takes them: those, then the rest. Either part
/// goes over the body once: girths, back, front, side, arm.
const std::array<MeasurementName, kMeasurementCount>& tape_order();

/// How far apart readings of one measurement usually lie at most: beyond that a third is wanted.
const ByKind& usual_spread();

/// The unit that a word names, in whatever case: "cm", "centimetres", "in", "inch", "inches".
std::optional<Unit> unit_typed(std::string_view word);

/// The readings of one measurement.
struct TypedReadings {
  /// As a client file has them, which reads each as the same value: a number with a point and
  /// without needless zeros, "92.5", or inches with a fraction, "36 1/2".
  std::vector<std::string> typed;
  Readings readings;
};

/// Reads an answer at the prompt: one reading or several with spaces or commas between,
/// "74, 74.5, 74", in inches also "29 1/4 29-1/2 29½". A comma between digits is a decimal comma,
/// and the unit is allowed behind a number. Throws InputError "tape.reading", naming value, limit
/// and cure, which may be what was meant if it is plausible with that bust girth.
TypedReadings readings_typed(std::string_view answer, MeasurementName name, Unit unit,
                             const std::optional<Measure>& bust = {});

/// Where nineteen of twenty women lie of whom the same was taken.
struct ExpectedRange {
  Measure least, most;
};

/// Of a measurement that is not yet taken, by the survey. Nothing before the bust girth is taken,
/// and for what the survey does not have.
std::optional<ExpectedRange> expected_range(const Session& taken, MeasurementName name);

/// What is to be said of readings as soon as they are typed.
struct Remarks {
  std::vector<std::string> sentences;
  bool ask_again = false;  ///< whether they are so unlikely that they should be typed once more
};

/// Says if readings lie apart, if the others of the session make them unlikely (and which slip of
/// the pen or the tape would explain it, as likely_slips() knows them; in this one or in one taken
/// before), and by how much they differ from an earlier session, where that is
/// more than a tape errs. A lost decimal point is out of the limits: readings_typed() refuses it.
Remarks remarks_on(const TypedReadings& typed, MeasurementName name, const Session& taken,
                   const Session* earlier, Unit unit);

}  // namespace blockwright
