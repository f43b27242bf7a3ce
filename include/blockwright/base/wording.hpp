#pragma once

#include "blockwright/base/length.hpp"
#include "blockwright/base/measure.hpp"

#include <string>
#include <variant>
#include <vector>

namespace blockwright {

/// A sentence whose lengths are put into words last, in the person's own unit:
///
///     Wording message = "the shoulder would be " + Length::mm(21.0) + " long";
///
/// worded() of text/units.hpp makes "2.1 cm" or "13/16 in" of it.
class Wording {
 public:
  using Part = std::variant<std::string, Length>;

  Wording() = default;
  Wording(std::string text);  // NOLINT(google-explicit-constructor): a text is a sentence
  Wording(const char* text);  // NOLINT(google-explicit-constructor)
  Wording(Length length);     // NOLINT(google-explicit-constructor)
  Wording(Measure measure);   // NOLINT(google-explicit-constructor): an angle is "25.5 degrees"

  [[nodiscard]] const std::vector<Part>& parts() const { return parts_; }
  [[nodiscard]] bool empty() const { return parts_.empty(); }
  /// Lengths in mm, for what is told before anybody's unit is known.
  [[nodiscard]] std::string plain() const;

  Wording& operator+=(const Wording& more);
  bool operator==(const Wording&) const = default;

 private:
  std::vector<Part> parts_;  ///< neither an empty text nor two texts in a row
};

Wording operator+(Wording a, const Wording& b);

}  // namespace blockwright
