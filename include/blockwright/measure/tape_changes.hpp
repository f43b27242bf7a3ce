#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/client.hpp"

#include <vector>

namespace blockwright {

/// A measurement that two sessions took differently.
struct TapeChange {
  MeasurementName name;
  Measure by;
};

/// Whether two tapes of the same body may differ so much: 10 mm of a girth, 5 mm of a length, 2
/// degrees.
bool tapes_differ_so(const TapeChange& change);

/// The newest session before that one; null if there is none.
const Session* session_taken_before(const Client& client, const Session& session);

/// What differs since an earlier session by more than tapes do.
std::vector<TapeChange> changes_since(const Session& earlier, const Session& session);

/// "measure.changed": all of them in one line. A Warning where those that end at one level moved
/// together, such as the lengths to the waist: no body does that, the level was taken elsewhere.
/// Empty where nothing changed.
Problems judge_changes(const Session& earlier, const Session& session);

}  // namespace blockwright
