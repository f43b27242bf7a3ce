#pragma once

#include <iosfwd>
#include <memory>
#include <string>
#include <string_view>

class QPDF;

namespace blockwright::writing {

/// Number of an object in a PDF file.
using PdfId = int;

/// "7 0 R": how another object points at it.
std::string pdf_ref(PdfId id);

/// A text string object for UTF-8 text: outline entries, layer names, the title.
std::string pdf_text(std::string_view utf8);

/// Four hexadecimal digits, as codes and letters stand in hexadecimal strings.
std::string pdf_hex_16(unsigned value);

/// The objects of a PDF file under construction, given in PDF's own syntax. What the file consists
/// of is decided by the callers; cross-reference tables, compression, object streams and the file's
/// id are the work of the library behind this class, which nothing else in the writer knows.
class PdfObjects {
 public:
  PdfObjects();
  ~PdfObjects();
  PdfObjects(const PdfObjects&) = delete;
  PdfObjects& operator=(const PdfObjects&) = delete;

  /// A number for an object that others must point at before it is known.
  PdfId reserve();
  void set(PdfId id, const std::string& object);
  PdfId add(const std::string& object);
  /// `entries` are those of the stream's dictionary without its brackets, length and filter.
  PdfId add_stream(const std::string& entries, const std::string& data);

  /// Writes everything that the catalog and the info dictionary lead to. The same objects give the
  /// same bytes: the file's id is made from its content.
  void write(std::ostream& out, PdfId catalog, PdfId info);

 private:
  std::unique_ptr<QPDF> file_;
};

}  // namespace blockwright::writing
