#pragma once

#include "blockwright/style/style.hpp"
#include "blockwright/text/json_document.hpp"
#include "blockwright/text/units.hpp"

namespace blockwright {

/// What lengths of a file are in.
struct FileUnit {
  Unit unit = Unit::Cm;
  double mm = 10.0;  ///< in one of it
};

/// The ease that a style file asks for: a word, or lengths in its unit. Throws InputError, and
/// "style.ease" for a length outside kLeastWearingEase to kMostWearingEase.
WearingEase read_wearing_ease(const JsonDocument& document, const JsonValue& value,
                              const FileUnit& unit);

}  // namespace blockwright
