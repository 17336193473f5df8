# Each src/words/CODE.po as the file that gettext reads, built beside the programs and installed where it looks.
find_program(MSGFMT msgfmt REQUIRED)
include(GNUInstallDirs)
file(GLOB translations CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/words/*.po)
foreach(translation ${translations})
  get_filename_component(code ${translation} NAME_WE)
  set(folder ${PROJECT_BINARY_DIR}/locale/${code}/LC_MESSAGES)
  add_custom_command(OUTPUT ${folder}/punchwright.mo
    COMMAND ${CMAKE_COMMAND} -E make_directory ${folder}
    COMMAND ${MSGFMT} --check -o ${folder}/punchwright.mo ${translation}
    DEPENDS ${translation} VERBATIM)
  list(APPEND translated ${folder}/punchwright.mo)
  install(FILES ${folder}/punchwright.mo DESTINATION ${CMAKE_INSTALL_LOCALEDIR}/${code}/LC_MESSAGES)
endforeach()
add_custom_target(translations ALL DEPENDS ${translated})
