// Pieces that are sewn to an edge and turned inside.
#include "blockwright/garment/facing.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/fullness.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "dart/refusal.hpp"
#include "garment/printed_facings.hpp"
#include "support/blocks.hpp"
#include "support/each.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

FacingPlan face(const std::vector<std::string>& edges) { return {.edges = edges}; }

RefusedStep facing_refusal(const Pattern& pattern, const FacingPlan& plan) {
  return refused_with([&] { return with_facing(pattern, plan); });
}
RefusedStep facing_refusal(const FacingPlan& plan) {
  return facing_refusal(ordinary_block(), plan);
}

const Seam& seam_named(const Pattern& pattern, const std::string& name) {
  const Seam* seam = find_named(pattern.seams, name);
  REQUIRE(seam != nullptr);
  return *seam;
}

double turn_of(const Path& path, double to) {
  double turn = 0.0;
  for (double at = 0.0; at < to; at += 1.0) {
    turn +=
        turn_between(tangent_at_length(path, at), tangent_at_length(path, std::min(at + 1.0, to)))
            .radians();
  }
  return turn;
}

// An edge that is moved to its left by the roll gets longer by the roll times its clockwise turn,
// and by how far its ends are moved along it; next to an opening the roll runs out over 40 mm
// and is half as wide there on the whole.
void check_edge(const Pattern& pattern, const Facing& facing, double run_out) {
  const Path& edge = pattern.piece(facing.piece).edge(facing.edge).path;
  const EdgeOf& of = facing.faced.front();
  const Path& garment = pattern.piece(of.piece).edge(of.edge).path;
  const double whole = length(garment);
  const double rolled = whole - std::min(run_out, 0.5 * whole);
  const double ends = dot(edge.end() - garment.end(), end_tangent(garment)) -
                      dot(edge.start() - garment.start(), start_tangent(garment));
  const double turn = 0.5 * (turn_of(garment, rolled) + turn_of(garment, whole));
  CHECK(length(edge) == Approx(whole - facing.roll * turn + ends).margin(0.5));
}

// The grain lies as on the part: so do the lines.
void check_width(const Pattern& pattern, const Facing& facing) {
  const EdgeOf& of = facing.faced.front();
  const Path& garment = pattern.piece(of.piece).edge(of.edge).path;
  const Path& outer = pattern.piece(facing.piece).edge("outer_edge").path;
  const double whole = length(outer);
  for (double at = facing.width; at < whole - facing.width; at += 5.0) {
    CHECK(nearest(garment, point_at_length(outer, at)).distance ==
          Approx(facing.width).margin(1.0));
  }
}

// Where two facings are joined they are equally long, and as long as the seam's width less the
// roll.
int check_ends(const Pattern& pattern) {
  int joined = 0;
  for (const Seam& seam : pattern.seams) {
    const bool of_facings =
        !seam.a.empty() &&
        std::ranges::count(pattern.facings, seam.a.front().piece, &Facing::piece) > 0;
    if (!of_facings || seam.a == seam.b) continue;
    ++joined;
    INFO(seam.name);
    const double a = sewn_length(pattern, seam.a), b = sewn_length(pattern, seam.b);
    CHECK(a == Approx(b).margin(1e-6));
  }
  return joined;
}

Pattern square_neck(const Pattern& block) {
  NecklineDesign square;
  square.shape = NeckShape::Square;
  square.shoulder_share = 0.4;
  return draw_neckline(block, square).pattern;
}

}  // namespace

TEST_CASE("A facing is a piece of its own, laid as the part that it lies under") {
  const Pattern block = ordinary_block();
  const Pattern faced = with_facing(block, face({"neckline", "armhole"})).pattern;
  REQUIRE(faced.facings.size() == 4);
  CHECK(faced.piece("front_neck_facing").cut_on == CutOn::Fold);
  CHECK(faced.piece("back_neck_facing").cut_on == CutOn::Pair);
  CHECK(faced.piece("front_armhole_facing").cut_on == CutOn::Pair);
  CHECK(faced.piece("back_armhole_facing").cut_on == CutOn::Pair);
  const Piece& front = faced.piece("front_neck_facing");
  CHECK(front.cut_from == std::vector{Material::Cloth, Material::Interfacing});
  CHECK(front.edge("centre_front").role == EdgeRole::Fold);
  CHECK(front.edge("shoulder").role == EdgeRole::Seam);
  CHECK(length(front.edge("shoulder").path) == Approx(kUsualFacing - 2.0).margin(1e-6));
  const Segment& grain = front.grainline;
  CHECK(std::abs(unit(grain.b - grain.a).y) == Approx(1.0));
  // At the opening the roll is nothing.
  const Path& back = faced.piece("back_neck_facing").edge("neck_edge").path;
  const Path& neckline = block.piece("back").edge("neckline").path;
  CHECK(distance(back.end(), neckline.end()) < 1e-6);
  CHECK(distance(back.start(), neckline.start()) == Approx(2.0).margin(1e-6));
  CHECK(with_facing(block, {.edges = {"neckline"}, .interfaced = false})
            .pattern.piece("front_neck_facing")
            .cut_from == std::vector{Material::Cloth});
  for (const Piece& piece : block.pieces) {
    for (const Edge& edge : piece.edges) {
      CHECK(faced.piece(piece.name).edge(edge.name).path == edge.path);
    }
  }
}

