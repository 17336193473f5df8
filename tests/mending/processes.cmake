# The mend of whole files against an integer program, and that of blocks whose stitches have prices.
add_glpsol_tests(mending 300 300)
if(TARGET punchwright)
  add_executable(mend_blocks ${CMAKE_CURRENT_LIST_DIR}/programs/mend_blocks.cpp)
  target_link_libraries(mend_blocks PRIVATE mending)
  foreach(name mending_glpsol_prices mending_glpsol_prices_many)
    add_test(NAME ${name} COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_LIST_DIR}/prices_against_glpsol_test.py)
  endforeach()
  set_tests_properties(mending_glpsol_prices PROPERTIES
    LABELS core TIMEOUT 300 ENVIRONMENT PUNCHWRIGHT_MENDER=$<TARGET_FILE:mend_blocks>)
  set_tests_properties(mending_glpsol_prices_many PROPERTIES
    LABELS "core;nightly" TIMEOUT 3600 ENVIRONMENT "PUNCHWRIGHT_MENDER=$<TARGET_FILE:mend_blocks>;PUNCHWRIGHT_ROUNDS=300")
endif()
