#include "blockwright/garment/making.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "blockwright/garment/binding.hpp"
#include "button_words.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "straps.hpp"
#include "strip_join.hpp"

#include <algorithm>
#include <string>

namespace blockwright {
namespace {

// What a strip is cut longer than it needs, in mm. Common practice, no source.
constexpr double kSpareStrip = 50.0;

std::string plain(std::string_view name) {
  std::string words(name);
  std::ranges::replace(words, '_', ' ');
  return words;
}

std::string listed_words(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

void add_once(std::vector<std::string>& items, const std::string& item) {
  if (std::ranges::count(items, item) == 0) items.push_back(item);
}

// The names of edges of that finish, each once; not of those that are faced, nor of facings.
std::vector<std::string> names_of(const Pattern& pattern, Finish finish) {
  std::vector<std::string> names;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      const bool faced = facing_of(pattern, {piece.name, edge.name}) != nullptr ||
                         facing_named(pattern, piece.name) != nullptr;
      if (edge.finish.how == finish && !faced) add_once(names, plain(edge.name));
    }
  }
  return names;
}

std::vector<std::string> names_of(const Pattern& pattern, const std::vector<EdgeOf>& edges) {
  std::vector<std::string> names;
  for (const EdgeOf& at : edges) {
    const bool of_strap = is_strap(pattern.piece(at.piece));
    add_once(names, plain(of_strap ? kStrapPiece : std::string_view(at.edge)));
  }
  return names;
}

// --- cut ----------------------------------------------------------------------------------------

std::string copies_words(CutOn cut_on) {
  if (cut_on == CutOn::One) return "1";
  return cut_on == CutOn::Fold ? "1 on the fold" : "2 as a pair";
}

// "front 1 on the fold and back 2 as a pair"; empty if nothing is cut from it.
std::string cut_from(const Pattern& pattern, Material material) {
  std::vector<std::string> pieces;
  for (const Piece& piece : pattern.pieces) {
    if (std::ranges::count(piece.cut_from, material) == 0) continue;
    pieces.push_back(plain(piece.name) + " " + copies_words(piece.cut_on));
  }
  return listed_words(pieces);
}

std::string ends_words(const Pattern& pattern, const Binding& binding) {
  if (ends_at_straps(pattern, binding.edges)) return "its ends are caught in at the straps";
  if (binding.joined.empty()) return "its ends turn in at the opening";
  return "its ends are joined at " + binding.joined;
}

Wording strip_line(const Pattern& pattern, const Binding& binding) {
  return "bias strip for the " + listed_words(names_of(pattern, binding.edges)) + ": " +
         std::to_string(binding.strips) + ", " + Length::mm(binding.strip_length) + " long and " +
         Length::mm(binding.cut_width) + " wide, with " + Length::mm(kStripEnd) + " at each end; " +
         ends_words(pattern, binding);
}

// One square yields the strips of one width; those of all runs of a step are.
Wording square_line(const Pattern& pattern) {
  return "all strips: on the true bias, from a square of cloth of " +
         Length::mm(square_of_strips(pattern)) + " or from offcuts, each " +
         Length::mm(kSpareStrip) + " longer to be safe";
}

std::vector<Wording> cut_lines(const Pattern& pattern) {
  std::vector<Wording> lines = {"cloth: " + cut_from(pattern, Material::Cloth)};
  const std::string stiff = cut_from(pattern, Material::Interfacing);
  if (!stiff.empty()) {
    lines.emplace_back("interfacing: " + stiff +
                       ", each cut on the stitch line, without allowance");
  }
  for (const Opening& opening : pattern.openings) {
    if (has_cut_on_facing(pattern, opening)) lines.push_back(facing_strips(pattern, opening));
  }
  for (const Binding& one : pattern.bindings) lines.push_back(strip_line(pattern, one));
  if (!pattern.bindings.empty()) lines.push_back(square_line(pattern));
  return lines;
}

// --- buy ----------------------------------------------------------------------------------------

Wording zip_words(const Opening& opening) {
  return (opening.with == Closure::OpenZip ? "zip that parts in two, " : "zip, ") +
         Length::mm(opening.zip);
}

Wording zip_line(const Opening& opening) {
  Wording line = zip_words(opening) + " long, for the " + plain(opening.name);
  if (opening.zip > opening.length) line += ", shortened to " + Length::mm(opening.length);
  return line;
}

// --- sew ----------------------------------------------------------------------------------------

bool joins(const Pattern& pattern, const Seam& seam, Finish finish) {
  return !seam.a.empty() && edge_at(pattern, seam.a.front()).finish.how == finish;
}

bool joins_part(const Pattern& pattern, const Seam& seam, BlockEdge part) {
  const EdgeOf& at = seam.a.front();
  return joins(pattern, seam, Finish::Seam) && is_part(pattern.piece(at.piece), at.edge, part);
}

// "front: waist", and so on for each piece with darts.
std::vector<std::string> darts_by_piece(const Pattern& pattern) {
  std::vector<std::string> pieces;
  for (const Piece& piece : pattern.pieces) {
    std::vector<std::string> darts;
    for (const Dart& dart : piece.darts) darts.push_back(plain(dart.name));
    if (!darts.empty()) pieces.push_back(plain(piece.name) + ": " + listed_words(darts));
  }
  return pieces;
}

void sew_darts(const Pattern& pattern, std::vector<Wording>& lines) {
  std::string darts;
  for (const std::string& of_piece : darts_by_piece(pattern)) {
    darts += (darts.empty() ? "" : "; ") + of_piece;
  }
  if (!darts.empty()) {
    lines.emplace_back("sew the darts from the mouth to the point (" + darts +
                       ") and press them the way their edge is cut");
  }
  const auto is_full = [](const Piece& piece) { return !piece.fullness.empty(); };
  if (std::ranges::any_of(pattern.pieces, is_full)) {
    lines.emplace_back("draw up what is gathered or eased, from notch to notch");
  }
}

void sew_panels(const Pattern& pattern, std::vector<Wording>& lines) {
  std::vector<std::string> pairs;
  for (const Seam& seam : pattern.seams) {
    if (!joins(pattern, seam, Finish::PanelSeam)) continue;
    pairs.push_back(plain(seam.a.front().piece) + " to " + plain(seam.b.front().piece));
  }
  if (pairs.empty()) return;
  lines.emplace_back("join the panels notch on notch (" + listed_words(pairs) +
                     ") and press the seams open");
}

const Opening* opening_at(const Pattern& pattern, std::string_view name) {
  return find_named(pattern.openings, name);
}

Wording set_zip(const Opening& opening) {
  const Wording place = plain(opening.name);
  const Wording top =
      Wording(Length::mm(opening.from_edge)) + " below the finished edge of the seam";
  const bool above = opening.name == "left_side" && opening.from_edge > 0.0;
  if (opening.with == Closure::OpenZip) {
    return (above ? "sew the " + place + " above the zip and set its two halves in below"
                  : "set the two halves of the zip into the " + place) +
           ", their upper ends " + top;
  }
  return "sew the " + place + (above ? " above the zip and below the notch" : " below the notch") +
         ", press it open and set the zip in, its upper end " + top;
}

void sew_centres(const Pattern& pattern, std::vector<Wording>& lines) {
  std::vector<std::string> seams;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      if (is_part(piece, edge.name, BlockEdge::Centre) && edge.role == EdgeRole::Seam) {
        add_once(seams, plain(edge.name));
      }
    }
  }
  if (!seams.empty()) {
    lines.emplace_back("sew the " + listed_words(seams) + " and press " +
                       (seams.size() == 1 ? "it" : "them") + " open");
  }
  for (const Opening& opening : pattern.openings) {
    if (opening.name == "left_side") continue;
    if (opening.with != Closure::Buttons) lines.push_back(set_zip(opening));
    if (has_cut_on_facing(pattern, opening)) lines.push_back(fold_facings());
  }
}

