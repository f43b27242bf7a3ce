add_layer(job
  HEADERS file_store.hpp draft_job.hpp
  SOURCES disk_files.cpp read_job.cpp run_draft.cpp report_text.cpp report_json.cpp notes.cpp
          safe_name.cpp schemas.cpp problem_guide.cpp steps_text.cpp
  USES base geometry measure pattern draft check layout write
  LINKS fmt::fmt nlohmann_json::nlohmann_json)
