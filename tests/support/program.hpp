#pragma once

#include "support/run_tool.hpp"

#include <string>

namespace blockwright_tests {

/// The program that was built with these tests.
extern const char* const kProgramFile;
inline const std::string kProgram = kProgramFile;
inline const std::string kDemo =
    std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe/ondine-marsh.json";

/// Calls the program in the shell.
inline ToolResult call(const std::string& arguments) {
  return run_tool(kProgram + " " + arguments);
}

}  // namespace blockwright_tests
