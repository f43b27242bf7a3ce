#include "batch_work.hpp"
#include "blockwright/base/number_text.hpp"
#include "option_words.hpp"

#include <optional>
#include <xxhash.h>

namespace blockwright {
namespace {

constexpr int kMostShards = 1'000'000;

}  // namespace

bool Shard::holds(std::string_view name) const {
  const auto parts = static_cast<XXH64_hash_t>(of);
  return XXH3_64bits(name.data(), name.size()) % parts == static_cast<XXH64_hash_t>(part - 1);
}

Shard shard_named(const std::string& words) {
  if (words.empty()) return {};
  const std::size_t slash = words.find('/');
  const auto part = number_in<int>(std::string_view(words).substr(0, slash));
  const auto of = slash == std::string::npos
                      ? std::nullopt
                      : number_in<int>(std::string_view(words).substr(slash + 1));
  if (!part || !of || *of < 1 || *of > kMostShards || *part < 1 || *part > *of) {
    refuse_option("--shard", "'" + words + "' is no part of a folder",
                  "write which part of how many, 1/8 to 8/8");
  }
  return {*part, *of};
}

std::string_view below(std::string_view folder, std::string_view path) {
  if (folder.empty() || !path.starts_with(folder)) return path;
  path.remove_prefix(folder.size());
  while (path.starts_with('/')) path.remove_prefix(1);
  return path;
}

}  // namespace blockwright