TEST_CASE("Edge, width and ends of everybody's facings") {
  int made = 0;
  for (const Session& session : each_person(people(100), 321)) {
    const Pattern block = checked_block(session).block.pattern;
    FacingPlan plan = face({"neckline", "armhole"});
    plan.roll = 3.0;
    Pattern faced;
    try {
      faced = with_facing(block, plan).pattern;
    } catch (const InputError& error) {
      CHECK(error.problem().code == "garment.facing");
      continue;
    }
    ++made;
    for (const Facing& facing : faced.facings) {
      INFO(facing.piece);
      check_edge(faced, facing, facing.piece == "back_neck_facing" ? 40.0 : 0.0);
      check_width(faced, facing);
    }
    CHECK(check_ends(faced) == 3);
    CHECK(errors_of(faced) == "");
  }
  CHECK(made > people(100) * 9 / 10);
}

TEST_CASE("Facings over darts, panels and top edges are whole on everybody") {
  int made = 0, tried = 0;
  const auto check_all = [&](auto&& make) {
    ++tried;
    try {
      check_printed(make());
      ++made;
    } catch (const InputError&) {
      return;  // a block without that dart, or too narrow a shoulder
    }
  };
  for (const Session& session : each_person(people(40), 322)) {
    const Pattern block = checked_block(session).block.pattern;
    const auto finished = [](const Pattern& pattern, const std::vector<std::string>& edges) {
      const Pattern faced = with_facing(pattern, face(edges)).pattern;
      check_ends(faced);
      return with_allowances(faced, {}).pattern;
    };
    check_all([&] { return finished(square_neck(block), {"neckline"}); });
    check_all([&] {
      return finished(pivot(block, {"front.shoulder", "front.neck"}).pattern, {"neckline"});
    });
    check_all([&] {
      Pattern panels = pivot(block, {"front.shoulder", "front.armhole"}).pattern;
      panels = cut_into_panels(panels, {"front.armhole", "front.waist", "", ""}).pattern;
      return finished(panels, {"armhole", "neckline"});
    });
    check_all([&] {
      Pattern top = one_dart(block, {"front.waist"}).pattern;
      TopEdgeDesign design;
      design.shape = TopShape::Sweetheart;
      design.straps = StrapDesign{};
      top = draw_top_edge(top, design).pattern;
      return finished(top, {"top_edge"});
    });
  }
  CHECK(made > tried * 3 / 4);
}

TEST_CASE("Where a dart or a panel seam ends in the edge, the facing goes on over it closed") {
  const Pattern block = ordinary_block();
  const Pattern neck_dart = pivot(block, {"front.shoulder", "front.neck"}).pattern;
  const Pattern faced = with_facing(neck_dart, face({"neckline"})).pattern;
  const Piece& front = faced.piece("front");
  const double sewn = sewn_length(front, front.edge("neckline"));
  CHECK(length(faced.piece("front_neck_facing").edge("neck_edge").path) ==
        Approx(sewn).margin(5.0));
  CHECK(length(front.edge("neckline").path) > sewn + 10.0);
  CHECK(faced.piece("front_neck_facing").darts.empty());

  Pattern panels = pivot(block, {"front.shoulder", "front.armhole"}).pattern;
  panels = cut_into_panels(panels, {"front.armhole", "front.waist", "", ""}).pattern;
  const Pattern over_seam = with_facing(panels, face({"side_front.armhole"})).pattern;
  REQUIRE(over_seam.facings.size() == 1);
  const Facing& facing = over_seam.facings.front();
  CHECK(facing.faced ==
        std::vector<EdgeOf>{{"side_front", "armhole"}, {"centre_front", "armhole"}});
  const Seam& seam = seam_named(over_seam, "front_armhole_facing");
  CHECK(sewn_length(over_seam, seam.a) - sewn_length(over_seam, seam.b) ==
        Approx(seam.ease_in).margin(0.05));
  CHECK(std::abs(seam.ease_in) < 8.0);
}

