// What the program's own work costs against the libraries' unavoidable part, as ratios of medians.
#include "block_pass.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/bands.hpp"
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
#include <map>
#include <sstream>
#include <sys/resource.h>
#include <vector>

namespace {

using namespace blockwright;
using namespace blockwright_benchmarks;

constexpr int kRounds = 101;

/// What is timed, so many times a round that the clock can tell.
struct Work {
  int repeats = 1;
  std::function<void()> run;
};

std::function<void()> repeated(const Work& work) {
  return [&work] {
    for (int i = 0; i < work.repeats; ++i) work.run();
  };
}

/// One time to be printed against another.
struct Comparison {
  const char* what;
  Work one, other;
};

void print_all(const std::vector<Comparison>& comparisons) {
  std::vector<Pair> pairs;
  for (const auto& [what, one, other] : comparisons) {
    pairs.push_back({repeated(one), repeated(other)});
  }
  const std::vector<Against> results = in_turn(kRounds, Clock::Thread, pairs);
  for (std::size_t i = 0; i < results.size(); ++i) {
    const auto& [what, one, other] = comparisons[i];
    const double repeats = static_cast<double>(one.repeats) / other.repeats;
    fmt::print("{:<70} {:9.1f} us : {:9.1f} us = {:.2f}\n", what,
               1e6 * results[i].work / one.repeats, 1e6 * results[i].other / other.repeats,
               results[i].ratio / repeats);
  }
}

std::string demo_client() {
  std::ifstream in(std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe/ondine-marsh.json");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

Client client_of(const std::string& text) {
  std::istringstream in(text);
  return read_client(in, "demo");
}

/// What the passes of a draft are given.
struct Demo {
  explicit Demo(const std::string& client_text) : text(client_text), client(client_of(text)) {}

  std::string text;
  Client client;
  Session session = client.sessions.back();
  Ease ease = Ease::of(client);
  Body body = fill_in(session);
  Pattern block = draft_block(body, ease).pattern;
};

/// Requires: `demo` and `kept` outlive them.
std::vector<Comparison> of_passes(const Demo& demo, std::size_t& kept) {
  const Work parse{300, [&] { kept += nlohmann::json::parse(demo.text).size(); }};
  const Work draft{20, [&] { kept += draft_block(demo.body, demo.ease).pattern.pieces.size(); }};
  const Work checked{
      20, [&] {
        const Body body = fill_in(demo.session);
        const DraftedBlock block = draft_block(body, demo.ease);
        kept += check_block({block.pattern, body, block.ease, block.adjustments}).lengths.size();
      }};
  const auto moved = [&](const char* to, double part) {
    return Work{40, [&kept, &demo, to, part] {
                  const PivotMove move{"front.shoulder", to, part, std::nullopt, std::nullopt};
                  kept += pivot(demo.block, move).remarks.size() + 1;
                }};
  };
  const Work trued{80, [&] { kept += true_darts(demo.block).blended.size(); }};
  const Work bands{1, [&] {
                     const Body body = fill_in(demo.session);
                     kept +=
                         block_bands(body, spread_of(body), demo.ease, draft_block(body, demo.ease))
                             .edges.size();
                   }};
  return {{"bands of all lines : draft alone", bands, draft},
          {"draft alone : parsing its client file (nlohmann-json)", draft, parse},
          {"fill in, draft and checks : parsing its client file", checked, parse},
          {"pivot, shoulder to side, all checks of the piece : draft alone",
           moved("front.side", 1.0), draft},
          {"pivot, a part to the waist dart : draft alone", moved("front.waist", 0.3), draft},
          {"trueing all darts of a block : draft alone", trued, draft}};
}

Job demo_job() {
  Job job;
  job.client = "demo.json";
  job.paper = "150x160";
  return job;
}

/// What a whole run takes, and what the bare writers do.
struct Printing {
  explicit Printing(const std::string& client_text)
      : files(std::map<std::string, std::string>{{job.client, client_text}}) {}

  Job job = demo_job();
  MemoryFiles files;
  PrintOptions options = print_of(job);
  BlockRun run = fitted_block(block_source(job, files));
  Layout layout = lay_out(true_darts(run.fitted.pattern).pattern, options,
                          notes_of(report_of(run, options.cut)));
  TextFonts fonts;
  Sheet sheet = sheet_of(layout, fonts);
  PrintPlan plan = tile(layout, fonts);
};

/// Requires: `demo` and `kept` outlive it.
Comparison of_whole_run(Printing& demo, std::size_t& kept) {
  const Work bare_writers{1, [&] {
                            std::ostringstream svg, pdf;
                            TextFonts fonts;
                            write_svg(svg, demo.sheet, "demo", fonts);
                            write_pdf(pdf, demo.plan, fonts);
                            kept += pdf.str().size();
                          }};
  const Work whole_run{1, [&] { kept += run_job(demo.job, demo.files).files.size(); }};
  return {"whole draft, SVG and tiled PDF : the bare writers on the same pages", whole_run,
          bare_writers};
}

void print_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  fmt::print("peak memory of this run: {:.1f} MB\n", static_cast<double>(usage.ru_maxrss) / 1024.0);
}

}  // namespace

int main() {
  const Demo demo(demo_client());
  Printing printing(demo.text);
  std::size_t kept = 0;  // so that no work is left out for nobody wants it
  std::vector<Comparison> comparisons = of_passes(demo, kept);
  comparisons.push_back(of_whole_run(printing, kept));
  fmt::print("pages: {}\n", printing.plan.pages.size());
  print_all(comparisons);
  print_memory();
  return kept == 0 ? 1 : 0;
}
