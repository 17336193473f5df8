# Turns the guide into a source file, so that the program has it wherever it is installed.
# cmake -DGUIDE=docs/guide.md -DOUT=guide_text.cpp -P carry_guide.cmake
file(READ "${GUIDE}" guide)
# Compilers refuse very long literals: one for each 8,000 characters.
string(LENGTH "${guide}" length)
set(at 0)
set(parts "")
while(at LESS length)
  string(SUBSTRING "${guide}" ${at} 8000 part)
  string(APPEND parts "    R\"punchwright(${part})punchwright\",\n")
  math(EXPR at "${at} + 8000")
endwhile()
file(WRITE "${OUT}" "// Made from docs/guide.md by carry_guide.cmake.
#include \"editor/help_text.hpp\"

namespace punchwright::editor {

std::string guide_text() {
  std::string text;
  for (const char* const part : {
${parts}  }) {
    text += part;
  }
  return text;
}

} // namespace punchwright::editor
")
