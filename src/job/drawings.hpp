#pragma once

#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "blockwright/style/style.hpp"
#include "blockwright/write/writers.hpp"

#include <iosfwd>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What a kind of output is made of.
enum class OutputOf {
  Sheet,    ///< the pieces laid out as they are cut
  Pattern,  ///< the pieces as they are
};

/// What the writers of all kinds are given; they must not keep it.
struct DrawnOutput {
  std::string title;
  const Layout& layout;  ///< empty for what is made of the pattern
  const Pattern& pattern;
  TextFonts& fonts;
};

/// A kind of output: a row of the table, and a writer. The word is the file's ending, too.
struct OutputRow {
  OutputKind kind;
  std::string_view word;
  std::string_view means;
  OutputOf of;
  int (*write)(std::ostream&,
               const DrawnOutput&);    ///< gives back the number of pages, if it has any
  Preparation (*prepare)() = nullptr;  ///< of a writer that takes long to get ready
};

std::span<const OutputRow> output_kinds();

/// What the names of a client's output begin with, folder and all: "out/ondine-marsh",
/// "out/ondine-marsh-pivot", "out/ondine-marsh-side-dart-bodice".
std::string output_stem(const Job& job);

/// The same with what the pieces are cut as: "out/ondine-marsh-toile".
std::string cut_stem(const Job& job, CutStyle cut);

/// What the pieces are cut as: as the job says, else a garment where the style has said how the
/// edges are finished, or a toile. Throws UsageError "job.cut" where a garment is asked for whose
/// edges nothing is said of.
CutStyle cut_of(const Job& job, bool finished);

/// Whether the job wants anything that is made of it.
bool writes(const DrawingJob& job, OutputOf of);

/// Lets the writers of the kinds that the job wants get ready while the pieces are made.
[[nodiscard]] std::vector<Preparation> prepare_writers(const DrawingJob& job);

/// Adds the kinds of output that the job wants and that are made of the sheet, or of the pattern
/// alone, under `stem` with their endings. Gives back the pages of the PDF.
int add_outputs(const std::string& stem, OutputOf of, const DrawingJob& job,
                const DrawnOutput& drawing, std::vector<NewFile>& outputs);

/// Adds a drawing of its own pages: as SVG one below another.
void add_page(const std::string& stem, const DrawingJob& job, const PrintPlan& plan,
              TextFonts& fonts, std::vector<NewFile>& outputs);

/// Writes the files as one set and gives their paths in order. A client file that has an output's
/// name is never written over. Throws FileError "file.write".
std::vector<std::string> write_outputs(const std::vector<NewFile>& outputs, FileStore& files);

/// What goes on paper, net. Throws UsageError "paper.unknown".
PrintOptions print_of(const DrawingJob& job);
/// The same with the job's allowance.
PrintOptions print_of(const Job& job);

/// The moves of a pivot job as a style. Throws UsageError "job.value".
Style style_of_moves(const Job& job);

}  // namespace blockwright
