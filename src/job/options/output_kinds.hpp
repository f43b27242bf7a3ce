#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <iosfwd>
#include <span>
#include <string>
#include <string_view>

namespace blockwright {

/// What a kind of output is made of.
enum class OutputOf {
  Sheet,    ///< the pieces laid out as they are cut
  Pattern,  ///< the pieces as they are
};

/// What the writers of all kinds are given; they must not keep it.
struct Drawing {
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
  int (*write)(std::ostream&, const Drawing&);  ///< gives back the number of pages, if it has any
};

std::span<const OutputRow> output_kinds();

}  // namespace blockwright
