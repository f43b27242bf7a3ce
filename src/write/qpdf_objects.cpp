#include "qpdf_objects.hpp"

#include <qpdf/Pl_OStream.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>

namespace blockwright::writing {
namespace {

constexpr const char* kPdfVersion = "1.7";  // ISO 32000-1:2008

class QpdfObjects final : public PdfObjects {
 public:
  QpdfObjects() { file_.emptyPDF(); }

  PdfId reserve() override {
    return file_.makeIndirectObject(QPDFObjectHandle::newNull()).getObjectID();
  }
  void set(PdfId id, const std::string& object) override {
    file_.replaceObject(id, 0, QPDFObjectHandle::parse(&file_, object));
  }
  PdfId add(const std::string& object) override {
    return file_.makeIndirectObject(QPDFObjectHandle::parse(&file_, object)).getObjectID();
  }
  PdfId add_stream(const PdfStream& stream) override {
    QPDFObjectHandle object = QPDFObjectHandle::newStream(&file_, stream.data);
    object.replaceDict(QPDFObjectHandle::parse(&file_, "<< " + stream.entries + " >>"));
    return object.getObjectID();
  }
  void write(std::ostream& out, PdfRoots roots) override {
    QPDFObjectHandle trailer = file_.getTrailer();
    trailer.replaceKey("/Root", file_.getObject(roots.catalog, 0));
    trailer.replaceKey("/Info", file_.getObject(roots.info, 0));
    Pl_OStream pipeline("document", out);
    QPDFWriter writer(file_);
    writer.setOutputPipeline(&pipeline);
    writer.setMinimumPDFVersion(kPdfVersion);
    writer.setObjectStreamMode(qpdf_o_generate);
    writer.setDeterministicID(true);
    writer.write();
  }

 private:
  [[nodiscard]] std::string text_object(const std::string& utf8) const override {
    return QPDFObjectHandle::newUnicodeString(utf8).unparse();
  }

  QPDF file_;
};

}  // namespace

std::unique_ptr<PdfObjects> new_qpdf_objects() { return std::make_unique<QpdfObjects>(); }

}  // namespace blockwright::writing
