#include "done_record.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "output_stem.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <array>
#include <xxhash.h>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kRecordFormat = "blockwright-done-1";

/// The name of a file without its folder.
std::string name_in_folder(const std::string& path) {
  return path.substr(path.find_last_of('/') + 1);
}

/// Everything of a job that its output depends on, each option in a line of its own.
std::string options_text(const Job& job) {
  std::string text = fmt::format("{}\n", static_cast<int>(job.command));
  const auto add = [&text](const std::string& value) {
    text += std::to_string(value.size()) + ":" + value + "\n";
  };
  const auto add_list = [&](const auto& values, const auto& text_of) {
    add(std::to_string(values.size()));
    for (const auto& value : values) add(text_of(value));
  };
  const auto same = [](const std::string& value) { return value; };
  for (const auto& list : {job.dart, job.to, job.split, job.write}) add_list(list, same);
  for (const auto& list : {job.part, job.angle}) add_list(list, exact);
  for (const auto& value : {job.session, job.paper, job.cut, job.unit, job.stem}) add(value);
  for (const auto& value : {job.hold_back, job.allowance}) add(value ? exact(*value) : "");
  for (const double value : {job.margin, job.overlap}) add(exact(value));
  add(std::to_string(job.toile));
  for (const bool flag : {job.overlay, job.anonymous}) add(flag ? "yes" : "no");
  return text;
}

Problems problems_in(const Json& list) {
  Problems problems;
  for (const Json& item : list) {
    const std::string severity = item.at("severity");
    problems.push_back(
        {severity == severity_name(Severity::Note) ? Severity::Note : Severity::Warning,
         item.at("code"), item.at("where"), item.at("message").get<std::string>(),
         item.at("hint").get<std::string>()});
  }
  return problems;
}

}  // namespace

std::string record_path(const Job& job) {
  const std::string output = output_stem(job) + "-" + job.cut;
  return joined_path(folder_of(output), "." + name_in_folder(output) + std::string(kRecordEnding));
}

std::string content_hash(std::string_view bytes) {
  const XXH128_hash_t hash = XXH3_128bits(bytes.data(), bytes.size());
  return fmt::format("{:016x}{:016x}", hash.high64, hash.low64);
}

std::string content_key(const Job& job, std::string_view style, std::string_view client) {
  const std::array<std::string, 4> parts = {std::string(version()), content_hash(options_text(job)),
                                            content_hash(style), content_hash(client)};
  return content_hash(fmt::format("{}", fmt::join(parts, "\n")));
}

DoneRecord record_of(const std::string& key, const BatchLine& line,
                     const std::vector<NewFile>& set) {
  DoneRecord record{line.client, key, line, {}};
  for (const NewFile& file : set) {
    record.outputs.push_back({name_in_folder(file.path), content_hash(file.bytes)});
  }
  return record;
}

std::string record_text(const DoneRecord& record) {
  Json outputs = Json::array();
  for (const auto& output : record.outputs) {
    outputs.push_back({{"name", output.name}, {"hash", output.hash}});
  }
  const Json json = {{"format", kRecordFormat},
                     {"key", record.key},
                     {"outputs", outputs},
                     {"line", line_json(record.line)}};
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::optional<DoneRecord> read_record(const std::string& text) {
  try {
    const Json json = Json::parse(text);
    if (json.at("format") != kRecordFormat) return std::nullopt;
    const Json& line = json.at("line");
    DoneRecord record;
    record.key = json.at("key");
    record.client = line.at("file");
    for (const Json& output : json.at("outputs")) {
      record.outputs.push_back({output.at("name"), output.at("hash")});
    }
    record.line.client = record.client;
    record.line.summary = {line.at("client"), line.at("darts"), line.at("residual_mm"),
                           line.at("pages"),
                           line.at("unit") == unit_name(Unit::Inch) ? Unit::Inch : Unit::Cm};
    record.line.problems = problems_in(line.at("problems"));
    record.line.files = line.at("files").get<std::vector<std::string>>();
    return record;
  } catch (const Json::exception&) {
    return std::nullopt;  // whatever it is, the client is done again
  }
}

}  // namespace blockwright
