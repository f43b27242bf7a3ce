#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/client.hpp"

#include <sstream>
#include <string>

namespace blockwright {

/// A client file with this tape (the members of the object) in this unit.
inline std::string client_text(const std::string& tape, const std::string& unit = "cm") {
  return R"({"format": "blockwright-client-1", "name": "Ondine Marsh", "unit": ")" + unit +
         R"(", "sessions": [{"date": "2026-03-14", "tape": {)" + tape + "}}]}";
}

inline Client client_of(const std::string& text) {
  std::istringstream in(text);
  return read_client(in, "ondine.json");
}

/// The problem that reading this text ends with; a problem without a code if it is read.
inline Problem refusal(const std::string& text) {
  try {
    client_of(text);
  } catch (const InputError& error) {
    return error.problem();
  }
  return {};
}

}  // namespace blockwright
