#pragma once

#include "blockwright/style/style.hpp"
#include "blockwright/text/json_document.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// One key of a step, bound to the member of the step that it sets.
struct StepKey {
  std::string_view name;
  /// Kind of its value in the schema: a reference ("#/$defs/dart") or a type ("number").
  std::string_view holds;
  bool required = false;
  /// Reads the value; lengths of the file times `unit` are mm.
  std::function<void(const JsonDocument&, const JsonValue&, double unit)> read;
  std::string* text = nullptr;               ///< of a dart, a place or a panel: its name
  std::vector<std::string_view> words = {};  ///< that the value may be, if it is one of a few
};

/// The key that any step may have: whether it is left out where a block has not got its dart.
inline constexpr std::string_view kWhereThere = "where_there";

/// A step as style files, the report and the pattern see it.
struct StepRow {
  std::string_view name;  ///< its key in a style file
  std::vector<StepKey> keys;
  Wording words;  ///< what it does, for the report
  std::function<MovedDarts(const Pattern& pattern, double cup)> move;
  bool finishes = false;  ///< says how edges are finished
  bool draws = false;     ///< and draws them, too
};

/// The row of a step. Requires: the step outlives it.
StepRow row_of(StyleStep& step);

/// A step of each name, its optional keys as they are if a file leaves them out.
std::vector<StyleStep> step_of_each_name();

/// What `holds` of keys that name a dart, a place on an edge or a panel to be made.
inline constexpr std::string_view kHoldsDart = "#/$defs/dart";
inline constexpr std::string_view kHoldsPlace = "#/$defs/place";
inline constexpr std::string_view kHoldsPanel = "string";

}  // namespace blockwright
