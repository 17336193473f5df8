# The needle chart and the fabric picture, written by the command line and read by other programs.
if(TARGET punchwright)
  set(tools ${CMAKE_CURRENT_SOURCE_DIR}/tools)
  foreach(form csv txt html pdf stay-back)
    add_test(NAME chart-${form} COMMAND /usr/bin/python3 ${tools}/check_chart.py ${form} $<TARGET_FILE:punchwright>)
  endforeach()
  add_test(NAME fabric COMMAND /usr/bin/python3 ${tools}/check_fabric.py $<TARGET_FILE:punchwright>)
endif()
