#include "blockwright/pattern/pattern.hpp"

#include "pattern/sample_piece.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

using namespace blockwright;

namespace {

const double kNan = std::numeric_limits<double>::quiet_NaN();

// The piece is refused, at this place, for a reason that says so.
void check_broken(const Piece& piece, const std::string& where, const std::string& words) {
  const auto problem = find_problem(piece);
  REQUIRE(problem);
  CHECK(problem->severity == Severity::Error);
  CHECK(problem->code == "pattern.broken");
  CHECK(problem->where == where);
  CHECK_THAT(problem->message.plain(), Catch::Contains(words));
  CHECK_FALSE(problem->hint.empty());
}

Edge& edge_of(Piece& piece, const std::string& name) {
  return *std::find_if(piece.edges.begin(), piece.edges.end(),
                       [&](const Edge& edge) { return edge.name == name; });
}

Path without_the_last_stroke(const Path& path) {
  std::vector<Curve> curves = path.curves();
  curves.pop_back();
  return Path(curves);
}

}  // namespace

TEST_CASE("a sound piece has no problem") {
  CHECK_FALSE(find_problem(sample_piece()));
  Piece bare = sample_piece();
  bare.darts.clear();
  bare.notches.clear();
  bare.balance_lines.clear();
  bare.landmarks.clear();
  CHECK_FALSE(find_problem(bare));
}

TEST_CASE("rounding in legs, mouths and notches is no problem") {
  Piece piece = sample_piece();
  piece.darts[0].apex.x += 1e-9;
  piece.darts[0].peak.y -= 5e-7;
  piece.notches[0].along = length(piece.edge("side").path) + 5e-7;
  CHECK_FALSE(find_problem(piece));
}

TEST_CASE("a piece needs edges, and edges need strokes") {
  Piece piece;
  piece.name = "back";
  check_broken(piece, "back", "no edges");
  piece = sample_piece();
  edge_of(piece, "side").path = Path{};
  check_broken(piece, "back.side", "empty");
}

TEST_CASE("an open outline is named by the edge that it is open after") {
  Piece piece = sample_piece();
  edge_of(piece, "centre_back").path = Path::through({{0.0, 425.0}, {0.0, 0.5}});
  check_broken(piece, "back.centre_back", "open by 0.5 mm");
  piece = sample_piece();
  edge_of(piece, "waist").path = without_the_last_stroke(piece.edge("waist").path);
  check_broken(piece, "back.waist", "open by 64 mm");
  piece = sample_piece();
  std::swap(piece.edges[1], piece.edges[2]);
  check_broken(piece, "back.waist", "open by");
}

TEST_CASE("a gap of rounding is closed, a wider one open") {
  Piece piece = sample_piece();
  edge_of(piece, "centre_back").path = Path::through({{0.0, 425.0}, {0.0, 5e-10}});
  CHECK_FALSE(find_problem(piece));
  edge_of(piece, "centre_back").path = Path::through({{0.0, 425.0}, {0.0, 2e-9}});
  check_broken(piece, "back.centre_back", "open by 0.000000002 mm");
}

TEST_CASE("an outline must run anticlockwise") {
  Piece piece = sample_piece();
  std::reverse(piece.edges.begin(), piece.edges.end());
  for (Edge& edge : piece.edges) edge.path = reversed(edge.path);
  check_broken(piece, "back", "clockwise");
}

TEST_CASE("an outline that crosses itself is refused, with the place") {
  Piece piece = sample_piece();
  edge_of(piece, "centre_back").path =
      Path::through({{0.0, 425.0}, {250.0, 150.0}, {250.0, 100.0}, {0.0, 50.0}, {0.0, 0.0}});
  check_broken(piece, "back", "crosses itself at x ");
  // A figure of eight has no sense of direction: it is the crossing that counts.
  Piece eight;
  eight.name = "eight";
  eight.edges = {
      {"rim", EdgeRole::Seam, Path::through({{0, 0}, {10, 10}, {10, 0}, {0, 10}, {0, 0}})}};
  check_broken(eight, "eight", "crosses itself at x 5 mm, y 5 mm");
}

TEST_CASE("curves that cross by a third of a millimetre are refused") {
  const auto dipping_to = [](double lowest) {
    const double handle = (8.0 * lowest - 20.0) / 6.0;  // the middle of a cubic is 1 3 3 1 / 8
    Piece strip;
    strip.name = "strip";
    strip.edges = {{"hem", EdgeRole::Hem, Path::through({{0, 10}, {0, 0}, {100, 0}, {100, 10}})},
                   {"top", EdgeRole::Seam,
                    Path({CubicCurve{{100, 10}, {70, handle}, {30, handle}, {0, 10}}})}};
    return strip;
  };
  CHECK_FALSE(find_problem(dipping_to(0.3)));
  check_broken(dipping_to(-0.3), "strip", "crosses itself");
}

TEST_CASE("the legs of a dart must be equally long") {
  Piece piece = sample_piece();
  piece.darts[0].apex.x += 1e-6;
  check_broken(piece, "back.waist", "the legs differ by 0.000000");
  piece.darts[0].apex.x += 5.0;
  check_broken(piece, "back.waist", "the legs differ by 0.6");
}

TEST_CASE("leg ends and peak must lie on the dart's edge") {
  Piece piece = sample_piece();
  for (Point& leg : piece.darts[1].legs) leg.y += 0.25;
  check_broken(piece, "back.waist_outer", "mm off its edge");
  piece = sample_piece();
  piece.darts[2].peak = piece.darts[2].apex;
  check_broken(piece, "back.shoulder", "mm off its edge");
  piece = sample_piece();
  piece.darts[2].edge = "waist";
  check_broken(piece, "back.shoulder", "mm off its edge");
}

