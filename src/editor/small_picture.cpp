// What a list shows of a file: its picture, and what is said of it.
#include "editor/small_picture.hpp"

#include "design/repeat_file.hpp"
#include "editor/yoke_card.hpp"
#include "editor/yoke_work.hpp"
#include "files/files.hpp"
#include "pictures/picture.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright::editor {

namespace {

constexpr std::size_t largest_shown = std::size_t{2} * 1024 * 1024; // bytes; a list must not wait for more

Result<Document> design_in_text(const std::string& text) {
  auto read = read_repeat(text, "design");
  return read ? Result<Document>(std::move(read).value().document) : Result<Document>(read.error());
}

Result<Document> design_in_picture(const std::string& bytes) {
  const auto picture = read_picture(bytes, "picture");
  return picture ? Result<Document>(design_of(*picture, ContrastIs::darker, {})) : Result<Document>(picture.error());
}

} // namespace

DesignCard design_card(const std::filesystem::path& path, double width_by_height) {
  DesignCard card;
  card.path = path;
  card.title = path.stem().string();
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(path, ignored)) { // reading a pipe would wait
    card.missing = !std::filesystem::exists(path, ignored);
    card.trouble = card.missing ? tr("No longer there") : tr("No file that can be read");
    return card;
  }
  const bool picture = has_picture_name(path.string());
  const auto text = read_file(path, picture ? largest_picture_file : largest_shown);
  if (!text) {
    card.trouble = tr("Can't be opened");
    return card;
  }
  if (has_yoke_name(path)) {
    fill_yoke_card(card, *text);
    return card;
  }
  const auto read = picture ? design_in_picture(*text) : design_in_text(*text);
  if (!read) {
    card.trouble = picture ? read.error().message : tr("Can't be read");
    return card;
  }
  const Document& design = *read;
  if (!design.title.empty()) {
    card.title = design.title;
  }
  card.stitches = design.grid.width();
  card.rows = design.grid.height();
  card.yarns = design.yarns;
  card.picture = small_picture(design, width_by_height);
  return card;
}

} // namespace punchwright::editor
