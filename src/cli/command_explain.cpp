#include "blockwright/job/job.hpp"
#include "commands.hpp"

#include <iostream>
#include <memory>
#include <string>

namespace blockwright {

void add_explain(CLI::App& app, int& exit_code) {
  auto code = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand("explain", "Tell cause and cure of a problem code");
  command->add_option("CODE", *code, "for example draft.adjusted")->required();
  command->callback([code, &exit_code] {
    std::cout << explanation_of(*code);
    exit_code = 0;
  });
}

}  // namespace blockwright
