#include "option_words.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using Kind = OptionShape::Kind;

std::string upper(std::string text) {
  std::ranges::transform(text, text.begin(), [](char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  });
  return text;
}

std::string list_of(const std::vector<OptionWord>& words) {
  std::string text;
  for (const OptionWord& word : words) {
    if (!text.empty()) text += &word == &words.back() ? " or " : ", ";
    text += word.word;
    if (!word.means.empty()) text += " (" + std::string(word.means) + ")";
  }
  return text;
}

std::string range_words(const OptionLimits& limits) {
  const bool ends = std::isfinite(limits.most);
  if (!std::isfinite(limits.least)) return "";
  const std::string least = exact(limits.least), most = ends ? exact(limits.most) : "";
  if (limits.above) return " over " + least + (ends ? ", at most " + most : "");
  return " from " + least + (ends ? " to " + most : "");
}

/// What holds without the option, in words.
std::string default_of(const Option& option, const JobParts& defaults) {
  if (!option.rules.otherwise.empty()) return option.rules.otherwise;
  std::string text;
  if (option.shape.kind == Kind::Flag || option.shape.kind == Kind::FlagOrText) return text;
  for (const OptionItem& item : option.get(defaults)) {
    text += (text.empty() ? "" : ",") + item_text(item);
  }
  return text;
}

}  // namespace

void refuse_option(const std::string& name, const std::string& message, const std::string& hint) {
  throw UsageError({Severity::Error, "job.value", name, message, hint});
}

bool is_number(const Option& option) {
  return option.shape.kind == Kind::Number || option.shape.kind == Kind::WholeNumber;
}

std::string item_text(const OptionItem& item) {
  if (const bool* flag = std::get_if<bool>(&item)) return *flag ? "yes" : "no";
  if (const double* number = std::get_if<double>(&item)) return exact(*number);
  return std::get<std::string>(item);
}

std::string kind_words(const Option& option) {
  if (!is_number(option)) return "known";
  const std::string kind = option.shape.kind == Kind::Number ? "a number" : "a whole number";
  return option.shape.unit.empty() ? kind : kind + " of " + std::string(option.shape.unit);
}

std::string values_words(const Option& option) {
  if (is_number(option)) return kind_words(option) + range_words(option.rules.limits);
  const bool several = !option.shape.words.empty() &&
                       option.shape.count == OptionShape::Count::List && !option.shape.gaps;
  return list_of(option.shape.words) + (several ? ", or several with commas between" : "");
}

std::string command_line_name(const Option& option) {
  std::string name(option.name);
  if (option.rules.argument) return upper(name);
  std::ranges::replace(name, '_', '-');
  return "--" + name;
}

std::string value_name(const Option& option) {
  if (option.shape.kind == Kind::FlagOrText) return "TEXT";
  if (option.shape.kind == Kind::Text) return option.shape.words.empty() ? "TEXT" : "WORD";
  return option.shape.unit.empty() ? "NUMBER" : upper(std::string(option.shape.unit));
}

std::string help_of(const Option& option, const JobParts& defaults) {
  std::string values = values_words(option);
  if (!values.empty()) values = is_number(option) ? " (" + values + ")" : ": " + values;
  const std::string otherwise = default_of(option, defaults);
  return std::string(option.help) + values + (otherwise.empty() ? "" : "; default: " + otherwise);
}

}  // namespace blockwright
