#pragma once

#include "pdf_objects.hpp"

#include <string>

namespace blockwright::writing {

/// The document information dictionary: title and program, no dates.
PdfId add_info(PdfObjects& objects, const std::string& title);

/// The same as an XMP packet (ISO 16684-1).
PdfId add_xmp(PdfObjects& objects, const std::string& title);

}  // namespace blockwright::writing
