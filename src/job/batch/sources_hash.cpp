#include "batch_work.hpp"
#include "generated_sources_hash.hpp"

namespace blockwright {

std::string_view sources_hash() { return BLOCKWRIGHT_SOURCES_HASH; }

}  // namespace blockwright
