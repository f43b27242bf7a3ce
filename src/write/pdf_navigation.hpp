#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "pdf_objects.hpp"

#include <string>
#include <vector>

namespace blockwright::writing {

/// The outline: one entry for each page, named by its label. Requires: as many pages as ids, and at
/// least one.
PdfId add_outline(PdfObjects& objects, const std::vector<Page>& pages,
                  const std::vector<PdfId>& page_ids);

/// A number tree that gives each page its label.
std::string page_labels(const std::vector<Page>& pages);

}  // namespace blockwright::writing
