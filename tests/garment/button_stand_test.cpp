// Buttons at the centre front, on many people's blocks.
#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

constexpr OpeningPlan kButtoned = {OpeningPlan::At::CentreFront, Closure::Buttons};

Pattern with_v(const Pattern& block, double depth_share = 0.5) {
  NecklineDesign v;
  v.shape = NeckShape::V;
  v.depth_share = depth_share;
  return draw_neckline(block, v).pattern;
}

RefusedStep stand_refusal(const Pattern& pattern, const OpeningPlan& plan) {
  return refused_with([&] { return with_opening(pattern, plan); });
}

// How near to each other buttons sit, from the highest on.
std::vector<double> spaces_of(const ButtonStand& stand) {
  std::vector<double> spaces;
  for (std::size_t i = 1; i < stand.buttons.size(); ++i) {
    spaces.push_back(distance(stand.buttons[i - 1], stand.buttons[i]));
  }
  return spaces;
}

void check_buttons(const Piece& front, const Opening& opening, bool at_bust) {
  const ButtonStand& stand = *front.stand;
  REQUIRE(stand.buttons.size() == static_cast<std::size_t>(opening.buttons));
  REQUIRE(stand.buttons.size() > 1);
  for (const double space : spaces_of(stand)) {
    CHECK(space == Approx(opening.spacing).margin(1e-9));
    CHECK(space > kCloseButtons - 1e-6);
    CHECK(space < kWideButtons + 1e-6);
  }
  const double bust = front.landmark("bust_point").y;
  double off = 1e9;
  for (const Point button : stand.buttons) off = std::fmin(off, std::abs(button.y - bust));
  if (at_bust) CHECK(off < 0.5);
  // The rims keep off neckline, hem and edge.
  for (const Point button : stand.buttons) {
    CHECK(button.x == Approx(0.0).margin(1e-9));
    const double rim = nearest(flat_outline(front), button).distance - 0.5 * opening.button;
    CHECK(rim > kLeastButtonFromEdge - 1e-6);
  }
}

void check_holes(const Piece& front, const Opening& opening) {
  const ButtonStand& stand = *front.stand;
  REQUIRE(stand.buttonholes.size() == stand.buttons.size());
  for (std::size_t i = 0; i < stand.buttons.size(); ++i) {
    const Segment& hole = stand.buttonholes[i];
    CHECK(hole.a.y == Approx(stand.buttons[i].y));
    CHECK(hole.a.x == Approx(-kHoleBeyondCentre));
    CHECK(distance(hole.a, hole.b) == Approx(opening.button + kButtonThickness));
    CHECK(contains(flat_outline(front), hole.a, 0.01));
  }
}

// Of the front, cut as a garment.
Path front_cut(const Pattern& finished) {
  const Pattern pattern = true_darts(finished).pattern;
  PrintOptions options;
  options.cut = CutStyle::Garment;
  for (const LaidPiece& laid : lay_out(pattern, options, {}).pieces) {
    if (laid.piece.name != "front") continue;
    return first_where(laid.lines.strokes,
                       [](const Stroke& stroke) { return stroke.role == LineRole::CutLine; })
        ->path;
  }
  return {};
}

void check_cut_line(const Path& cut) {
  CHECK(distance(cut.start(), cut.end()) < 1e-9);
  CHECK(!find_crossing(cut, 0.01));
}

Piece drafted_on_right(Piece front) {
  front = mirrored(front);
  front.name = "front_right";
  front.cut_on = CutOn::One;
  return front;
}

}  // namespace

TEST_CASE("On everybody buttons sit at equal distances, one at the bust level") {
  int at_bust = 0, all = 0;
  for (const Session& session : each_person(300, 331)) {
    const Pattern block = checked_block(session).block.pattern;
    const MovedDarts buttoned = with_opening(block, kButtoned);
    const bool bust = buttoned.remarks.empty();
    const Piece& front = buttoned.pattern.piece("front");
    check_buttons(front, buttoned.pattern.openings.at(0), bust);
    check_holes(front, buttoned.pattern.openings.at(0));
    CHECK(!find_problem(front));
    CHECK(check_pattern(buttoned.pattern).empty());
    CHECK(getting_in(buttoned.pattern, {920.0}).empty());
    at_bust += bust ? 1 : 0;
    ++all;
  }
  CHECK(at_bust == all);
}

TEST_CASE("Beside a V neck and a raised hem fronts lap evenly and are cut round simply") {
  int made = 0, at_bust = 0;
  for (const Session& session : each_person(100, 332)) {
    Pattern drawn;
    try {
      drawn = draw_hem(with_v(checked_block(session).block.pattern),
                       {.above_waist = 5.0, .below_bust_point = {}})
                  .pattern;
    } catch (const InputError&) {
      continue;  // a dart in the way of neckline or hem
    }
    const MovedDarts buttoned = with_opening(drawn, kButtoned);
    check_buttons(buttoned.pattern.piece("front"), buttoned.pattern.openings.at(0),
                  buttoned.remarks.empty());
    check_cut_line(front_cut(with_allowances(buttoned.pattern, {}).pattern));
    at_bust += buttoned.remarks.empty() ? 1 : 0;
    ++made;
  }
  CHECK(made > 8);
  CHECK(at_bust > made / 2);
}

