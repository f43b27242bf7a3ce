#pragma once

#include <CLI/CLI.hpp>

namespace blockwright {

/// Each adds one command to the program. When the command is called it does its work and leaves the
/// exit code in `exit_code`: 0 all done, 1 a client failed or a check found an error, 2 could not
/// start.
void add_draft(CLI::App& app, int& exit_code);
void add_batch(CLI::App& app, int& exit_code);
void add_fit(CLI::App& app, int& exit_code);
void add_compare(CLI::App& app, int& exit_code);
void add_pivot(CLI::App& app, int& exit_code);
void add_adapt(CLI::App& app, int& exit_code);
void add_schema(CLI::App& app, int& exit_code);
void add_explain(CLI::App& app, int& exit_code);

}  // namespace blockwright
