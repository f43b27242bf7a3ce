#include "blockwright/base/error.hpp"
#include "steps.hpp"

#include <algorithm>
#include <set>

namespace blockwright {
namespace {

std::string piece_of(std::string_view place) {
  return std::string(place.substr(0, place.find('.')));
}

// The piece that a step is done on: that of the first place that it names; empty where it names
// none.
std::string piece_of(StyleStep& step) {
  const StepRow row = row_of(step);
  const StepKey* first =
      first_where(row.keys, [](const StepKey& key) { return key.text != nullptr; });
  return first == nullptr ? "" : piece_of(*first->text);
}

bool has_piece(const Pattern& pattern, const std::string& name) {
  return std::ranges::count(pattern.pieces, name, &Piece::name) > 0;
}

bool is_unfolded(const Pattern& pattern, const std::string& name) {
  return !has_piece(pattern, name) && has_piece(pattern, name + std::string(kRightEnding)) &&
         has_piece(pattern, name + std::string(kLeftEnding));
}

StyleStep step_on_side(const Pattern& pattern, StyleStep step, std::string_view ending) {
  for (const StepKey& key : row_of(step).keys) {
    if (key.text == nullptr || key.text->empty()) continue;
    const std::string piece = piece_of(*key.text);
    if (key.holds == kHoldsPanel) {
      key.text->append(ending);
    } else if (is_unfolded(pattern, piece)) {
      key.text->insert(piece.size(), ending);
    }
  }
  return step;
}

// A piece and those that it is joined to by seams: the panels that it was cut into run one
// way.
std::set<std::string> side_by_side(const Pattern& pattern, const std::string& name) {
  std::set<std::string> names = {name};
  const auto is_among = [&](const EdgeOf& edge) { return names.contains(edge.piece); };
  std::size_t before = 0;
  while (before != names.size()) {
    before = names.size();
    for (const Seam& seam : pattern.seams) {
      for (const auto* side : {&seam.a, &seam.b}) {
        if (std::none_of(side->begin(), side->end(), is_among)) continue;
        for (const EdgeOf& edge : *side) names.insert(edge.piece);
      }
    }
  }
  return names;
}

// The step as it is done on this pattern. Where a fitting has unfolded the piece that it names, it
// is one step for each side: "front.shoulder" becomes "front_right.shoulder" and
// "front_left.shoulder", and names of panels get the side behind them.
std::vector<StyleStep> steps_for_sides(const Pattern& pattern, const StyleStep& step) {
  StyleStep named = step;
  if (!is_unfolded(pattern, piece_of(named))) return {step};
  return {step_on_side(pattern, step, kRightEnding), step_on_side(pattern, step, kLeftEnding)};
}

// Does a step on the piece that it names in the frame in which pieces are drafted: a mirror image
// is mirrored, and back again with all that was made of it.
MovedDarts done_as_drafted(const Pattern& pattern, StyleStep step, double cup) {
  const StepRow row = row_of(step);
  const std::string name = piece_of(step);
  if (!has_piece(pattern, name) || !is_mirrored(pattern.piece(name))) return row.move(pattern, cup);
  std::set<std::string> images = side_by_side(pattern, name);
  MovedDarts moved = row.move(with_mirrored(pattern, images), cup);
  for (const Piece& piece : moved.pattern.pieces) {
    if (!has_piece(pattern, piece.name)) images.insert(piece.name);
  }
  moved.pattern = with_mirrored(std::move(moved.pattern), images);
  return moved;
}

StyleStep with_side_place(StyleStep step, const SidePlaces& sides) {
  const auto place = sides.find(piece_of(step));
  if (place == sides.end()) return step;
  if (auto* pivoted = std::get_if<PivotMove>(&step)) pivoted->side_place = place->second;
  if (auto* made_one = std::get_if<OneDart>(&step)) made_one->side_place = place->second;
  return step;
}

// What becomes of a step whose dart a block has not got.
enum class IfMissing { Refused, LeftOut };

MovedDarts done_if_there(const Pattern& pattern, const StyleStep& step, double cup,
                         IfMissing missing) {
  try {
    return done_as_drafted(pattern, step, cup);
  } catch (const InputError& error) {
    Problem left_out = error.problem();
    if (missing == IfMissing::Refused || left_out.code != "dart.unknown") throw;
    left_out.severity = Severity::Note;
    left_out.message = left_out.message + "; the step is left out";
    return {pattern, {left_out}};
  }
}

// The step on all pieces that it is meant for.
MovedDarts done_on_sides(const Pattern& pattern, const StyleStep& step, double cup,
                         const SidePlaces& sides, IfMissing missing) {
  MovedDarts all{pattern, {}};
  for (const StyleStep& one : steps_for_sides(pattern, step)) {
    MovedDarts moved = done_if_there(all.pattern, with_side_place(one, sides), cup, missing);
    all.pattern = std::move(moved.pattern);
    all.remarks.insert(all.remarks.end(), moved.remarks.begin(), moved.remarks.end());
  }
  return all;
}

// Whether a problem speaks of the dart, place or panel that these words name, perhaps without its
// piece or how far along the edge it is.
bool speaks_of(const Problem& problem, std::string_view words) {
  const auto is_there = [&](std::string_view text) {
    return problem.where == text || problem.where == text.substr(text.find('.') + 1);
  };
  return is_there(words) || is_there(words.substr(0, words.find(':')));
}

// Where the value stands that a problem of a step speaks of; the step where it is no one value.
const std::string& place_of(const StepPlace& place, StyleStep step, const Problem& problem) {
  for (const std::string& key : problem.options) {
    if (place.keys.contains(key)) return place.keys.at(key);
  }
  for (const StepKey& key : row_of(step).keys) {
    const auto given = place.keys.find(std::string(key.name));
    if (given == place.keys.end() || key.text == nullptr) continue;
    if (speaks_of(problem, *key.text)) return given->second;
  }
  return place.step;
}

// The same problem, with its place in the style's file first.
InputError placed_at(const InputError& error, const Style& style, std::size_t i) {
  Problem problem = error.problem();
  if (i >= style.places.size()) return error;
  const std::string& place = place_of(style.places[i], style.steps[i], problem);
  if (!place.empty()) problem.where = place + ": " + problem.where;
  return InputError(problem);
}

// Edges are finished when they are drawn.
void require_order(const Style& style, std::size_t i) {
  const auto first = std::ranges::find_if(style.steps, is_finishing);
  const auto step = style.steps.begin() + static_cast<std::ptrdiff_t>(i);
  if (step <= first || !draws_edges(*step)) return;
  throw InputError(
      {Severity::Error, "style.order", step_name(*step),
       "this step comes after \"" + step_name(*first) + "\", which says how edges are finished",
       "put \"" + step_name(*first) +
           "\" behind all steps that move darts or draw "
           "edges"});
}

}  // namespace

std::string step_name(StyleStep step) { return std::string(row_of(step).name); }

Wording words_of(StyleStep step) { return row_of(step).words; }

StyledPattern apply_style(const Pattern& block, const Style& style, double cup,
                          const SidePlaces& sides) {
  StyledPattern styled{block, {}};
  for (std::size_t i = 0; i < style.steps.size(); ++i) {
    try {
      require_order(style, i);
      const IfMissing missing =
          style.where_there.contains(i) ? IfMissing::LeftOut : IfMissing::Refused;
      MovedDarts moved = done_on_sides(styled.pattern, style.steps[i], cup, sides, missing);
      styled.pattern = moved.pattern;
      styled.steps.push_back({words_of(style.steps[i]), styled.pattern, moved.remarks});
    } catch (const InputError& error) {
      throw placed_at(error, style, i);
    }
  }
  return styled;
}

}  // namespace blockwright
