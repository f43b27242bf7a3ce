#pragma once

namespace blockwright {

/// Whether the sanitizers watch this build. Whatever is tried then costs several times as much:
/// tests try fewer cases, and the build without them tries all. Known when a test program is
/// linked, not when a test is compiled, so that two builds can share the compiled tests.
extern const bool kSanitized;

}  // namespace blockwright
