# What is installed besides the programs: how the desktop finds and shows them and their documents, manuals, completions,
# demos; and the Debian package of it all: cpack -G DEB in the build folder.
include(GNUInstallDirs)
set(desktop ${CMAKE_CURRENT_LIST_DIR})
set(share ${CMAKE_INSTALL_DATADIR})

install(FILES ${desktop}/punchwright.desktop DESTINATION ${share}/applications)
install(FILES ${desktop}/punchwright-mime.xml DESTINATION ${share}/mime/packages RENAME punchwright.xml)
install(FILES ${desktop}/punchwright.thumbnailer DESTINATION ${share}/thumbnailers)
install(FILES ${desktop}/punchwright.metainfo.xml DESTINATION ${share}/metainfo RENAME io.punchwright.punchwright.metainfo.xml)
install(FILES ${desktop}/icons/punchwright.svg DESTINATION ${share}/icons/hicolor/scalable/apps)
foreach(size 16 22 24 32 48 64 96 128 256 512)
  install(FILES ${desktop}/icons/png/punchwright-${size}.png
    DESTINATION ${share}/icons/hicolor/${size}x${size}/apps RENAME punchwright.png)
endforeach()
install(FILES ${desktop}/completions/punchwright.bash DESTINATION ${share}/bash-completion/completions RENAME punchwright)
install(FILES ${desktop}/completions/_punchwright DESTINATION ${share}/zsh/vendor-completions)
install(FILES ${desktop}/completions/punchwright.fish DESTINATION ${share}/fish/vendor_completions.d)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/patterns DESTINATION ${share}/punchwright
  FILES_MATCHING PATTERN "*.repeat" PATTERN "*.yoke")

# Manuals and the change log are packed as Debian packs them: at most, and without a name or a day inside.
find_program(GZIP gzip REQUIRED)
set(packed ${PROJECT_BINARY_DIR}/packed)
file(MAKE_DIRECTORY ${packed})
function(install_packed source name destination)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${source})
  execute_process(COMMAND ${GZIP} -9 -n -c ${source} OUTPUT_FILE ${packed}/${name}.gz COMMAND_ERROR_IS_FATAL ANY)
  install(FILES ${packed}/${name}.gz DESTINATION ${destination})
endfunction()
file(GLOB manuals CONFIGURE_DEPENDS ${desktop}/man/*)
foreach(manual ${manuals})
  get_filename_component(name ${manual} NAME)
  string(REGEX MATCH "[0-9]$" section ${name})
  install_packed(${manual} ${name} ${CMAKE_INSTALL_MANDIR}/man${section})
endforeach()
install_packed(${desktop}/changelog changelog ${CMAKE_INSTALL_DOCDIR})

# Our word on copyright, and that of every library whose code is inside the programs.
file(READ ${desktop}/copyright terms)
foreach(package libtomlplusplus-dev libfmt-dev libcli11-dev nlohmann-json3-dev libpugixml-dev libstb-dev libimgui-dev
    libcairo2-dev libpixman-1-dev)
  if(EXISTS /usr/share/doc/${package}/copyright)
    file(READ /usr/share/doc/${package}/copyright words)
    string(APPEND terms "\n\n---- ${package} ----\n\n${words}")
  endif()
endforeach()
file(WRITE ${packed}/copyright "${terms}")
install(FILES ${packed}/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR})

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME punchwright)
set(CPACK_PACKAGE_CONTACT "The people of Punchwright <people@punchwright.io>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "two-colour bands for knitting machines, with their punch cards")
set(CPACK_PACKAGE_DESCRIPTION
"For people who knit two-colour (Fair Isle) bands on hand-operated knitting
machines. Draw a repeat; Punchwright says what would go wrong on the machine,
puts in the single-colour rows that a change of contrast yarn needs, and gives
the punch-card template at full size or a needle chart, the steps at the
machine, and leaflets to hand on.
.
The command punchwright does without a display whatever the editor does.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS fonts-dejavu-core)
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "speech-dispatcher | espeak-ng")
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
# A folder made on the way gets the rights that Debian's packages have, whatever the mask of who packs.
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
include(CPack)
