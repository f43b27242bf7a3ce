#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/text/refuse.hpp"
#include "option_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

namespace blockwright {
namespace {

/// A plain decimal number; nothing for all else: an unset variable must not become 0.
std::optional<double> plain_number(const std::string& text) {
  const bool plain = text.find_first_not_of("0123456789.-") == std::string::npos;
  return plain ? number_in<double>(text) : std::nullopt;
}

[[noreturn]] void refuse_typed(const Option& option, const std::string& text,
                               const std::string& where) {
  refuse_option(where, "'" + shown(text) + "' is not " + kind_words(option),
                "use " + values_words(option));
}

/// "per seam" is the word "per_seam".
std::string as_known_word(const Option& option, const std::string& text) {
  std::string joined = text;
  std::ranges::replace(joined, ' ', '_');
  const bool is_known = std::ranges::count(option.shape.words, joined, &OptionWord::word) > 0;
  return is_known ? joined : text;
}

OptionItem typed_item(const Option& option, const std::string& text) {
  if (option.shape.kind == OptionShape::Kind::Flag) return text == "true";
  if (!is_number(option)) return as_known_word(option, text);
  const auto number = plain_number(text);
  if (!number) refuse_typed(option, text, command_line_name(option));
  return *number;
}

/// A list of words may know fewer than its type.
bool is_known(const Option& option, const OptionItem& item) {
  const auto& words = option.shape.words;
  if (option.shape.gaps && item == OptionItem(std::string())) return true;
  return words.empty() ||
         std::ranges::find(words, item_text(item), &OptionWord::word) != words.end();
}

bool is_missing(const OptionItems& items) {
  return items.empty() || items.front() == OptionItem(std::string());
}

void judge_number(const Option& option, double number, const std::string& where) {
  const OptionLimits& limits = option.rules.limits;
  const bool enough = limits.above ? number > limits.least : number >= limits.least;
  if (std::isfinite(number) && enough && number <= limits.most) return;
  const std::string unit = option.shape.unit.empty() ? "" : " " + std::string(option.shape.unit);
  refuse_option(where, told_number(number, 3) + unit + " is out of range",
                "use " + values_words(option));
}

/// What is wrong with the whole of an option's value.
void judge_whole(const Option& option, const OptionItems& items, Command command,
                 const std::string& where) {
  if (!option.rules.required.empty() && is_missing(items)) {
    refuse_option(
        where, "no " + std::string(option.rules.required) + " was named",
        "`blockwright " + std::string(command_name(command)) + " --help` shows how it is called");
  }
  if (items.empty() && option.shape.count == OptionShape::Count::List &&
      !option.shape.words.empty() && !option.shape.gaps && option.rules.otherwise.empty()) {
    refuse_option(where, "the list is empty", "use " + values_words(option));
  }
  if (option.rules.most_items > 0 && items.size() > option.rules.most_items) {
    const std::string most = std::to_string(option.rules.most_items);
    refuse_option(where, std::to_string(items.size()) + " are more than " + most,
                  "name at most " + most);
  }
}

void judge_one(const Option& option, const JobOptions& options) {
  const OptionItems items = option.get(options.parts);
  const OptionPlaces& places = places_in(options);
  const std::string name = command_line_name(option);
  judge_whole(option, items, options.command, place_of(name, places));
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string where = place_of(name, places, i);
    if (const double* number = std::get_if<double>(&items[i])) judge_number(option, *number, where);
    if (!is_known(option, items[i])) refuse_typed(option, item_text(items[i]), where);
  }
}

bool is_of(const Option& option, Command command) {
  return std::ranges::find(option.commands, command) != option.commands.end();
}

}  // namespace

std::string_view command_name(Command command) {
  constexpr std::array<std::string_view, kCommandCount> names = {
      "draft", "pivot", "adapt", "batch", "fit", "compare", "tape"};
  return names[static_cast<std::size_t>(command)];
}

JobOptions::JobOptions(Command of, JobParts into, const std::vector<Option>& table)
    : command(of), parts(std::move(into)) {
  std::ranges::copy_if(table, std::back_inserter(options),
                       [of](const Option& option) { return is_of(option, of); });
}

bool has_option(Command command, std::string_view name) {
  return std::ranges::any_of(option_table(), [&](const Option& option) {
    return option.name == name && is_of(option, command);
  });
}

JobOptions::JobOptions(Job& job, const std::vector<Option>& table)
    : JobOptions(job.command, {&job, &job, &job, nullptr, nullptr, nullptr, nullptr}, table) {}

JobOptions::JobOptions(BatchJob& job, const std::vector<Option>& table)
    : JobOptions(Command::Batch, {&job.each, &job.each, &job.each, nullptr, nullptr, &job, nullptr},
                 table) {}

JobOptions::JobOptions(FitJob& job, const std::vector<Option>& table)
    : JobOptions(Command::Fit, {&job, &job, nullptr, &job, nullptr, nullptr, nullptr}, table) {}

JobOptions::JobOptions(CompareJob& job, const std::vector<Option>& table)
    : JobOptions(Command::Compare, {&job, &job, nullptr, nullptr, &job, nullptr, nullptr}, table) {}

JobOptions::JobOptions(TapeJob& job, const std::vector<Option>& table)
    : JobOptions(Command::Tape, {&job, &job, nullptr, nullptr, nullptr, nullptr, &job}, table) {}

OptionPlaces& places_in(const JobOptions& options) {
  return std::get<ClientJob*>(options.parts)->places;
}

std::vector<std::string>& typed_in(const JobOptions& options) {
  return std::get<ClientJob*>(options.parts)->typed;
}

std::string place_of(const std::string& name, const OptionPlaces& places,
                     std::optional<std::size_t> item) {
  const auto found = places.find(name);
  if (found == places.end()) return name;
  const OptionPlace& place = found->second;
  return item && *item < place.items.size() ? place.items[*item] : place.whole;
}

void put_typed(const Option& option, const std::vector<std::string>& typed, const JobParts& parts) {
  OptionItems items;
  if (option.shape.kind == OptionShape::Kind::FlagOrText) {
    const bool alone = typed.empty() || typed.front().empty();
    option.put(parts, {alone ? OptionItem(true) : OptionItem(typed.front())});
    return;
  }
  for (const std::string& text : typed) {
    items.push_back(typed_item(option, text));
    if (!option.put(parts, {items.back()})) {
      refuse_typed(option, text, command_line_name(option));
    }
  }
  option.put(parts, items);
}

void judge(const JobOptions& options) {
  for (const Option& option : options.options) judge_one(option, options);
}

std::string output_key(const JobOptions& options) {
  std::string key(command_name(options.command));
  for (const Option& option : options.options) {
    if (option.changes == Changes::Nothing) continue;
    key += "\n" + std::string(option.name);
    for (const OptionItem& item : option.get(options.parts)) {
      const std::string text = item_text(item);
      key += " " + std::to_string(text.size()) + ":" + text;
    }
  }
  return key;
}

}  // namespace blockwright
