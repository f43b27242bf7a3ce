#include "torso/files.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <stdexcept>

namespace blockwright::torso {
namespace {

using Json = nlohmann::json;

Point point_of(const Json& at) { return {at.at(0), at.at(1)}; }

Path path_of(const Json& strokes) {
  Path path;
  Point from;
  for (const Json& stroke : strokes) {
    const auto number = [&](std::size_t i) { return stroke.at(i).get<double>(); };
    const std::string kind = stroke.at(0);
    if (kind == "M") {
      from = {number(1), number(2)};
    } else if (kind == "L") {
      const Point to{number(1), number(2)};
      path.add(Segment{from, to});
      from = to;
    } else if (kind == "C") {
      const Point to{number(5), number(6)};
      path.add(CubicCurve{from, {number(1), number(2)}, {number(3), number(4)}, to});
      from = to;
    } else {
      throw std::runtime_error("unknown stroke " + kind);
    }
  }
  return path;
}

Dart dart_of(const Json& json) {
  Dart dart;
  dart.name = json.at("name");
  dart.edge = json.at("edge");
  dart.apex = point_of(json.at("apex"));
  dart.point = point_of(json.at("point"));
  dart.legs = {point_of(json.at("legs").at(0)), point_of(json.at("legs").at(1))};
  dart.peak = point_of(json.contains("peak") ? json.at("peak") : json.at("cap"));
  dart.pressed_to = json.at("pressed_to") == 0 ? Leg::First : Leg::Second;
  return dart;
}

std::ofstream opened(const std::filesystem::path& file) {
  std::ofstream out(file);
  if (!out) throw std::runtime_error("cannot write " + file.string());
  return out;
}

void write_vertex(std::ostream& out, const Vec3& p) {
  out << fmt::format("v {:.2f} {:.2f} {:.2f}\n", p.x(), p.z(), -p.y());
}

}  // namespace

void write_client(const std::filesystem::path& file, const std::string& name,
                  const Session& session) {
  Json tape;
  for (const MeasurementInfo& row : kMeasurements) {
    if (!session.tape[row.name]) continue;
    const double value = session.tape[row.name]->median().number();
    tape[std::string(row.key)] = row.kind == MeasurementKind::Angle ? value : value / 10.0;
  }
  const Json client{{"format", "blockwright-client-1"},
                    {"name", name},
                    {"unit", "cm"},
                    {"sessions", Json::array({{{"date", session.date}, {"tape", tape}}})}};
  opened(file) << client.dump(2) << "\n";
}

Pattern read_pattern(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  Pattern pattern;
  const Json json = Json::parse(in);
  for (const Json& from : json.at("pieces")) {
    Piece piece;
    piece.name = from.at("name");
    for (const Json& edge : from.at("edges")) {
      piece.edges.push_back({edge.at("name"), EdgeRole::Seam, path_of(edge.at("path"))});
    }
    for (const Json& dart : from.at("darts")) piece.darts.push_back(dart_of(dart));
    pattern.pieces.push_back(std::move(piece));
  }
  return pattern;
}

void write_cloth(const std::filesystem::path& file, const Cloth& cloth, const Relaxed& rest) {
  std::ofstream out = opened(file);
  for (const Vec3& p : rest.at) write_vertex(out, p);
  for (const ClothTriangle& t : cloth.triangles) {
    out << fmt::format("f {} {} {}\n", t.corners[0] + 1, t.corners[1] + 1, t.corners[2] + 1);
  }
}

void write_body(const std::filesystem::path& file, const Torso& body) {
  std::ofstream out = opened(file);
  const double top = body.landmarks().nape.z() + 30.0;
  int rows = 0, columns = 0;
  for (double z = -60.0; z < top; z += 6.0, ++rows) {
    const std::vector<Vec2> section = body.section(z);
    columns = static_cast<int>(section.size());
    for (const Vec2& p : section) write_vertex(out, {p.x(), p.y(), z});
  }
  for (int r = 0; r + 1 < rows; ++r) {
    for (int c = 1; c < columns; ++c) {
      const int a = r * columns + c, b = a + columns;
      out << fmt::format("f {} {} {} {}\n", a, a + 1, b + 1, b);
    }
  }
}

}  // namespace blockwright::torso
