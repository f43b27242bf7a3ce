#include "band_ways.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

/// Places on an edge lie about this far apart, in mm.
constexpr double kBetweenPlaces = 8.0;
/// A shorter stretch, between two mouths that almost touch, has no band.
constexpr double kLeastStretch = 1.0;

// --- bodies that are off --------------------------------------------------------------------

/// The body gone that way, as far as the catalogue's limits allow.
Body moved(Body body, const BodyWay& way, double sign) {
  for (const MeasurementInfo& entry : kMeasurements) {
    auto& measurement = body.measurements[entry.name];
    const double by = sign * way[static_cast<std::size_t>(entry.name)];
    if (!measurement || by == 0.0) continue;
    measurement->value =
        std::clamp(measurement->value + measure_of(entry.name, by), entry.least, entry.most);
  }
  return body;
}

// --- the places that are looked at ------------------------------------------------------------

/// Which stretch of which edge a band is of.
struct StretchOf {
  std::size_t piece = 0, edge = 0, stretch = 0, stretches = 0;
};

struct Places {
  std::vector<EdgeBand> bands;
  std::vector<StretchOf> on;  ///< of each band
};

/// Evenly along a path, its ends included.
std::vector<Point> points_along(const Path& path, std::size_t count) {
  std::vector<Point> points;
  const double step = length(path) / static_cast<double>(count - 1);
  for (std::size_t i = 0; i < count; ++i) {
    points.push_back(point_at_length(path, step * static_cast<double>(i)));
  }
  return points;
}

EdgeBand band_along(const Path& stretch) {
  EdgeBand band;
  const double whole = length(stretch);
  const auto steps = static_cast<std::size_t>(std::ceil(whole / kBetweenPlaces)) + 1;
  for (const Point at : points_along(stretch, steps + 1)) {
    const double along =
        whole * static_cast<double>(band.places.size()) / static_cast<double>(steps);
    band.places.push_back({at, left_of(tangent_at_length(stretch, along)), {}});
  }
  return band;
}

/// `first` names the edge's first stretch.
void add_places(const Pattern& block, StretchOf first, Places& places) {
  const Piece& piece = block.pieces[first.piece];
  const Edge& edge = piece.edges[first.edge];
  const std::vector<Path> stretches = sewn_stretches(piece, edge);
  for (std::size_t s = 0; s < stretches.size(); ++s) {
    if (stretches[s].empty() || length(stretches[s]) < kLeastStretch) continue;
    EdgeBand& band = places.bands.emplace_back(band_along(stretches[s]));
    band.piece = piece.name;
    band.edge = edge.name;
    places.on.push_back({first.piece, first.edge, s, stretches.size()});
  }
}

Places places_on(const Pattern& block) {
  Places places;
  for (std::size_t p = 0; p < block.pieces.size(); ++p) {
    for (std::size_t e = 0; e < block.pieces[p].edges.size(); ++e)
      add_places(block, {p, e}, places);
  }
  return places;
}

/// All that is looked at on one draft.
struct Found {
  std::vector<Point> places, landmarks;
  std::vector<double> lengths;
};

Point nearest_on(const std::vector<Path>& stretches, Point to) {
  std::optional<NearestOnPath> best;
  for (const Path& stretch : stretches) {
    if (stretch.empty()) continue;
    const NearestOnPath found = nearest(stretch, to);
    if (!best || found.distance < best->distance) best = found;
  }
  return best->point;
}

/// Where a band's places lie on another draft of the block: the same shares of the same stretch. A
/// further dart makes other stretches: then the nearest places of the edge.
std::vector<Point> places_along(const EdgeBand& band, const StretchOf& on, const Pattern& block) {
  const Piece& piece = block.pieces[on.piece];
  const std::vector<Path> stretches = sewn_stretches(piece, piece.edges[on.edge]);
  if (stretches.size() == on.stretches && !stretches[on.stretch].empty()) {
    return points_along(stretches[on.stretch], band.places.size());
  }
  std::vector<Point> places;
  for (const BandPlace& place : band.places) places.push_back(nearest_on(stretches, place.at));
  return places;
}

Found found_on(const Pattern& block, const Places& places) {
  Found found;
  for (std::size_t i = 0; i < places.bands.size(); ++i) {
    const std::vector<Point> of_band = places_along(places.bands[i], places.on[i], block);
    found.places.insert(found.places.end(), of_band.begin(), of_band.end());
  }
  for (const Piece& piece : block.pieces) {
    for (const Landmark& landmark : piece.landmarks) found.landmarks.push_back(landmark.at);
    for (const Edge& edge : piece.edges) found.lengths.push_back(sewn_length(piece, edge));
  }
  return found;
}

// --- what each way makes of them --------------------------------------------------------------

/// How far all that is looked at moves.
struct Moves {
  std::vector<Vec> places, landmarks;
  std::vector<double> lengths;
};

template <class T>
auto differences(const std::vector<T>& there, const std::vector<T>& here) {
  std::vector<decltype(there[0] - here[0])> by;
  for (std::size_t i = 0; i < there.size(); ++i) by.push_back(there[i] - here[i]);
  return by;
}

