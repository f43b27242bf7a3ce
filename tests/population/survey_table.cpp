#include "survey_table.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>
#include <stdexcept>

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr double kHollowUnderBust = 30.0;

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::stringstream row(line);
  std::string cell;
  while (std::getline(row, cell, ',')) cells.push_back(cell);
  return cells;
}

/// A row with its column names.
class Row {
 public:
  Row(const std::vector<std::string>& head, std::vector<std::string> cells)
      : head_(head), cells_(std::move(cells)) {}
  [[nodiscard]] double number(const std::string& column) const {
    const auto it = std::find(head_.begin(), head_.end(), column);
    if (it == head_.end()) throw std::runtime_error("the table has no column " + column);
    const std::string& cell = cells_.at(static_cast<std::size_t>(it - head_.begin()));
    double value = 0.0;
    const auto result = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (result.ec != std::errc{}) throw std::runtime_error("not a number: " + cell);
    return value;
  }
  [[nodiscard]] double mm(const std::string& column) const { return 10.0 * number(column); }

 private:
  const std::vector<std::string>& head_;
  std::vector<std::string> cells_;
};

void take(Session& session, MeasurementName name, double value) {
  session.tape[name] = Readings{{measure_of(name, value)}};
}

void take_waist(Session& session, const Row& row, SurveyWaist waist) {
  const bool natural = waist == SurveyWaist::Natural;
  const double level = row.mm(natural ? "waist_height" : "navel_height");
  const double drop = row.mm("bust_height") - level;
  take(session, WaistGirth, row.mm(natural ? "waist" : "waist_navel"));
  take(session, BackWaistLength, row.mm(natural ? "back_waist" : "back_waist_navel"));
  take(session, FrontWaistLength, row.mm(natural ? "front_waist_cf" : "front_waist_cf_navel"));
  take(session, SideNeckToWaist,
       row.mm("neck_to_bust") + std::sqrt(drop * drop + kHollowUnderBust * kHollowUnderBust));
  take(session, SideLength, row.mm("axilla_height") - level);
  if (natural) take(session, WaistToHip, level - row.mm("hip_height"));
}

Session session_of_row(const Row& row, SurveyWaist waist) {
  Session session;
  session.date = "1988-01-01";
  take(session, BustGirth, row.mm("bust"));
  take(session, UpperChestGirth, row.mm("upper_bust"));
  take(session, UnderbustGirth, row.mm("under_bust"));
  take(session, HipGirth, row.mm("hip"));
  take(session, NeckBaseGirth, row.mm("neck_base"));
  take(session, ArmscyeGirth, row.mm("scye_girth"));
  take(session, UpperArmGirth, row.mm("upper_arm"));
  take(session, ShoulderLength, row.mm("shoulder"));
  take(session, ShoulderSlope, row.number("d_shoulder_angle_deg"));
  take(session, SideNeckToBustPoint, row.mm("neck_to_bust"));
  take(session, BustPointWidth, row.mm("bust_span"));
  take(session, AcrossBack, row.mm("across_back"));
  take(session, ScyeDepth, row.mm("scye_depth"));
  take(session, Stature, row.mm("stature"));
  take_waist(session, row, waist);
  return session;
}

}  // namespace

std::vector<SurveyWoman> read_survey(std::istream& in, SurveyWaist waist) {
  std::vector<SurveyWoman> women;
  std::vector<std::string> head;
  std::string line;
  while (std::getline(in, line)) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = cells_of(line);
    if (head.empty()) {
      head = cells;
      continue;
    }
    women.push_back({cells.front(), session_of_row(Row(head, cells), waist)});
  }
  return women;
}

}  // namespace blockwright
