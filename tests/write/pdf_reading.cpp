#include "write/pdf_reading.hpp"

#include "blockwright/write/writers.hpp"

#include <sstream>
#include <stdexcept>

namespace blockwright_tests {

std::string pdf_bytes(const PrintPlan& plan) {
  std::ostringstream out;
  TextFonts fonts;
  write_pdf(out, plan, fonts);
  return out.str();
}

std::string svg_bytes(const Sheet& sheet, const std::string& title) {
  std::ostringstream out;
  write_svg(out, sheet, title, TextFonts());
  return out.str();
}

PdfFile::PdfFile(const PrintPlan& plan) : path_(folder_.write("plan.pdf", pdf_bytes(plan))) {
  const ToolResult json = run_tool("qpdf --json=2 --json-stream-data=none " + path_);
  if (json.exit_code != 0) throw std::runtime_error(json.output);
  file_ = nlohmann::json::parse(json.output);
}

nlohmann::json PdfFile::follow(const nlohmann::json& value) const {
  const auto& objects = file_.at("qpdf").at(1);
  if (!value.is_string() || !objects.contains("obj:" + value.get<std::string>())) return value;
  const auto& object = objects.at("obj:" + value.get<std::string>());
  return object.contains("stream") ? object.at("stream").at("dict") : object.at("value");
}

nlohmann::json PdfFile::catalog() const {
  return follow(file_.at("qpdf").at(1).at("trailer").at("value").at("/Root"));
}

nlohmann::json PdfFile::info() const {
  return follow(file_.at("qpdf").at(1).at("trailer").at("value").at("/Info"));
}

std::vector<nlohmann::json> PdfFile::pages() const {
  std::vector<nlohmann::json> pages;
  for (const auto& page : file_.at("pages")) pages.push_back(follow(page.at("object")));
  return pages;
}

std::vector<std::string> PdfFile::page_labels() const {
  std::vector<std::string> labels;
  for (const auto& page : file_.at("pages")) labels.push_back(text_of(page.at("label").at("/P")));
  return labels;
}

std::vector<nlohmann::json> PdfFile::dictionaries() const {
  std::vector<nlohmann::json> found;
  for (const auto& [key, object] : file_.at("qpdf").at(1).items()) {
    if (object.contains("stream")) found.push_back(object.at("stream").at("dict"));
    if (object.contains("value")) found.push_back(object.at("value"));
  }
  return found;
}

std::string text_of(const nlohmann::json& value) {
  const auto text = value.get<std::string>();
  if (!text.starts_with("u:")) throw std::runtime_error("no text string: " + text);
  return text.substr(2);
}

}  // namespace blockwright_tests
