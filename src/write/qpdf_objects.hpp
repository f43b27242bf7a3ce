#pragma once

#include "pdf_objects.hpp"

namespace blockwright::writing {

/// An empty file that libqpdf keeps and writes.
std::unique_ptr<PdfObjects> new_qpdf_objects();

}  // namespace blockwright::writing
