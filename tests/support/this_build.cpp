#include "support/program.hpp"
#include "support/sanitized.hpp"

namespace blockwright {

#ifdef __SANITIZE_ADDRESS__
const bool kSanitized = true;
#else
const bool kSanitized = false;
#endif

}  // namespace blockwright

namespace blockwright_tests {

const char* const kProgramFile = BLOCKWRIGHT_BINARY;

}  // namespace blockwright_tests