// Whether neckline and armhole have one facing.
bool faces_in_one(const Pattern& pattern) {
  const auto faces = [&](const Facing& one, BlockEdge part) {
    const EdgeOf& at = one.faced.front();
    return is_part(pattern.piece(at.piece), at.edge, part);
  };
  return std::ranges::any_of(pattern.facings, [&](const Facing& neck) {
    return faces(neck, BlockEdge::Neckline) &&
           std::ranges::any_of(pattern.facings, [&](const Facing& arm) {
             return arm.piece == neck.piece && faces(arm, BlockEdge::Armhole);
           });
  });
}

void sew_sides(const Pattern& pattern, std::vector<Wording>& lines) {
  const bool sides = std::ranges::any_of(pattern.seams, [&](const Seam& seam) {
    return !seam.a.empty() && joins_part(pattern, seam, BlockEdge::Side);
  });
  const Opening* zip = opening_at(pattern, "left_side");
  if (!sides) return;
  const std::string facing = faces_in_one(pattern) ? ", cloth and facing in one run," : "";
  lines.emplace_back(zip == nullptr ? "sew the side seams" + facing + " and press them open"
                                    : "sew the right side seam" + facing + " and press it open");
  if (zip != nullptr) lines.push_back(set_zip(*zip));
}

void sew_shoulders(const Pattern& pattern, std::vector<Wording>& lines) {
  const bool shoulders = std::ranges::any_of(pattern.seams, [&](const Seam& seam) {
    return !seam.a.empty() && joins_part(pattern, seam, BlockEdge::Shoulder);
  });
  if (shoulders) lines.emplace_back("sew the shoulders and press them open");
}

