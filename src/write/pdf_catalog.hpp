#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "pdf_objects.hpp"

#include <string>
#include <vector>

// What the catalog of a document leads to besides its pages.
namespace blockwright::writing {

/// The outline: one entry for each page, named by its label. Requires: as many pages as ids, and at
/// least one.
PdfId add_outline(PdfObjects& objects, const std::vector<Page>& pages,
                  const std::vector<PdfId>& page_ids);

/// A number tree that gives each page its label.
std::string page_labels(const std::vector<Page>& pages);

/// The document information dictionary: title and program, no dates.
PdfId add_info(PdfObjects& objects, const std::string& title);

/// The same as an XMP packet (ISO 16684-1).
PdfId add_xmp(PdfObjects& objects, const std::string& title);

}  // namespace blockwright::writing
