#include "command_options.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

const CLI::Option* added(CLI::App& command, const Option& option, const JobParts& defaults) {
  const std::string name = command_line_name(option), help = help_of(option, defaults);
  if (option.shape.kind == OptionShape::Kind::Flag) return command.add_flag(name, help);
  CLI::Option* typed = command.add_option(name, help)->type_name(value_name(option));
  if (option.shape.kind == OptionShape::Kind::FlagOrText) return typed->expected(0, 1);
  if (option.shape.count == OptionShape::Count::List) typed->take_all();
  return option.shape.words.empty() || option.shape.gaps ? typed : typed->delimiter(',');
}

}  // namespace

CommandOptions::CommandOptions(CLI::App& command, JobOptions options)
    : command_(&command), options_(std::move(options)) {
  for (const Option& option : options_.options) {
    typed_.push_back(added(command, option, options_.parts));
  }
  job_file_ =
      command.add_option("--job", "JSON file with these options as keys")->type_name("FILE");
}

void CommandOptions::take(FileStore& files) const {
  if (job_file_->count() > 0) {
    const std::string& name = job_file_->results().front();
    read_job_file(files.read(name), name, options_);
  }
  for (std::size_t i = 0; i < typed_.size(); ++i) {
    if (typed_[i]->count() == 0) continue;
    const Option& option = options_.options[i];
    put_typed(option, typed_[i]->results(), options_.parts);
    places_in(options_).erase(command_line_name(option));
  }
  for (const CLI::Option* typed : command_->parse_order()) {
    const auto found = std::ranges::find(typed_, typed);
    if (found == typed_.end()) continue;
    const auto number = static_cast<std::size_t>(found - typed_.begin());
    typed_in(options_).push_back(command_line_name(options_.options[number]));
  }
}

}  // namespace blockwright
