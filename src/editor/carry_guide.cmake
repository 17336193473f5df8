# Turns the guides into a source file, so that the program has them wherever it is installed: guide.md, which is English,
# and guide.CODE.md of other languages.
# cmake -DFOLDER=docs -DOUT=guide_text.cpp -P carry_guide.cmake
function(literals_of file result)
  file(READ "${file}" guide)
  # Compilers refuse very long literals: one for each 8,000 characters.
  string(LENGTH "${guide}" length)
  set(at 0)
  set(parts "")
  while(at LESS length)
    string(SUBSTRING "${guide}" ${at} 8000 part)
    string(APPEND parts "    R\"punchwright(${part})punchwright\",\n")
    math(EXPR at "${at} + 8000")
  endwhile()
  set(${result} "${parts}" PARENT_SCOPE)
endfunction()

set(others "")
file(GLOB translated "${FOLDER}/guide.*.md")
foreach(file ${translated})
  string(REGEX REPLACE ".*guide\\.([a-z]+)\\.md$" "\\1" code "${file}")
  literals_of("${file}" parts)
  string(APPEND others "  if (chosen_language().code == \"${code}\") {\n    return joined({\n${parts}    });\n  }\n")
endforeach()
literals_of("${FOLDER}/guide.md" parts)
file(WRITE "${OUT}" "// Made from docs/guide.md and its translations by carry_guide.cmake.
#include \"editor/help_text.hpp\"
#include \"words/words.hpp\"

#include <initializer_list>

namespace punchwright::editor {

namespace {

std::string joined(std::initializer_list<const char*> parts) {
  std::string text;
  for (const char* const part : parts) {
    text += part;
  }
  return text;
}

} // namespace

std::string guide_text() {
${others}  return joined({
${parts}  });
}

} // namespace punchwright::editor
")
