# SPDX-License-Identifier: Apache-2.0
# The program. It stands at the top of the build folder, where people and scripts look for it.

set(program_source ${PROJECT_SOURCE_DIR}/tools/cli/main.cpp)
file(GLOB program_sources CONFIGURE_DEPENDS ${program_source})
if(program_sources)
  add_executable(noonhouse ${program_sources})
  target_link_libraries(noonhouse PRIVATE tools_cli)
  set_target_properties(noonhouse PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
endif()
