#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

Piece trued(const Pattern& pattern, const char* piece) {
  return true_darts(pattern).pattern.piece(piece);
}

Piece trued(const Person& person, const std::vector<StyleStep>& steps, const char* piece) {
  return trued(after(person, steps), piece);
}

void draw(Diagram& d, int column, const Box& box, const Piece& piece) {
  const Sketch s = in_column(d, column, box);
  s.piece(piece, Look::New);
  s.notches(piece);
}

// The darts of a piece that open on an edge: "8.1° + 8.1°".
std::string angles_on(const Piece& piece, const std::string& edge) {
  std::string sum;
  for (const Dart& dart : piece.darts) {
    if (dart.edge == edge) sum += (sum.empty() ? "" : " + ") + degrees(dart.angle());
  }
  return sum;
}

std::string drawn_up(const Fullness& f) {
  return cm(f.to - f.from) + " are " + (f.kind == Fullness::Kind::Gathers ? "gathered" : "eased") +
         " to " + cm(f.sewn);
}

void label_fullness(const Sketch& s, const Piece& piece, Vec off, const std::string& words) {
  const Fullness& f = piece.fullness.front();
  s.label(point_at_length(piece.edge(f.edge).path, 0.5 * (f.from + f.to)), off, words);
}

}  // namespace

void draw_merge(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  const Piece before = trued(person.block, "back");
  const Piece merged = trued(person, {MergeMove{"back.waist_outer", "back.waist"}}, "back");
  const Box box = box_about({&before, &merged});
  draw(d, 0, box, before);
  draw(d, 1, box, merged);
  in_column(d, 2, box).piece(before, Look::Compass);
  in_column(d, 2, box).piece(merged, Look::New);
  head(d, 0, "Before", "two darts: " + angles_on(before, "waist"));
  head(d, 1, "After", "one dart: " + angles_on(merged, "waist"));
  head(d, 2, "Overlay", "dashed: before");
}

void draw_split(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "pippa-quill");
  const PivotMove down{"front.shoulder", "front.waist", 1.0, {}, {}};
  const Piece one = trued(person, {down}, "front");
  const SplitMove fan{"front.waist", {0.3, 0.4, 0.3}, 30.0, DartGroup::Fanned};
  const SplitMove pair{"front.waist", {0.5, 0.5}, 30.0, DartGroup::Parallel};
  const Piece fanned = trued(person, {down, fan}, "front");
  const Piece parallel = trued(person, {down, pair}, "front");
  const Box box = box_about({&one, &fanned, &parallel});
  draw(d, 0, box, one);
  draw(d, 1, box, fanned);
  draw(d, 2, box, parallel);
  head(d, 0, "One dart", angles_on(one, "waist"));
  head(d, 1, "Three, fanned", angles_on(fanned, "waist") + "\nall turn about the bust point");
  head(d, 2, "Two, parallel",
       angles_on(parallel, "waist") + "\neach turns about a point of its own");
}

void draw_gathers_and_ease(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "tamsin-reed");
  const PivotMove to_neck{"front.shoulder", "front.neck", 1.0, {}, {}};
  const GatherMove gathers{"front.neck", Fullness::Kind::Gathers, 80.0};
  const Piece dart = trued(person, {to_neck}, "front");
  const Piece gathered = trued(person, {to_neck, gathers}, "front");
  const Box box = box_about({&dart, &gathered});
  draw(d, 0, box, dart);
  draw(d, 1, box, gathered);
  head(d, 0, "A dart at the neck", "mouth " + cm(dart.dart("neck").intake()));
  head(d, 1, "Gathers instead", drawn_up(gathered.fullness.front()) + "\nbetween the two notches");
  const PivotMove to_armhole{"back.shoulder", "back.armhole", 1.0, {}, {}};
  const GatherMove ease{"back.armhole", Fullness::Kind::Ease, 100.0};
  const Piece eased = trued(person, {to_armhole, ease}, "back");
  draw(d, 2, box_about({&eased}), eased);
  head(d, 2, "Ease at the back armhole", drawn_up(eased.fullness.front()) + "\nit does not show");
  label_fullness(in_column(d, 1, box), gathered, {-16.0, 14.0}, "gathers");
  label_fullness(in_column(d, 2, box_about({&eased})), eased, {10.0, 0.0}, "ease");
}

namespace {

// The slashes of a spread, as they are cut before it opens.
void draw_slashes(const Sketch& s, const Piece& piece, double waist_share, double neck_share,
                  const SpreadMove& move) {
  const Edge& waist = piece.edge("waist");
  const Edge& neck = piece.edge("neckline");
  for (int i = 0; i < move.lines; ++i) {
    const double off = (i - 0.5 * (move.lines - 1)) * move.apart;
    const double from = waist_share * sewn_length(piece, waist) + off;
    const double to = neck_share * sewn_length(piece, neck) - off;
    s.line(point_at_length(waist.path, cut_from_closed(piece, waist, from)),
           point_at_length(neck.path, cut_from_closed(piece, neck, to)), Look::Compass);
  }
}

}  // namespace

void draw_spread(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "nadezhda-vetrova");
  const SpreadMove hinged{"back.waist:0.3", "back.neck:0.5", 60.0, 2, 20.0, true, true, 80.0};
  SpreadMove both_ends = hinged;
  both_ends.hinged = false;
  const Piece before = trued(person.block, "back");
  const Piece at_one = trued(person, {hinged}, "back");
  const Piece at_both = trued(person, {both_ends}, "back");
  const Box box = box_about({&before, &at_one, &at_both});
  draw(d, 0, box, before);
  draw_slashes(in_column(d, 0, box), before, 0.3, 0.5, hinged);
  draw(d, 1, box, at_one);
  in_column(d, 1, box).piece(before, Look::Compass);
  draw(d, 2, box, at_both);
  in_column(d, 2, box).piece(before, Look::Compass);
  head(d, 0, "Slash", "two lines, from the waist to the neck");
  head(d, 1, "Spread, hinged", drawn_up(at_one.fullness.front()) + " at the waist\nthe neck stays");
  head(d, 2, "Spread at both ends",
       "waist: " + drawn_up(at_both.fullness.front()) +
           "\nneck: " + drawn_up(at_both.fullness.back()));
}

}  // namespace blockwright_pictures
