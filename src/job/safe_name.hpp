#pragma once

#include <string>

namespace blockwright {

/// A file name for output, made from an input path: its stem in letters of any script, digits, dot,
/// dash and underscore, at most 80 long, never hidden, never empty.
std::string safe_stem(const std::string& path);

/// `folder`/`name`, without doubling the separator.
std::string joined_path(const std::string& folder, const std::string& name);

}  // namespace blockwright
