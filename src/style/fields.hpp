#pragma once

#include <nlohmann/json.hpp>

#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// Throws InputError: "file: key: message (hint)".
[[noreturn]] void refuse_style(const char* code, std::string_view file, const std::string& key,
                               const std::string& message, const std::string& hint);

/// Parses a style file: JSON of one object, at most 1 MiB and 8 deep, no key twice.
nlohmann::json parsed_style(const std::string& text, std::string_view file);

/// The fields of one object, taken one by one; finish() refuses what nobody took.
class Fields {
 public:
  /// `path` is the object's place in the file, such as "steps[2].pivot".
  Fields(const nlohmann::json& object, std::string_view file, std::string path);

  std::string text(const char* key);
  std::string text_or(const char* key, const std::string& otherwise);
  std::optional<double> number(const char* key);
  double required_number(const char* key);
  int whole_number_or(const char* key, int otherwise);
  double number_or(const char* key, double otherwise) { return number(key).value_or(otherwise); }
  std::optional<std::vector<double>> numbers(const char* key);
  bool flag_or(const char* key, bool otherwise);
  /// The place of a word in a list; throws "style.value", naming the words.
  std::size_t one_of(const char* key, std::initializer_list<const char*> words);
  const nlohmann::json* any(const char* key);
  void finish() const;

  [[nodiscard]] std::string path_of(const std::string& key) const;

 private:
  void require(const char* key);
  [[noreturn]] void refuse_type(const char* key, const nlohmann::json& value,
                                const char* wanted) const;

  const nlohmann::json& object_;
  std::string_view file_;
  std::string path_;
  std::set<std::string> known_;
};

}  // namespace blockwright
