#pragma once

#include "blockwright/block/wearing_ease.hpp"
#include "blockwright/dart/centre_seam.hpp"
#include "blockwright/dart/drawn_armhole.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/fullness.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/facing.hpp"
#include "blockwright/garment/opening.hpp"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace blockwright {

/// One step of a style, in the order of docs/darts.md.
using StyleStep =
    std::variant<PivotMove, SplitMove, MergeMove, OneDart, PointMove, PressMove, GatherMove,
                 SpreadMove, PanelSeam, HemDesign, NecklineDesign, ArmholeDesign, TopEdgeDesign,
                 CentreSeam, OpeningPlan, BindingPlan, FacingPlan, Allowances>;

/// "pivot", "split", "merge", "one_dart", "dart_point", "press", "gathers" or "ease", "spread",
/// "panel_seam", "hem", "neckline", "armhole", "top_edge", "centre_seam", "opening", "binding",
/// "facing", "allowance": the key of the step in a style file.
std::string step_name(StyleStep step);
/// True of a step that says how edges are finished: it comes after all steps that draw them.
bool is_finishing(StyleStep step);
/// True of every other step, and of the one that finishes edges and draws them, too: a button
/// stand.
bool draws_edges(StyleStep step);
/// The step in words: "pivot front.shoulder to front.side:0.25, half of it".
Wording words_of(StyleStep step);

/// Where a step and its values stand in the file that they came from.
struct StepPlace {
  std::string step;                         ///< "blouse.json:4:5 steps[0].pivot"; may be empty
  std::map<std::string, std::string> keys;  ///< of each that was given: "blouse.json:5:7 ..."
};

/// Ordered steps that make a garment's pieces from a block.
struct Style {
  std::string name;
  std::vector<StyleStep> steps;
  std::vector<StepPlace> places = {};  ///< of each step; none of steps that no file holds
  /// Steps, counted from 0, that are left out of a person whose block has not got their dart.
  std::set<std::size_t> where_there = {};
  /// What the block is worn with before any step; without it as the toile is.
  std::optional<WearingEase> wearing_ease = {};
  StepPlace wearing_ease_place = {};
};

/// True if a step of the style says the allowances: its pieces are cut as a garment.
bool finishes(const Style& style);

/// Reads a style file (format "blockwright-style-1", docs/formats.md). Lengths are in the file's
/// unit, "cm" unless it says "in". Throws InputError, naming file, line and key: as JsonDocument
/// with "style." before the codes, and "style.format", "style.key", "style.missing", "style.text",
/// "style.type", "style.value".
Style read_style(const std::string& text, std::string_view file);

/// The block before and after its corrections; fitted fronts may be unfolded into a right and a
/// left one.
struct BlockVersions {
  const Pattern& drafted;
  const Pattern& fitted;
};

/// How far under the underarm a dart opens on the side of each front, by the front's name, when no
/// place is asked for, in mm.
using SidePlaces = std::map<std::string, double>;

/// At least this far from both ends of the side, in mm, unless it is too short. Ours: nearer the
/// stitching of dart and armhole meet.
inline constexpr double kLeastUnderUnderarm = 25.0;

/// Those of fronts whose underarm a fitting has moved against the bust line: there the dart stays
/// where it was drafted against the bust line, as far as the side is long enough, and the seam runs
/// past it.
SidePlaces side_places(const BlockVersions& block);

/// What one step did.
struct StepDone {
  Wording words;
  Pattern after;
  Problems remarks;
};

/// The pattern after all steps, and after each.
struct StyledPattern {
  Pattern pattern;
  std::vector<StepDone> steps;
};

/// Applies the steps in order. Of a block whose front (or back) a fitting has unfolded into a right
/// and a left piece, a step that names "front" is done on both; one that names "front_left" on that
/// alone. A step of `where_there` that names a dart which a piece has not got leaves that piece as
/// it is, with a note. A step that draws edges after one that finishes them is refused
/// ("style.order"). `cup` is bust girth less underbust girth, in mm. A step that cannot be done
/// throws InputError with its code; the place begins with that of the wrong value in the style's
/// file, or of the step where no one value is wrong.
StyledPattern apply_style(const Pattern& block, const Style& style, double cup,
                          const SidePlaces& sides = {});

}  // namespace blockwright
