#include "blockwright/base/version.hpp"

#include "version.hpp"

namespace blockwright {

std::string_view version() { return BLOCKWRIGHT_VERSION; }

}  // namespace blockwright
