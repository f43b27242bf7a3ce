// What the program's own work costs against the libraries' unavoidable part, as ratios of medians.
#include "block_pass.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/write/writers.hpp"
#include "drawings.hpp"
#include "in_turn.hpp"
#include "support/memory_files.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <functional>
#include <sstream>
#include <sys/resource.h>
#include <vector>

namespace {

using namespace blockwright;
using namespace blockwright_benchmarks;

constexpr int kBatches = 21;

/// What is timed, so many times a batch that the clock can tell.
struct Work {
  int repeats = 1;
  std::function<void()> run;
};

std::function<void()> repeated(const Work& work) {
  return [&work] {
    for (int i = 0; i < work.repeats; ++i) work.run();
  };
}

/// Prints a time against another, each the median of its batches, and the median of their ratios.
void print_against(const char* what, const Work& one, const Work& other) {
  const Against against = in_turn(kBatches, repeated(one), repeated(other));
  const double repeats = static_cast<double>(one.repeats) / other.repeats;
  fmt::print("{:<70} {:9.1f} us : {:9.1f} us = {:.2f}\n", what, 1e6 * against.time / one.repeats,
             1e6 * against.other / other.repeats, against.ratio / repeats);
}

std::string demo_client() {
  std::ifstream in(std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe/ondine-marsh.json");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

void draft_against_parsing(const std::string& text) {
  std::istringstream in(text);
  const Client client = read_client(in, "demo");
  const Session session = client.sessions.back();
  const Ease ease = Ease::of(client);
  const Body body = fill_in(session);
  std::size_t kept = 0;
  const Work parse{400, [&] { kept += nlohmann::json::parse(text).size(); }};
  const Work draft{50, [&] { kept += draft_block(body, ease).log.size(); }};
  const Work checked{
      50, [&] {
        const DraftedBlock block = draft_block(fill_in(session), ease);
        kept += check_block({block.pattern, body, block.ease, block.adjustments}).lengths.size();
      }};
  print_against("draft alone : parsing its client file (nlohmann-json)", draft, parse);
  print_against("fill in, draft and checks : parsing its client file", checked, parse);
  if (kept == 0) fmt::print("\n");
}

void pivot_against_draft(const std::string& text) {
  std::istringstream in(text);
  const Client client = read_client(in, "demo");
  const Body body = fill_in(client.sessions.back());
  const Ease ease = Ease::of(client);
  const Pattern block = draft_block(body, ease).pattern;
  std::size_t kept = 0;
  const Work draft{50, [&] { kept += draft_block(body, ease).log.size(); }};
  const auto moved = [&](const char* to, double part) {
    return Work{100, [&kept, &block, to, part] {
                  const PivotMove move{"front.shoulder", to, part, std::nullopt, std::nullopt};
                  kept += pivot(block, move).remarks.size() + 1;
                }};
  };
  const Work trued{100, [&] { kept += true_darts(block).blended.size(); }};
  print_against("pivot, shoulder to side, all checks of the piece : draft alone",
                moved("front.side", 1.0), draft);
  print_against("pivot, a part to the waist dart : draft alone", moved("front.waist", 0.3), draft);
  print_against("trueing all darts of a block : draft alone", trued, draft);
  if (kept == 0) fmt::print("\n");
}

void job_against_writers(const std::string& text) {
  Job job;
  job.client = "demo.json";
  job.paper = "150x160";
  MemoryFiles files;
  files.files[job.client] = text;
  const PrintOptions options = print_of(job);
  const BlockRun run = fitted_block(block_source(job, files));
  const Pattern printed = true_darts(run.fitted.pattern).pattern;
  const SheetNotes notes = notes_of(report_of(run, options.cut));
  const Layout layout = lay_out(printed, options, notes);
  TextFonts fonts;
  const Sheet sheet = sheet_of(layout, fonts);
  const PrintPlan plan = tile(layout, fonts);
  std::size_t kept = 0;
  const Work bare_writers{5, [&] {
                            std::ostringstream svg, pdf;
                            TextFonts own_fonts;
                            write_svg(svg, sheet, "demo", own_fonts);
                            write_pdf(pdf, plan, own_fonts);
                            kept += pdf.str().size();
                          }};
  const Work whole_run{5, [&] { kept += run_job(job, files).files.size(); }};
  fmt::print("pages: {}\n", plan.pages.size());
  print_against("whole draft, SVG and tiled PDF : the bare writers on the same pages", whole_run,
                bare_writers);
  if (kept == 0) fmt::print("\n");
}

void print_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  fmt::print("peak memory of this run: {:.1f} MB\n", static_cast<double>(usage.ru_maxrss) / 1024.0);
}

}  // namespace

int main() {
  const std::string text = demo_client();
  draft_against_parsing(text);
  pivot_against_draft(text);
  job_against_writers(text);
  print_memory();
  return 0;
}
