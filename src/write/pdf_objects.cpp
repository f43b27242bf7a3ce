#include "pdf_objects.hpp"

#include "blockwright/base/printable.hpp"

namespace blockwright::writing {
namespace {

constexpr std::string_view kHexDigits = "0123456789ABCDEF";

}  // namespace

std::string pdf_ref(PdfId id) { return std::to_string(id) + " 0 R"; }

std::string PdfObjects::text(std::string_view utf8) const { return text_object(printable(utf8)); }

std::string pdf_hex_16(unsigned value) {
  std::string text;
  for (int shift = 12; shift >= 0; shift -= 4) text += kHexDigits[(value >> shift) & 0xF];
  return text;
}

}  // namespace blockwright::writing