TEST_CASE("The notches of a faced edge have mates on the facing, as far along") {
  const Pattern faced = with_facing(ordinary_block(), face({"neckline", "armhole"})).pattern;
  int mates = 0;
  for (const Facing& facing : faced.facings) {
    const Piece& piece = faced.piece(facing.piece);
    const double cut = length(piece.edge(facing.edge).path);
    REQUIRE(!piece.notches.empty());
    for (const Notch& notch : piece.notches) {
      const Piece& garment = faced.piece(notch.mate_piece);
      const Notch* mate = find_named(garment.notches, notch.name);
      REQUIRE(mate != nullptr);
      CHECK(mate->mate_piece == facing.piece);
      CHECK(mate->count == notch.count);
      CHECK(notch.count == (is_a(garment, kBodiceBack) ? 2 : 1));
      const double sewn = sewn_length(garment, garment.edge(notch.mate_edge));
      CHECK(notch.along / cut == Approx(mate->along / sewn).margin(1e-6));
      ++mates;
    }
  }
  CHECK(mates == 4);
}

TEST_CASE("What a facing is cut with follows the garment, whichever step comes first") {
  const Pattern block = ordinary_block();
  const Allowances asked{.shoulder = 12, .centre = 25, .hem = 30, .enclosed = 8};
  const OpeningPlan zip{
      .at = OpeningPlan::At::CentreBack, .with = Closure::OpenZip, .from_edge = {}};
  const auto faced = [](const Pattern& p) { return with_facing(p, face({"neckline"})).pattern; };
  const auto cut = [&](const Pattern& p) { return with_allowances(p, asked).pattern; };
  const auto opened = [&](const Pattern& p) { return with_opening(p, zip).pattern; };
  for (const Pattern& finished :
       each({cut(opened(faced(block))), opened(faced(cut(block))), faced(opened(cut(block)))})) {
    const Piece& back = finished.piece("back_neck_facing");
    CHECK(back.edge("shoulder").finish == EdgeFinish{Finish::Seam, 12});
    CHECK(back.edge("centre_back").finish == EdgeFinish{Finish::Seam, 25});
    CHECK(back.edge("centre_back").role == EdgeRole::Opening);
    CHECK(back.edge("neck_edge").finish == EdgeFinish{Finish::Enclosed, 8});
    CHECK(back.edge("outer_edge").finish == EdgeFinish{Finish::Turned, kFacingTurn});
    CHECK(finished.piece("front_neck_facing").edge("centre_front").finish.how == Finish::Fold);
  }
  Allowances neatened = asked;
  neatened.edges = {{"front_neck_facing.outer_edge", 0.0}};
  const Pattern raw = with_allowances(faced(block), neatened).pattern;
  CHECK(raw.piece("front_neck_facing").edge("outer_edge").finish == EdgeFinish{Finish::Raw, 0});
  CHECK(!is_finished(faced(block)));
}

TEST_CASE("Each side of a body whose sides differ has facings of its own") {
  Pattern unfolded = ordinary_block();
  Piece& left = *find_named(unfolded.pieces, "front");
  left.name = "front_left";
  left.cut_on = CutOn::One;
  Piece right = mirrored(left);
  right.name = "front_right";
  unfolded.pieces.push_back(right);
  unfolded.seams.clear();
  const Pattern faced = with_facing(unfolded, face({"armhole"})).pattern;
  const Piece& one = faced.piece("front_armhole_facing_left");
  const Piece& other = faced.piece("front_armhole_facing_right");
  CHECK(is_mirrored(other));
  CHECK(other.cut_on == CutOn::One);
  CHECK(signed_area(flat_outline(one)) == Approx(signed_area(flat_outline(other))));
  CHECK(errors_of(faced) == "");
}

TEST_CASE("A facing that cannot be sewn is refused, with what can",
          "[kLeastFacing][kMostFacing][kLeastRoll][kMostRoll]") {
  const auto width = [](double mm) {
    return facing_refusal({.edges = {"armhole"}, .width = mm}).message;
  };
  CHECK(width(kLeastFacing - 0.1) == "a facing of 39.9 mm rolls out or is no facing");
  CHECK(width(kLeastFacing) == "");
  CHECK(width(kMostFacing + 0.1) == "a facing of 70.1 mm rolls out or is no facing");
  CHECK(width(kMostFacing) == "");
  const auto roll = [](double mm) {
    return facing_refusal({.edges = {"armhole"}, .roll = mm}).code;
  };
  CHECK(roll(kLeastRoll - 0.1) == "garment.facing");
  CHECK(roll(kLeastRoll) == "");
  CHECK(roll(kMostRoll + 0.1) == "garment.facing");
  CHECK(roll(kMostRoll) == "");
  CHECK(facing_refusal(face({})).message == "it does not say which edges are faced");
}

