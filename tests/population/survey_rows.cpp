// Drafts many people and prints what came of it: every surveyed woman, at the natural and at the
// navel waist; people of each bust from 72 to 140 cm; the bust alone, every centimetre from 70 to
// 150. Exit 0 if the refusals and the bust darts keep within the limits named below.
#include "support/people.hpp"
#include "survey_table.hpp"
#include "tally.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <fstream>

namespace {

using namespace blockwright;
using enum MeasurementName;

// Limits, ours: refused of the survey's women at most 2 in 1,000, of each group by bust 2 in 100.
constexpr int kMostRefusedPerMille = 2;
constexpr int kMostWarnedPerCent = 15;
constexpr int kMostRefusedPerCent = 2;
constexpr int kMostFaultyPerCent = 1;
constexpr int kGroup = 100;
constexpr unsigned kSeed = 1988;
// Women of one bust and one cup differ less than their darts: the middle 90 % are wanted within.
constexpr double kLeastDart = 8.0, kMostDart = 24.0;

bool said(bool holds, const std::string& law) {
  fmt::print("  {}: {}\n", holds ? "holds" : "BROKEN", law);
  return holds;
}

// --- the survey's women ----------------------------------------------------------------------

double taped(const SurveyWoman& woman, MeasurementName name) {
  return woman.session.tape[name]->median().number();
}

bool is_of_one_bust_and_cup(const SurveyWoman& woman) {
  const double bust = taped(woman, BustGirth), cup = bust - taped(woman, UnderbustGirth);
  return bust >= 870.0 && bust <= 935.0 && cup >= 127.0 && cup <= 147.0;
}

/// The spread of bust darts among women of bust 87 to 93.5 and cup 12.7 to 14.7 cm.
bool tell_alike(const std::vector<SurveyWoman>& women) {
  Tally alike;
  for (const SurveyWoman& woman : women) {
    if (is_of_one_bust_and_cup(woman)) alike.count(woman.session, woman.id);
  }
  const double least = at_share(alike.bust_darts(), 0.05),
               most = at_share(alike.bust_darts(), 0.95);
  fmt::print(
      "  bust 87 to 93.5 and cup 12.7 to 14.7 cm: {} women, bust darts {:.1f} to {:.1f} "
      "degrees (5 to 95 %)\n",
      alike.people(), least, most);
  return said(least >= kLeastDart && most <= kMostDart,
              fmt::format("their bust darts lie within {} to {}", kLeastDart, kMostDart));
}

bool tell_women(const char* waist, const std::vector<SurveyWoman>& women) {
  Tally tally;
  for (const SurveyWoman& woman : women) tally.count(woman.session, woman.id);
  tally.print_refused();
  fmt::print("{} waist: {} women, {} refused ({}), {} with a warning\n", waist, tally.people(),
             tally.refused(), counts_text(tally.errors()), tally.warned());
  fmt::print("  {} drafted with a fault of shape; all: {}\n", tally.silent(),
             counts_text(tally.faults()));
  tally.print_spreads();
  tally.print_adjustments();
  const bool few_refused = said(tally.refused() * 1000 <= kMostRefusedPerMille * tally.people(),
                                fmt::format("refused at most {} in 1,000", kMostRefusedPerMille));
  const bool few_warned = said(tally.warned() * 100 <= kMostWarnedPerCent * tally.people(),
                               fmt::format("warned at most {} in 100", kMostWarnedPerCent));
  const bool shapely =
      said(tally.silent() * 100 <= kMostFaultyPerCent * tally.people(),
           fmt::format("with a fault of shape at most {} in 100", kMostFaultyPerCent));
  fmt::print("  {} with an armhole that breaks a law: {}\n", tally.odd_armholes(),
             counts_text(tally.laws_broken()));
  const bool armholes =
      said(tally.odd_armholes() * 100 <= kMostFaultyPerCent * tally.people(),
           fmt::format("back hollow, back share, radius and sewn underarm of all but {} in 100",
                       kMostFaultyPerCent));
  const bool alike = tell_alike(women);
  return few_refused && few_warned && shapely && armholes && alike &&
         tally.refused_unnamed() == 0 && tally.off_measure() == 0 && tally.people() > 1000;
}

bool tell_survey(const char* path, SurveyWaist waist, const char* name) {
  std::ifstream in(path);
  return tell_women(name, read_survey(in, waist));
}

// --- people of each bust ---------------------------------------------------------------------

void print_group_head(const char* title) {
  fmt::print(
      "\n{}\n  {:>6} {:>7} {:>7} {:>7} {:>7} {:>26}  errors; faults of shape; laws of the "
      "armhole\n",
      title, "bust", "people", "refused", "warned", "silent", "bust dart 5, 50, 95 %");
}

void print_group(double bust_mm, const Tally& tally) {
  const auto& darts = tally.bust_darts();
  fmt::print("  {:6.1f} {:7} {:7} {:7} {:7} {:10.1f}{:8.1f}{:8.1f}  {}; {}; {}\n", 0.1 * bust_mm,
             tally.people(), tally.refused(), tally.warned(), tally.silent(), at_share(darts, 0.05),
             at_share(darts, 0.5), at_share(darts, 0.95), counts_text(tally.errors()),
             counts_text(tally.faults()), counts_text(tally.laws_broken()));
}

/// The survey has no across front: the people of its covariance have none either.
Tally of_group(double bust_mm) {
  Tally tally;
  for (Session person : people_at_bust(bust_mm, kGroup, kSeed)) {
    person.tape[AcrossFront].reset();
    tally.count(person, fmt::format("bust {} mm", bust_mm));
  }
  return tally;
}

bool tell_groups() {
  print_group_head("People of each bust, generated from the survey's covariance given the bust");
  bool few = true;
  int silent = 0;
  for (double bust = 720.0; bust <= 1400.0; bust += 40.0) {
    const Tally tally = of_group(bust);
    print_group(bust, tally);
    few = few && tally.refused() * 100 <= kMostRefusedPerCent * tally.people();
    silent += tally.silent();
  }
  few = said(few, fmt::format("refused at most {} in 100 of each", kMostRefusedPerCent));
  return said(silent == 0, "none is drafted with a fault of shape") && few;
}

// --- the bust alone --------------------------------------------------------------------------

bool tell_bust_alone() {
  print_group_head("The bust alone (where refused or faulty, and every 10 cm)");
  int refused = 0, silent = 0;
  for (int bust = 700; bust <= 1500; bust += 10) {
    Tally tally;
    tally.count(bust_only(bust), fmt::format("bust {} mm alone", bust));
    if (tally.refused() > 0 || tally.silent() > 0 || bust % 100 == 0) print_group(bust, tally);
    refused += tally.refused();
    silent += tally.silent();
  }
  const bool none_refused = said(refused == 0, "none is refused");
  return said(silent == 0, "none is drafted with a fault of shape") && none_refused;
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
  const bool natural = tell_survey(argv[1], SurveyWaist::Natural, "natural");
  const bool navel = tell_survey(argv[1], SurveyWaist::Navel, "navel");
  const bool groups = tell_groups();
  const bool alone = tell_bust_alone();
  return natural && navel && groups && alone ? 0 : 1;
}
