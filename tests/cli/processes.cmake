# The command line as a process: one entry for each file of tests/cli, run by Debian's own Python 3.
# Each gets the program's path from here, so that no other one on the machine is tried by mistake.
file(GLOB cli_tests CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/*_test.py)
foreach(file IN LISTS cli_tests)
  get_filename_component(name ${file} NAME_WE)
  string(REGEX REPLACE "_test$" "" name ${name})
  add_test(NAME cli_${name} COMMAND /usr/bin/python3 -B ${file})
  set_tests_properties(cli_${name} PROPERTIES
    LABELS core
    TIMEOUT 300
    ENVIRONMENT PUNCHWRIGHT=$<TARGET_FILE:punchwright>)
endforeach()
