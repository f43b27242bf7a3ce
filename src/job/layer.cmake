add_layer(job
  HEADERS explained.hpp file_store.hpp job.hpp system_calls.hpp
  SOURCES disk_files.cpp file_set.cpp file_trouble.cpp folder_lock.cpp leftovers.cpp open_file.cpp
          open_folder.cpp set_names.cpp system_calls.cpp
          read_job.cpp run_job.cpp run_fit.cpp run_batch.cpp run_stream.cpp run_compare.cpp wishes.cpp
          block_pass.cpp new_tape.cpp explained.cpp drawings.cpp fit_report.cpp compare_report.cpp report_text.cpp report_json.cpp problems_as_json.cpp notes.cpp
          safe_name.cpp schemas.cpp problem_guide.cpp steps_text.cpp
          batch_line.cpp batch_summary.cpp batch_work.cpp done_record.cpp output_stem.cpp shard.cpp work_in_order.cpp
  USES base geometry measure pattern draft dart fit style check layout write
  LINKS fmt::fmt nlohmann_json::nlohmann_json Threads::Threads PkgConfig::XXHASH)