// What is faced, by the names of the garment's edges.
std::string faced_names(const Pattern& pattern) {
  std::vector<std::string> names;
  for (const Facing& one : pattern.facings) {
    for (const std::string& name : names_of(pattern, one.faced)) add_once(names, name);
  }
  return listed_words(names);
}

bool meets_hem(const Pattern& pattern) {
  return std::ranges::any_of(pattern.facings, [&](const Facing& one) {
    return !one.after.piece.empty() && edge_at(pattern, one.after).role == EdgeRole::Hem;
  });
}

void fix_interfacing(const Pattern& pattern, std::vector<Wording>& lines) {
  if (cut_from(pattern, Material::Interfacing).empty()) return;
  lines.emplace_back("fix the interfacing to the wrong side of the facings");
}

// "understitch ... and let the seam roll 2 mm inside".
Wording turn_in_words(const Pattern& pattern) {
  std::vector<double> rolls;
  for (const Facing& one : pattern.facings) {
    if (std::ranges::count(rolls, one.roll) == 0) rolls.push_back(one.roll);
  }
  Wording roll = Length::mm(rolls.front());
  for (std::size_t i = 1; i < rolls.size(); ++i) roll += " or " + Wording(Length::mm(rolls[i]));
  return " trim and clip the allowances, understitch them to the facing, turn it in and let the "
         "seam roll " +
         roll + " inside";
}

Wording sew_on_words(const Pattern& pattern, const std::string& edges) {
  return "sew the facings on, right sides together and notch on notch (" + Wording(edges) + ");" +
         (meets_hem(pattern) ? " at the lower edge sew them on along the hem line;" : "") +
         turn_in_words(pattern);
}

void face_edges(const Pattern& pattern, std::vector<Wording>& lines) {
  if (pattern.facings.empty() || faces_in_one(pattern)) return;
  fix_interfacing(pattern, lines);
  lines.emplace_back(
      "join the facings, press their seams open, and turn or neaten their outer edges");
  lines.push_back(sew_on_words(pattern, faced_names(pattern)));
}

// While the sides are open: the armholes cannot be turned once all is closed.
void face_in_one(const Pattern& pattern, std::vector<Wording>& lines) {
  if (!faces_in_one(pattern)) return;
  fix_interfacing(pattern, lines);
  lines.emplace_back(
      "join the facings at the shoulders, not at the sides, press the seams open, and turn or "
      "neaten their outer edges");
  lines.push_back(
      sew_on_words(pattern, meets_hem(pattern) ? "neckline and front edge" : "neckline"));
  lines.push_back(
      "for each armhole roll the garment up from the other side, lay cloth and facing round the "
      "roll, right sides together and notch on notch, sew the armhole and pull the roll out;" +
      turn_in_words(pattern));
}

Wording bind_line(const Pattern& pattern, const Binding& binding) {
  const bool stretched = binding.edge_length - binding.strip_length + 2.0 * kStripEnd > 1.0;
  return "bind the " + Wording(listed_words(names_of(pattern, binding.edges))) + ", " +
         Length::mm(binding.shows) + " wide" + (stretched ? ", stretching the strip evenly" : "");
}

