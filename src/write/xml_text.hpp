#pragma once

#include <string>
#include <string_view>

namespace blockwright::writing {

/// A printable line for XML text and quoted attributes: & < > " become entities.
std::string xml_text(std::string_view utf8);

}  // namespace blockwright::writing
