#include "blockwright/draft/bands.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

/// Places on an edge lie about this far apart, in mm.
constexpr double kBetweenPlaces = 8.0;
/// A shorter stretch, between two mouths that almost touch, has no band.
constexpr double kLeastStretch = 1.0;

// --- the ways in which a body's numbers could be off ------------------------------------------

/// By how much each number is moved, by one SD in all.
using BodyWay = std::array<double, kMeasurementCount>;

/// Ways that do not depend on one another and together make the spread: the columns of its Cholesky
/// factor. What has no spread of its own has no way.
std::vector<BodyWay> ways_of(const BodySpread& spread) {
  std::vector<BodyWay> ways;
  for (const MeasurementInfo& column : kMeasurements) {
    const auto j = static_cast<std::size_t>(column.name);
    const auto left = [&](const MeasurementInfo& row) {
      double value = spread.covariance(row.name, column.name);
      for (const BodyWay& way : ways) value -= way[static_cast<std::size_t>(row.name)] * way[j];
      return value;
    };
    const double own = left(column);
    if (own <= 1e-9 * spread.covariance(column.name, column.name)) continue;
    BodyWay way{};
    for (const MeasurementInfo& row : kMeasurements) {
      if (row.name >= column.name) {
        way[static_cast<std::size_t>(row.name)] = left(row) / std::sqrt(own);
      }
    }
    ways.push_back(way);
  }
  return ways;
}

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

void add_places(const Pattern& block, std::size_t p, std::size_t e, Places& places) {
  const Piece& piece = block.pieces[p];
  const Edge& edge = piece.edges[e];
  const std::vector<Path> stretches = sewn_stretches(piece, edge);
  for (std::size_t s = 0; s < stretches.size(); ++s) {
    if (stretches[s].empty() || length(stretches[s]) < kLeastStretch) continue;
    EdgeBand& band = places.bands.emplace_back(band_along(stretches[s]));
    band.piece = piece.name;
    band.edge = edge.name;
    places.on.push_back({p, e, s, stretches.size()});
  }
}

Places places_on(const Pattern& block) {
  Places places;
  for (std::size_t p = 0; p < block.pieces.size(); ++p) {
    for (std::size_t e = 0; e < block.pieces[p].edges.size(); ++e) add_places(block, p, e, places);
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
std::vector<Point> places_of(const EdgeBand& band, const StretchOf& on, const Pattern& block) {
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
    const std::vector<Point> of_band = places_of(places.bands[i], places.on[i], block);
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

Moves moves_between(const Found& less, const Found& more) {
  return {differences(more.places, less.places), differences(more.landmarks, less.landmarks),
          differences(more.lengths, less.lengths)};
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

// --- what to take again -----------------------------------------------------------------------

/// A square table over the ways.
using WayTable = std::vector<std::vector<double>>;
using WayVector = std::vector<double>;

double dot_of(const WayVector& a, const WayVector& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

WayVector times(const WayTable& table, const WayVector& v) {
  WayVector product;
  for (const WayVector& row : table) product.push_back(dot_of(row, v));
  return product;
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

/// How two ways move the places together.
WayTable moved_together(const WayTable& moves) {
  WayTable table;
  for (const WayVector& a : moves) {
    WayVector& row = table.emplace_back();
    for (const WayVector& b : moves) row.push_back(dot_of(a, b));
  }
  return table;
}

/// The covariance of the ways, which each reading narrows.
class WaysLeft {
 public:
  explicit WaysLeft(std::size_t count) : covariance_(count, WayVector(count, 0.0)) {
    for (std::size_t i = 0; i < count; ++i) covariance_[i][i] = 1.0;
  }

  /// The sum of the squares of what the places are off.
  [[nodiscard]] double squares(const WayTable& together) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < together.size(); ++i) sum += dot_of(covariance_[i], together[i]);
    return sum;
  }
  /// After a reading of what the ways move by `by`, which errs by `sd`. That of a Kalman filter
  /// (R. E. Kalman, "A New Approach to Linear Filtering and Prediction Problems", Journal of Basic
  /// Engineering 82 (1960), 35-45; from memory).
  [[nodiscard]] WaysLeft read(const WayVector& by, double sd) const {
    WaysLeft left = *this;
    const WayVector gain = times(covariance_, by);
    const double whole = dot_of(gain, by) + sd * sd;
    for (std::size_t i = 0; i < gain.size(); ++i) {
      for (std::size_t j = 0; j < gain.size(); ++j) {
        left.covariance_[i][j] -= gain[i] * gain[j] / whole;
      }
    }
    return left;
  }

 private:
  WayTable covariance_;
};

WayVector moved_by(const std::vector<BodyWay>& ways, MeasurementName name) {
  WayVector by;
  for (const BodyWay& way : ways) by.push_back(way[static_cast<std::size_t>(name)]);
  return by;
}

/// The reading that leaves least; nothing where none narrows anything.
std::optional<Retake> best_reading(const Body& body, const std::vector<BodyWay>& ways,
                                   const WayTable& together, const std::vector<Retake>& chosen,
                                   WaysLeft& left) {
  const double before = left.squares(together);
  std::optional<Retake> best;
  WaysLeft after = left;
  for (const MeasurementInfo& entry : kMeasurements) {
    const WayVector by = moved_by(ways, entry.name);
    if (dot_of(by, by) == 0.0) continue;
    if (std::ranges::find(chosen, entry.name, &Retake::name) != chosen.end()) continue;
    const WaysLeft then = left.read(by, tape_sd(entry.name).number());
    const double narrows = 1.0 - std::sqrt(then.squares(together) / before);
    if (best && narrows <= best->narrows) continue;
    best = {entry.name, body.taped(entry.name), narrows};
    after = then;
  }
  left = after;
  return best;
}

std::vector<Retake> to_take_first(const Body& body, const std::vector<BodyWay>& ways,
                                  const WayTable& moves) {
  constexpr std::size_t count = 2;
  const WayTable together = moved_together(moves);
  WaysLeft left(ways.size());
  std::vector<Retake> first;
  while (first.size() < count) {
    const auto best = best_reading(body, ways, together, first, left);
    if (!best) break;
    first.push_back(*best);
  }
  return first;
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
    moves.push_back({moves_between(found(way, -1.0), here), moves_between(here, found(way, 1.0))});
  }
  BlockBands bands;
  bands.edges = edge_bands(std::move(places), moves);
  bands.points = point_bands(block.pattern, moves);
  bands.lengths = length_bands(block.pattern, bands.edges, moves);
  bands.take_first = to_take_first(body, ways, mean_moves(bands.edges, moves));
  return bands;
}

}  // namespace blockwright
