#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/fitting.hpp"
#include "blockwright/measure/measurement_name.hpp"
#include "blockwright/text/units.hpp"

#include <array>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// One measurement of one session: the readings in the order taken.
struct Readings {
  std::vector<Measure> values;
  [[nodiscard]] Measure median() const;
  [[nodiscard]] Measure spread() const;  ///< largest minus smallest

  bool operator==(const Readings&) const = default;
};

/// A value for each measurement that was given.
template <class T>
class PerMeasurement {
 public:
  [[nodiscard]] const std::optional<T>& operator[](MeasurementName name) const {
    return values_[static_cast<std::size_t>(name)];
  }
  std::optional<T>& operator[](MeasurementName name) {
    return values_[static_cast<std::size_t>(name)];
  }
  bool operator==(const PerMeasurement&) const = default;

 private:
  std::array<std::optional<T>, kMeasurementCount> values_{};
};

/// Some of the measurements.
class MeasurementSet {
 public:
  [[nodiscard]] bool has(MeasurementName name) const {
    return members_[static_cast<std::size_t>(name)];
  }
  void add(MeasurementName name) { members_[static_cast<std::size_t>(name)] = true; }
  bool operator==(const MeasurementSet&) const = default;

 private:
  std::array<bool, kMeasurementCount> members_{};
};

/// One tape-measure session.
struct Session {
  std::string date;  ///< "2026-03-14"
  std::string by;    ///< who held the tape; may be empty
  PerMeasurement<Readings> tape;
  /// What the maker is sure of: the draft gives it back exactly. All of them are taped.
  MeasurementSet sure = {};

  bool operator==(const Session&) const = default;
};

/// One person, as her client file has it.
struct Client {
  std::string name;
  Unit unit = Unit::Cm;
  std::vector<Session> sessions;  ///< in order of date, oldest first
  PerMeasurement<Measure> ease;   ///< overrides of the default ease, on the whole measurement
  std::vector<Fitting> fittings;  ///< in the order of the file, which is that of the toiles

  bool operator==(const Client&) const = default;
};

/// What becomes of a session whose bust girth is still null. It is filled in by hand or by
/// `blockwright tape`; nothing can be drafted from it. A client with no other session is refused
/// where they are left out.
enum class Unfinished { LeftOut, Kept };

/// Reads a client file (format "blockwright-client-1", docs/formats.md). `file` names it in
/// messages. Requires nothing of the content: whatever is wrong with it ends in an InputError that
/// names file, place (line and column, or key), value, limit and cure.
Client read_client(std::istream& in, std::string_view file,
                   Unfinished unfinished = Unfinished::LeftOut);

/// The session of that date, or the newest one if `date` is empty. Throws InputError, naming the
/// dates there are, if there is none.
const Session& session_of(const Client& client, std::string_view date, std::string_view file);

}  // namespace blockwright
