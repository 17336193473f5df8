// Sheets to files by the extension of the wished name: .pdf one file, .svg and .png one file a page.
#pragma once

#include "sheets/drawing.hpp"
#include "sheets/exports.hpp"

#include <string>
#include <vector>

namespace punchwright {

[[nodiscard]] Result<std::vector<OutputFile>> files_of_pages(const std::vector<Sheet>& pages, const std::string& path);

} // namespace punchwright
