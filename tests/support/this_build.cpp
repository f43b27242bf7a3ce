#include "support/program.hpp"
#include "support/sanitized.hpp"

namespace blockwright {

#ifdef BLOCKWRIGHT_WATCHED
const bool kSanitized = true;
#else
const bool kSanitized = false;
#endif

}  // namespace blockwright

namespace blockwright_tests {

const char* const kProgramFile = BLOCKWRIGHT_BINARY;

}  // namespace blockwright_tests
