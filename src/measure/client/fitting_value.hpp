#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/text/json_document.hpp"

namespace blockwright {

/// The fittings of a client file, in its order. Throws InputError: "client.correction" where words
/// are not those of correction_words(), "client.amount" where an amount is read in a way that its
/// correction does not have, "client.order" where toiles or dates fall, and the codes of all values
/// ("client.missing", "client.key", "client.type", "client.range", "client.date",
/// "client.duplicate", "client.text", "client.size").
std::vector<Fitting> read_fittings(const JsonDocument& document, const JsonValue& list, Unit unit);

}  // namespace blockwright
