#pragma once

#include "blockwright/text/json_document.hpp"

namespace blockwright {

/// The client file among the kinds of JSON files.
const JsonFileKind& client_file();

}  // namespace blockwright
