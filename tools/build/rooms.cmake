# SPDX-License-Identifier: Apache-2.0
# A room is one folder, one library, one list of the rooms it may use.

add_library(noonhouse_options INTERFACE)
target_include_directories(noonhouse_options INTERFACE ${PROJECT_SOURCE_DIR})
target_compile_features(noonhouse_options INTERFACE cxx_std_20)
# -ffp-contract=off: the same bytes from every optimisation level and machine of this family.
target_compile_options(
  noonhouse_options INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor
                              -Wold-style-cast -Woverloaded-virtual -Werror -ffp-contract=off)
# False reports of GCC 12 inside library headers, not ours: Boost 1.74 at -O2; std::string's operator+ at
# -O3 (GCC bug 105651).
target_compile_options(noonhouse_options INTERFACE -Wno-maybe-uninitialized -Wno-restrict)
if(NOONHOUSE_SANITIZE)
  target_compile_options(noonhouse_options INTERFACE -fsanitize=address,undefined
                                                     -fno-sanitize-recover=all
                                                     -fno-omit-frame-pointer -g1
                                                     -Wno-array-bounds -Wno-stringop-overflow
                                                     -Wno-stringop-overread)
  target_link_options(noonhouse_options INTERFACE -fsanitize=address,undefined)
endif()

# room(NAME [USES room...] [LINKS library...])
# Declares the room in folder NAME (such as sim/core). USES names rooms declared before this one:
# the list of rooms therefore reads bottom to top and cannot hold a cycle.
function(room name)
  cmake_parse_arguments(ROOM "" "" "USES;LINKS" ${ARGN})
  string(REPLACE "/" "_" target ${name})
  file(GLOB sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/${name}/*.cpp)
  list(FILTER sources EXCLUDE REGEX "/main\\.cpp$")
  file(GLOB headers CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/${name}/*.hpp)
  if(sources)
    add_library(${target} STATIC ${sources})
    set(scope PUBLIC)
  else()
    add_library(${target} INTERFACE)
    set(scope INTERFACE)
  endif()
  target_sources(${target} ${scope} FILE_SET HEADERS BASE_DIRS ${PROJECT_SOURCE_DIR} FILES ${headers})
  target_link_libraries(${target} ${scope} noonhouse_options ${ROOM_LINKS})
  foreach(used IN LISTS ROOM_USES)
    string(REPLACE "/" "_" used_target ${used})
    if(NOT TARGET ${used_target})
      message(FATAL_ERROR "room ${name} uses ${used}, which is not declared below it: "
                          "tools/build/room_list.cmake reads bottom to top")
    endif()
    target_link_libraries(${target} ${scope} ${used_target})
  endforeach()
  # Rooms that neither step nor assemble a house wait for people and files: the optimiser would take longer than they do.
  if(sources AND name MATCHES "^tools/" AND NOT name MATCHES "/(scenario|placing|ledger)$")
    target_compile_options(${target} PRIVATE "$<$<CONFIG:Release>:-O1;-Wno-array-bounds;-Wno-stringop-overflow;-Wno-stringop-overread>")
  endif()
  set_target_properties(${target} PROPERTIES VERIFY_INTERFACE_HEADER_SETS ON)
  set_property(GLOBAL APPEND PROPERTY NOONHOUSE_ROOMS ${name})
endfunction()
