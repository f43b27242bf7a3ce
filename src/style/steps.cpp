// The one table of style steps: a row for each, without which a step does not compile.
#include "steps.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/text/json_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace blockwright {
namespace {

// --- keys ---------------------------------------------------------------------------------------

StepKey text_key(std::string_view name, std::string& text, std::string_view holds) {
  const auto read = [&text](const JsonDocument& document, const JsonValue& value, double) {
    text = read_plain_text(document, value);
  };
  return {name, holds, holds != kHoldsPanel, read, &text};
}

StepKey dart(std::string_view name, std::string& text) { return text_key(name, text, kHoldsDart); }
StepKey place(std::string_view name, std::string& text) {
  return text_key(name, text, kHoldsPlace);
}
StepKey panel(std::string_view name, std::string& text) {
  return text_key(name, text, kHoldsPanel);
}

std::string_view type_of(double) { return "number"; }
std::string_view type_of(int) { return "integer"; }
std::string_view type_of(bool) { return "boolean"; }
std::string_view type_of(const std::vector<double>&) { return "array"; }

template <class Value>
StepKey plain(std::string_view name, Value& into) {
  return {.name = name,
          .holds = type_of(into),
          .read = [&into](const JsonDocument& document, const JsonValue& value, double) {
            read_value(document, value, into);
          }};
}

template <class Value>
StepKey length(std::string_view name, Value& mm) {
  return {.name = name,
          .holds = "number",
          .read = [&mm](const JsonDocument& document, const JsonValue& value, double unit) {
            double written = 0.0;
            read_value(document, value, written);
            mm = unit * written;
          }};
}

StepKey share(std::string_view name, std::optional<double>& of_one) {
  return {.name = name,
          .holds = "number",
          .read = [&of_one](const JsonDocument& document, const JsonValue& value, double) {
            double written = 0.0;
            read_value(document, value, written);
            of_one = written;
          }};
}

StepKey degrees(std::string_view name, std::optional<Angle>& angle) {
  return {.name = name,
          .holds = "number",
          .read = [&angle](const JsonDocument& document, const JsonValue& value, double) {
            double written = 0.0;
            read_value(document, value, written);
            angle = Angle::degrees(written);
          }};
}

// {"front.side": 2}
StepKey edge_lengths(std::string_view name, std::vector<EdgeAllowance>& edges) {
  return {.name = name,
          .holds = "object",
          .read = [&edges](const JsonDocument& document, const JsonValue& value, double unit) {
            expect(document, value, JsonKind::Object, R"(write for example {"front.side": 2})");
            for (std::size_t i = 0; i < value.children.size(); ++i) {
              const JsonValue& edge = document.child(value, i);
              double written = 0.0;
              read_value(document, edge, written);
              edges.push_back({std::string(edge.key), unit * written});
            }
          }};
}

// [["neckline"], ["armhole"]]
StepKey edge_runs(std::string_view name, std::vector<std::vector<std::string>>& runs) {
  return {.name = name,
          .holds = "array",
          .read = [&runs](const JsonDocument& document, const JsonValue& value, double) {
            constexpr const char* hint = R"(write for example [["neckline"], ["armhole"]])";
            expect(document, value, JsonKind::List, hint);
            for (std::size_t i = 0; i < value.children.size(); ++i) {
              const JsonValue& run = document.child(value, i);
              expect(document, run, JsonKind::List, hint);
              runs.emplace_back();
              for (std::size_t e = 0; e < run.children.size(); ++e) {
                runs.back().push_back(read_plain_text(document, document.child(run, e)));
              }
            }
          }};
}

// ["neckline", "armhole"]
StepKey edge_names(std::string_view name, std::vector<std::string>& edges) {
  return {.name = name,
          .holds = "array",
          .read = [&edges](const JsonDocument& document, const JsonValue& value, double) {
            expect(document, value, JsonKind::List, R"(write for example ["neckline"])");
            for (std::size_t e = 0; e < value.children.size(); ++e) {
              edges.push_back(read_plain_text(document, document.child(value, e)));
            }
          }};
}

// The words in the order of the enumeration.
template <class Choice>
StepKey one_of(std::string_view name, Choice& choice, std::vector<std::string_view> words) {
  const auto read = [&choice, words](const JsonDocument& document, const JsonValue& value, double) {
    choice = static_cast<Choice>(read_word(document, value, words));
  };
  StepKey key{.name = name, .holds = "enum", .read = read};
  key.words = std::move(words);
  return key;
}

StepKey required(StepKey key) {
  key.required = true;
  return key;
}

// --- rows ---------------------------------------------------------------------------------------

std::string part_words(const PivotMove& m) {
  if (m.angle) return ", " + told_number(m.angle->degrees(), 2) + " degrees of it";
  return m.part == 1.0 ? "" : ", " + told_number(100.0 * m.part, 1) + " % of it";
}

StepRow row(PivotMove& m) {
  return {"pivot",
          {dart("dart", m.dart), place("to", m.to), plain("part", m.part),
           degrees("angle", m.angle), length("hold_back", m.hold_back)},
          "pivot " + m.dart + " to " + m.to + part_words(m),
          [&m](const Pattern& pattern, double cup) { return pivot(pattern, m, cup); }};
}

StepRow row(SplitMove& m) {
  return {"split",
          {dart("dart", m.dart), plain("shares", m.shares), length("spacing", m.spacing),
           one_of("group", m.group, {"fanned", "parallel"})},
          fmt::format("split {} into {}, {}, ", m.dart, m.shares.size(),
                      m.group == DartGroup::Fanned ? "fanned" : "parallel") +
              Length::mm(m.spacing) + " apart",
          [&m](const Pattern& pattern, double) { return split(pattern, m); }};
}

StepRow row(MergeMove& m) {
  return {"merge",
          {dart("dart", m.dart), dart("into", m.into)},
          "merge " + m.dart + " into " + m.into,
          [&m](const Pattern& pattern, double cup) { return merge(pattern, m, cup); }};
}

StepRow row(OneDart& m) {
  return {"one_dart",
          {place("into", m.into)},
          "move all darts into " + m.into,
          [&m](const Pattern& pattern, double cup) { return one_dart(pattern, m, cup); }};
}

StepRow row(PointMove& m) {
  return {"dart_point",
          {dart("dart", m.dart), required(length("hold_back", m.hold_back))},
          "end " + m.dart + " " + Length::mm(m.hold_back) + " short of its apex",
          [&m](const Pattern& pattern, double) { return set_dart_point(pattern, m); }};
}

StepRow row(PressMove& m) {
  constexpr const char* ways[] = {"towards the centre", "towards the side", "down", "up"};
  return {"press",
          {dart("dart", m.dart),
           required(one_of("towards", m.towards, {"centre", "side", "down", "up"}))},
          "press " + m.dart + " " + ways[static_cast<std::size_t>(m.towards)],
          [&m](const Pattern& pattern, double) { return press(pattern, m); }};
}

StepRow row(GatherMove& m) {
  const bool gathers = m.kind == Fullness::Kind::Gathers;
  return {gathers ? "gathers" : "ease",
          {dart("dart", m.dart), length("over", m.over)},
          (gathers ? "gather " : "ease ") + m.dart,
          [&m](const Pattern& pattern, double) { return gather(pattern, m); }};
}

StepRow row(SpreadMove& m) {
  return {"spread",
          {place("from", m.from), place("to", m.to), length("by", m.by), plain("lines", m.lines),
           length("apart", m.apart), plain("hinged", m.hinged), plain("gathered", m.gathered),
           length("over", m.over)},
          "slash from " + m.from + " to " + m.to + " and spread by " + Length::mm(m.by),
          [&m](const Pattern& pattern, double) { return slash_and_spread(pattern, m); }};
}

// Princess seams and yokes.
StepRow row(PanelSeam& m) {
  return {"panel_seam",
          {place("from", m.from), place("to", m.to), panel("centre_panel", m.centre_panel),
           panel("side_panel", m.side_panel), length("beside", m.beside), plain("plain", m.plain)},
          "cut a panel seam from " + m.from + " to " + m.to,
          [&m](const Pattern& pattern, double) {
            Panels panels = cut_into_panels(pattern, m);
            return MovedDarts{std::move(panels.pattern), std::move(panels.remarks)};
          }};
}

Wording hem_words(const HemDesign& m) {
  Wording words = "draw a hem at the waist";
  if (m.above_waist) words = "end it " + Length::mm(*m.above_waist) + " above the waist";
  if (m.below_bust_point)
    words = "end it " + Length::mm(*m.below_bust_point) + " below the bust point";
  if (m.side_above_waist)
    words = words + ", at the sides " + Length::mm(*m.side_above_waist) + " above the waist";
  if (m.back_above_waist)
    words = words + ", at the centre back " + Length::mm(*m.back_above_waist) + " above it";
  if (m.point_drop > 0.0) words = words + ", in points " + Length::mm(m.point_drop) + " deep";
  return words;
}

StepRow row(HemDesign& m) {
  return {"hem",
          {length("above_waist", m.above_waist), length("below_bust_point", m.below_bust_point),
           length("side_above_waist", m.side_above_waist),
           length("back_above_waist", m.back_above_waist), length("point_drop", m.point_drop),
           length("point_from_centre", m.point_from_centre)},
          hem_words(m),
          [&m](const Pattern& pattern, double) { return draw_hem(pattern, m); }};
}

StepRow row(NecklineDesign& m) {
  constexpr const char* shapes[] = {"round", "scoop", "boat", "V", "square", "sweetheart"};
  return {
      "neckline",
      {required(one_of("shape", m.shape, {"round", "scoop", "boat", "v", "square", "sweetheart"})),
       length("from_neck", m.from_neck), share("shoulder_share", m.shoulder_share),
       length("front_depth", m.front_depth), share("depth_share", m.depth_share),
       length("over_bust_point", m.over_bust_point), length("back_depth", m.back_depth),
       length("closer", m.closer)},
      std::string("draw a ") + shapes[static_cast<std::size_t>(m.shape)] + " neckline",
      [&m](const Pattern& pattern, double) { return draw_neckline(pattern, m); }};
}

StepRow row(ArmholeDesign& m) {
  return {"armhole",
          {length("shoulder_in", m.shoulder_in), length("front_in", m.front_in),
           length("back_in", m.back_in), length("raise", m.raise), length("close", m.close)},
          "draw the armholes",
          [&m](const Pattern& pattern, double) { return draw_armhole(pattern, m); }};
}

// Straps of the usual width, or as the object says.
StepKey straps(std::string_view name, std::optional<StrapDesign>& into) {
  const auto read = [&into](const JsonDocument& document, const JsonValue& value, double unit) {
    constexpr std::array<std::string_view, 2> keys{"width", "adjust"};
    expect(document, value, JsonKind::Object, R"(write { "width": 2, "adjust": 3.5 }, or {})");
    check_keys(document, value, keys);
    StrapDesign& made = into.emplace();
    const std::array<double*, 2> lengths{&made.width, &made.adjust};
    for (std::size_t i = 0; i < keys.size(); ++i) {
      const JsonValue* given = document.member(value, keys.at(i));
      if (given == nullptr) continue;
      double written = 0.0;
      read_value(document, *given, written);
      *lengths.at(i) = unit * written;
    }
  };
  return {.name = name, .holds = "object", .read = read};
}

StepRow row(TopEdgeDesign& m) {
  constexpr const char* shapes[] = {"straight", "curved", "sweetheart"};
  return {"top_edge",
          {required(one_of("shape", m.shape, {"straight", "curved", "sweetheart"})),
           length("over_bust_level", m.over_bust_level), share("centre_share", m.centre_share),
           length("over_bust_point", m.over_bust_point), share("top_share", m.top_share),
           length("under_underarm", m.under_underarm), length("back_depth", m.back_depth),
           share("back_share", m.back_share), length("back_nearer", m.back_nearer),
           straps("straps", m.straps), length("closer", m.closer)},
          std::string("cut a ") + shapes[static_cast<std::size_t>(m.shape)] + " top edge, " +
              (m.straps ? "with straps" : "strapless"),
          [&m](const Pattern& pattern, double) { return draw_top_edge(pattern, m); }};
}

StepRow row(CentreSeam& m) {
  return {"centre_seam",
          {required(one_of("at", m.at, {"front"}))},
          "make a seam of the centre front",
          [&m](const Pattern& pattern, double) { return with_centre_seam(pattern, m); }};
}

StepRow row(OpeningPlan& m) {
  constexpr const char* places[] = {"centre back", "centre front", "left side"};
  constexpr const char* closures[] = {"a zip", "a zip that parts in two", "buttons"};
  StepRow row{
      "opening",
      {required(one_of("at", m.at, {"centre_back", "centre_front", "left_side"})),
       one_of("with", m.with, {"zip", "open_zip", "buttons"}), length("from_edge", m.from_edge),
       length("button", m.button), length("spacing", m.spacing)},
      std::string("open the ") + places[static_cast<std::size_t>(m.at)] + " with " +
          closures[static_cast<std::size_t>(m.with)],
      [&m](const Pattern& pattern, double) { return with_opening(pattern, m); }};
  row.finishes = true;
  row.draws = m.with == Closure::Buttons;
  return row;
}

StepRow row(BindingPlan& m) {
  StepRow row{
      "binding",
      {required(edge_runs("runs", m.runs)), length("shows", m.shows), plain("stretch", m.stretch)},
      "bind edges, " + Length::mm(m.shows) + " wide",
      [&m](const Pattern& pattern, double) { return with_binding(pattern, m); }};
  row.finishes = true;
  return row;
}

StepRow row(FacingPlan& m) {
  StepRow row{
      "facing",
      {required(edge_names("edges", m.edges)), length("width", m.width), length("roll", m.roll),
       plain("interfaced", m.interfaced), plain("in_one", m.in_one)},
      (m.in_one ? "face neckline and armhole in one piece" : "face edges") +
          (m.width ? ", " + Length::mm(*m.width) + " wide" : Wording()),
      [&m](const Pattern& pattern, double) { return with_facing(pattern, m); }};
  row.finishes = true;
  return row;
}

StepRow row(Allowances& m) {
  return {"allowance",
          {length("seams", m.seams), length("shoulder", m.shoulder), length("centre", m.centre),
           length("hem", m.hem), length("enclosed", m.enclosed), edge_lengths("edges", m.edges)},
          "leave " + Length::mm(m.seams) + " at seams, " + Length::mm(m.hem) + " at the hem and " +
              Length::mm(m.enclosed) + " at enclosed edges",
          [&m](const Pattern& pattern, double) { return with_allowances(pattern, m); },
          true};
}

template <std::size_t... I>
std::vector<StyleStep> one_of_each(std::index_sequence<I...>) {
  return {StyleStep(std::in_place_index<I>)...};
}

}  // namespace

StepRow row_of(StyleStep& step) {
  return std::visit([](auto& move) { return row(move); }, step);
}

bool is_finishing(StyleStep step) { return row_of(step).finishes; }

bool draws_edges(StyleStep step) {
  const StepRow row = row_of(step);
  return row.draws || !row.finishes;
}

bool finishes(const Style& style) {
  return std::ranges::any_of(
      style.steps, [](const StyleStep& step) { return std::holds_alternative<Allowances>(step); });
}

std::vector<StyleStep> step_of_each_name() {
  auto steps = one_of_each(std::make_index_sequence<std::variant_size_v<StyleStep>>());
  steps.emplace_back(GatherMove{"", Fullness::Kind::Ease});
  return steps;
}

}  // namespace blockwright
