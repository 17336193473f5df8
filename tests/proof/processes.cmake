# The proof from the pixels of the exported PDF, for every demo.
if(TARGET punchwright)
  file(GLOB designs CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/patterns/*.repeat)
  foreach(design IN LISTS designs)
    get_filename_component(name ${design} NAME_WE)
    add_test(NAME proof-from-pixels-${name} COMMAND /usr/bin/python3 -B
      ${CMAKE_CURRENT_SOURCE_DIR}/tools/prove_from_pixels.py $<TARGET_FILE:punchwright> ${design})
    set_tests_properties(proof-from-pixels-${name} PROPERTIES TIMEOUT 600)
  endforeach()

  # That the proof sees a mirror in the plan and in its conversions: planted in a copy of the source, which is built.
  add_test(NAME proof_planted_mirrors COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_SOURCE_DIR}/tools/plant_mirrors.py)
  set_tests_properties(proof_planted_mirrors PROPERTIES LABELS nightly RUN_SERIAL TRUE TIMEOUT 3600)
endif()
