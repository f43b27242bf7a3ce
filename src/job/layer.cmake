add_layer(job
  HEADERS file_store.hpp job.hpp
  SOURCES disk_files.cpp read_job.cpp run_job.cpp wishes.cpp report_text.cpp report_json.cpp notes.cpp
          safe_name.cpp schemas.cpp problem_guide.cpp steps_text.cpp
  USES base geometry measure pattern draft dart style check layout write
  LINKS fmt::fmt nlohmann_json::nlohmann_json)
