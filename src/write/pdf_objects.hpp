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

/// A stream object: what it holds, and the entries of its dictionary without brackets, length and
/// filter.
struct PdfStream {
  std::string data;
  std::string entries = {};
};

/// What a reader of the file begins with.
struct PdfRoots {
  PdfId catalog = 0;
  PdfId info = 0;
};

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
  PdfId add_stream(const PdfStream& stream);

  /// Writes everything that the roots lead to. The same objects give the
  /// same bytes: the file's id is made from its content.
  void write(std::ostream& out, PdfRoots roots);

 private:
  std::unique_ptr<QPDF> file_;
};

}  // namespace blockwright::writing
