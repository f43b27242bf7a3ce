#include "blockwright/base/error.hpp"
#include "blockwright/job/draft_job.hpp"
#include "commands.hpp"

#include <iostream>
#include <memory>

namespace blockwright {
namespace {

struct Options {
  DraftJob job;
  std::string job_file;
};

/// Options given on the command line win over the job file's.
DraftJob with_job_file(const CLI::App& command, const Options& options, FileStore& files) {
  if (options.job_file.empty()) return options.job;
  DraftJob job = read_job(files.read(options.job_file), options.job_file, {});
  const auto given = [&](const char* name) { return command.count(name) > 0; };
  if (given("CLIENT")) job.client = options.job.client;
  if (given("--session")) job.session = options.job.session;
  if (given("--out")) job.out = options.job.out;
  if (given("--write")) job.write = options.job.write;
  if (given("--paper")) job.paper = options.job.paper;
  if (given("--cut")) job.cut = options.job.cut;
  if (given("--unit")) job.unit = options.job.unit;
  if (given("--report")) job.report = options.job.report;
  if (given("--allowance")) job.allowance = options.job.allowance;
  if (given("--margin")) job.margin = options.job.margin;
  if (given("--overlap")) job.overlap = options.job.overlap;
  if (given("--steps")) job.steps = options.job.steps;
  return job;
}

int run(const CLI::App& command, const Options& options) {
  DiskFiles files;
  const DraftJob job = with_job_file(command, options, files);
  if (job.client.empty()) {
    throw UsageError({Severity::Error, "job.value", "CLIENT", "no client file was named",
                      "call `blockwright draft FILE.json`"});
  }
  const JobResult result = run_draft(job, files);
  std::cout << result.output;
  if (result.exit_code != 0) {
    for (const Problem& problem : result.problems) {
      if (problem.severity == Severity::Error) std::cerr << to_text(problem) << '\n';
    }
  }
  return result.exit_code;
}

}  // namespace

namespace {

/// Complains of anything but a plain decimal number; an unset variable must not become 0.
std::string plain_number(const std::string& text) {
  const bool plain = !text.empty() && text.find_first_not_of("0123456789.-") == std::string::npos;
  return plain ? "" : "'" + text + "' is not a number of mm, for example 20";
}

}  // namespace

void add_draft(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  DraftJob& job = options->job;
  CLI::App* command = app.add_subcommand(
      "draft", "Draft the front and back block from a client's newest tape session");
  command->add_option("CLIENT", job.client, "Client file (see docs/formats.md)");
  command->add_option("--session", job.session,
                      "Date of the session, e.g. 2026-03-14; default: the newest");
  command->add_option("--out", job.out, "Folder for the output; default: the current one");
  command->add_option("--write", job.write, "What to write: svg,pdf,json; default: svg,pdf")
      ->delimiter(',')
      ->allow_extra_args(false);
  command->add_option("--paper", job.paper,
                      "a4, letter, a3, legal, tabloid, a2, a1, WIDTHxHEIGHT in mm; one page: a0, "
                      "roll:WIDTH; default: a4");
  command->add_option("--cut", job.cut,
                      "toile (allowance at shoulder, side and opening), card (net, with holes) or "
                      "net; default: toile");
  command->add_option("--unit", job.unit,
                      "cm or in for the report and the paper; default: as the client file");
  command->add_option("--report", job.report, "text or json; default: text");
  command->add_option("--allowance", job.allowance, "Seam allowance of a toile in mm; default: 20")
      ->check(plain_number);
  command->add_option("--margin", job.margin, "Unprinted edge of the paper in mm; default: 10")
      ->check(plain_number);
  command->add_option("--overlap", job.overlap, "What neighbouring pages share in mm; default: 10")
      ->check(plain_number);
  command->add_flag("--steps", job.steps, "Print the draft as steps for pencil, ruler and compass");
  command->add_option("--job", options->job_file, "JSON file with these options as keys");
  command->callback([command, options, &exit_code] { exit_code = run(*command, *options); });
}

}  // namespace blockwright
