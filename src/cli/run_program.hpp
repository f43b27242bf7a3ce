#pragma once

namespace blockwright {

/// What is typed, done: the exit code is 0 where all was done, 1 where a client failed or a check
/// found an error, 2 where nothing could start.
int run_program(int argc, char** argv);

}  // namespace blockwright
