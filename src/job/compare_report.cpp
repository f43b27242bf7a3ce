#include "compare_report.hpp"

#include "blockwright/base/number_text.hpp"
#include "notes.hpp"
#include "problems_as_json.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// Smaller differences are not told, in mm or degrees.
constexpr double kMovedLength = 0.05;

/// A value of both versions; one that only one of them has has no other.
struct Row {
  std::string name;
  std::optional<double> before, after;

  [[nodiscard]] bool differs() const {
    return !before || !after || std::abs(*after - *before) > kMovedLength;
  }
};

std::vector<std::pair<MeasurementName, Row>> measurement_rows(const Comparison& c) {
  std::vector<std::pair<MeasurementName, Row>> rows;
  for (std::size_t i = 0; i < kMeasurementCount; ++i) {
    const auto name = static_cast<MeasurementName>(i);
    const auto& before = c.before.session.tape[name];
    const auto& after = c.after.session.tape[name];
    if (!before && !after) continue;
    Row row{std::string(info(name).key), std::nullopt, std::nullopt};
    if (before) row.before = before->median();
    if (after) row.after = after->median();
    rows.emplace_back(name, row);
  }
  return rows;
}

template <class Items, class Name, class Value>
std::vector<Row> rows_of(const Items& before, const Items& after, Name&& name, Value&& value) {
  std::vector<Row> rows;
  rows.reserve(before.size());
  for (const auto& item : before) rows.push_back({name(item), value(item), std::nullopt});
  for (const auto& item : after) {
    const auto same = std::find_if(rows.begin(), rows.end(),
                                   [&](const Row& row) { return row.name == name(item); });
    if (same == rows.end()) {
      rows.push_back({name(item), std::nullopt, value(item)});
    } else {
      same->after = value(item);
    }
  }
  return rows;
}

std::vector<Row> length_rows(const Comparison& c) {
  return rows_of(
      measured_edges(c.before.fitted.pattern), measured_edges(c.after.fitted.pattern),
      [](const NamedLength& l) { return l.name; }, [](const NamedLength& l) { return l.mm; });
}

std::vector<Row> dart_rows(const Comparison& c) {
  return rows_of(
      measured_darts(c.before.fitted.pattern), measured_darts(c.after.fitted.pattern),
      [](const DartMeasure& d) { return d.piece + "." + d.name; },
      [](const DartMeasure& d) { return d.angle.degrees(); });
}

struct NamedMove {
  std::string name;
  Vec by;
};

std::vector<NamedMove> point_moves(const Comparison& c) {
  std::vector<NamedMove> moves;
  for (const Piece& piece : c.after.fitted.pattern.pieces) {
    for (const Piece& old : c.before.fitted.pattern.pieces) {
      if (old.name != piece.name) continue;
      const auto here = alignment_level(piece, c.alignment);
      const auto there = alignment_level(old, c.alignment);
      const Vec shift{0.0, here && there ? *here - *there : 0.0};
      for (const Landmark& landmark : piece.landmarks) {
        for (const Landmark& was : old.landmarks) {
          if (was.name != landmark.name) continue;
          moves.push_back({piece.name + "." + landmark.name, landmark.at - (was.at + shift)});
        }
      }
    }
  }
  return moves;
}

std::string change_text(const Row& row, auto&& number) {
  if (!row.before) return "new";
  if (!row.after) return "gone";
  const double change = *row.after - *row.before;
  return (change < 0.0 ? "-" : "+") + number(std::abs(change));
}

std::string line(const Row& row, auto&& number) {
  const auto shown = [&](const std::optional<double>& value) {
    return value ? number(*value) : std::string("-");
  };
  return fmt::format("  {:<28}{:>10}{:>10}{:>10}\n", as_words(row.name), shown(row.before),
                     shown(row.after), change_text(row, number));
}

