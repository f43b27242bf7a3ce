#pragma once

#include "blockwright/measure/client_edit.hpp"
#include "blockwright/text/json_writing.hpp"

namespace blockwright {

/// What is to be added to a client file, as JSON on one line.
JsonPart correction_part(const NewCorrection& correction);
/// A fitting with this one correction; the list of them is its last member.
JsonPart fitting_part(const FittingOf& fitting, JsonPart correction);
/// Its tape is its last member.
JsonPart session_part(const NewSession& session);
/// A list with this one element.
JsonPart list_of_one(JsonPart element);

}  // namespace blockwright