// Edges that end at the straps are bound first: the straps catch the ends of their strips.
void set_straps(const Pattern& pattern, std::vector<Wording>& lines) {
  if (!has_straps(pattern)) return;
  for (const Binding& one : pattern.bindings) {
    if (ends_at_straps(pattern, one.edges)) lines.push_back(bind_line(pattern, one));
  }
  const std::vector<EdgeOf> edges = strap_edges(pattern);
  const bool bound = edge_at(pattern, edges.front()).finish.how == Finish::Bound;
  lines.emplace_back(bound ? "fold the straps lengthwise, right side out, and baste their long "
                             "edges on each other: the binding closes them"
                           : "fold the straps lengthwise, right side in, sew their long edges "
                             "together, trim and turn them");
  lines.push_back("sew the straps to the " +
                  Wording(has_flat_straps(pattern) ? "strap ends of the front"
                                                   : "front, where neckline and armhole meet") +
                  ", " + Length::mm(kStrapSewnIn) +
                  " deep; try the top on, trim them at the back and sew them in there");
}

void finish_edges(const Pattern& pattern, std::vector<Wording>& lines) {
  face_edges(pattern, lines);
  const std::vector<std::string> enclosed = names_of(pattern, Finish::Enclosed);
  if (!enclosed.empty()) {
    const bool sleeve = std::ranges::count(enclosed, "armhole") > 0 && !has_straps(pattern);
    lines.emplace_back("face or line the " + listed_words(enclosed) +
                       (sleeve ? ", or set the sleeve in" : ""));
  }
  for (const Binding& one : pattern.bindings) {
    if (!ends_at_straps(pattern, one.edges)) lines.push_back(bind_line(pattern, one));
  }
}

// Hems of one width in one line.
void turn_hems(const Pattern& pattern, std::vector<Wording>& lines) {
  std::vector<double> widths;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      const double width = edge.finish.allowance;
      const bool hem =
          edge.finish.how == Finish::Turned && facing_named(pattern, piece.name) == nullptr;
      if (!hem || std::ranges::count(widths, width) > 0) continue;
      widths.push_back(width);
      lines.push_back("turn the " + Wording(plain(edge.name)) + " up by " + Length::mm(width));
    }
  }
}

void sew_buttons(const Pattern& pattern, std::vector<Wording>& lines) {
  for (const Opening& opening : pattern.openings) {
    if (opening.with == Closure::Buttons) lines.push_back(set_buttons(opening));
  }
}

std::vector<Wording> sewing_lines(const Pattern& pattern) {
  std::vector<Wording> lines;
  for (const auto step : {sew_darts, sew_panels, sew_shoulders, sew_centres, face_in_one, sew_sides,
                          set_straps, finish_edges, turn_hems, sew_buttons}) {
    step(pattern, lines);
  }
  return lines;
}

// --- edges --------------------------------------------------------------------------------------

std::vector<EdgeWords> edge_words_of(const Pattern& pattern) {
  std::vector<EdgeWords> edges;
  for (const Opening& opening : pattern.openings) {
    if (opening.with == Closure::Buttons) {
      const char* words =
          has_cut_on_facing(pattern, opening) ? "fold the facing back here" : "faced, laps over";
      for (const EdgeOf& at : opening.edges) edges.push_back({at, words});
      continue;
    }
    Wording words = zip_words(opening);
    if (opening.with == Closure::Zip) words += ", down to the notch";
    if (opening.name == "left_side") words = "left side alone: " + words;
    for (const EdgeOf& at : opening.edges) edges.push_back({at, words});
  }
  for (const Binding& one : pattern.bindings) {
    for (const EdgeOf& at : one.edges) {
      const Piece& piece = pattern.piece(at.piece);
      const bool of_strap = is_strap(piece);
      // Said at the edge that counts for both.
      if (of_strap && bound_length(piece, piece.edge(at.edge)) == 0.0) continue;
      edges.push_back({at, of_strap ? "bound, both long edges as one" : "bound"});
    }
  }
  return edges;
}

}  // namespace

MakingOf making_of(const Pattern& pattern) {
  MakingOf making{cut_lines(pattern), {}, sewing_lines(pattern), edge_words_of(pattern)};
  for (const Opening& opening : pattern.openings) {
    making.to_buy.push_back(opening.with == Closure::Buttons ? buttons_line(opening)
                                                             : zip_line(opening));
  }
  return making;
}

}  // namespace blockwright
