#pragma once

#include "blockwright/text/json_document.hpp"

#include <sstream>
#include <string>

namespace blockwright {

inline constexpr JsonFileKind kTestKind{.codes = "client",
                                        .format = "test-1",
                                        .holds = "a file holds one test",
                                        .number = "write a number",
                                        .name = "write a name"};

/// The document that a text is, as read from the file "a.json".
inline JsonDocument document_of(const std::string& text) {
  std::istringstream in(text);
  return JsonDocument::read(in, "a.json", kTestKind);
}

}  // namespace blockwright
