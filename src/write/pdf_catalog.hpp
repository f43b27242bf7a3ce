#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "pdf_content.hpp"

#include <optional>
#include <string>
#include <vector>

// What the catalog of a document leads to besides its pages.
namespace blockwright::writing {

/// The outline: one entry for each page, named by its label. Requires: as many pages as ids, and at
/// least one.
PdfId add_outline(PdfObjects& objects, const std::vector<Page>& pages,
                  const std::vector<PdfId>& page_ids);

/// A number tree that gives each page its label.
std::string page_labels(const PdfObjects& objects, const std::vector<Page>& pages);

/// The document information dictionary: title and program, no dates.
PdfId add_info(PdfObjects& objects, const std::string& title);

/// The same as an XMP packet (ISO 16684-1).
PdfId add_xmp(PdfObjects& objects, const std::string& title);

/// One layer of the sheet in the document.
struct PdfLayer {
  std::string number;         ///< "0": L0 and S0 are its group and drawing in the page resources
  PdfId group = 0;            ///< its optional-content group
  std::optional<PdfId> form;  ///< the drawing, in sheet mm; none if the layer is empty
};

/// Adds an optional-content group for every sheet layer, in order, and the drawing of each layer
/// that has one. `extent` is the part of the sheet that pages may show; the drawings use the fonts
/// of `resources`.
///
/// The groups carry no usage entries: viewers that act on those ignore the person's own switching.
std::vector<PdfLayer> add_layers(PdfObjects& objects, PdfFonts& fonts, const Sheet& sheet,
                                 const Box& extent, PdfId resources);

/// The catalog's /OCProperties: all groups in order, the previous version off.
std::string layer_properties(const std::vector<PdfLayer>& layers, const Sheet& sheet);

}  // namespace blockwright::writing
