#pragma once

namespace blockwright {

/// Whether the sanitizers watch this build. Whatever is tried then costs several times as much:
/// tests try fewer cases, and the build without them tries all.
#ifdef __SANITIZE_ADDRESS__
inline constexpr bool kSanitized = true;
#else
inline constexpr bool kSanitized = false;
#endif

}  // namespace blockwright