/// From the first to the second.
Moves moves_between(const std::array<const Found*, 2>& both) {
  const auto& [from, to] = both;
  return {differences(to->places, from->places), differences(to->landmarks, from->landmarks),
          differences(to->lengths, from->lengths)};
}

/// What one way does for one SD less and for one more: the same but where a bound of the draft is
/// met between.
struct MovesBothWays {
  Moves less, more;
};

/// Root of the sum of squares of what each way does, of both its halves the mean.
template <class Part>
double together(const std::vector<MovesBothWays>& moves, Part part) {
  double sum = 0.0;
  for (const auto& [less, more] : moves) sum += part(less) * part(less) + part(more) * part(more);
  return std::sqrt(0.5 * sum);
}

/// The i-th place moves by these together; the band's edge is where the ellipse about it that holds
/// them ends to the line's left: so bands of a line that moves as a whole have its shape.
Vec edge_of_band(const std::vector<MovesBothWays>& moves, std::size_t i, Vec across) {
  Vec sum;
  const auto add = [&](Vec by) { sum = sum + dot(by, across) * by; };
  for (const auto& [less, more] : moves) {
    add(less.places[i]);
    add(more.places[i]);
  }
  const double aside = std::sqrt(0.5 * std::max(dot(sum, across), 0.0));
  return aside > 0.0 ? (0.5 * kBandSd / aside) * sum : Vec{};
}

std::vector<EdgeBand> edge_bands(Places places, const std::vector<MovesBothWays>& moves) {
  std::size_t i = 0;
  for (EdgeBand& band : places.bands) {
    for (BandPlace& place : band.places) place.off = edge_of_band(moves, i++, place.across);
  }
  return std::move(places.bands);
}

std::vector<PointBand> point_bands(const Pattern& block, const std::vector<MovesBothWays>& moves) {
  std::vector<PointBand> bands;
  for (const Piece& piece : block.pieces) {
    for (const Landmark& landmark : piece.landmarks) {
      const std::size_t i = bands.size();
      const double x = together(moves, [&](const Moves& one) { return one.landmarks[i].x; });
      const double y = together(moves, [&](const Moves& one) { return one.landmarks[i].y; });
      bands.push_back(
          {piece.name, landmark.name, Length::mm(kBandSd * x), Length::mm(kBandSd * y)});
    }
  }
  return bands;
}

/// Where the bands of an edge are widest.
Length widest(const std::vector<EdgeBand>& bands, const Piece& piece, const Edge& edge) {
  double most = 0.0;
  for (const EdgeBand& band : bands) {
    if (band.piece != piece.name || band.edge != edge.name) continue;
    for (const BandPlace& place : band.places) most = std::max(most, place.aside());
  }
  return Length::mm(most);
}

std::vector<LengthBand> length_bands(const Pattern& block, const std::vector<EdgeBand>& edges,
                                     const std::vector<MovesBothWays>& moves) {
  std::vector<LengthBand> bands;
  for (const Piece& piece : block.pieces) {
    for (const Edge& edge : piece.edges) {
      const std::size_t i = bands.size();
      const double off = together(moves, [&](const Moves& one) { return one.lengths[i]; });
      bands.push_back({piece.name, edge.name, Length::mm(sewn_length(piece, edge)),
                       Length::mm(kBandSd * off), widest(edges, piece, edge)});
    }
  }
  return bands;
}

/// How far each way moves the places square to their lines, in the mean of both its halves.
WayTable mean_moves(const std::vector<EdgeBand>& bands, const std::vector<MovesBothWays>& moves) {
  WayTable means;
  for (const auto& [less, more] : moves) {
    WayVector& mean = means.emplace_back();
    for (const EdgeBand& band : bands) {
      for (const BandPlace& place : band.places) {
        const std::size_t i = mean.size();
        mean.push_back(0.5 * dot(less.places[i] + more.places[i], place.across));
      }
    }
  }
  return means;
}

}  // namespace

Length toile_allowance(const BlockBands& bands, const Pattern& block) {
  Length most;
  for (const LengthBand& edge : bands.lengths) {
    const EdgeRole role = block.piece(edge.piece).edge(edge.edge).role;
    if (role == EdgeRole::Seam || role == EdgeRole::Opening) most = std::max(most, edge.aside);
  }
  return most + kToSew;
}

BlockBands block_bands(const Body& body, const BodySpread& spread, const Ease& ease,
                       const DraftedBlock& block) {
  const std::vector<BodyWay> ways = ways_of(spread);
  Places places = places_on(block.pattern);
  const Found here = found_on(block.pattern, places);
  const auto found = [&](const BodyWay& way, double sign) {
    return found_on(draft_block(moved(body, way, sign), ease).pattern, places);
  };
  std::vector<MovesBothWays> moves;
  for (const BodyWay& way : ways) {
    const Found less = found(way, -1.0), more = found(way, 1.0);
    moves.push_back({moves_between({&less, &here}), moves_between({&here, &more})});
  }
  BlockBands bands;
  bands.edges = edge_bands(std::move(places), moves);
  bands.points = point_bands(block.pattern, moves);
  bands.lengths = length_bands(block.pattern, bands.edges, moves);
  bands.take_first = to_take_first(body, ways, mean_moves(bands.edges, moves));
  return bands;
}

}  // namespace blockwright
