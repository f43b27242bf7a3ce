#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/write/writers.hpp"

#include <nlohmann/json.hpp>

#include <ostream>

// The layout of the text is made by hand, one edge, dart, notch, line or seam to a line, so that a
// person can read a pattern and a comparison of two files shows what moved. Only the quoting of
// names is left to the JSON library.
namespace blockwright {
namespace {

constexpr int kPieceIndent = 6;

std::string json_string(std::string_view text) {
  return printable(
      nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace));
}

std::string pair_text(Point p) { return '[' + exact(p.x) + ", " + exact(p.y) + ']'; }

std::string coordinates(std::initializer_list<Point> points) {
  std::string text;
  for (const Point p : points) text += ", " + exact(p.x) + ", " + exact(p.y);
  return text;
}

std::string stroke_text(const Curve& curve) {
  if (const auto* line = std::get_if<Segment>(&curve))
    return "[\"L\"" + coordinates({line->b}) + ']';
  const auto& cubic = std::get<CubicCurve>(curve);
  return "[\"C\"" + coordinates({cubic.p1, cubic.p2, cubic.p3}) + ']';
}

std::string path_text(const Path& path) {
  if (path.empty()) return "[]";
  std::string text = "[[\"M\"" + coordinates({path.start()}) + ']';
  for (const Curve& curve : path.curves()) text += ", " + stroke_text(curve);
  return text + ']';
}

// Nothing of edges that no style has finished.
std::string finish_text(const EdgeFinish& finish) {
  if (finish.how == Finish::NotSaid) return "";
  return ", \"finish\": " + json_string(finish_name(finish.how)) +
         ", \"allowance\": " + exact(finish.allowance);
}

std::string edge_text(const Edge& edge) {
  return "{\"name\": " + json_string(edge.name) +
         ", \"role\": " + json_string(edge_role_name(edge.role)) + finish_text(edge.finish) +
         ", \"path\": " + path_text(edge.path) + '}';
}

std::string dart_text(const Dart& dart) {
  return "{\"name\": " + json_string(dart.name) + ", \"edge\": " + json_string(dart.edge) +
         ", \"apex\": " + pair_text(dart.apex) + ", \"point\": " + pair_text(dart.point) +
         ", \"legs\": [" + pair_text(dart.legs[0]) + ", " + pair_text(dart.legs[1]) +
         "], \"peak\": " + pair_text(dart.peak) +
         ", \"pressed_to\": " + (dart.pressed_to == Leg::First ? "0" : "1") + '}';
}

std::string notch_text(const Piece& piece, const Notch& notch) {
  const Point at = point_at_length(piece.edge(notch.edge).path, notch.along);
  return "{\"name\": " + json_string(notch.name) + ", \"edge\": " + json_string(notch.edge) +
         ", \"along\": " + exact(notch.along) + ", \"at\": " + pair_text(at) +
         ", \"count\": " + std::to_string(notch.count) +
         ", \"mate_piece\": " + json_string(notch.mate_piece) +
         ", \"mate_edge\": " + json_string(notch.mate_edge) + '}';
}

std::string balance_line_text(const BalanceLine& line) {
  return "{\"name\": " + json_string(line.name) + ", \"path\": " + path_text(line.path) + '}';
}

std::string landmark_text(const Landmark& landmark) {
  return json_string(landmark.name) + ": " + pair_text(landmark.at);
}

std::string fullness_text(const Fullness& fullness) {
  const bool gathers = fullness.kind == Fullness::Kind::Gathers;
  return "{\"name\": " + json_string(fullness.name) + ", \"edge\": " + json_string(fullness.edge) +
         ", \"kind\": " + (gathers ? "\"gathers\"" : "\"ease\"") +
         ", \"from\": " + exact(fullness.from) + ", \"to\": " + exact(fullness.to) +
         ", \"sewn\": " + exact(fullness.sewn) + '}';
}

std::string side_text(const std::vector<EdgeOf>& side) {
  std::string text;
  for (const auto& [piece, edge] : side) {
    text += (text.empty() ? "[" : ", [") + json_string(piece) + ", " + json_string(edge) + ']';
  }
  return '[' + text + ']';
}

std::string seam_text(const Seam& seam) {
  return "{\"name\": " + json_string(seam.name) + ", \"a\": " + side_text(seam.a) +
         ", \"b\": " + side_text(seam.b) + ", \"ease_in\": " + exact(seam.ease_in) +
         ", \"b_runs_back\": " + (seam.b_runs_back ? "true" : "false") + '}';
}

std::string buttons_text(const Opening& opening) {
  return ", \"button\": " + exact(opening.button) + ", \"spacing\": " + exact(opening.spacing) +
         ", \"buttons\": " + std::to_string(opening.buttons);
}

std::string opening_text(const Opening& opening) {
  return "{\"name\": " + json_string(opening.name) + ", \"edges\": " + side_text(opening.edges) +
         ", \"with\": " + json_string(closure_name(opening.with)) +
         ", \"from_edge\": " + exact(opening.from_edge) + ", \"length\": " + exact(opening.length) +
         (opening.with == Closure::Buttons ? buttons_text(opening)
                                           : ", \"zip\": " + exact(opening.zip)) +
         '}';
}

std::string binding_text(const Binding& binding) {
  return "{\"edges\": " + side_text(binding.edges) +
         ", \"strips\": " + std::to_string(binding.strips) +
         ", \"shows\": " + exact(binding.shows) + ", \"cut_width\": " + exact(binding.cut_width) +
         ", \"edge_length\": " + exact(binding.edge_length) +
         ", \"strip_length\": " + exact(binding.strip_length) +
         ", \"joined\": " + json_string(binding.joined) + ", \"square\": " + exact(binding.square) +
         '}';
}

std::string segment_text(const Segment& line) {
  return '[' + pair_text(line.a) + ", " + pair_text(line.b) + ']';
}

template <class Items, class ToText>
std::string in_a_row(const Items& items, ToText&& to_text) {
  std::string text;
  for (const auto& item : items) text += (text.empty() ? "" : ", ") + to_text(item);
  return '[' + text + ']';
}

// Nothing of a piece that is not buttoned.
std::string stand_text(const std::optional<ButtonStand>& stand) {
  if (!stand) return "";
  return ",\n      \"button_stand\": {\"centre\": " + segment_text(stand->centre) +
         ", \"width\": " + exact(stand->width) +
         ", \"buttons\": " + in_a_row(stand->buttons, pair_text) +
         ", \"buttonholes\": " + in_a_row(stand->buttonholes, segment_text) + '}';
}

std::string_view cut_on_name(CutOn cut_on) {
  if (cut_on == CutOn::One) return "one";
  return cut_on == CutOn::Fold ? "fold" : "pair";
}

/// The items' texts between brackets, each on its own line.
template <class Items, class ToText>
std::string block(std::string_view brackets, int indent, const Items& items, ToText&& to_text) {
  if (items.empty()) return std::string(brackets);
  const std::string margin(static_cast<std::size_t>(indent), ' ');
  std::string text(1, brackets[0]);
  std::string_view separator = "\n";
  for (const auto& item : items) {
    text += separator;
    text += margin + "  " + to_text(item);
    separator = ",\n";
  }
  return text + '\n' + margin + brackets[1];
}

std::string facing_text(const Facing& facing) {
  return "{\"piece\": " + json_string(facing.piece) + ", \"edge\": " + json_string(facing.edge) +
         ", \"faced\": " + side_text(facing.faced) + ", \"width\": " + exact(facing.width) +
         ", \"roll\": " + exact(facing.roll) + '}';
}

std::string cut_from_text(const Piece& piece) {
  std::string names;
  for (const Material material : piece.cut_from) {
    names += (names.empty() ? "" : ", ") + json_string(material_name(material));
  }
  return '[' + names + ']';
}

std::string piece_text(const Piece& piece) {
  const auto list = [&](const auto& items, auto&& to_text) {
    return block("[]", kPieceIndent, items, to_text);
  };
  return "{\n      \"name\": " + json_string(piece.name) +
         ",\n      \"cut_on\": " + json_string(cut_on_name(piece.cut_on)) +
         (piece.cut_from.size() > 1 ? ",\n      \"cut_from\": " + cut_from_text(piece) : "") +
         ",\n      \"edges\": " + list(piece.edges, edge_text) +
         ",\n      \"darts\": " + list(piece.darts, dart_text) +
         ",\n      \"fullness\": " + list(piece.fullness, fullness_text) +
         ",\n      \"landmarks\": " + block("{}", kPieceIndent, piece.landmarks, landmark_text) +
         ",\n      \"notches\": " +
         list(piece.notches, [&](const Notch& notch) { return notch_text(piece, notch); }) +
         ",\n      \"balance_lines\": " + list(piece.balance_lines, balance_line_text) +
         ",\n      \"grain\": " + segment_text(piece.grainline) + stand_text(piece.stand) +
         "\n    }";
}

}  // namespace

void write_pattern_json(std::ostream& out, const Pattern& pattern) {
  out << "{\n  \"format\": \"blockwright-pattern-1\",\n  \"unit\": \"mm\",\n  \"pieces\": "
      << block("[]", 2, pattern.pieces, piece_text)
      << ",\n  \"seams\": " << block("[]", 2, pattern.seams, seam_text);
  if (!pattern.openings.empty()) {
    out << ",\n  \"openings\": " << block("[]", 2, pattern.openings, opening_text);
  }
  if (!pattern.bindings.empty()) {
    out << ",\n  \"bindings\": " << block("[]", 2, pattern.bindings, binding_text);
  }
  if (!pattern.facings.empty()) {
    out << ",\n  \"facings\": " << block("[]", 2, pattern.facings, facing_text);
  }
  out << "\n}\n";
}

}  // namespace blockwright
