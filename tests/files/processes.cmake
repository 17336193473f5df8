# Saving as a process of its own, under strace; and ten thousand kills. Both look at system calls, which a sanitizer
# only makes more of.
if(NOT PUNCHWRIGHT_SANITIZE)
  add_executable(save_once ${CMAKE_CURRENT_LIST_DIR}/programs/save_once.cpp)
  target_link_libraries(save_once PRIVATE files)
  add_test(NAME files_every_call COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_LIST_DIR}/every_call_test.py)
  set_tests_properties(files_every_call PROPERTIES LABELS core TIMEOUT 900
    ENVIRONMENT PUNCHWRIGHT_SAVER=$<TARGET_FILE:save_once>)
  add_test(NAME files_ten_thousand_kills COMMAND test_files "--test-case=a program killed while it saves*")
  set_tests_properties(files_ten_thousand_kills PROPERTIES LABELS "core;nightly" TIMEOUT 1800
    ENVIRONMENT PUNCHWRIGHT_KILLS=10000)
endif()