TEST_CASE("leg, peak and leg must follow each other along the edge") {
  Piece piece = sample_piece();
  std::swap(piece.darts[0].legs[0], piece.darts[0].legs[1]);
  check_broken(piece, "back.waist", "do not follow each other");
  piece = sample_piece();
  piece.darts[0].peak = {20.0, 0.0};
  check_broken(piece, "back.waist", "do not follow each other");
}

TEST_CASE("mouths on one edge must not overlap") {
  Piece piece = sample_piece();
  Dart twin = piece.darts[0];
  twin.name = "twin";
  piece.darts.push_back(twin);
  check_broken(piece, "back.twin", "overlaps that of dart 'waist'");
}

TEST_CASE("darts and notches must name an edge of the piece") {
  Piece piece = sample_piece();
  piece.darts[0].edge = "hem";
  check_broken(piece, "back.waist", "no edge 'hem'");
  piece = sample_piece();
  piece.notches[1].edge = "sleeve";
  check_broken(piece, "back.armhole", "no edge 'sleeve'");
}

TEST_CASE("a notch must stand on its edge") {
  for (const double along : {-0.1, 1000.0}) {
    Piece piece = sample_piece();
    piece.notches[0].along = along;
    check_broken(piece, "back.side", "along an edge of 200.56");
  }
}

TEST_CASE("gathers lie on their edge and draw it up to some length, never longer") {
  const auto with = [](const std::string& edge, double from, double to, double sewn) {
    Piece piece = sample_piece();
    piece.fullness = {{"gathers", edge, Fullness::Kind::Gathers, from, to, sewn}};
    return piece;
  };
  const double whole = length(sample_piece().edge("side").path);
  CHECK_FALSE(find_problem(with("side", 0.0, whole, 0.5)));
  CHECK_FALSE(find_problem(with("side", 20.0, 60.0, 40.0)));
  check_broken(with("side", 20.0, 60.0, 0.0), "back.gathers", "it takes 40 mm up to 0 mm");
  check_broken(with("side", 20.0, 60.0, 41.0), "back.gathers", "it takes 40 mm up to 41 mm");
  check_broken(with("side", -1.0, 60.0, 30.0), "back.gathers", "it takes 61 mm up to 30 mm");
  check_broken(with("side", 20.0, whole + 1.0, 30.0), "back.gathers", "up to 30 mm");
  check_broken(with("hem", 20.0, 60.0, 30.0), "back.gathers", "no edge 'hem'");
}

TEST_CASE("two of a kind must not share a name") {
  const auto check_twice = [](auto list, const std::string& words) {
    Piece piece = sample_piece();
    auto& items = piece.*list;
    items.push_back(items.front());
    check_broken(piece, "back." + items.front().name, words);
  };
  check_twice(&Piece::edges, "two edges share a name");
  check_twice(&Piece::darts, "two darts share a name");
  check_twice(&Piece::notches, "two notches share a name");
  check_twice(&Piece::balance_lines, "two balance lines share a name");
  check_twice(&Piece::landmarks, "two landmarks share a name");
}

TEST_CASE("a coordinate that is not a number is refused, not passed over") {
  Piece piece = sample_piece();
  edge_of(piece, "neckline").path =
      Path({CubicCurve{{70.0, 445.0}, {kNan, 0.0}, {}, {0.0, 425.0}}});
  check_broken(piece, "back.neckline", "not a number");
  piece = sample_piece();
  piece.darts[0].apex.y = kNan;
  check_broken(piece, "back.waist", "not a number");
  piece = sample_piece();
  piece.notches[0].along = kNan;
  check_broken(piece, "back.side", "not a number");
}

TEST_CASE(
    "an edge that turns back across its own dart cuts it, one that runs straight on does not") {
  const auto with_top = [](const std::vector<Point>& behind_the_mouth) {
    Piece piece;
    piece.name = "square";
    const Dart dart{"notch",  "top", {50, 20}, {50, 20}, {Point{60, 100}, Point{40, 100}},
                    {50, 101}};
    std::vector<Point> top = {{100, 100}, dart.legs[0], dart.peak, dart.legs[1]};
    top.insert(top.end(), behind_the_mouth.begin(), behind_the_mouth.end());
    piece.edges = {{"rim", EdgeRole::Hem, Path::through({{0, 100}, {0, 0}, {100, 0}, {100, 100}})},
                   {"top", EdgeRole::Seam, Path::through(top)}};
    piece.darts = {dart};
    return piece;
  };
  const Piece slit =
      with_top({{30, 100}, {30, 60}, {55, 60}, {55, 55}, {25, 55}, {25, 100}, {0, 100}});
  REQUIRE_FALSE(find_problem(slit));
  REQUIRE(find_cut_dart(slit));
  CHECK(find_cut_dart(slit)->edge == "top");
  CHECK(find_cut_dart(slit)->dart == "notch");
  CHECK_FALSE(find_cut_dart(with_top({{0, 100}})));
}

TEST_CASE("a pattern finds its pieces by name; asking for others is a bug") {
  Pattern pattern;
  pattern.pieces = {sample_piece()};
  CHECK(pattern.piece("back").edges.size() == 6);
  CHECK_THROWS_AS(pattern.piece("front"), std::logic_error);
}
