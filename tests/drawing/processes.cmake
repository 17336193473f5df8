# Strips counted by their frieze groups, against another program.
add_executable(strip_counts ${CMAKE_CURRENT_LIST_DIR}/programs/strip_counts.cpp)
target_link_libraries(strip_counts PRIVATE drawing)
add_test(NAME drawing_sympy COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_LIST_DIR}/against_sympy_test.py)
set_tests_properties(drawing_sympy PROPERTIES
  LABELS core TIMEOUT 120 ENVIRONMENT PUNCHWRIGHT_STRIPS=$<TARGET_FILE:strip_counts>)
