#pragma once

#include "blockwright/measure/client_edit.hpp"
#include "blockwright/text/json_edit.hpp"

#include <string>

namespace blockwright {

/// What is to be added to a client file, as JSON on one line.
JsonPart correction_part(const NewCorrection& correction);
/// "keep", "drop", or what remains of an amount, as as_written_in_file() rounds it.
JsonPart new_tape_part(const AfterNewTape& after, Unit unit);
/// A fitting without corrections.
JsonPart fitting_part(const FittingOf& fitting);
/// Its tape is its last member.
JsonPart session_part(const NewSession& session);
/// One reading, or a list of them.
JsonPart readings_part(const std::vector<std::string>& values);
/// A whole client file.
JsonPart client_part(const NewClient& client);
/// A list with this one element.
JsonPart list_of_one(JsonPart element);

// The mark "withdrawn" of a correction in a client file's text.
//
// Withdrawing puts in one member at the end, which making active takes out again. A mark that the
// maker wrote herself is changed, not taken out; so that the two are told apart, a mark of hers
// that would look like ours gets a second space.

/// The whole text with the correction withdrawn. Requires: it is active.
std::string marked_withdrawn(const JsonEdit& edit, const JsonValue& correction);
/// The whole text with the correction active again. Requires: it is withdrawn.
std::string marked_active(const JsonEdit& edit, const JsonValue& correction);

}  // namespace blockwright
