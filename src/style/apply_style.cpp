#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/style/style.hpp"
#include "sided_steps.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

template <class... Fs>
struct Overloaded : Fs... {
  using Fs::operator()...;
};
template <class... Fs>
Overloaded(Fs...) -> Overloaded<Fs...>;

std::string cm(double mm) {
  if (!std::isfinite(mm)) return told_number(mm, 0);
  const std::string in_cm = told_number(mm / 10.0, 2) + " cm";
  constexpr double most = 1e6;  // mm: longer steps cannot be meant
  return std::abs(mm) < most ? in_cm + " (" + inch_fraction(mm / 25.4) + " in)" : in_cm;
}

std::string words(const PivotMove& m) {
  std::string text = "pivot " + m.dart + " to " + m.to;
  if (m.angle) return text + ", " + told_number(m.angle->degrees(), 2) + " degrees of it";
  return m.part == 1.0 ? text : text + ", " + told_number(100.0 * m.part, 1) + " % of it";
}

std::string words(const SplitMove& m) {
  return "split " + m.dart + " into " + std::to_string(m.shares.size()) + ", " +
         (m.group == DartGroup::Fanned ? "fanned, " : "parallel, ") + cm(m.spacing) + " apart";
}

std::string words(const MergeMove& m) { return "merge " + m.dart + " into " + m.into; }

std::string words(const PointMove& m) {
  return "end " + m.dart + " " + cm(m.hold_back) + " short of its apex";
}

std::string words(const PressMove& m) {
  constexpr const char* ways[] = {"towards the centre", "towards the side", "down", "up"};
  return "press " + m.dart + " " + ways[static_cast<std::size_t>(m.towards)];
}

std::string words(const GatherMove& m) {
  return (m.kind == Fullness::Kind::Gathers ? "gather " : "ease ") + m.dart;
}

std::string words(const SpreadMove& m) {
  return "slash from " + m.from + " to " + m.to + " and spread by " + cm(m.by);
}

std::string words(const PanelSeam& m) { return "lead a seam from " + m.from + " to " + m.to; }

MovedDarts with_seam(const Pattern& pattern, const PanelSeam& seam) {
  Panels panels = cut_into_panels(pattern, seam);
  return {std::move(panels.pattern), std::move(panels.remarks)};
}

MovedDarts done(const Pattern& pattern, const StyleStep& step, double cup) {
  return std::visit(Overloaded{[&](const PivotMove& m) { return pivot(pattern, m, cup); },
                               [&](const SplitMove& m) { return split(pattern, m); },
                               [&](const MergeMove& m) { return merge(pattern, m, cup); },
                               [&](const PointMove& m) { return set_dart_point(pattern, m); },
                               [&](const PressMove& m) { return press(pattern, m); },
                               [&](const GatherMove& m) { return gather(pattern, m); },
                               [&](const SpreadMove& m) { return slash_and_spread(pattern, m); },
                               [&](const PanelSeam& m) { return with_seam(pattern, m); }},
                    step);
}

// The step on all pieces that it is meant for.
MovedDarts done_on_sides(const Pattern& pattern, const StyleStep& step, double cup) {
  MovedDarts all{pattern, {}};
  for (const StyleStep& one : steps_for_sides(pattern, step)) {
    MovedDarts moved =
        done_as_drafted(all.pattern, one, [&](const Pattern& as) { return done(as, one, cup); });
    all.pattern = std::move(moved.pattern);
    all.remarks.insert(all.remarks.end(), moved.remarks.begin(), moved.remarks.end());
  }
  return all;
}

// The same problem, with the style's file and step before its place.
InputError placed_at(const InputError& error, std::string_view file, std::size_t i,
                     const std::string& name) {
  Problem problem = error.problem();
  if (!file.empty()) {
    problem.where =
        std::string(file) + ": steps[" + std::to_string(i) + "]." + name + ": " + problem.where;
  }
  return InputError(problem);
}

}  // namespace

std::string step_name(const StyleStep& step) {
  return std::visit(
      Overloaded{[](const PivotMove&) { return "pivot"; }, [](const SplitMove&) { return "split"; },
                 [](const MergeMove&) { return "merge"; },
                 [](const PointMove&) { return "dart_point"; },
                 [](const PressMove&) { return "press"; },
                 [](const GatherMove& m) {
                   return m.kind == Fullness::Kind::Gathers ? "gathers" : "ease";
                 },
                 [](const SpreadMove&) { return "spread"; },
                 [](const PanelSeam&) { return "panel_seam"; }},
      step);
}

std::string words_of(const StyleStep& step) {
  return std::visit([](const auto& move) { return words(move); }, step);
}

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
