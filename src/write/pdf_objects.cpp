#include "pdf_objects.hpp"

#include <qpdf/Pl_OStream.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>

namespace blockwright::writing {
namespace {

constexpr std::string_view kHexDigits = "0123456789ABCDEF";
constexpr const char* kPdfVersion = "1.7";  // ISO 32000-1:2008

}  // namespace

std::string pdf_ref(PdfId id) { return std::to_string(id) + " 0 R"; }

std::string pdf_text(std::string_view utf8) {
  return QPDFObjectHandle::newUnicodeString(std::string(utf8)).unparse();
}

std::string pdf_hex_16(unsigned value) {
  std::string text;
  for (int shift = 12; shift >= 0; shift -= 4) text += kHexDigits[(value >> shift) & 0xF];
  return text;
}

PdfObjects::PdfObjects() : file_(std::make_unique<QPDF>()) { file_->emptyPDF(); }
PdfObjects::~PdfObjects() = default;

PdfId PdfObjects::reserve() {
  return file_->makeIndirectObject(QPDFObjectHandle::newNull()).getObjectID();
}

void PdfObjects::set(PdfId id, const std::string& object) {
  file_->replaceObject(id, 0, QPDFObjectHandle::parse(file_.get(), object));
}

PdfId PdfObjects::add(const std::string& object) {
  return file_->makeIndirectObject(QPDFObjectHandle::parse(file_.get(), object)).getObjectID();
}

PdfId PdfObjects::add_stream(const PdfStream& stream) {
  QPDFObjectHandle object = QPDFObjectHandle::newStream(file_.get(), stream.data);
  object.replaceDict(QPDFObjectHandle::parse(file_.get(), "<< " + stream.entries + " >>"));
  return object.getObjectID();
}

void PdfObjects::write(std::ostream& out, PdfRoots roots) {
  QPDFObjectHandle trailer = file_->getTrailer();
  trailer.replaceKey("/Root", file_->getObject(roots.catalog, 0));
  trailer.replaceKey("/Info", file_->getObject(roots.info, 0));
  Pl_OStream pipeline("document", out);
  QPDFWriter writer(*file_);
  writer.setOutputPipeline(&pipeline);
  writer.setMinimumPDFVersion(kPdfVersion);
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.setDeterministicID(true);
  writer.write();
}

}  // namespace blockwright::writing
