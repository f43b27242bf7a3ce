#include "blockwright/job/job.hpp"
#include "commands.hpp"

#include <iostream>
#include <memory>
#include <string>

namespace blockwright {

void add_schema(CLI::App& app, int& exit_code) {
  auto name = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand("schema", "Print the JSON Schema of a file kind");
  command->add_option("NAME", *name, "client, job, pattern, report or style")->required();
  command->callback([name, &exit_code] {
    std::cout << schema_named(*name);
    exit_code = 0;
  });
}

}  // namespace blockwright
