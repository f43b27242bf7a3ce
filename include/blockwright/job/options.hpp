#pragma once

#include "blockwright/job/job.hpp"

#include <functional>
#include <limits>
#include <string>
#include <string_view>
#include <tuple>
#include <variant>
#include <vector>

namespace blockwright {

/// Where the options of a command are put; null what the command has not got.
using JobParts =
    std::tuple<ClientJob*, DrawingJob*, Job*, FitJob*, CompareJob*, BatchJob*, TapeJob*>;

/// One item of an option's value: a flag, a number in the option's unit, or a text.
using OptionItem = std::variant<bool, double, std::string>;
using OptionItems = std::vector<OptionItem>;

/// A word that an option takes, and what it means; that may be empty.
struct OptionWord {
  std::string_view word;
  std::string_view means;
};

/// Which values an option takes.
struct OptionShape {
  enum class Kind { Flag, Number, WholeNumber, Text, FlagOrText };
  enum class Count { One, OneOrNone, List };
  Kind kind = Kind::Text;
  Count count = Count::One;
  std::string_view unit = {};          ///< of numbers: "mm", "degrees" or nothing
  std::vector<OptionWord> words = {};  ///< the only texts there are; none: any text
  bool gaps = false;                   ///< an item of a list may be none: an empty text
};

/// Numbers from `least`, or above it, to `most`.
struct OptionLimits {
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  bool above = false;
};

/// Whether another value of an option makes other files.
enum class Changes { Output, Nothing };

/// What else is to say of an option.
struct OptionRules {
  std::string otherwise = {};  ///< what holds where it is not given, in words
  OptionLimits limits = {};
  std::size_t most_items = 0;      ///< of a list; 0: any number
  std::string_view pattern = {};   ///< regular expression of its texts, for the schema
  bool or_one = false;             ///< a job file may give one value in the place of a list
  bool argument = false;           ///< at the command line it is a word without a name: CLIENT
  std::string_view required = {};  ///< "client file": what is missing where it is not given
};

/// One option: declared once in src/job/options/options.cpp.
struct Option {
  std::string_view name;  ///< in job files: "hold_back"; at the command line "--hold-back"
  std::vector<Command> commands;
  Changes changes;
  std::string_view help;
  OptionRules rules;
  OptionShape shape;
  std::function<OptionItems(const JobParts&)> get;
  /// False, and nothing put, where an item is none of the shape's.
  std::function<bool(const JobParts&, const OptionItems&)> put;
};

/// Every option of every command, in the order in which help and schema list them.
const std::vector<Option>& option_table();

/// The options of one command and the job that they are put into, which must outlive this.
struct JobOptions {
  Command command;
  JobParts parts;
  std::vector<Option> options;

  JobOptions(Job& job, const std::vector<Option>& table = option_table());
  JobOptions(BatchJob& job, const std::vector<Option>& table = option_table());
  JobOptions(FitJob& job, const std::vector<Option>& table = option_table());
  JobOptions(CompareJob& job, const std::vector<Option>& table = option_table());
  JobOptions(TapeJob& job, const std::vector<Option>& table = option_table());

 private:
  JobOptions(Command of, JobParts into, const std::vector<Option>& table);
};

/// Whether a command has an option of that name: "hold_back".
bool has_option(Command command, std::string_view name);

/// Where the options of its job stand in a job file. Every job is a ClientJob.
OptionPlaces& places_in(const JobOptions& options);
/// The job's names of what was typed.
std::vector<std::string>& typed_in(const JobOptions& options);

/// "draft"
std::string_view command_name(Command command);
/// "--hold-back", or "CLIENT" of an argument.
std::string command_line_name(const Option& option);
/// "TEXT", "MM" ...: what stands for a value in the help.
std::string value_name(const Option& option);
/// What the option does, which values it takes and what holds without it.
std::string help_of(const Option& option, const JobParts& defaults);

/// Puts what was typed at the command line into the job; a flag is typed without a value. Throws
/// UsageError "job.value", naming value, limit and cure.
void put_typed(const Option& option, const std::vector<std::string>& typed, const JobParts& parts);

/// Reads a job file (format "blockwright-job-1", docs/formats.md) over the job: the options of its
/// command by their names. Throws InputError "job.syntax", "job.format", "job.key", "job.type",
/// "job.value" and those of JsonDocument.
void read_job_file(const std::string& text, std::string_view file, const JobOptions& options);

/// Refuses what is missing and what is out of its limits: UsageError "job.value".
void judge(const JobOptions& options);

template <class AnyJob>
void judge(AnyJob job) {
  judge(JobOptions(job));
}

/// All that the output depends on, as a text.
std::string output_key(const JobOptions& options);

/// The JSON Schema of job files.
std::string job_schema(const std::vector<Option>& table = option_table());

}  // namespace blockwright
