#pragma once

#include <iosfwd>
#include <memory>
#include <string>
#include <string_view>

namespace blockwright::writing {

/// Number of an object in a PDF file.
using PdfId = int;

/// "7 0 R": how another object points at it.
std::string pdf_ref(PdfId id);

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
  PdfObjects() = default;
  virtual ~PdfObjects() = default;
  PdfObjects(const PdfObjects&) = delete;
  PdfObjects& operator=(const PdfObjects&) = delete;

  /// A number for an object that others must point at before it is known.
  virtual PdfId reserve() = 0;
  virtual void set(PdfId id, const std::string& object) = 0;
  virtual PdfId add(const std::string& object) = 0;
  virtual PdfId add_stream(const PdfStream& stream) = 0;
  /// A text string object for a printable line: outline entries, layer names, the title.
  [[nodiscard]] std::string text(std::string_view utf8) const;

  /// Writes everything that the roots lead to. The same objects give the
  /// same bytes: the file's id is made from its content.
  virtual void write(std::ostream& out, PdfRoots roots) = 0;

 private:
  [[nodiscard]] virtual std::string text_object(const std::string& utf8) const = 0;
};

/// An empty file. Whoever links the layer has libqpdf behind it from the start; the program loads
/// it with the first PDF (docs/decisions/016-pdf-loaded-when-needed.md).
std::unique_ptr<PdfObjects> new_pdf_objects();

}  // namespace blockwright::writing
