add_layer(report
  HEADERS report.hpp fitting_report.hpp comparison.hpp tape_report.hpp
  SOURCES stages.cpp words.cpp paper_lines.cpp report_text.cpp report_json.cpp bands_text.cpp
          fitting_report.cpp fitting_story.cpp comparison.cpp tape_report.cpp
  USES base text measure pattern draft dart fit check
  LINKS fmt::fmt nlohmann_json::nlohmann_json)
