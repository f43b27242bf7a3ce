#include "run_program.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/version.hpp"
#include "commands.hpp"
#include "terminal.hpp"

#include <exception>
#include <iostream>
#include <string>

namespace blockwright {
namespace {

/// CLI11's own codes (100 and up) become 2; help and version are 0.
int exit_code_of(const CLI::App& app, const CLI::ParseError& error) {
  return app.exit(error, std::cout, std::cerr) == 0 ? 0 : 2;
}

/// What was typed is part of the message.
std::string failure_text(const CLI::App* app, const CLI::Error& error) {
  constexpr std::size_t longest = 120;
  return CLI::FailureMessage::simple(
      app, CLI::Error(error.get_name(), shown(error.what(), longest), error.get_exit_code()));
}

int run(int argc, char** argv) {
  CLI::App app{
      "Drafts a person's fitted bodice block from tape measurements and prints it at 1:1."};
  app.name("blockwright");
  app.set_version_flag("--version", "blockwright " + std::string(version()));
  app.failure_message(failure_text);
  app.require_subcommand(1);
  app.footer(
      "Exit codes: 0 all done; 1 a client failed or a check found an error; 2 could not "
      "start.");
  int exit_code = 0;
  add_commands(app, exit_code);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return exit_code_of(app, error);
  }
  return exit_code;
}

/// A report that could not be printed is a failure, too.
int with_output_checked(int exit_code) {
  if (std::cout.flush()) return exit_code;
  std::cerr << "error [file.write] standard output: it cannot be written (check where it leads)\n";
  return exit_code == 0 ? 1 : exit_code;
}

}  // namespace

int run_program(int argc, char** argv) {
  try {
    return with_output_checked(run(argc, argv));
  } catch (const Error& error) {
    std::cerr << to_text(error.problem()) << '\n';
    return 2;
  } catch (const std::exception& error) {
    std::cerr << to_text({Severity::Error, "program.bug", "", error.what(),
                          "please report it with the files that led to it"})
              << '\n';
    return 2;
  }
}

}  // namespace blockwright
