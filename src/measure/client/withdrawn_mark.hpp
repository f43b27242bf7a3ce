#pragma once

#include "blockwright/text/json_edit.hpp"

#include <string>

namespace blockwright {

/// The mark "withdrawn" of a correction in a client file's text.
///
/// Withdrawing puts in one member at the end, which making active takes out again. A mark that the
/// maker wrote herself is changed, not taken out; so that the two are told apart, a mark of hers
/// that would look like ours gets a second space.
class WithdrawnMark {
 public:
  WithdrawnMark(const JsonEdit& edit, const JsonValue& correction);

  /// The whole text with the correction withdrawn. Requires: it is active.
  [[nodiscard]] std::string withdrawn() const;
  /// The whole text with the correction active again. Requires: it is withdrawn.
  [[nodiscard]] std::string active() const;

 private:
  [[nodiscard]] bool is_last() const;
  [[nodiscard]] std::size_t end_before() const;
  [[nodiscard]] std::string written() const;
  [[nodiscard]] std::string ours() const;
  [[nodiscard]] std::string ours_before_value() const;

  const JsonEdit& edit_;
  const JsonValue& correction_;
  const JsonValue* mark_;  // null if the correction has none
};

}  // namespace blockwright
