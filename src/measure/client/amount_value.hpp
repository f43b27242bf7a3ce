#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/text/json_document.hpp"

namespace blockwright {

/// The amount of a correction in mm, more than 0. Throws InputError ("client.missing",
/// "client.type", "client.range").
Length read_amount(const JsonDocument& document, const JsonValue& correction,
                   const CorrectionWords& words, Unit unit);

/// How the amount was read. Throws InputError ("client.type", "client.amount").
AmountAs read_way(const JsonDocument& document, const JsonValue& correction,
                  const CorrectionWords& words, BodySide side);

}  // namespace blockwright
