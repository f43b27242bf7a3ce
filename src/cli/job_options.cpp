#include "job_options.hpp"

#include "blockwright/base/error.hpp"

#include <iostream>

namespace blockwright {
namespace {

/// Options given on the command line win over the job file's.
Job with_job_file(const CLI::App& command, const JobOptions& options, FileStore& files) {
  if (options.job_file.empty()) return options.job;
  const Job& called = options.job;
  Job job = read_job(files.read(options.job_file), options.job_file, {});
  job.command = called.command;
  const auto take = [&](const char* name, auto member) {
    const CLI::Option* option = command.get_option_no_throw(name);
    if (option != nullptr && option->count() > 0) job.*member = called.*member;
  };
  take("CLIENT", &Job::client);
  take("STYLE", &Job::style);
  take("--dart", &Job::dart);
  take("--to", &Job::to);
  take("--part", &Job::part);
  take("--angle", &Job::angle);
  take("--split", &Job::split);
  take("--hold-back", &Job::hold_back);
  take("--overlay", &Job::overlay);
  take("--session", &Job::session);
  take("--toile", &Job::toile);
  take("--out", &Job::out);
  take("--write", &Job::write);
  take("--paper", &Job::paper);
  take("--cut", &Job::cut);
  take("--unit", &Job::unit);
  take("--report", &Job::report);
  take("--allowance", &Job::allowance);
  take("--margin", &Job::margin);
  take("--overlap", &Job::overlap);
  take("--steps", &Job::steps);
  return job;
}

/// Complains of anything but a plain decimal number; an unset variable must not become 0.
std::string plain_number(const std::string& text) {
  const bool plain = !text.empty() && text.find_first_not_of("0123456789.-") == std::string::npos;
  return plain ? "" : "'" + text + "' is not a number of mm, for example 20";
}

std::string plain_share(const std::string& text) {
  return plain_number(text).empty() ? "" : "'" + text + "' is not a plain number, for example 0.5";
}

void require_files(const CLI::App& command, const Job& job) {
  const std::string call = "`blockwright " + command.get_name() + " FILE.json";
  if (job.client.empty()) {
    throw UsageError(
        {Severity::Error, "job.value", "CLIENT", "no client file was named", "call " + call + "`"});
  }
  if (job.command == Command::Adapt && job.style.empty()) {
    throw UsageError({Severity::Error, "job.value", "STYLE", "no style file was named",
                      "call " + call + " STYLE.json`"});
  }
}

}  // namespace

void add_job_options(CLI::App& command, JobOptions& options) {
  Job& job = options.job;
  command.add_option("--session", job.session,
                     "Date of the session, e.g. 2026-03-14; default: the newest");
  command.add_option("--toile", job.toile,
                     "Apply only the corrections of the toiles before this one; default: all");
  command.add_option("--out", job.out, "Folder for the output; default: the current one");
  command.add_option("--write", job.write, "What to write: svg,pdf,json; default: svg,pdf")
      ->delimiter(',')
      ->allow_extra_args(false);
  command.add_option("--paper", job.paper,
                     "a4, letter, a3, legal, tabloid, a2, a1, WIDTHxHEIGHT in mm; one page: a0, "
                     "roll:WIDTH; default: a4");
  command.add_option("--cut", job.cut,
                     "toile (allowance at shoulder, side and opening), card (net, with holes) or "
                     "net; default: toile");
  command.add_option("--unit", job.unit,
                     "cm or in for the report and the paper; default: as the client file");
  command.add_option("--report", job.report, "text or json; default: text");
  command.add_option("--allowance", job.allowance, "Seam allowance of a toile in mm; default: 20")
      ->check(plain_number);
  command.add_option("--margin", job.margin, "Unprinted edge of the paper in mm; default: 10")
      ->check(plain_number);
  command.add_option("--overlap", job.overlap, "What neighbouring pages share in mm; default: 10")
      ->check(plain_number);
  command.add_option("--job", options.job_file, "JSON file with these options as keys");
}

void add_move_options(CLI::App& command, JobOptions& options) {
  Job& job = options.job;
  command.add_option("--dart", job.dart, "Dart to move, e.g. front.shoulder; may be repeated")
      ->allow_extra_args(false);
  command
      .add_option("--to", job.to,
                  "Where it goes: front.neck, front.shoulder, front.armhole, front.side, "
                  "front.french, front.waist, front.centre_front; back.neck, back.shoulder, "
                  "back.armhole, back.waist, back.centre_back; with a fraction of the edge or a "
                  "distance where not the usual place is meant: front.side:0.25, front.side:6cm")
      ->allow_extra_args(false);
  command.add_option("--part", job.part, "Share of the dart that moves, 0 to 1; default: 1")
      ->check(plain_share)
      ->allow_extra_args(false);
  command.add_option("--angle", job.angle, "Degrees of the dart that move, in place of a share")
      ->check(plain_share)
      ->allow_extra_args(false);
  command
      .add_option("--split", job.split,
                  "Dart to make two or more of, side by side, e.g. front.waist:2")
      ->allow_extra_args(false);
  command
      .add_option("--hold-back", job.hold_back,
                  "How far the stitching of moved darts ends short of the apex, in mm; default: "
                  "by place and bust size")
      ->check(plain_number);
}

void add_overlay_option(CLI::App& command, JobOptions& options) {
  command.add_flag("--overlay", options.job.overlay,
                   "Also write the pieces over the block that they were made from");
}

int run_job_command(const CLI::App& command, const JobOptions& options) {
  DiskFiles files;
  const Job job = with_job_file(command, options, files);
  require_files(command, job);
  return print_result(run_job(job, files));
}

int print_result(const JobResult& result) {
  std::cout << result.output;
  if (result.exit_code != 0) {
    for (const Problem& problem : result.problems) {
      if (problem.severity == Severity::Error) std::cerr << to_text(problem) << '\n';
    }
  }
  return result.exit_code;
}

}  // namespace blockwright