TEST_CASE("A front on the fold becomes a pair that ends at the fold of its facing") {
  const Pattern block = ordinary_block();
  const Pattern buttoned = with_opening(block, kButtoned).pattern;
  const Piece &was = block.piece("front"), &front = buttoned.piece("front");
  CHECK(front.cut_on == CutOn::Pair);
  const Edge& edge = front.edge("front_edge");
  CHECK(edge.part == "centre_front");
  CHECK(edge.role == EdgeRole::Opening);
  CHECK(edge.finish == EdgeFinish{Finish::FoldedBack, 2.0 * kUsualButton + kFacingMore});
  CHECK(edge.path.start().x == Approx(-kUsualButton));
  CHECK(edge.path.end().x == Approx(-kUsualButton));
  CHECK(length(front.edge("neckline").path) ==
        Approx(length(was.edge("neckline").path) + kUsualButton).margin(1e-6));
  CHECK(length(front.edge("waist").path) ==
        Approx(length(was.edge("waist").path) + kUsualButton).margin(1e-6));
  CHECK(buttoned.piece("back").edge("centre_back").role == EdgeRole::Seam);
  // Notches that were on the waist are where they were.
  for (const Notch& notch : was.notches) {
    const Notch& now = *find_named(front.notches, notch.name);
    CHECK(distance(point_at_length(front.edge(now.edge).path, now.along),
                   point_at_length(was.edge(notch.edge).path, notch.along)) < 1e-6);
  }
  for (const char* edge_name : {"neckline", "waist"}) {
    const Notch& notch = *find_named(front.notches, std::string(edge_name) + ".centre_front");
    CHECK(point_at_length(front.edge(edge_name).path, notch.along).x == Approx(0.0).margin(1e-6));
  }
}

TEST_CASE("A V neck runs on downwards over the stand, a small button has its least stand") {
  const Pattern v = with_v(ordinary_block());
  OpeningPlan small = kButtoned;
  small.button = 10.0;
  const Piece front = with_opening(v, small).pattern.piece("front");
  CHECK(front.stand->width == Approx(5.0 + kBeyondButton));
  const Path& edge = front.edge("front_edge").path;
  const Path& before = v.piece("front").edge("neckline").path;
  const Vec along = end_tangent(before);
  CHECK(edge.start().y < before.end().y);
  CHECK(std::abs(cross(unit(edge.start() - before.end()), along)) < 1e-9);
}

TEST_CASE("Of two fronts the right one has buttonholes, the left one buttons, at one height") {
  Pattern two = ordinary_block();
  Piece& front = *find_named(two.pieces, "front");
  front.edges.back().role = EdgeRole::Seam;
  const Piece right = drafted_on_right(front);
  front.name = "front_left";
  front.cut_on = CutOn::One;
  two.pieces.push_back(right);
  two.seams.clear();
  const Pattern buttoned = with_opening(two, kButtoned).pattern;
  const Piece &l = buttoned.piece("front_left"), &r = buttoned.piece("front_right");
  CHECK(l.stand->buttonholes.empty());
  CHECK(r.stand->buttons.empty());
  REQUIRE(l.stand->buttons.size() == r.stand->buttonholes.size());
  for (std::size_t i = 0; i < l.stand->buttons.size(); ++i) {
    CHECK(l.stand->buttons[i].y == Approx(r.stand->buttonholes[i].a.y));
  }
  CHECK(l.stand->width == r.stand->width);
  CHECK(l.edge("front_edge").path.start().x == Approx(-r.edge("front_edge").path.end().x));
  CHECK(!find_problem(l));
  CHECK(!find_problem(r));
  // Its mirror image has its marks mirrored.
  const ButtonStand image = *mirrored(r).stand;
  CHECK(image.buttonholes[0].a.x == Approx(-r.stand->buttonholes[0].a.x));
  CHECK(image.centre.a.y == r.stand->centre.a.y);
}

TEST_CASE("A binding runs on over the stand, and its ends turn in") {
  const Pattern buttoned = with_opening(ordinary_block(), kButtoned).pattern;
  const auto bound = [](const Pattern& pattern) {
    return with_binding(pattern, {.runs = {{"neckline"}}}).pattern.bindings.at(0);
  };
  const Binding over = bound(buttoned), closed = bound(ordinary_block());
  CHECK(over.joined.empty());
  CHECK(over.edge_length == Approx(closed.edge_length + 2.0 * kUsualButton).margin(1e-6));
}

TEST_CASE("What a buttoned garment takes is listed") {
  const MakingOf making =
      making_of(with_allowances(with_opening(ordinary_block(), kButtoned).pattern, {}).pattern);
  REQUIRE(making.to_buy.size() == 1);
  CHECK(making.to_buy[0].plain().find("buttons, 15 mm across") != std::string::npos);
  CHECK(making.to_sew.back().plain().find("18 mm long") != std::string::npos);
  CHECK(std::ranges::any_of(making.edges, [](const EdgeWords& edge) {
    return edge.edge == EdgeOf{"front", "front_edge"};
  }));
}

