# No limit is forgotten: every constant of src/ and include/ whose name says that it is one, and that is
# compared with something in a file that refuses or warns, is the tag of a test that tries it from both
# sides: TEST_CASE("...", "[kLeastShoulder]").
#   cmake -D ROOT=<checkout> -P tests/layers/limits.cmake
cmake_minimum_required(VERSION 3.25)
set(NAMES "k(Most|Least|TooFar|Wide|Narrowest|Longest|Shortest|Largest|Smallest|Deepest|Steepest)[A-Za-z]*")
set(REFUSES "refuse|Problem|throw |Error[({]|Severity")

# Compared in such a file, but nothing is refused or said for it: a shape or a search turns there.
set(TURNS_A_SHAPE
  kLeastKink            # a smaller corner is no corner
  kMostKink             # a larger corner is meant, and is not blended
  kMostLonger           # a hinge that would lengthen a seam by more is not blended
  kMostAtSide           # a wider side dart is made two
  kMostInBackDart       # what the darts do not take goes to the sides
  kMostAcross           # where a point is looked for
  kMostTurn             # where a turn is looked for
  kMostTries            # how often a lock is tried
  kLongestWord)         # longer words resemble no key: no advice

file(GLOB_RECURSE files RELATIVE "${ROOT}" "${ROOT}/src/*.[ch]pp" "${ROOT}/include/*.hpp")
set(limits "")
foreach(file IN LISTS files)
  file(READ "${ROOT}/${file}" text)
  string(REGEX REPLACE "//[^\n]*" "" text "${text}")
  if(NOT text MATCHES "${REFUSES}")
    continue()
  endif()
  # Statements one by one; brackets would join the items of a list.
  string(REGEX REPLACE "[][\n]" " " text "${text}")
  string(REGEX REPLACE "[{}]" ";" text "${text}")
  foreach(statement IN LISTS text)
    if(NOT statement MATCHES " [<>]=? | (most|least) = ")
      continue()
    endif()
    string(REGEX MATCHALL "[^A-Za-z]${NAMES}" found "${statement}")
    foreach(name IN LISTS found)
      string(SUBSTRING "${name}" 1 -1 name)
      list(APPEND limits ${name})
    endforeach()
  endforeach()
endforeach()
list(REMOVE_DUPLICATES limits)
list(SORT limits)
list(LENGTH limits count)
if(count LESS 30)
  message(FATAL_ERROR "Only ${count} limits found under ${ROOT}: nothing was really checked.")
endif()

set(tags "")
file(GLOB tests "${ROOT}/tests/*/*_test.cpp")
foreach(test IN LISTS tests)
  file(READ "${test}" text)
  string(REGEX MATCHALL "\\[${NAMES}\\]" found "${text}")
  list(APPEND tags ${found})
endforeach()

set(faults "")
foreach(name IN LISTS limits)
  if(NOT "[${name}]" IN_LIST tags AND NOT name IN_LIST TURNS_A_SHAPE)
    string(APPEND faults "  ${name}: no test has this tag\n")
  endif()
endforeach()
foreach(name IN LISTS TURNS_A_SHAPE)
  if(NOT name IN_LIST limits OR "[${name}]" IN_LIST tags)
    string(APPEND faults "  ${name}: is in the list of exceptions without need\n")
  endif()
endforeach()
if(faults)
  message(FATAL_ERROR "Limits that no test tries from both sides:\n${faults}")
endif()
message(STATUS "${count} limits have their tests.")
