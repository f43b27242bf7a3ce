// Estimates each measurement of every surveyed woman from others of hers, and prints how many are
// within the spread that the estimates claim; and how many of the women have lengths that
// contradict each other. Exit 0 if the limits named below hold.
#include "blockwright/measure/settled_tape.hpp"
#include "support/estimate_scores.hpp"
#include "survey_table.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <fstream>

namespace {

using namespace blockwright;

// Limits: 68.3 and 95 in 100 within 3 points; of 1,104 women one such share is off by 1.4 and 0.7
// for chance alone. Three are more peaked than the normal distribution, so that more than 68 are
// within one SD, and 95 within two: those are let up to 6 points over.
constexpr double kPoints = 0.03, kPeakedPoints = 0.06;
constexpr double kMostMean = 0.06;  // in SDs

bool holds(const EstimateScore& score) {
  const double over = score.within_68 - 0.683;
  return std::abs(score.mean) <= kMostMean && over >= -kPoints && over <= kPeakedPoints &&
         std::abs(score.within_95 - 0.95) <= kPoints;
}

bool tell(const char* what, const std::vector<Session>& women, const Evidence& evidence) {
  fmt::print("\nFrom {}\n  {:<26}{:>8}{:>8}{:>10}{:>10}\n", what, "", "SD", "mean", "within 1",
             "within 2");
  bool all_hold = true;
  int peaked = 0;
  for (const EstimateScore& score : score_estimates(women, evidence)) {
    fmt::print("  {:<26}{:8.1f}{:8.2f}{:10.1f}{:10.1f}{}\n", info(score.name).key, score.claimed_sd,
               score.mean, 100.0 * score.within_68, 100.0 * score.within_95,
               holds(score) ? "" : "  BROKEN");
    all_hold = all_hold && holds(score);
    peaked += score.within_68 > 0.683 + kPoints ? 1 : 0;
  }
  return all_hold && peaked <= 2;
}

// How many are moved by more than a pencil line when the whole tape is settled. Ours.
constexpr std::size_t kMostMovedPerCent = 2;
constexpr double kPencilLine = 0.5;

bool tell_moved(const char* waist, const std::vector<Session>& women) {
  std::size_t moved = 0;
  double most = 0.0;
  for (const Session& woman : women) {
    double by = 0.0;
    for (const Adjustment& a : settle_tape(fill_in(woman)).moved) {
      by = std::fmax(by, std::abs(a.by.number()));
    }
    moved += by > kPencilLine ? 1 : 0;
    most = std::fmax(most, by);
  }
  const bool few = moved * 100 <= kMostMovedPerCent * women.size();
  fmt::print("\nThe whole tape settled, {} waist: {} of {} moved, {:.1f} mm at most{}\n", waist,
             moved, women.size(), most, few ? "" : "  BROKEN");
  return few;
}

std::vector<Session> women_of(const char* path, SurveyWaist waist) {
  std::ifstream in(path);
  std::vector<Session> women;
  if (!in) return women;
  for (const SurveyWoman& woman : read_survey(in, waist)) women.push_back(woman.session);
  return women;
}

}  // namespace

int main(int argc, char** argv) {
  const char* path = argc == 2 ? argv[1] : "";
  const std::vector<Session> women = women_of(path, SurveyWaist::Natural);
  if (women.size() < 1000) {
    fmt::print(stderr, "survey_estimates: name a survey table: survey_estimates TABLE.csv\n");
    return 2;
  }
  const bool bust = tell("the bust alone", women, bust_alone);
  const bool three = tell("bust, waist and back waist length", women, bust_waist_and_back);
  const bool all = tell("all but that one", women, all_but_that_one);
  const bool natural = tell_moved("natural", women);
  const bool navel = tell_moved("navel", women_of(path, SurveyWaist::Navel));
  return bust && three && all && natural && navel ? 0 : 1;
}
