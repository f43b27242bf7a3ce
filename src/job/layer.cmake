add_layer(job
  HEADERS job.hpp options.hpp tape_form.hpp fit_words.hpp
  SOURCES run_job.cpp toile_number.cpp
          fit/run_fit.cpp fit/fit_picture.cpp fit/shown_amounts.cpp fit/fit_corrections.cpp
          fit/most_taken.cpp fit/fit_fittings.cpp fit/fit_answers.cpp fit/fit_offer.cpp fit/fit_reports.cpp
          run_compare.cpp run_tape.cpp run_tape_sheet.cpp run_tape_blank.cpp tape_form.cpp
          block_pass.cpp worn_block.cpp below_body.cpp doubt.cpp
          new_tape/new_tape.cpp new_tape/new_tape_steps.cpp new_tape/new_tape_sums.cpp
          new_tape/new_tape_in_full.cpp new_tape/drafted_lengths.cpp
          drawings.cpp run_report.cpp cloth_lines.cpp embedded_docs.cpp
          batch/run_batch.cpp batch/run_stream.cpp batch/batch_summary.cpp batch/batch_work.cpp
          batch/sources_hash.cpp batch/work_in_order.cpp
          options/options.cpp options/option.cpp options/option_words.cpp options/read_job.cpp
          options/job_schema.cpp options/output_kinds.cpp options/wishes.cpp
  USES base text geometry measure figure pattern block draft dart garment fit style check layout write report files
  LINKS fmt::fmt nlohmann_json::nlohmann_json Threads::Threads PkgConfig::XXHASH)
# The pages that are built into the program.
set(embedded_docs problems.md schema/client.schema.json schema/pattern.schema.json
  schema/report.schema.json schema/style.schema.json)
list(TRANSFORM embedded_docs PREPEND ${PROJECT_SOURCE_DIR}/docs/)
set_source_files_properties(${CMAKE_CURRENT_SOURCE_DIR}/job/embedded_docs.cpp PROPERTIES
  COMPILE_DEFINITIONS BLOCKWRIGHT_DOCS="${PROJECT_SOURCE_DIR}/docs"
  OBJECT_DEPENDS "${embedded_docs}")

# What the batch's stamps name of the program. Only the layer that needs it is built anew.
file(GLOB_RECURSE blockwright_sources CONFIGURE_DEPENDS LIST_DIRECTORIES false
     ${PROJECT_SOURCE_DIR}/src/* ${PROJECT_SOURCE_DIR}/include/*)
add_custom_command(
  OUTPUT ${PROJECT_BINARY_DIR}/generated/generated_sources_hash.hpp
  COMMAND ${CMAKE_COMMAND} -D SOURCE=${PROJECT_SOURCE_DIR}
          -D OUT=${PROJECT_BINARY_DIR}/generated/generated_sources_hash.hpp
          -P ${CMAKE_CURRENT_LIST_DIR}/batch/sources_hash.cmake
  DEPENDS ${blockwright_sources} VERBATIM)
target_sources(blockwright_job PRIVATE ${PROJECT_BINARY_DIR}/generated/generated_sources_hash.hpp)
target_include_directories(blockwright_job PRIVATE ${PROJECT_BINARY_DIR}/generated)
