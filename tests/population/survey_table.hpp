#pragma once

#include "blockwright/measure/client.hpp"

#include <istream>
#include <string>
#include <vector>

namespace blockwright {

/// Which waist of the survey a session is taken at.
enum class SurveyWaist { Natural, Navel };

/// One surveyed woman as a tape session.
struct SurveyWoman {
  std::string id;
  Session session;
};

/// Reads the survey's table (CSV in cm, comment lines start with #). What the survey does not hold:
/// across front and the slants stay untaped (and waist to hip from the navel), so that the draft
/// estimates or derives them; the length over the bust is neck to bust point plus the straight line
/// from bust point to waist level over a hollow of 30 mm. Throws std::runtime_error if a column is
/// missing.
std::vector<SurveyWoman> read_survey(std::istream& in, SurveyWaist waist);

}  // namespace blockwright
