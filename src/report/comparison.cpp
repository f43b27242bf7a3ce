#include "blockwright/report/comparison.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "report_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// Smaller differences are not shown, in mm or degrees.
constexpr double kDiffers = 0.05;
// Points that moved by less are left out of the text.
constexpr Length kFar = Length::mm(1.0);

/// A value of both versions, or of one; in mm, or degrees.
struct Row {
  std::string name;
  bool angle = false;
  std::optional<double> before, after;
};

bool differs(const Row& row) {
  return !row.before || !row.after || std::abs(*row.after - *row.before) > kDiffers;
}

std::vector<Row> tape_of(const Version& version) {
  std::vector<Row> rows;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const auto& readings = version.session.tape[entry.name];
    if (!readings) continue;
    const Measure median = readings->median();
    rows.push_back({std::string(entry.key), median.is_angle(), median.number(), {}});
  }
  return rows;
}

std::vector<Row> lengths_of(const Version& version) {
  std::vector<Row> rows;
  for (const NamedLength& l : version.stage.lengths) rows.push_back({l.name, false, l.mm, {}});
  return rows;
}

std::vector<Row> darts_of(const Version& version) {
  std::vector<Row> rows;
  for (const DartMeasure& d : version.stage.darts) {
    rows.push_back({d.piece + "." + d.name, true, d.angle.degrees(), {}});
  }
  return rows;
}

/// "front.side" of "front_right.side": the name that both sides share.
std::string name_of_both(const std::string& name) {
  const std::string piece = name.substr(0, name.find('.'));
  return std::string(sided_name(piece).whole) + name.substr(piece.size());
}

/// "right front side" of "front_right.side".
std::string name_as_said(const std::string& name) {
  const std::string piece = name.substr(0, name.find('.'));
  const std::string_view side = sided_name(piece).side;
  const std::string both = name_text(name_of_both(name));
  return side.empty() ? both : std::string(side.substr(1)) + " " + both;
}

/// What one version has, and the other.
struct BothRows {
  std::vector<Row> rows, others;
};

/// Where the other version has a right and a left piece, this one's piece is compared with each.
std::vector<Row> for_each_side(const BothRows& both) {
  const auto& [rows, others] = both;
  std::vector<Row> sides;
  for (const Row& row : rows) {
    const std::size_t before = sides.size();
    for (const Row& other : others) {
      if (other.name == row.name || name_of_both(other.name) != row.name) continue;
      sides.push_back(row);
      sides.back().name = other.name;
    }
    if (sides.size() == before) sides.push_back(row);
  }
  return sides;
}

std::vector<Row> rows_of(const Comparison& c, std::vector<Row> (*of)(const Version&)) {
  std::vector<Row> rows = for_each_side({of(c.before), of(c.after)});
  for (const Row& row : for_each_side({of(c.after), of(c.before)})) {
    const auto same = std::ranges::find(rows, row.name, &Row::name);
    if (same == rows.end()) {
      rows.push_back({row.name, row.angle, std::nullopt, row.before});
    } else {
      same->after = row.before;
    }
  }
  return rows;
}

std::string shown(const Row& row, double value, Unit unit) {
  return row.angle ? angle_text(Angle::degrees(value)) : number_text(Length::mm(value), unit);
}

std::string difference(const Row& row, Unit unit) {
  if (!row.before) return "new";
  if (!row.after) return "gone";
  if (!row.angle) {
    return change_text(
        as_printed(Length::mm(*row.after), unit) - as_printed(Length::mm(*row.before), unit), unit);
  }
  const double change = *row.after - *row.before;
  return (change < 0.0 ? "-" : "+") + shown(row, std::abs(change), unit);
}

std::string row_text(const Row& row, Unit unit) {
  const auto value = [&](const std::optional<double>& v) {
    return v ? shown(row, *v, unit) : std::string("-");
  };
  return fmt::format("  {:<28}{:>10}{:>10}{:>10}\n", name_as_said(row.name), value(row.before),
                     value(row.after), difference(row, unit));
}

std::string table(const char* title, const std::vector<Row>& rows, Unit unit) {
  std::string text;
  for (const Row& row : rows) {
    if (differs(row)) text += row_text(row, unit);
  }
  return fmt::format("\n{}\n{}", title, text.empty() ? "  none differ\n" : text);
}

std::string points_text(const Comparison& c) {
  const auto size = [&](Length l) { return number_text(l < Length() ? -l : l, c.unit); };
  std::string text;
  for (const LandmarkMove& point : c.points) {
    if (std::hypot(point.x.mm(), point.y.mm()) <= kFar.mm()) continue;
    text += fmt::format("  {:<28}{:>10} {}, {:>6} {}\n", name_as_said(point.name), size(point.x),
                        point.x < Length() ? "in" : "out", size(point.y),
                        point.y < Length() ? "down" : "up");
  }
  return fmt::format("\nPoints that moved by more than {}\n{}", length_text(kFar, c.unit),
                     text.empty() ? "  none\n" : text);
}

Json value_json(const std::optional<double>& value) {
  return value ? Json(rounded(*value)) : Json(nullptr);
}

Json rows_json(const std::vector<Row>& rows) {
  return list_of(rows, [](const Row& row) -> Json {
    return {
        {"name", row.name}, {"before", value_json(row.before)}, {"after", value_json(row.after)}};
  });
}

}  // namespace

std::string title_of(const Comparison& c) {
  return printable(c.before.client == c.after.client
                       ? c.after.client + ", two versions compared"
                       : c.before.client + " and " + c.after.client + ", compared");
}

std::string comparison_text(const Comparison& c) {
  std::string text =
      fmt::format("{}, {}\n  before: {}\n  after:  {}\n", title_of(c), unit_name(c.unit),
                  printable(c.before.name), printable(c.after.name)) +
      table("Measurements, as taped", rows_of(c, tape_of), c.unit) +
      table("Lengths, darts closed", rows_of(c, lengths_of), c.unit) +
      table("Darts", rows_of(c, darts_of), c.unit) + points_text(c);
  return text + problem_list(c.problems) + written_text(c.files);
}

std::string comparison_json(const Comparison& c) {
  const Json points = list_of(c.points, [](const LandmarkMove& point) -> Json {
    return {{"name", point.name}, {"x_mm", rounded(point.x.mm())}, {"y_mm", rounded(point.y.mm())}};
  });
  return text_of(Json{{"before", c.before.name},
                      {"after", c.after.name},
                      {"measurements", rows_json(rows_of(c, tape_of))},
                      {"lengths", rows_json(rows_of(c, lengths_of))},
                      {"dart_angles", rows_json(rows_of(c, darts_of))},
                      {"points", points},
                      {"problems", problems_as_json(c.problems)},
                      {"files", c.files}});
}

}  // namespace blockwright