TEST_CASE("Buttons that cannot be are refused, with what can",
          "[kLeastButton][kMostButton][kLeastSpacing][kMostSpacing]") {
  const Pattern block = ordinary_block();
  OpeningPlan plan = kButtoned;
  plan.at = OpeningPlan::At::CentreBack;
  CHECK(stand_refusal(block, plan).message == "buttons close the centre front alone");
  plan = {.at = OpeningPlan::At::CentreBack, .button = 12.0};
  CHECK(stand_refusal(block, plan).message == "a zip has no buttons");
  const auto with_button = [&](double button) {
    OpeningPlan asked = kButtoned;
    asked.button = button;
    return stand_refusal(block, asked);
  };
  CHECK(with_button(kLeastButton).code == "");
  CHECK(with_button(kLeastButton - 0.1).hint == "write 8 mm to 30 mm");
  CHECK(with_button(kMostButton).code == "");
  CHECK(with_button(kMostButton + 0.1).hint == "write 8 mm to 30 mm");
  const auto with_spacing = [&](double spacing) {
    OpeningPlan asked = kButtoned;
    asked.spacing = spacing;
    return stand_refusal(block, asked);
  };
  CHECK(with_spacing(kLeastSpacing).code == "");
  CHECK(with_spacing(kLeastSpacing - 0.1).hint == "write 30 mm to 120 mm");
  CHECK(with_spacing(kMostSpacing).code == "");
  CHECK(with_spacing(kMostSpacing + 0.1).hint == "write 30 mm to 120 mm");
  const Pattern at_centre = pivot(block, {"front.shoulder", "front.centre_front"}).pattern;
  CHECK(stand_refusal(at_centre, kButtoned).hint == "move them to another edge first");
  CHECK(stand_refusal(with_opening(block, kButtoned).pattern, kButtoned).message ==
        "there is an opening already");
}

TEST_CASE("The first button keeps off the upper edge", "[kLeastButtonFromEdge]") {
  const Pattern block = ordinary_block();
  OpeningPlan plan = kButtoned;
  plan.from_edge = 0.5 * kUsualButton + kLeastButtonFromEdge + 1e-9;
  CHECK(stand_refusal(block, plan).code == "");
  plan.from_edge = 0.5 * kUsualButton + kLeastButtonFromEdge - 0.1;
  CHECK(stand_refusal(block, plan).code == "garment.opening");
}

TEST_CASE("A front too short for two buttons is refused with how long it must be") {
  const Pattern low = with_v(ordinary_block());
  const Pattern cropped = draw_hem(low, {.above_waist = 60.0, .below_bust_point = {}}).pattern;
  OpeningPlan plan = kButtoned;
  CHECK(stand_refusal(cropped, plan).code == "");
  plan.spacing = kMostSpacing;
  const RefusedStep refused = stand_refusal(cropped, plan);
  CHECK(refused.code == "garment.opening");
  CHECK(refused.message.ends_with("takes no two buttons"));
  CHECK(refused.hint.find("it takes at least") != std::string::npos);
}

TEST_CASE("Beside a steep V the facing reaches up along the whole of its width") {
  int steep = 0;
  for (const Session& session : each_person(60, 333)) {
    const Pattern block = checked_block(session).block.pattern;
    Pattern buttoned;
    try {
      buttoned = with_opening(with_v(block, 0.7), kButtoned).pattern;
    } catch (const InputError&) {
      continue;  // a V so long that it leaves no room for two buttons
    }
    const Piece& front = buttoned.piece("front");
    const Edge& edge = front.edge("front_edge");
    const Vec along = end_tangent(front.edge("neckline").path);
    // Half its width out from the fold, the facing is as high as the front is there.
    const double out = 0.5 * edge.finish.allowance;
    const Point top = edge.path.start() + Vec{-out, out * std::abs(along.y / along.x) - 1.0};
    const Path cut = front_cut(with_allowances(buttoned, {}).pattern);
    CHECK(contains(cut, top, 0.05));
    check_cut_line(cut);
    ++steep;
  }
  CHECK(steep > 5);
}

TEST_CASE("A neckline that runs along the centre is not led on", "[kLeastOutward]") {
  constexpr double least = 0.17;
  const auto met_at = [](double outward) {
    Pattern pattern = ordinary_block();
    Edge& neckline = *find_named(find_named(pattern.pieces, "front")->edges, "neckline");
    const Point centre = neckline.path.end();
    const Vec up{outward, std::sqrt(1.0 - outward * outward)};
    neckline.path = Path::through({centre + 100.0 * up, centre});
    return stand_refusal(pattern, kButtoned);
  };
  CHECK(met_at(least + 1e-6).code == "");
  CHECK(met_at(least - 1e-6).hint == "draw that edge flatter at the centre");
}
