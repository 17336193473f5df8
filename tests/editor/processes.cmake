# The editor's tests: those of its parts without a window, and whole jobs in a real one (Xvfb, xdotool).
file(GLOB editor_unit_tests CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/editor/unit/*.cpp)
add_executable(test_editor ${editor_unit_tests} ${CMAKE_CURRENT_SOURCE_DIR}/editor/load/frames.cpp)
target_link_libraries(test_editor PRIVATE test_support editor)
target_include_directories(test_editor PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/editor)
add_test(NAME editor COMMAND test_editor)
set_tests_properties(editor PROPERTIES LABELS editor)

# A large design under a random hand, in the editor's own frames without a window: 20 s of it, ten minutes in the nightly run.
file(GLOB editor_load_tests CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/editor/load/*.cpp)
add_executable(test_editor_load ${editor_load_tests})
target_link_libraries(test_editor_load PRIVATE test_support editor)
target_include_directories(test_editor_load PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/editor)
add_test(NAME editor_load COMMAND test_editor_load)
set_tests_properties(editor_load PROPERTIES LABELS editor TIMEOUT 900)
add_test(NAME editor_load_ten_minutes COMMAND test_editor_load)
set_tests_properties(editor_load_ten_minutes PROPERTIES LABELS "editor;nightly" RUN_SERIAL TRUE TIMEOUT 3600
  ENVIRONMENT PUNCHWRIGHT_SECONDS=600)

foreach(job bench desktops drawing files findings jobs low_bands menus panels pictures play preview recovery rows screens settings together
    tools trace yarns yoke)
  add_test(NAME editor_${job} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/editor/${job}_test.py)
  set_tests_properties(editor_${job} PROPERTIES LABELS editor TIMEOUT 900
    ENVIRONMENT "PUNCHWRIGHT_EDITOR=$<TARGET_FILE:punchwright-editor>;PUNCHWRIGHT=$<TARGET_FILE:punchwright>;PYTHONDONTWRITEBYTECODE=1")
endforeach()

# That the comparison of the screens sees a real defect: faults planted in a copy of the source. It builds a copy of the editor.
add_test(NAME editor_planted_faults
  COMMAND /usr/bin/python3 -B ${PROJECT_SOURCE_DIR}/tests/tools/plant_screen_faults.py)
set_tests_properties(editor_planted_faults PROPERTIES LABELS "editor;nightly" RUN_SERIAL TRUE TIMEOUT 7200)

# Two hundred kills under a hand that draws; in the usual run there are twenty.
add_test(NAME editor_two_hundred_kills COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/editor/recovery_test.py Kills)
set_tests_properties(editor_two_hundred_kills PROPERTIES LABELS "editor;nightly" RUN_SERIAL TRUE TIMEOUT 7200
  ENVIRONMENT "PUNCHWRIGHT_KILLS=200;PUNCHWRIGHT_EDITOR=$<TARGET_FILE:punchwright-editor>;PUNCHWRIGHT=$<TARGET_FILE:punchwright>;PYTHONDONTWRITEBYTECODE=1")

# The editor under AddressSanitizer and UndefinedBehaviorSanitizer, with a sample of the jobs. It builds an editor of its own.
add_test(NAME editor_sanitized COMMAND ${PROJECT_SOURCE_DIR}/tests/tools/sanitized_editor.sh)
set_tests_properties(editor_sanitized PROPERTIES LABELS "editor;nightly" RUN_SERIAL TRUE TIMEOUT 14400)
