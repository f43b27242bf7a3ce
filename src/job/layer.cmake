add_layer(job
  HEADERS explained.hpp job.hpp
  SOURCES read_job.cpp run_job.cpp run_fit.cpp run_batch.cpp run_stream.cpp run_compare.cpp wishes.cpp
          block_pass.cpp new_tape.cpp explained.cpp drawings.cpp run_report.cpp fitting_report.cpp
          schemas.cpp embedded_docs.cpp explain.cpp
          batch_line.cpp batch_summary.cpp batch_work.cpp done_record.cpp output_stem.cpp shard.cpp work_in_order.cpp
  USES base text geometry measure pattern block draft dart fit style check layout write report files
  LINKS fmt::fmt nlohmann_json::nlohmann_json Threads::Threads PkgConfig::XXHASH)
# The pages that are built into the program.
set(embedded_docs problems.md schema/client.schema.json schema/pattern.schema.json
  schema/report.schema.json schema/style.schema.json)
list(TRANSFORM embedded_docs PREPEND ${PROJECT_SOURCE_DIR}/docs/)
set_source_files_properties(${CMAKE_CURRENT_SOURCE_DIR}/job/embedded_docs.cpp PROPERTIES
  COMPILE_DEFINITIONS BLOCKWRIGHT_DOCS="${PROJECT_SOURCE_DIR}/docs"
  OBJECT_DEPENDS "${embedded_docs}")
