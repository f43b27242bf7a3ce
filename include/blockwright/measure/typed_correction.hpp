#pragma once

#include "blockwright/measure/fitting.hpp"
#include "blockwright/text/units.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// The most that one correction may be; our judgement: the largest of the fitting catalogue's
/// ranges is a waist of 6 cm, and a toile further off is drafted again.
inline constexpr Length kMostCorrection = Length::mm(100);

/// The unit that an amount may carry: "1.5 cm", "8 mm", "5/8 in".
enum class AmountUnit { Cm, Mm, Inch };
std::string_view amount_unit_word(AmountUnit unit);

/// An amount as a person types it: "1.5", "1,5 cm", "8mm", "5/8", "1 1/2 in", "½\"".
struct TypedAmount {
  std::string number;                   ///< as a file has it: "1.5", "1 1/2"
  std::optional<AmountUnit> unit = {};  ///< if it was typed with it

  [[nodiscard]] bool is_fraction() const { return number.find('/') != std::string::npos; }
  /// Requires: `number` is one. In `otherwise` where it carries no unit.
  [[nodiscard]] Length length(Unit otherwise) const;
};
/// Nothing if it is no amount. A minus sign is read, for whoever refuses it.
std::optional<TypedAmount> amount_typed(std::string_view text);

/// The amount as the file is to have it: its number alone where the unit is the file's, else with
/// its unit, "5/8 in". Empty where a fraction without a unit is given for a file in cm: of a cm or
/// of an inch?
std::string amount_for_file(const TypedAmount& amount, Unit file);

/// A correction as it is typed: "lower front_neck 1.0", "take in the waist 5/8 in per half", "raise
/// one side waist 1,5 left".
struct TypedCorrection {
  std::string action;  ///< as in files: "take_in"; what was typed if there is no such action
  std::string place;
  std::string amount;  ///< as typed; empty if none was
  std::optional<AmountAs> as = {};
  std::optional<BodySide> side = {};
  std::string odd;  ///< what was not understood; empty if nothing
};
/// Without an amount action and place are read as far as they go.
TypedCorrection correction_typed(std::string_view words);
/// How an amount was read, as it is said: "per half"; of both sides of a neck together "in all".
std::string way_text(const CorrectionWords& words, AmountAs as);
/// The correction that shares most words with these, in any order, and two at least: "take_in side"
/// for "take in side seams 1". Null if there is none.
const CorrectionWords* nearest_correction(std::string_view words);

}  // namespace blockwright
