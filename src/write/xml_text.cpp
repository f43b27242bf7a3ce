#include "xml_text.hpp"

#include "blockwright/text/clean_text.hpp"

namespace blockwright::writing {

std::string xml_text(std::string_view utf8) {
  std::string escaped;
  for (const char c : clean_line(utf8)) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

}  // namespace blockwright::writing
