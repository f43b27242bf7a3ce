// Any bytes as a job file: read, or refused by name. What was read holds the numbers of the file,
// and runs to an exit code: without a client on the disk never to 0, and writes nothing.
#include "blockwright/base/error.hpp"
#include "blockwright/job/options.hpp"
#include "must.hpp"
#include "support/memory_files.hpp"

#include <nlohmann/json.hpp>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr const char* kFile = "job.json";

// The same numbers, read by the other route.
void must_hold_numbers(const std::string& text, const Job& job) {
  const auto json = nlohmann::json::parse(text);
  const auto same = [&](const char* key, double value) {
    must(!json.contains(key) || json[key].get<double>() == value, "numbers are as written", key);
  };
  same("toile", job.toile);
  if (job.allowance) same("allowance", job.allowance->mm());
  same("margin", job.margin.mm());
  same("overlap", job.overlap.mm());
  if (job.hold_back) same("hold_back", job.hold_back->mm());
}

void must_end(const Job& job) {
  MemoryFiles disk;
  const JobResult result = run_job(job, disk);
  must(result.exit_code == 1 || result.exit_code == 2, "without a client nothing is done");
  must(has_errors(result.problems), "and it is told why");
  must(disk.files.empty() && result.files.empty(), "and nothing is written");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  Job job;
  try {
    read_job_file(text, kFile, JobOptions(job));
  } catch (const InputError& error) {
    must_tell(error.problem(), kFile, "job.");
    return 0;
  }
  must_hold_numbers(text, job);
  for (const Command command : {Command::Draft, Command::Pivot, Command::Adapt}) {
    job.command = command;
    must_end(job);
  }
  return 0;
}
