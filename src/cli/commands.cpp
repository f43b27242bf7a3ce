#include "commands.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/job/tape_form.hpp"
#include "command_options.hpp"
#include "fit_prompt.hpp"
#include "new_tape_prompt.hpp"
#include "progress_bar.hpp"
#include "tape_prompt.hpp"
#include "terminal.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <csignal>
#include <ctime>
#include <fcntl.h>
#include <iostream>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace blockwright {
namespace {

void require_source(const BatchJob& batch) {
  const bool has_files = !batch.folder.empty() || !batch.clients.empty();
  if (batch.jsonl && (has_files || !batch.shard.empty())) {
    throw UsageError({Severity::Error, "job.value", "--jsonl",
                      "clients are read from standard input, not from a folder",
                      "leave out FOLDER and --shard"});
  }
  if (!batch.jsonl && !has_files) {
    throw UsageError({Severity::Error, "job.value", "FOLDER", "no folder was named",
                      "call `blockwright batch FOLDER --out DIR`"});
  }
}

JobResult run_lines(const BatchJob& batch, FileStore& files) {
  BatchWatch watch;
  watch.say = [](std::string_view text) {
    print(std::cout, text);
    std::cout.flush();
  };
  return run_stream(batch, std::cin, files, watch);
}

JobResult run_folder(BatchJob& batch, FileStore& files) {
  if (batch.each.out.empty()) batch.each.out = ".";
  ProgressBar bar(std::cerr, !batch.quiet && isatty(STDERR_FILENO) != 0);
  BatchWatch watch;
  watch.say = [&bar](std::string_view text) {
    bar.clear();
    print(std::cout, text);
    std::cout.flush();
  };
  watch.progress = [&bar](std::size_t done, std::size_t total, std::size_t failed) {
    bar.draw(done, total, failed);
  };
  return run_batch(batch, files, watch);
}

/// Works on a folder, or on a stream from standard input; prints the summary meanwhile.
JobResult run_batch_command(BatchJob& batch, FileStore& files) {
  require_source(batch);
  return batch.jsonl ? run_lines(batch, files) : run_folder(batch, files);
}

/// A person reads and answers; no pipe, no file.
bool is_at_terminal() { return isatty(STDIN_FILENO) != 0 && isatty(STDOUT_FILENO) != 0; }

/// Prints the report, and the errors to standard error; gives back the exit code.
int print_result(const JobResult& result) {
  print(std::cout, result.output);
  if (result.exit_code != 0) {
    for (const Problem& problem : result.problems) {
      if (problem.severity == Severity::Error) std::cerr << to_text(problem) << '\n';
    }
  }
  return result.exit_code;
}

/// A command whose options are those of its job. They are added once the command is called: a run
/// makes those of no other command.
template <class AnyJob>
void add_job_command(CLI::App& app, int& exit_code, Command of, const AnyJob& defaults,
                     const char* about, JobResult (*run)(AnyJob&, FileStore&)) {
  auto job = std::make_shared<AnyJob>(defaults);
  auto called = std::make_shared<std::optional<CommandOptions>>();
  CLI::App* command = app.add_subcommand(std::string(command_name(of)), about);
  command->preparse_callback(
      [job, called, command](std::size_t) { called->emplace(*command, JobOptions(*job)); });
  command->callback([job, called, run, &exit_code] {
    DiskFiles files;
    (*called)->take(files);
    exit_code = print_result(run(*job, files));
  });
}

std::string today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return fmt::format("{:04}-{:02}-{:02}", local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

/// What an interrupt puts in the place of standard input.
volatile std::sig_atomic_t empty_input = -1;
volatile std::sig_atomic_t is_interrupted = 0;

/// While it lives, an interrupt ends the input and not the program, so that what was entered can be
/// written. A read that waits is broken off; one that is only about to begin finds nothing.
class InterruptEndsInput {
 public:
  InterruptEndsInput() {
    is_interrupted = 0;
    empty_input = open("/dev/null", O_RDONLY | O_CLOEXEC);
    struct sigaction action {};
    action.sa_handler = [](int) {
      is_interrupted = 1;
      dup2(empty_input, STDIN_FILENO);
    };  // without SA_RESTART
    sigaction(SIGINT, &action, &before_);
  }
  ~InterruptEndsInput() {
    sigaction(SIGINT, &before_, nullptr);
    close(empty_input);
  }
  InterruptEndsInput(const InterruptEndsInput&) = delete;
  InterruptEndsInput& operator=(const InterruptEndsInput&) = delete;

 private:
  struct sigaction before_ {};
};

/// What an interrupt at a question leaves undone: all but the answers, each of which was kept at
/// once.
JobResult left_off(const Job& job) {
  const std::string client = shown_place(job.client);
  JobResult result;
  result.exit_code = 1;
  result.output = fmt::format(
      "\nStopped before anything was drafted: no piece was drawn, and none that is there was "
      "changed.\nWhat you answered is kept in {}, and nothing else in it was changed.\n"
      "`blockwright {} {}` asks the rest again.\n",
      client, command_name(job.command), as_argument(job.client));
  return result;
}

JobResult run_pieces(Job& job, FileStore& files) {
  if (is_at_terminal() && job.report == ReportKind::Text) {
    const InterruptEndsInput ends;
    ask_of_explained(job, files, std::cin, std::cout);
    if (is_interrupted != 0) return left_off(job);
  }
  return run_job(job, files);
}

/// Whether the prompt goes on from what she asks for: not where a report of the answers is wanted.
bool goes_on_to_ask(const FitJob& job) {
  if (!job.ask) return false;
  const bool report_named =
      std::ranges::find(job.typed, "--report") != job.typed.end() || job.report == ReportKind::Json;
  return job.ask->empty() || (is_at_terminal() && !report_named);
}

/// Standard input that somebody may have written answers into: a pipe or a file.
bool has_answers_sent() {
  struct stat input = {};
  if (fstat(STDIN_FILENO, &input) != 0) return false;
  return S_ISFIFO(input.st_mode) || (S_ISREG(input.st_mode) && input.st_size > 0);
}

void say_if_not_read(const std::string& client) {
  if (!has_answers_sent()) return;
  std::cerr << "Answers in a pipe or file are not read here: with words --ask only shows what "
               "answers them.\n`blockwright fit "
            << as_argument(client) << " --ask`, without words, asks and takes answers.\n";
}

JobResult run_fitting(FitJob& job, FileStore& files) {
  if (job.ask && job.client.empty()) std::swap(*job.ask, job.client);  // fit --ask CLIENT
  if (goes_on_to_ask(job)) {
    judge(JobOptions(job));
    const InterruptEndsInput ends;
    ask_for_corrections(job, today(), files, {std::cin, std::cout});
  } else if (job.ask) {
    say_if_not_read(job.client);
  }
  return run_fit(job, files);
}

JobResult ask_session(const TapeJob& job, FileStore& files) {
  const InterruptEndsInput ends;
  JobResult result;
  try {
    result.exit_code = ask_for_tape(job, today(), files, std::cin, std::cout) ? 0 : 1;
  } catch (const UsageError&) {
    throw;
  } catch (const Error& error) {
    result.exit_code = error.problem().code == "file.read" ? 2 : 1;
    result.problems = {error.problem()};
  }
  return result;
}

JobResult run_session(TapeJob& job, FileStore& files) {
  judge_tape(job);
  if (job.sheet) return run_tape_sheet(job, files);
  if (job.blank && job.date.empty()) job.date = today();
  if (job.blank) return run_tape_blank(job, files);
  return job.check ? run_tape(job, files) : ask_session(job, files);
}

JobResult run_comparison(CompareJob& job, FileStore& files) { return run_compare(job, files); }

/// A command that prints a text of the program by its name.
void add_text_command(CLI::App& app, int& exit_code, const char* name, const char* about,
                      const std::pair<const char*, const char*>& argument,
                      std::string (*text_of)(std::string_view)) {
  auto named = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand(name, about);
  command->add_option(argument.first, *named, argument.second)->required();
  command->callback([named, text_of, &exit_code] {
    print(std::cout, text_of(*named));
    exit_code = 0;
  });
}

Job job_of(Command command) {
  Job job;
  job.command = command;
  return job;
}

}  // namespace

void add_commands(CLI::App& app, int& exit_code) {
  BatchJob batch;
  batch.each.out.clear();  // a stream is written only where one is named
  add_job_command(app, exit_code, Command::Draft, job_of(Command::Draft),
                  "Draft the front and back block from a client's newest tape session", run_pieces);
  add_job_command(
      app, exit_code, Command::Tape, TapeJob{},
      "Take a tape session at the prompt, of a new or a known client; print a form for one; "
      "judge one",
      run_session);
  add_job_command(app, exit_code, Command::Fit, FitJob{},
                  "Show, add or withdraw the corrections of a toile fitting, in the order of work",
                  run_fitting);
  add_job_command(app, exit_code, Command::Compare, CompareJob{},
                  "Lay two versions of a block over each other: sessions, toiles or clients",
                  run_comparison);
  add_job_command(app, exit_code, Command::Pivot, job_of(Command::Pivot),
                  "Move, split or merge the darts of a client's block and see the result",
                  run_pieces);
  add_job_command(app, exit_code, Command::Adapt, job_of(Command::Adapt),
                  "Make a garment's pieces from a client's block by the steps of a style file",
                  run_pieces);
  add_job_command(app, exit_code, Command::Batch, batch,
                  "Draft (or with --style adapt) every client file of a folder", run_batch_command);
  add_text_command(app, exit_code, "schema", "Print the JSON Schema of a file kind",
                   {"NAME", "client, job, pattern, report or style"}, schema_named);
  add_text_command(app, exit_code, "explain", "Tell cause and cure of a problem code",
                   {"CODE", "for example draft.adjusted"}, explanation_of);
}

}  // namespace blockwright
