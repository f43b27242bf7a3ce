#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// Inches as a tape shows them: "36", "36 1/2" or "1/2", a minus sign in front allowed; halves down
/// to 64ths. Empty if the text is none of these.
std::optional<double> inches_of(std::string_view text);

/// The cure for an inch fraction in a cm file: "fractions are for files in inches; in cm it is
/// 92.71". Empty if the text is no fraction.
std::string fraction_in_cm(std::string_view text);

}  // namespace blockwright
