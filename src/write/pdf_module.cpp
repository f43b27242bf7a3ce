// What blockwright-pdf.so offers to pdf_loaded.cpp.
#include "qpdf_objects.hpp"

extern "C" blockwright::writing::PdfObjects* blockwright_new_pdf_objects() {
  return blockwright::writing::new_qpdf_objects().release();
}
