#pragma once

#include "blockwright/text/json_document.hpp"
#include "json_reason.hpp"
#include "json_tokens.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// Fills a document from its text.
class JsonBuilder {
 public:
  explicit JsonBuilder(JsonDocument& document) : document_(document), cursor_(document.text_) {}

  /// Throws InputError, see JsonDocument.
  void build();

  // What the parser reports, in order.
  void scalar(JsonValue value);
  void key(std::string key);
  void open(JsonKind kind);
  void close();
  [[noreturn]] void not_json();
  [[noreturn]] void number_too_large();

 private:
  std::size_t add(JsonValue value);
  void refuse_second(const std::string& key) const;
  [[nodiscard]] Stop stop() const;
  [[nodiscard]] Stop::After after() const;
  [[nodiscard]] std::string path_now() const;
  [[nodiscard]] std::string where_now() const;

  JsonDocument& document_;
  TokenCursor cursor_;
  std::vector<std::size_t> open_;   // lists and objects not closed yet, outermost first
  std::optional<std::string> key_;  // of which the value is still to come
  std::size_t key_begin_ = 0;
};

}  // namespace blockwright
