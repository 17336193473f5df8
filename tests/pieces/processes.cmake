# Stitch counts of whole yokes against an integer program; larger counts in the nightly run.
if(TARGET punchwright)
  set(test ${CMAKE_CURRENT_LIST_DIR}/against_glpsol_test.py)
  add_test(NAME pieces_glpsol COMMAND /usr/bin/python3 -B ${test})
  add_test(NAME pieces_glpsol_many COMMAND /usr/bin/python3 -B ${test})
  set_tests_properties(pieces_glpsol pieces_glpsol_many PROPERTIES
    LABELS core TIMEOUT 600 ENVIRONMENT PUNCHWRIGHT=$<TARGET_FILE:punchwright>)
  set_tests_properties(pieces_glpsol_many PROPERTIES
    LABELS "core;nightly" TIMEOUT 3600 ENVIRONMENT "PUNCHWRIGHT=$<TARGET_FILE:punchwright>;PUNCHWRIGHT_ROUNDS=60")
endif()
