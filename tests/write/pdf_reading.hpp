#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "support/run_tool.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// The plan's PDF as bytes.
std::string pdf_bytes(const PrintPlan& plan);
/// The sheet's SVG as text.
std::string svg_bytes(const Sheet& sheet, const std::string& title = "Title");

/// A PDF file as qpdf's JSON (version 2): qpdf parses it independently of the code that wrote it.
class PdfFile {
 public:
  explicit PdfFile(const PrintPlan& plan);

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] nlohmann::json catalog() const;
  [[nodiscard]] nlohmann::json info() const;
  [[nodiscard]] std::vector<nlohmann::json> pages() const;
  /// Labels of the pages, as viewers show them.
  [[nodiscard]] std::vector<std::string> page_labels() const;
  /// Follows a reference such as "5 0 R"; anything else is returned as it is.
  [[nodiscard]] nlohmann::json follow(const nlohmann::json& value) const;
  /// Dictionaries of all objects, those of streams included.
  [[nodiscard]] std::vector<nlohmann::json> dictionaries() const;

 private:
  TempFolder folder_;
  std::string path_;
  nlohmann::json file_;
};

/// A PDF text string as qpdf's JSON shows it, without its mark "u:".
std::string text_of(const nlohmann::json& value);

}  // namespace blockwright_tests
