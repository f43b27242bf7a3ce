#pragma once

#include "blockwright/base/error.hpp"

#include <string>
#include <utility>

namespace blockwright_tests {

/// What a step was refused with; empty where it was done.
struct RefusedStep {
  std::string code, message, hint;
};

template <class Step>
RefusedStep refused_with(Step&& step) {
  try {
    (void)std::forward<Step>(step)();
  } catch (const blockwright::InputError& error) {
    const blockwright::Problem& problem = error.problem();
    return {problem.code, problem.message.plain(), problem.hint.plain()};
  }
  return {};
}

}  // namespace blockwright_tests
