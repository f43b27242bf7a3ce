add_layer(job
  HEADERS file_store.hpp job.hpp
  SOURCES disk_files.cpp read_job.cpp run_job.cpp run_fit.cpp run_batch.cpp run_compare.cpp wishes.cpp
          block_pass.cpp new_tape.cpp drawings.cpp fit_report.cpp compare_report.cpp report_text.cpp report_json.cpp problems_as_json.cpp notes.cpp
          safe_name.cpp schemas.cpp problem_guide.cpp steps_text.cpp
  USES base geometry measure pattern draft dart fit style check layout write
  LINKS fmt::fmt nlohmann_json::nlohmann_json Threads::Threads)
