// The key of an output names every option that the output depends on: an option left out of it lets
// `batch` keep what is stale.
#include "blockwright/job/options.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <set>

using namespace blockwright;

namespace {

/// Options that may change without the files becoming others, and why.
const std::map<std::string_view, std::string_view> kNoOtherFiles = {
    {"client", "its text is in the stamp"},
    {"style", "its text is in the stamp"},
    {"other", "compare makes no stamp"},
    {"folder", "whom, not what"},
    {"clients", "whom, not what"},
    {"subfolders", "whom, not what"},
    {"shard", "whom, not what"},
    {"jobs", "how fast"},
    {"again", "whether at all"},
    {"jsonl", "makes no stamp"},
    {"quiet", "what is printed"},
    {"report", "what is printed"},
    {"steps", "what is printed"},
    {"list", "what is printed"},
    {"ask", "what is printed"},
    {"out", "where: another folder has other stamps"}};

/// A value of the option that it has not got yet.
OptionItems another(const Option& option, const JobParts& parts) {
  const OptionItems now = option.get(parts);
  std::vector<OptionItem> choices = {std::string("another")};
  if (!option.shape.words.empty()) {
    choices.clear();
    for (const OptionWord& word : option.shape.words) choices.push_back(std::string(word.word));
  }
  using Kind = OptionShape::Kind;
  if (option.shape.kind == Kind::Flag) choices = {true, false};
  if (option.shape.kind == Kind::Number || option.shape.kind == Kind::WholeNumber) {
    choices = {7.0, 8.0};
  }
  return now == OptionItems{choices[0]} ? OptionItems{choices.at(1)} : OptionItems{choices[0]};
}

/// How many options were tried.
template <class AnyJob>
int check_key(AnyJob job) {
  const JobOptions options(job);
  int tried = 0;
  for (const Option& option : options.options) {
    INFO(command_name(options.command) << ": " << option.name);
    AnyJob other = job;
    const JobOptions changed(other);
    REQUIRE(option.put(changed.parts, another(option, changed.parts)));
    const bool same = output_key(changed) == output_key(options);
    CHECK(same == kNoOtherFiles.contains(option.name));
    ++tried;
  }
  return tried;
}

}  // namespace

TEST_CASE("Another value of any option makes another key, but for those that make no other files") {
  Job job;
  for (const Command command : {Command::Draft, Command::Pivot, Command::Adapt}) {
    job.command = command;
    CHECK(check_key(job) > 12);
  }
  CHECK(check_key(BatchJob()) > 12);
  CHECK(check_key(FitJob()) > 12);
  CHECK(check_key(CompareJob()) > 8);
}

TEST_CASE("What makes no other files is named with its reason, and is an option") {
  std::set<std::string_view> names;
  for (const Option& option : option_table()) names.insert(option.name);
  for (const auto& [name, reason] : kNoOtherFiles) {
    INFO(name << ": " << reason);
    CHECK(names.contains(name));
  }
}

TEST_CASE("Two options do not share a key, and neither do one value and two") {
  Job one, other;
  one.command = other.command = Command::Pivot;
  one.dart = {"front.shoulder"};
  other.to = {"front.shoulder"};
  CHECK(output_key(JobOptions(one)) != output_key(JobOptions(other)));
  one.dart = {"a", "b"};
  other = one;
  other.dart = {"a 1:b"};
  CHECK(output_key(JobOptions(one)) != output_key(JobOptions(other)));
}
