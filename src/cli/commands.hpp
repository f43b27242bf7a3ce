#pragma once

#include <CLI/CLI.hpp>

namespace blockwright {

/// Adds all commands to the program. The one that is called does its work and leaves the exit code
/// in `exit_code`: 0 all done, 1 a client failed or a check found an error, 2 could not start.
void add_commands(CLI::App& app, int& exit_code);

}  // namespace blockwright
