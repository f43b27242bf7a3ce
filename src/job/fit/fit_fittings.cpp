#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "fit_corrections.hpp"
#include "new_tape_sums.hpp"
#include "option_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

Client client_of(const std::string& path, FileStore& files) {
  ClientJob job;
  job.client = path;
  return client_in(files.read(path), job);
}

/// The last of the fittings for which that holds; null if there is none.
const Fitting* last_fitting(const Client& client, const auto& holds) {
  const auto& all = client.fittings;
  const auto found = std::find_if(all.rbegin(), all.rend(), holds);
  return found == all.rend() ? nullptr : &*found;
}

/// The newest session up to a date; without a date of all. Empty if there is none.
std::string newest_session(const Client& client, const std::string& up_to) {
  std::string newest;
  for (const Session& session : client.sessions) {
    if (up_to.empty() || session.date <= up_to) newest = session.date;
  }
  return newest;
}

/// Where the tape was taken again since the newest toile was cut, and the fitting that is named may
/// be later.
bool is_taped_since(const Client& client, const std::string& date) {
  const Session* of_toile = session_of_fitting(client, client.fittings.back().date);
  return of_toile != nullptr && newest_session(client, date) > of_toile->date;
}

std::string missing_date(const Client& client, const FittingName& known) {
  const Fitting& newest = client.fittings.back();
  if (!is_taped_since(client, "")) {
    return fmt::format("the file has no fitting of toile {}: when was it?", *known.toile);
  }
  return fmt::format(
      "a tape session, of {}, came after the last fitting, toile {} of {}: to which fitting "
      "does this belong?",
      newest_session(client, ""), newest.toile, newest.date);
}

[[noreturn]] void refuse_open(const FitJob& job, const Client& client, const FittingName& known) {
  const Fitting& newest = client.fittings.back();
  const std::string which = fmt::format(
      "--date YEAR-MONTH-DAY --toile {} for a new toile, or "
      "--date {} --toile {}",
      newest.toile + 1, newest.date, newest.toile);
  if (known.date.empty()) {
    refuse_option(place_of("--date", job.places), missing_date(client, known),
                  known.toile && !is_taped_since(client, "")
                      ? fmt::format("give it: --date YEAR-MONTH-DAY --toile {}", *known.toile)
                      : "give its date and toile: " + which);
  }
  refuse_option(place_of("--toile", job.places),
                fmt::format("a tape session, of {}, came between the last fitting and this one: "
                            "which toile was it?",
                            newest_session(client, known.date)),
                fmt::format("give it: --toile {} for a new toile", newest.toile + 1));
}

}  // namespace

FittingName meant_fitting(const Client& client, FittingName given) {
  if (client.fittings.empty()) return given;
  const Fitting& newest = client.fittings.back();
  const std::string date = given.date;
  const Fitting* same = last_fitting(client, [&](const Fitting& fitting) {
    return date.empty() ? fitting.toile == given.toile.value_or(newest.toile)
                        : fitting.date == date;
  });
  const bool is_open = is_taped_since(client, date);
  if (given.date.empty() && same != nullptr && !is_open) given.date = same->date;
  if (given.toile || (given.date.empty() && date.empty())) return given;
  if (same != nullptr) {
    given.toile = same->toile;
  } else if (!is_open) {
    given.toile = newest.toile;
  }
  return given;
}

FittingOf fitting_of(const FitJob& job, const Client& client) {
  const FittingName known = meant_fitting(client, {job.date, job.toile});
  if (client.fittings.empty() && known.date.empty()) {
    refuse_option("--date", "the file has no fitting yet, and none was named",
                  "give its date and toile: --date 2026-03-21 --toile 1");
  }
  const bool is_open = known.date.empty() || !known.toile;
  if (!client.fittings.empty() && is_open) refuse_open(job, client, known);
  return {known.date, known.toile.value_or(1), job.by, job.note};
}

void judge_date(const FitJob& job, const std::string& date, const Client& client) {
  const bool is_known =
      last_fitting(client, [&](const Fitting& fitting) { return fitting.date == date; }) != nullptr;
  const std::string& first = client.sessions.front().date;
  if (is_known || date >= first) return;
  refuse_option(place_of("--date", job.places),
                fmt::format("a fitting of {} would be before the first tape session, of {}",
                            shown(date), first),
                "give the day on which the toile was fitted");
}

Unit unit_of_client(const std::string& path, FileStore& files) {
  return client_of(path, files).unit;
}

FittingName meant_fitting(const std::string& path, const FittingName& given, FileStore& files) {
  return meant_fitting(client_of(path, files), given);
}

int next_toile_number(const std::string& path, FileStore& files) {
  const Client client = client_of(path, files);
  return client.fittings.empty() ? 1 : client.fittings.back().toile + 1;
}

std::optional<Problem> fault_of_date(const std::string& path, const std::string& date,
                                     FileStore& files) {
  FitJob job;
  job.client = path;
  const std::string text = files.read(path);
  try {
    const Client client = client_in(text, job);
    const int toile = client.fittings.empty() ? 1 : client.fittings.back().toile;
    try {
      (void)with_fitting({text, path}, {date, toile, "", ""});
    } catch (const InputError& error) {
      if (error.problem().code == "client.date") return error.problem();
    }
    judge_date(job, date, client);
  } catch (const UsageError& error) {
    return error.problem();
  }
  return std::nullopt;
}

}  // namespace blockwright
