#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/text/json_document.hpp"

namespace blockwright {

/// One correction of a fitting. Throws InputError, see read_fittings().
Correction read_correction(const JsonDocument& document, const JsonValue& value, Unit unit);

}  // namespace blockwright
