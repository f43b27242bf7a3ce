#pragma once

#include "blockwright/measure/body.hpp"

#include <functional>
#include <vector>

namespace blockwright {

/// How the estimates of one measurement did on people who had it taped.
struct EstimateScore {
  MeasurementName name = MeasurementName::BustGirth;
  double people = 0.0;
  double mean = 0.0;        ///< taped less estimated, in the SDs that the estimates claim
  double within_68 = 0.0;   ///< the share of people within one of these SDs
  double within_95 = 0.0;   ///< ... within 1.96
  double claimed_sd = 0.0;  ///< mean, mm or degrees
};

/// What of a person's tape an estimate of that measurement is made from.
using Evidence = std::function<Session(const Session& person, MeasurementName asked)>;
Session bust_alone(const Session& person, MeasurementName asked);
Session bust_waist_and_back(const Session& person, MeasurementName asked);
Session all_but_that_one(const Session& person, MeasurementName asked);

/// Scores of each measurement that the people have and the evidence does not.
std::vector<EstimateScore> score_estimates(const std::vector<Session>& people,
                                           const Evidence& evidence);

}  // namespace blockwright
