#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/report/report.hpp"

#include <string>

namespace blockwright {

/// What a run that broke off gives back.
inline JobResult failed(const std::string& file, ReportKind report, const Problem& problem,
                        int exit_code) {
  JobResult result;
  result.exit_code = exit_code;
  result.problems = {problem};
  if (report == ReportKind::Json) result.output = failure_json(file, result.problems);
  return result;
}

/// The problem of an option with its place in the job file, where it came from one.
inline Problem placed(Problem problem, const OptionPlaces& places) {
  problem.where = place_of(problem.where, places);
  return problem;
}

/// Runs `work`; whatever it throws about the run becomes its result: 2 where it could not start, 1
/// where this client failed.
template <class Work>
JobResult guarded(const std::string& file, ReportKind report, const OptionPlaces& places,
                  Work&& work) {
  try {
    return work();
  } catch (const UsageError& error) {
    return failed(file, report, placed(error.problem(), places), 2);
  } catch (const FileError& error) {
    return failed(file, report, error.problem(), error.problem().code == "file.write" ? 1 : 2);
  } catch (const Error& error) {
    return failed(file, report, error.problem(), 1);
  }
}

}  // namespace blockwright
