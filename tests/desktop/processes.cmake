# What is installed, as a desktop and a packager meet it. Apart from the core's label, since it needs both programs.
add_test(NAME desktop COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_LIST_DIR}/installed_test.py)
set_tests_properties(desktop PROPERTIES LABELS desktop TIMEOUT 300
  ENVIRONMENT "PUNCHWRIGHT=$<TARGET_FILE:punchwright>;PUNCHWRIGHT_BUILD=${PROJECT_BINARY_DIR}")
