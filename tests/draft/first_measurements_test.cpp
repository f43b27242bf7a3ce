// How far a first block lies from that of a full session, by what was taken.
#include "blockwright/measure/tape_session.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

using namespace blockwright;
using enum MeasurementName;

namespace {

using Names = std::set<MeasurementName>;

Session part_of(const Session& person, const Names& names) {
  Session session = person;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (!names.contains(entry.name)) session.tape[entry.name].reset();
  }
  return session;
}

std::vector<Point> named_points(const Session& session) {
  std::vector<Point> points;
  const Pattern block = draft_block(fill_in(session), Ease::of_toile()).pattern;
  for (const Piece& piece : block.pieces) {
    for (const Landmark& landmark : piece.landmarks) points.push_back(landmark.at);
  }
  return points;
}

// Root mean square distance of the named points from those of the full session, in mm.
double off(const Session& person, const Names& names) {
  const std::vector<Point> full = named_points(person), part = named_points(part_of(person, names));
  double sum = 0.0;
  for (std::size_t i = 0; i < full.size(); ++i) {
    sum += std::pow(distance(full[i], part[i]), 2.0);
  }
  return std::sqrt(sum / static_cast<double>(full.size()));
}

double median_off(const Names& names) {
  std::vector<double> all;
  for (const Session& person : each_person(100, 41)) all.push_back(off(person, names));
  return median_of(all);
}

Names first(std::size_t count) {
  return {tape_order().begin(), tape_order().begin() + static_cast<std::ptrdiff_t>(count)};
}

}  // namespace

TEST_CASE(
    "The first eight measurements bring a block within 7 mm; the bust girth alone, within 20") {
  const double alone = median_off(first(1)), eight = median_off(first(kFirstMeasurements));
  CHECK(eight < 7.0);
  CHECK(alone > 14.0);
  CHECK(alone < 20.0);
}

TEST_CASE("None of the first eight could be left out without making the block worse") {
  const double eight = median_off(first(kFirstMeasurements));
  for (const MeasurementName name : first(kFirstMeasurements)) {
    // Without the bust girth there is no draft. The waist girth makes the darts, which are no named
    // points.
    if (name == BustGirth || name == WaistGirth) continue;
    INFO(info(name).key);
    Names others = first(kFirstMeasurements);
    others.erase(name);
    CHECK(median_off(others) > 1.05 * eight);
  }
}
