#include "xml_text.hpp"

#include "blockwright/base/printable.hpp"

#include <map>

namespace blockwright::writing {

std::string xml_text(std::string_view utf8) {
  static const std::map<char, std::string_view> entities = {
      {'&', "&amp;"}, {'<', "&lt;"}, {'>', "&gt;"}, {'"', "&quot;"}};
  std::string escaped;
  for (const char c : printable(utf8)) {
    const auto entity = entities.find(c);
    escaped += entity == entities.end() ? std::string_view(&c, 1) : entity->second;
  }
  return escaped;
}

}  // namespace blockwright::writing
