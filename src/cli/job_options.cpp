#include "job_options.hpp"

#include "blockwright/base/error.hpp"
#include "fit_prompt.hpp"

#include <iostream>
#include <unistd.h>

namespace blockwright {
namespace {

/// Complains of anything but a plain decimal number; an unset variable must not become 0.
std::string plain_number(const std::string& text) {
  const bool plain = !text.empty() && text.find_first_not_of("0123456789.-") == std::string::npos;
  return plain ? "" : "'" + text + "' is not a number of mm, for example 20";
}

std::string plain_share(const std::string& text) {
  return plain_number(text).empty() ? "" : "'" + text + "' is not a plain number, for example 0.5";
}

/// A person reads and answers; no pipe, no file.
bool is_at_terminal() { return isatty(STDIN_FILENO) != 0 && isatty(STDOUT_FILENO) != 0; }

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

void add_job_options(CLI::App& command, Job& job) {
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
  command
      .add_option("--allowance", job.allowance,
                  "Seam allowance of a toile in mm; default: 20, in inches 3/4 in")
      ->check(plain_number);
  command.add_flag("--anonymous", job.anonymous,
                   "Leave the client's name off the paper and out of the report");
  add_page_options(command, job.margin, job.overlap);
}

void add_page_options(CLI::App& command, double& margin, double& overlap) {
  command.add_option("--margin", margin, "Unprinted edge of the paper in mm; default: 10")
      ->check(plain_number);
  command.add_option("--overlap", overlap, "What neighbouring pages share in mm; default: 10")
      ->check(plain_number);
}

void add_job_file_option(CLI::App& command, std::string& file) {
  command.add_option("--job", file, "JSON file with these options as keys");
}

void take_again(CLI::App& command) {
  for (CLI::Option* option : command.get_options()) {
    if (option->count() > 0) option->run_callback();
  }
}

void add_move_options(CLI::App& command, Job& job) {
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

void add_overlay_option(CLI::App& command, Job& job) {
  command.add_flag("--overlay", job.overlay,
                   "Also write the pieces over the block that they were made from");
}

int run_job_command(CLI::App& command, JobOptions& options) {
  DiskFiles files;
  take_job_file(command, options.job_file, options.job, read_job, files);
  require_files(command, options.job);
  if (is_at_terminal() && options.job.report != "json") {
    ask_of_explained(options.job, files, std::cin, std::cout);
  }
  return print_result(run_job(options.job, files));
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
