#include "blockwright/files/stamp.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/files/safe_name.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>
#include <xxhash.h>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kStampFormat = "blockwright-done-1";

std::string on_one_line(const Json& json) {
  return printable(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

/// The name of a file without its folder.
std::string name_in_folder(const std::string& path) {
  return path.substr(path.find_last_of('/') + 1);
}

}  // namespace

std::string stamp_path(const std::string& output) {
  return joined_path(folder_of(output), "." + name_in_folder(output) + std::string(kStampEnding));
}

std::string content_hash(std::string_view bytes) {
  const XXH128_hash_t hash = XXH3_128bits(bytes.data(), bytes.size());
  return fmt::format("{:016x}{:016x}", hash.high64, hash.low64);
}

std::string stamp_key(const std::vector<std::string_view>& parts) {
  std::string hashes;
  for (const std::string_view part : parts) hashes += content_hash(part);
  return content_hash(hashes);
}

Stamp stamp_of(std::string key, const std::vector<NewFile>& set, std::string line) {
  Stamp stamp{std::move(key), {}, std::move(line)};
  for (const NewFile& file : set) {
    stamp.outputs.push_back({name_in_folder(file.path), content_hash(file.bytes)});
  }
  return stamp;
}

std::string stamp_text(const Stamp& stamp) {
  Json outputs = Json::array();
  for (const auto& output : stamp.outputs) {
    outputs.push_back({{"name", output.name}, {"hash", output.hash}});
  }
  return on_one_line({{"format", kStampFormat},
                      {"key", stamp.key},
                      {"outputs", outputs},
                      {"line", Json::parse(stamp.line)}}) +
         "\n";
}

std::optional<Stamp> read_stamp(const std::string& text) {
  try {
    const Json json = Json::parse(text);
    if (json.at("format") != kStampFormat) return std::nullopt;
    Stamp stamp{json.at("key"), {}, on_one_line(json.at("line"))};
    for (const Json& output : json.at("outputs")) {
      stamp.outputs.push_back({output.at("name"), output.at("hash")});
    }
    return stamp;
  } catch (const Json::exception&) {
    return std::nullopt;  // whatever it is, the files are made again
  }
}

bool is_still_there(const Stamp& stamp, const std::string& folder, FileStore& files) {
  return std::ranges::all_of(stamp.outputs, [&](const Stamp::Output& output) {
    const auto bytes = text_if_there(joined_path(folder, output.name), files);
    return bytes && content_hash(*bytes) == output.hash;
  });
}

std::optional<std::string> text_if_there(const std::string& path, FileStore& files) {
  try {
    return files.read(path);
  } catch (const FileError&) {
    return std::nullopt;
  }
}

}  // namespace blockwright
