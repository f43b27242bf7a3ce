#include "blockwright/base/error.hpp"
#include "blockwright/style/style.hpp"
#include "steps.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

// The step on all pieces that it is meant for.
MovedDarts done_on_sides(const Pattern& pattern, const StyleStep& step, double cup) {
  MovedDarts all{pattern, {}};
  for (const StyleStep& one : steps_for_sides(pattern, step)) {
    MovedDarts moved = done_as_drafted(all.pattern, one, cup);
    all.pattern = std::move(moved.pattern);
    all.remarks.insert(all.remarks.end(), moved.remarks.begin(), moved.remarks.end());
  }
  return all;
}

// The same problem, with the style's file and step before its place.
InputError placed_at(const InputError& error, std::string_view file, std::size_t i,
                     std::string_view name) {
  Problem problem = error.problem();
  if (!file.empty())
    problem.where = fmt::format("{}: steps[{}].{}: {}", file, i, name, problem.where);
  return InputError(problem);
}

}  // namespace

std::string step_name(StyleStep step) { return std::string(row_of(step).name); }

Wording words_of(StyleStep step) { return row_of(step).words; }

StyledPattern apply_style(const Pattern& block, const Style& style, double cup,
                          std::string_view file) {
  StyledPattern styled{block, {}};
  for (std::size_t i = 0; i < style.steps.size(); ++i) {
    try {
      MovedDarts moved = done_on_sides(styled.pattern, style.steps[i], cup);
      styled.pattern = moved.pattern;
      styled.steps.push_back({words_of(style.steps[i]), styled.pattern, moved.remarks});
    } catch (const InputError& error) {
      throw placed_at(error, file, i, step_name(style.steps[i]));
    }
  }
  return styled;
}

}  // namespace blockwright
