#include "blockwright/dart/centre_seam.hpp"

#include "blockwright/block/kinds.hpp"
#include "words.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A notch nearer to the end of its seam is no help. Ours.
constexpr double kNotchOffEnd = 15.0;

void require_no_dart(const Piece& piece, const Edge& centre) {
  for (const Dart& dart : piece.darts) {
    if (dart.edge != centre.name) continue;
    refuse("dart.blocked", piece.name + "." + centre.name, "the dart " + dart.name + " opens on it",
           "move the dart before the seam is made");
  }
}

// At the bust line, as long as that meets the edge well within its ends.
double notch_along(const Piece& piece, const Edge& centre) {
  const double whole = length(centre.path);
  const BalanceLine* bust = find_line(piece, LineUse::Bust);
  if (bust == nullptr) return 0.5 * whole;
  const NearestOnPath start = nearest(centre.path, bust->path.start());
  const NearestOnPath end = nearest(centre.path, bust->path.end());
  const double along = start.distance < end.distance ? start.along : end.along;
  return along >= kNotchOffEnd && along <= whole - kNotchOffEnd ? along : 0.5 * whole;
}

// The other side's edge runs against this one.
double along_of_mate(const Piece& mate, const Edge& centre) {
  const Notch* notch = first_where(mate.notches, [&](const Notch& one) {
    return one.edge == centre.name && one.mate_edge == centre.name;
  });
  return notch == nullptr ? -1.0 : length(centre.path) - notch->along;
}

// What the edge is sewn to: the piece's mirror image, or the front of the other side.
std::string mate_of(const Piece& piece) {
  const SidedName name = sided_name(piece.name);
  if (name.side.empty()) return piece.name;
  const bool right = name.side == kRightEnding;
  return std::string(name.whole) + std::string(right ? kLeftEnding : kRightEnding);
}

void add_mirror_seam(Pattern& pattern, const EdgeOf& at) {
  if (find_named(pattern.seams, at.edge) == nullptr) {
    pattern.seams.push_back({at.edge, {at}, {at}, 0.0});
  }
}

// True if it lay on the fold.
bool unfold(Piece& piece, Edge& centre) {
  if (centre.role != EdgeRole::Fold) return false;
  centre.role = EdgeRole::Seam;
  piece.cut_on = CutOn::Pair;
  return true;
}

Problem told_seam(const EdgeOf& at) {
  return {Severity::Note, "dart.fold", at.piece + "." + at.edge, "it becomes a seam: cut 2, a pair",
          ""};
}

}  // namespace

bool is_seam_by_choice(const Piece& piece, const Edge& centre) {
  const auto is_its_own = [&](const Notch& notch) {
    return notch.edge == centre.name && notch.mate_edge == centre.name;
  };
  return centre.role == EdgeRole::Seam && std::ranges::any_of(piece.notches, is_its_own);
}

MovedDarts with_centre_seam(const Pattern& pattern, const CentreSeam& /*front*/) {
  MovedDarts made{pattern, {}};
  for (Piece& piece : made.pattern.pieces) {
    const Edge* found = is_a(piece, kBodiceFront) ? find_part(piece, BlockEdge::Centre) : nullptr;
    if (found == nullptr) continue;
    Edge& centre = *find_named(piece.edges, found->name);
    require_no_dart(piece, centre);
    if (is_seam_by_choice(piece, centre)) continue;
    const EdgeOf at{piece.name, centre.name};
    if (unfold(piece, centre)) made.remarks.push_back(told_seam(at));
    if (piece.cut_on == CutOn::Pair) add_mirror_seam(made.pattern, at);
    const std::string mate = mate_of(piece);
    const double mated =
        mate == piece.name ? -1.0 : along_of_mate(made.pattern.piece(mate), centre);
    const double along = mated > 0.0 ? mated : notch_along(piece, centre);
    piece.notches.push_back(
        {centre.name + ".bust", centre.name, along, piece.kind->notch_count, mate, centre.name});
  }
  return made;
}

}  // namespace blockwright
