// In which language the command line speaks: as --language has it, else as the environment asks.
#pragma once

#include "words/words.hpp"

namespace punchwright::cli {

// Of "--language de" or "--language=de", before the options are declared, since their help is in that language already.
// Null: none is named, or one that isn't spoken, which is refused when the options are read.
[[nodiscard]] const Language* language_asked_for(int count, const char* const* arguments);

} // namespace punchwright::cli