std::string table(const std::string& title, const std::vector<Row>& rows, auto&& number) {
  std::string text;
  for (const Row& row : rows) {
    if (row.differs()) text += line(row, number);
  }
  return "\n" + title + "\n" + (text.empty() ? "  none differ\n" : text);
}

std::string measurements_text(const Comparison& c) {
  std::string text;
  for (const auto& [name, row] : measurement_rows(c)) {
    const bool angle = info(name).kind == MeasurementKind::Angle;
    const auto number = [&](double value) {
      return angle ? fixed(value, 1) + "°" : in_unit(value, c.after.unit);
    };
    if (row.differs()) text += line(row, number);
  }
  return "\nMeasurements, as taped\n" + (text.empty() ? std::string("  none differ\n") : text);
}

std::string points_text(const Comparison& c) {
  constexpr double told = 2.0;  // mm
  std::string text;
  for (const NamedMove& move : point_moves(c)) {
    if (norm(move.by) <= told) continue;
    text +=
        fmt::format("  {:<28}{:>10} {}, {:>6} {}\n", as_words(move.name),
                    in_unit(std::abs(move.by.x), c.after.unit), move.by.x < 0.0 ? "in" : "out",
                    in_unit(std::abs(move.by.y), c.after.unit), move.by.y < 0.0 ? "down" : "up");
  }
  return "\nPoints that moved by more than 2 mm\n" +
         (text.empty() ? std::string("  none\n") : text);
}

Json rows_json(const std::vector<Row>& rows) {
  Json list = Json::array();
  for (const Row& row : rows) {
    Json one = {{"name", row.name}};
    one["before"] = row.before ? Json(rounded(*row.before)) : Json(nullptr);
    one["after"] = row.after ? Json(rounded(*row.after)) : Json(nullptr);
    list.push_back(one);
  }
  return list;
}

}  // namespace

std::string version_name(const BlockRun& run) {
  std::string name = run.client.name + ", session " + run.session.date;
  const std::size_t count = run.corrections.size();
  if (count == 0) return name + ", no corrections";
  return name + ", " + std::to_string(count) + (count == 1 ? " correction" : " corrections");
}

std::string title_of(const Comparison& c) {
  return c.before.client.name == c.after.client.name
             ? c.after.client.name + ", two versions compared"
             : c.before.client.name + " and " + c.after.client.name + ", compared";
}

std::string compare_text(const Comparison& c, const std::vector<std::string>& files) {
  const auto number = [&](double mm) { return in_unit(mm, c.after.unit); };
  const auto degrees = [](double value) { return fixed(value, 1) + "°"; };
  std::string text = title_of(c) + ", " + unit_name(c.after.unit) +
                     "\n  before: " + version_name(c.before) +
                     "\n  after:  " + version_name(c.after) + "\n" + measurements_text(c) +
                     table("Lengths, darts closed", length_rows(c), number) +
                     table("Darts", dart_rows(c), degrees) + points_text(c);
  text += files.empty() ? "\nNothing was written.\n" : "\nWritten\n";
  for (const std::string& file : files) text += "  " + file + "\n";
  return text;
}

std::string compare_json(const Comparison& c, const std::vector<std::string>& files) {
  std::vector<Row> measurements;
  for (const auto& [name, row] : measurement_rows(c)) measurements.push_back(row);
  Json points = Json::array();
  for (const NamedMove& move : point_moves(c)) {
    points.push_back(
        {{"name", move.name}, {"x_mm", rounded(move.by.x)}, {"y_mm", rounded(move.by.y)}});
  }
  return Json{{"before", version_name(c.before)},
              {"after", version_name(c.after)},
              {"measurements", rows_json(measurements)},
              {"lengths", rows_json(length_rows(c))},
              {"dart_angles", rows_json(dart_rows(c))},
              {"points", points},
              {"files", files}}
             .dump(2, ' ', false, Json::error_handler_t::replace) +
         "\n";
}

}  // namespace blockwright
