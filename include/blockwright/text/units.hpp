#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/length.hpp"
#include "blockwright/base/wording.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// The unit that a person measures in. A client file has one.
enum class Unit { Cm, Inch };

/// "cm" or "in".
std::string_view unit_name(Unit unit);
/// "cm" or "inches": in a sentence.
std::string_view unit_word(Unit unit);

/// What a tape shows: a millimetre, or a sixteenth of an inch.
Length printed_step(Unit unit);
/// The next length that a table shows: whole steps of a tape. What is rounded
/// so before it is added up adds up to what is printed.
Length as_printed(Length length, Unit unit);

/// A length in a table whose heading names the unit: "36.5", or "14 3/8".
std::string number_text(Length length, Unit unit);
/// The same with its sign: "+1.5", "-3/8".
std::string change_text(Length change, Unit unit);
/// A length in a sentence: "36.5 cm", "14 3/8 in". What a tape does not show is "0.4 mm" or
/// "0.016 in".
std::string length_text(Length length, Unit unit);
/// "22.5°".
std::string angle_text(Angle angle, int decimals = 1);

/// The sentence in the person's unit: beside lengths in cm one of 5 mm or more is in cm too.
std::string worded(const Wording& wording, Unit unit);
/// Problems whose sentences are worded.
Problem worded(Problem problem, Unit unit);
Problems worded(Problems problems, Unit unit);

/// A name of pieces and edges as words: "front.waist_outer" as "front waist outer", and
/// "front.centre_front" as "centre front": a name that speaks of its piece does so once.
std::string name_text(std::string_view name);

/// Inches as a tape shows them: "36", "36 1/2" or "1/2", a minus sign in front allowed; halves down
/// to 64ths. Empty if the text is none of these.
std::optional<double> inches_of(std::string_view text);

/// The cure for an inch fraction in a cm file: "fractions are for files in inches; in cm it is
/// 92.71". Empty if the text is no fraction.
std::string fraction_in_cm(std::string_view text);

}  // namespace blockwright
