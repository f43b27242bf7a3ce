#pragma once

#include <string>

namespace blockwright {

/// A file name for output, made from an input path: its stem in letters of any script, digits, dot,
/// dash and underscore; at most 80 bytes; beginning neither with a dot, which hides a file, nor
/// with a dash, which makes it an option of other programs; "client" where nothing is left.
///
/// Everything else becomes a dash: separators and their look-alikes, spaces of any width, marks of
/// direction and other characters that are not seen, control characters, bytes that are no UTF-8.
/// Letters of two scripts that look alike stay two letters; forms of one accented letter that UTF-8
/// writes in two ways stay two names.
std::string safe_stem(const std::string& path);

/// The folder of a path, "." where it names none.
std::string folder_of(const std::string& path);

/// `folder`/`name`, without doubling the separator.
std::string joined_path(const std::string& folder, const std::string& name);

}  // namespace blockwright
