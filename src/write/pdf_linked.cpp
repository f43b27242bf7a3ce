#include "qpdf_objects.hpp"

namespace blockwright::writing {

std::unique_ptr<PdfObjects> new_pdf_objects() { return new_qpdf_objects(); }

}  // namespace blockwright::writing
