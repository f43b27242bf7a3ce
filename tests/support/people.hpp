#pragma once

#include "blockwright/measure/client.hpp"
#include "support/sanitized.hpp"

#include <initializer_list>
#include <vector>

namespace blockwright {

/// People drawn from the means and covariances of the 1988 survey (normal distribution), the tape
/// read to 1 mm and the shoulder slope to half a degree: all measurements but the two shoulder
/// slants and the front bust width. The same seed gives the same people on every machine.
std::vector<Session> survey_people(int count, unsigned seed);

/// People of that bust girth, drawn from the survey's means and covariances given the bust. Beyond
/// the survey the means follow fill_in() (docs/decisions/013-larger-and-smaller-bodies.md), and the
/// people scatter about them as those at its edge. Read and taped as survey_people().
std::vector<Session> people_at_bust(double bust_mm, int count, unsigned seed);

/// How many people a property is tried on: `many`, or a tenth of them under the sanitizers.
inline int people(int many) { return kSanitized ? many / 10 : many; }

/// A session that holds the bust girth alone.
Session bust_only(double bust_mm);

/// The readings of one measurement, mm or degrees.
void tape(Session& session, MeasurementName name, double value);
void tape(Session& session, MeasurementName name, std::initializer_list<double> values);

}  // namespace blockwright
