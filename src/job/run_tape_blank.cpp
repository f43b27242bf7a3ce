#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/tape_form.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

namespace blockwright {
namespace {

[[noreturn]] void refuse_there(const std::string& path) {
  throw FileError({Severity::Error, "file.write", path,
                   "it is there already, and nothing is written over it",
                   "choose another name, or go on with it: `blockwright tape FILE`"});
}

/// Her name is not known yet: the file's stands for it.
JobResult blank(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  if (job.date.empty()) {
    refuse_option("--date", "no date of the session was given", "write for example 2026-03-14");
  }
  const auto held = files.lock(folder_of(job.client));
  if (!open_tape(job, files).is_new_client()) refuse_there(job.client);
  const Unit unit = job.unit.value_or(Unit::Cm);
  files.write(job.client, blank_client_text({safe_stem(job.client), unit, job.date}, job.client));
  JobResult result;
  result.files = {job.client};
  const std::string path = shown_place(job.client);
  result.output = "Written: " + path + "\nPut her name in the place of \"" + safe_stem(job.client) +
                  "\", and each measurement in the place of its null; what stays null is "
                  "estimated.\nOr fill it in at the prompt: blockwright tape " +
                  as_argument(job.client) + "\n";
  return result;
}

}  // namespace

JobResult run_tape_blank(const TapeJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return blank(job, files); });
}

}  // namespace blockwright
