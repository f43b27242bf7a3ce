#pragma once

#include "blockwright/measure/client_edit.hpp"
#include "blockwright/text/json_writing.hpp"

namespace blockwright {

/// What is to be added to a client file, as JSON. Objects have lines of their own where `lines`.
JsonPart correction_part(const NewCorrection& correction, bool lines);
/// A fitting with this one correction.
JsonPart fitting_part(const FittingOf& fitting, JsonPart correction, bool lines);
JsonPart session_part(const NewSession& session, bool lines, bool tape_lines);
/// A list with this one element.
JsonPart list_of_one(JsonPart element, bool lines);

/// What a client file of this unit would say with this alone in it. Throws InputError, whose place
/// is `file` and the key, as the lines of the file do not have it yet.
Fitting read_fitting_part(const JsonPart& fitting, Unit unit, std::string_view file);
Session read_session_part(const JsonPart& session, Unit unit, std::string_view file);

}  // namespace blockwright
