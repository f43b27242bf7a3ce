#include "blockwright/text/json_edit.hpp"

#include "blockwright/base/error.hpp"

#include <sstream>

namespace blockwright {
namespace {

bool has_newline(std::string_view text) { return text.find('\n') != std::string_view::npos; }

// The spaces and tabulators that a text begins with.
std::string leading_blanks(std::string_view text) {
  return std::string(text.substr(0, std::min(text.find_first_not_of(" \t"), text.size())));
}

// The indent of the last line of the white space between two values.
std::string indent_in(std::string_view gap) {
  return leading_blanks(gap.substr(gap.rfind('\n') + 1));
}

// Where a child begins: at its key, if it has one.
std::size_t start_of(const JsonValue& child, const JsonValue& container) {
  return container.kind == JsonKind::Object ? child.key_begin : child.begin;
}

JsonDocument document_of(const std::string& text, std::string_view file, const JsonFileKind& kind) {
  std::istringstream in(text);
  return JsonDocument::read(in, file, kind);
}

JsonStyle style_of(std::string_view text, const JsonDocument& document) {
  JsonStyle style;
  const JsonValue& root = document.root();
  if (root.kind != JsonKind::Object || root.children.empty()) return style;
  const JsonValue& first = document.child(root, 0);
  const std::string_view gap = text.substr(root.begin + 1, first.key_begin - root.begin - 1);
  style.lines = has_newline(gap);
  if (style.lines) style.step = indent_in(gap);
  if (text.find("\r\n") != std::string_view::npos) style.newline = "\r\n";
  const std::size_t quote = text.rfind('"', first.begin - 1);
  style.colon = text.substr(quote + 1, first.begin - quote - 1);
  style.comma = style.colon.ends_with(' ') ? ", " : ",";
  return style;
}

}  // namespace

JsonEdit::JsonEdit(std::string_view text, const JsonFileKind& kind, std::string_view file)
    : mark_(text.starts_with(kByteOrderMark) ? kByteOrderMark : std::string_view()),
      text_(text.substr(mark_.size())),
      document_(document_of(text_, file, kind)),
      style_(style_of(text_, document_)) {}

std::string_view JsonEdit::bytes(std::size_t begin, std::size_t end) const {
  return std::string_view(text_).substr(begin, end - begin);
}

std::string JsonEdit::with_bytes(std::size_t begin, std::size_t end, std::string_view bytes) const {
  std::string result = mark_ + text_;
  result.replace(mark_.size() + begin, end - begin, bytes);
  return result;
}

bool JsonEdit::has_lines(const JsonValue& container) const {
  if (container.children.empty()) return false;
  const std::size_t first = start_of(document_.child(container, 0), container);
  return has_newline(bytes(container.begin + 1, first));
}

std::string JsonEdit::line_indent(std::size_t at) const {
  const std::size_t before = at == 0 ? std::string::npos : text_.rfind('\n', at - 1);
  return leading_blanks(bytes(before == std::string::npos ? 0 : before + 1, at));
}

// What stands between the last two of the first `children`; where there is one alone, what stands
// before it, with a comma.
std::string JsonEdit::separator(const JsonValue& container, std::size_t children) const {
  const JsonValue& last = document_.child(container, children - 1);
  if (children > 1) {
    const JsonValue& before = document_.child(container, children - 2);
    return std::string(bytes(before.end, start_of(last, container)));
  }
  if (!has_lines(container)) return style_.comma;
  return ',' + std::string(bytes(container.begin + 1, start_of(last, container)));
}

std::string JsonEdit::member_text(const JsonValue& object, std::size_t members,
                                  std::string_view key, const JsonPart& value) const {
  const std::string before = separator(object, members);
  const JsonPart fitting = has_newline(before) ? value : on_one_line(value);
  return before + json_quoted(key) + style_.colon +
         written(fitting, style_, has_newline(before) ? indent_in(before) : std::string());
}

std::string JsonEdit::with_member(const JsonValue& object, std::string_view key,
                                  const JsonPart& value) const {
  require(!object.children.empty(), "a member to follow no other");
  const std::size_t members = object.children.size();
  const std::size_t end = document_.child(object, members - 1).end;
  return with_bytes(end, end, member_text(object, members, key, value));
}

std::string JsonEdit::with_value(const JsonValue& old, const JsonPart& value) const {
  return with_bytes(old.begin, old.end, written(on_one_line(value), style_, {}));
}

std::string JsonEdit::in_empty_list(const JsonValue& list, const JsonPart& element) const {
  const std::size_t begin = list.begin + 1;
  const JsonValue& parent = document_.parent(list);
  if (!has_lines(parent)) {
    return with_bytes(begin, begin, written(on_one_line(element), style_, {}));
  }
  const std::string outer = line_indent(list.begin);
  const std::string inner = outer + style_.step;
  const bool closed_below = has_newline(bytes(begin, list.end));
  return with_bytes(begin, begin,
                    style_.newline + inner + written(element, style_, inner) +
                        (closed_below ? std::string() : style_.newline + outer));
}

std::string JsonEdit::with_element(const JsonValue& list, std::size_t index,
                                   const JsonPart& element) const {
  const std::size_t count = list.children.size();
  if (count == 0) return in_empty_list(list, element);
  const std::string between = separator(list, count);
  const JsonPart fitting = has_newline(between) ? element : on_one_line(element);
  const std::string text =
      written(fitting, style_, has_newline(between) ? indent_in(between) : std::string());
  if (index < count) {
    const std::size_t begin = document_.child(list, index).begin;
    return with_bytes(begin, begin, text + between);
  }
  const std::size_t end = document_.child(list, count - 1).end;
  return with_bytes(end, end, between + text);
}

}  // namespace blockwright
