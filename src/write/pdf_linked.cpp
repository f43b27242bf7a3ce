#include "blockwright/write/writers.hpp"
#include "qpdf_objects.hpp"

namespace blockwright {

Preparation prepare_pdf() { return {}; }

namespace writing {

std::unique_ptr<PdfObjects> new_pdf_objects() { return new_qpdf_objects(); }

}  // namespace writing
}  // namespace blockwright
