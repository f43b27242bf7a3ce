#include "blockwright/base/wording.hpp"

#include "blockwright/base/number_text.hpp"

#include <cmath>
#include <utility>

namespace blockwright {

Wording::Wording(std::string text) {
  if (!text.empty()) parts_.emplace_back(std::move(text));
}

Wording::Wording(const char* text) : Wording(std::string(text)) {}

Wording::Wording(Length length) : parts_{length} {}

Wording::Wording(Measure measure)
    : Wording(measure.is_angle() ? Wording(fixed(measure.number(), 1) + " degrees")
                                 : Wording(measure.length())) {}

std::string Wording::plain() const {
  constexpr int decimals = 9;
  std::string text;
  for (const Part& part : parts_) {
    const auto* length = std::get_if<Length>(&part);
    if (!length) {
      text += std::get<std::string>(part);
      continue;
    }
    text += told_number(length->mm(), decimals) + (std::isfinite(length->mm()) ? " mm" : "");
  }
  return text;
}

Wording& Wording::operator+=(const Wording& more) {
  for (const Part& part : more.parts_) {
    const auto* text = std::get_if<std::string>(&part);
    auto* last = parts_.empty() ? nullptr : std::get_if<std::string>(&parts_.back());
    if (text && last) {
      *last += *text;
    } else {
      parts_.push_back(part);
    }
  }
  return *this;
}

Wording operator+(Wording a, const Wording& b) { return std::move(a += b); }

}  // namespace blockwright
