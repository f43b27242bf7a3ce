// Drafts every surveyed woman, at the natural and at the navel waist, and tells how many drafted,
// who was refused, and which bound limited whom. Exit 0 if at most 0.5 % are refused, each with the
// measurement named.
#include "support/blocks.hpp"
#include "survey_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>

namespace {

using namespace blockwright;

struct Tally {
  int women = 0;
  int refused = 0;
  int refused_unnamed = 0;
  int off_measure = 0;
  int warned = 0;
  std::map<std::string, std::vector<double>> limited;  // "key: why" -> amounts
  std::vector<double> bust_darts, front_darts, neck_shares, slopes, armholes, drops;
};

void count_problems(Tally& tally, const SurveyWoman& woman, const CheckedBlock& checked) {
  bool refused = false, warned = false;
  for (const Problem& problem : checked.report.problems) {
    warned = warned || problem.severity == Severity::Warning;
    if (problem.severity != Severity::Error) continue;
    refused = true;
    if (problem.where.empty() ||
        (problem.code != "check.armhole" && problem.code != "draft.adjusted"))
      ++tally.refused_unnamed;
    fmt::print("refused {}: {}\n", woman.id, to_text(problem));
  }
  tally.refused += refused ? 1 : 0;
  tally.warned += warned ? 1 : 0;
}

void count(Tally& tally, const SurveyWoman& woman) {
  using enum MeasurementName;
  const CheckedBlock checked = checked_block(woman.session);
  ++tally.women;
  count_problems(tally, woman, checked);
  for (const MeasureBack& row : checked.report.measure_back) {
    if (abs(row.residual() - row.adjustment) > kMeasureBackTolerance.of(row.name))
      ++tally.off_measure;
  }
  for (const Adjustment& a : checked.block.adjustments) {
    tally.limited[fmt::format("{}: {}", info(a.name).key, a.why.plain())].push_back(a.by.number());
  }
  const Piece& front = checked.block.pattern.piece("front");
  double darts = 0.0;
  for (const Dart& dart : front.darts) darts += dart.angle().degrees();
  tally.bust_darts.push_back(front.dart("shoulder").angle().degrees());
  tally.front_darts.push_back(darts);
  tally.neck_shares.push_back(length_of(checked.report, "back.neckline") /
                              checked.body[NeckBaseGirth].number());
  tally.slopes.push_back(row_of(checked.report, ShoulderSlope)->pattern.number());
  tally.armholes.push_back(length_of(checked.report, "armhole") -
                           checked.body[ArmscyeGirth].number());
  tally.drops.push_back(-checked.block.ease[SideLength].number());
}

void print_spread(const char* name, std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const auto at = [&](double share) {
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
  };
  fmt::print("  {:<28} least {:8.3f}  5 % {:8.3f}  middle {:8.3f}  95 % {:8.3f}  most {:8.3f}\n",
             name, at(0.0), at(0.05), at(0.5), at(0.95), at(1.0));
}

bool tell(const char* waist, const Tally& tally) {
  fmt::print("{} waist: {} women, {} refused, {} with a warning\n", waist, tally.women,
             tally.refused, tally.warned);
  print_spread("bust dart, degrees", tally.bust_darts);
  print_spread("both front darts, degrees", tally.front_darts);
  print_spread("back neckline / neck base", tally.neck_shares);
  print_spread("shoulder slope, degrees", tally.slopes);
  print_spread("armhole less armscye, mm", tally.armholes);
  print_spread("underarm drop, mm", tally.drops);
  for (const auto& [what, amounts] : tally.limited) {
    fmt::print("  {:5} times, middle {:+.1f}: {}\n", amounts.size(), median_of(amounts), what);
  }
  return tally.refused * 200 <= tally.women && tally.refused_unnamed == 0 &&
         tally.off_measure == 0 && tally.women > 1000;
}

bool run(const char* path, SurveyWaist waist, const char* name) {
  std::ifstream in(path);
  Tally tally;
  for (const SurveyWoman& woman : read_survey(in, waist)) count(tally, woman);
  return tell(name, tally);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    fmt::print(stderr,
               "survey_rows: name a survey table: survey_rows TABLE.csv (cm; its columns: "
               "tests/population/survey_table.cpp)\n");
    return 2;
  }
  if (!std::ifstream(argv[1])) {
    fmt::print(stderr, "survey_rows: {}: it cannot be read\n", argv[1]);
    return 2;
  }
  const bool natural = run(argv[1], SurveyWaist::Natural, "natural");
  const bool navel = run(argv[1], SurveyWaist::Navel, "navel");
  return natural && navel ? 0 : 1;
}
