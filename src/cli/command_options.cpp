#include "command_options.hpp"

#include <utility>

namespace blockwright {
namespace {

const CLI::Option* added(CLI::App& command, const Option& option, const JobParts& defaults) {
  const std::string name = command_line_name(option), help = help_of(option, defaults);
  if (option.shape.kind == OptionShape::Kind::Flag) return command.add_flag(name, help);
  CLI::Option* typed = command.add_option(name, help)->type_name(value_name(option));
  if (option.shape.count == OptionShape::Count::List) typed->take_all();
  return option.shape.words.empty() ? typed : typed->delimiter(',');
}

}  // namespace

CommandOptions::CommandOptions(CLI::App& command, JobOptions options)
    : options_(std::move(options)) {
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
}

}  // namespace blockwright
