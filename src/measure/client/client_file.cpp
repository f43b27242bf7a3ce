#include "client_file.hpp"

#include "blockwright/measure/fitting.hpp"
#include "blockwright/text/refuse.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

bool holds_key(std::span<const std::string_view> known, std::string_view key) {
  return std::ranges::find(known, key) != known.end();
}

struct Home {
  std::span<const std::string_view> keys;
  std::string_view place;
};

// Where a known key belongs that stands in a wrong place; empty for an unknown one, and for an
// action that is short for a known one: "back" in a tape.
std::string right_place(std::string_view key, std::span<const std::string_view> known) {
  if (holds_key(correction_actions(), key) && !nearest(key, known).empty()) return {};
  constexpr std::string_view corrections =
      "in a fitting's corrections: \"corrections\": [ { ... } ]";
  for (const Home& home : {Home{kClientKeys, "at the top of the file, beside \"sessions\""},
                           {kSessionKeys, "in a session: \"sessions\": [ { ... } ]"},
                           {kMeasurementKeys, "in a session's tape: \"tape\": { ... }"},
                           {kFittingKeys, "in a fitting: \"fittings\": [ { ... } ]"},
                           {kCorrectionKeys, corrections},
                           {correction_actions(), corrections}}) {
    if (holds_key(home.keys, key)) return fmt::format("\"{}\" belongs {}", key, home.place);
  }
  return {};
}

std::string other_format_hint(std::string_view format) {
  if (format.starts_with("blockwright-job-")) {
    return "this is a job file: give it with --job, and name the client in it";
  }
  if (format.starts_with("blockwright-pattern-") || format.starts_with("blockwright-report-")) {
    return "this file was written by the program; give the client file";
  }
  return {};
}

std::string second_key_hint(std::string_view object, std::string_view key) {
  if (object != "tape" || !measurement_named(key)) return {};
  return "keep one; readings taken several times go into a list: [74.0, 74.5]";
}

}  // namespace

const JsonFileKind& client_file() {
  static constexpr JsonFileKind kind{
      .codes = "client",
      .format = kClientFormat,
      .holds = "a client file holds one person",
      .number = "write the measurement as the tape shows it: 92.5",
      .name = "write the person's name; it is printed on every piece",
      .other_format_hint = other_format_hint,
      .right_place = right_place,
      .second_key_hint = second_key_hint};
  return kind;
}

}  // namespace blockwright
