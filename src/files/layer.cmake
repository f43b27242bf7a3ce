add_layer(files
  HEADERS file_store.hpp safe_name.hpp stamp.hpp system_calls.hpp
  SOURCES disk_files.cpp file_set.cpp file_trouble.cpp folder_lock.cpp leftovers.cpp open_folder.cpp
          safe_name.cpp set_names.cpp stamp.cpp system_calls.cpp
  USES base text
  LINKS fmt::fmt nlohmann_json::nlohmann_json PkgConfig::XXHASH)