TEST_CASE("What cannot be faced is refused as what it is") {
  CHECK(facing_refusal(face({"hem"})).message == "it is none of the edges that are faced");
  CHECK(facing_refusal(face({"sleeve.neckline"})).message == "there is no such edge");
  CHECK(facing_refusal(face({"neckline", "front.neckline"})).message == "it is faced already");
  CHECK(facing_refusal(face({"top_edge"})).hint == R"(write "neckline" and "armhole")");
  const Pattern bound = with_binding(ordinary_block(), {.runs = {{"armhole"}}}).pattern;
  CHECK(facing_refusal(bound, face({"armhole"})).message == "it is bound");
  const Pattern faced = with_facing(ordinary_block(), face({"armhole"})).pattern;
  CHECK(refused_with([&] { return with_binding(faced, {.runs = {{"armhole"}}}); }).message ==
        "it is faced");
  CHECK(facing_refusal(faced, face({"armhole"})).message == "it is faced already");
  const Pattern full =
      gather(pivot(ordinary_block(), {"front.shoulder", "front.neck"}).pattern, {"front.neck"})
          .pattern;
  CHECK(facing_refusal(full, face({"neckline"})).message ==
        "it is gathered or eased, and a facing is flat");
  Pattern top = one_dart(ordinary_block(), {"front.waist"}).pattern;
  top = draw_top_edge(top, {}).pattern;
  CHECK(facing_refusal(top, face({"neckline"})).hint == R"(write "top_edge")");
}

TEST_CASE("On a short shoulder a facing is narrower, and at last refused") {
  const auto wide_neck = [](double shoulder_left) {
    Pattern block = pivot(ordinary_block(), {"front.shoulder", "front.side"}).pattern;
    block = pivot(block, {"back.shoulder", "back.armhole"}).pattern;
    const Piece& front = block.piece("front");
    NecklineDesign design;
    design.from_neck = sewn_length(front, front.edge("shoulder")) - shoulder_left;
    return draw_neckline(block, design).pattern;
  };
  const MovedDarts narrower = with_facing(wide_neck(48.5), face({"neckline"}));
  CHECK(narrower.pattern.facings.front().width == 45.0);
  REQUIRE(narrower.remarks.size() == 1);
  CHECK(narrower.remarks.front().severity == Severity::Note);
  const RefusedStep wide = facing_refusal(wide_neck(48.5), {.edges = {"neckline"}, .width = 50.0});
  CHECK(wide.hint == "write at most 45 mm");
  const RefusedStep none = facing_refusal(wide_neck(40.0), face({"neckline"}));
  CHECK(none.message.starts_with("a facing has no room: "));
  // kFacingOffEdge off the armhole.
  CHECK(facing_refusal(wide_neck(kLeastFacing + kFacingOffEdge + 0.1), face({"neckline"})).code ==
        "");
}

TEST_CASE("What facings take is cut and sewn after the seams that they lie under") {
  const Pattern faced = with_facing(ordinary_block(), face({"neckline"})).pattern;
  const MakingOf making = making_of(with_allowances(faced, {}).pattern);
  REQUIRE(making.to_cut.size() == 2);
  CHECK(making.to_cut[0].plain() ==
        "cloth: front 1 on the fold, back 2 as a pair, front neck facing 1 on the fold and back "
        "neck facing 2 as a pair");
  CHECK(making.to_cut[1].plain() ==
        "interfacing: front neck facing 1 on the fold and back neck facing 2 as a pair, each cut "
        "on the stitch line, without allowance");
  std::vector<std::string> begins;
  for (const Wording& line : making.to_sew) begins.push_back(line.plain().substr(0, 12));
  const auto at = [&](const char* words) {
    return std::ranges::find(begins, words) - begins.begin();
  };
  CHECK(at("sew the shou") < at("fix the inte"));
  CHECK(at("fix the inte") < at("join the fac"));
  CHECK(at("join the fac") < at("sew the faci"));
  CHECK(at("sew the faci") < at("turn the wai"));
  CHECK(at("face or line") < std::ssize(begins));  // the armholes
}
