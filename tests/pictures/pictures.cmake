# Draws the pictures of docs/pictures again from the demo people.
#
#   cmake -D ROOT=<checkout> -D WORK=<scratch folder> -D BLOCKWRIGHT=<program> -D PICTURES=<program>
#         -D DART_PICTURES=<program> -D FIT_PICTURES=<program> -D FIRST_PICTURES=<program>
#         -D STYLE_PICTURES=<program> -D TAPE_PICTURES=<program> [-D UPDATE=ON] -P tests/pictures/pictures.cmake
#
# Fails if one differs from what is published, or with UPDATE=ON puts the new ones in its place.
cmake_minimum_required(VERSION 3.25)
set(CLIENT ${ROOT}/examples/wardrobe/ondine-marsh.json)
set(DRAWN ${WORK}/pictures)
set(PUBLISHED ${ROOT}/docs/pictures)
file(REMOVE_RECURSE ${DRAWN})
file(MAKE_DIRECTORY ${DRAWN})
execute_process(COMMAND ${BLOCKWRIGHT} draft ${CLIENT} --cut toile --write svg --out ${DRAWN}
                OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(RENAME ${DRAWN}/ondine-marsh-toile.svg ${DRAWN}/block.svg)
file(COPY ${CLIENT} DESTINATION ${DRAWN})
execute_process(COMMAND ${BLOCKWRIGHT} fit ${DRAWN}/ondine-marsh.json --date 2026-03-21 --toile 1
                        --add "lower front_neck 1.0" OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(RENAME ${DRAWN}/ondine-marsh-fit.svg ${DRAWN}/fit-page.svg)
execute_process(COMMAND ${BLOCKWRIGHT} draft ${DRAWN}/ondine-marsh.json --cut card --write svg
                        --out ${DRAWN} OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(RENAME ${DRAWN}/ondine-marsh-card.svg ${DRAWN}/first-card.svg)
execute_process(COMMAND ${BLOCKWRIGHT} adapt ${CLIENT} ${ROOT}/examples/styles/strapped-top.json --write svg
                        --out ${DRAWN} OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(RENAME ${DRAWN}/ondine-marsh-strapped-top-garment.svg ${DRAWN}/garment-sheet.svg)
execute_process(COMMAND ${PICTURES} ${CLIENT} ${DRAWN} COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${DART_PICTURES} ${ROOT}/examples/wardrobe ${DRAWN}
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${FIT_PICTURES} ${ROOT}/examples/wardrobe ${DRAWN}
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${FIRST_PICTURES} ${ROOT}/examples/wardrobe ${DRAWN}
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${STYLE_PICTURES} ${ROOT}/examples ${DRAWN} COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${TAPE_PICTURES} ${DRAWN} COMMAND_ERROR_IS_FATAL ANY)

file(GLOB names RELATIVE ${DRAWN} ${DRAWN}/*.svg)
list(LENGTH names count)
if(count LESS 152)
  message(FATAL_ERROR "Only ${count} pictures were drawn.")
endif()
foreach(name IN LISTS names)
  if(UPDATE)
    file(COPY_FILE ${DRAWN}/${name} ${PUBLISHED}/${name})
    continue()
  endif()
  execute_process(COMMAND ${CMAKE_COMMAND} -E compare_files ${DRAWN}/${name} ${PUBLISHED}/${name}
                  RESULT_VARIABLE differs)
  if(differs)
    message(FATAL_ERROR "docs/pictures/${name} is not what the program draws. Look at "
                        "${DRAWN}/${name}; if it is right, run this script with -D UPDATE=ON.")
  endif()
endforeach()
