// Writes a .repeat file in the form's own order, one row a line, so that two versions can be compared by eye.
// Keys without a value in the document are left out; all others are written, default or not.
#include "design/repeat_file.hpp"
#include "design/repeat_words.hpp"
#include "design/toml_strings.hpp"
#include "design/toml_writer.hpp"

#include <fmt/core.h>

namespace punchwright {
namespace {

std::string quoted_key(char key) {
  return toml_quoted(std::string(1, key));
}

void write_head(TomlWriter& writer, const Document& document) {
  writer.key("format", "1");
  writer.key("title", toml_quoted(document.title));
  writer.key("notes", toml_paragraphs(document.notes));
  writer.end_table();

  writer.table("[machine]", "machine", true);
  writer.key("profile", toml_quoted(document.profile));
  writer.end_table("machine.");

  writer.table("[gauge]", "gauge", true);
  writer.key("stitches", toml_number(document.gauge.stitches));
  writer.key("rows", toml_number(document.gauge.rows));
  writer.end_table("gauge.");
}

void write_yarns(TomlWriter& writer, const Document& document, const TomlForm& form) {
  for (std::size_t index = 0; index < document.yarns.size(); ++index) {
    const Yarn& yarn = document.yarns[index];
    writer.table("[[yarn]]", form.element_place("yarn", index), index == 0);
    writer.key("key", quoted_key(yarn.key));
    writer.key("name", toml_quoted(yarn.name));
    writer.key("colour", toml_quoted(hex_of(yarn.colour)));
    writer.end_table(index + 1 == document.yarns.size() ? "yarn." : "");
  }
}

void write_drawing(TomlWriter& writer, const Grid& grid) {
  constexpr std::string_view indent = "  ";
  const std::string rows = "repeat.rows.";
  writer.table("[repeat]", "repeat", true);
  writer.key("width", std::to_string(grid.width()));
  writer.key("rows", "[");
  for (int row = grid.height() - 1; row >= 0; --row) {
    writer.line(rows + std::to_string(row + 1), fmt::format("{}\"{}\",", indent, grid.row_text(row)), indent);
  }
  writer.lost_comments(rows, indent);
  writer.line(rows + '$', "]", indent);
  writer.end_table("repeat.");
}

void write_bands(TomlWriter& writer, const Document& document, const TomlForm& form) {
  for (std::size_t index = 0; index < document.bands.size(); ++index) {
    const Band& band = document.bands[index];
    writer.table("[[band]]", form.element_place("band", index), index == 0);
    writer.key("rows", std::to_string(band.rows));
    writer.key("main", quoted_key(band.main));
    if (band.contrast) {
      writer.key("contrast", quoted_key(*band.contrast));
    }
    if (band.plain_below) {
      writer.key("plain_below", std::to_string(*band.plain_below));
    }
    writer.end_table(index + 1 == document.bands.size() ? "band." : "band." + std::to_string(index + 1) + '.');
  }
}

void write_piece(TomlWriter& writer, const Piece& piece) {
  writer.table("[piece]", "piece", true);
  if (piece.stitches) {
    writer.key("stitches", std::to_string(*piece.stitches));
  }
  if (piece.first_needle) {
    writer.key("first_needle", toml_quoted(name_of(*piece.first_needle)));
  }
  if (piece.first_column) {
    writer.key("first_column", std::to_string(*piece.first_column));
  }
  writer.key("times", std::to_string(piece.times));
  writer.key("carriage", toml_quoted(word_for(piece.carriage, side_words)));
  writer.key("end_needles", toml_quoted(word_for(piece.end_needles, end_needle_words)));
  writer.key("edge", std::to_string(piece.edge));
  writer.end_table("piece.");
}

void write_rules(TomlWriter& writer, const KnittingRules& rules) {
  writer.table("[rules]", "rules", true);
  if (rules.longest_float) {
    writer.key("longest_float", std::to_string(*rules.longest_float));
  }
  if (rules.longest_float_mm) {
    writer.key("longest_float_mm", toml_number(*rules.longest_float_mm));
  }
  writer.key("plain_rows", std::to_string(rules.plain_rows));
  writer.key("change_side", toml_quoted(word_for(rules.change_side, change_side_words)));
  writer.end_table("rules.");
}

void write_card(TomlWriter& writer, const CardWishes& card) {
  writer.table("[card]", "card", true);
  writer.key("paper", toml_quoted(word_for(card.paper, paper_words)));
  writer.key("loop", card.loop ? "true" : "false");
  writer.key("scale_x", toml_number(card.scale_x));
  writer.key("scale_y", toml_number(card.scale_y));
  writer.end_table("card.");
}

void write_marks(TomlWriter& writer, const Grid& layer, const std::string& name, const TomlForm& form) {
  std::size_t index = 0;
  for (int row = 0; row < layer.height(); ++row) {
    if (!layer.has_contrast(row)) {
      continue;
    }
    writer.table("[[" + name + "]]", form.element_place(name, index), index == 0);
    writer.key("row", std::to_string(row + 1));
    writer.key("columns", toml_quoted(columns_text(layer, row)));
    writer.end_table();
    ++index;
  }
  writer.lost_comments(name + '.', "");
}

} // namespace

TomlForm repeat_form(const Document& document) {
  TomlForm form;
  form.tables = {
      {"", {"format", "title", "notes"}},
      {"machine", {"profile"}},
      {"gauge", {"stitches", "rows"}},
      {"yarn", {"key", "name", "colour"}, true},
      {"repeat", {"width", "rows"}},
      {"band", {"rows", "main", "contrast", "plain_below"}, true},
      {"piece", {"stitches", "first_needle", "first_column", "times", "carriage", "end_needles", "edge"}},
      {"rules", {"longest_float", "longest_float_mm", "plain_rows", "change_side"}},
      {"card", {"paper", "loop", "scale_x", "scale_y"}},
      {"catch", {"row", "columns"}, true},
      {"accept", {"row", "columns"}, true},
      {"protect", {"row", "columns"}, true},
  };
  form.rows_key = "repeat.rows";
  std::string yarn_keys;
  for (const Yarn& yarn : document.yarns) {
    yarn_keys += yarn.key;
  }
  form.element_place = [yarn_keys](std::string_view table, std::size_t index) {
    std::string place(table);
    place += '.';
    return table == "yarn" && index < yarn_keys.size() ? place + yarn_keys[index] : place + std::to_string(index + 1);
  };
  return form;
}

std::string write_repeat(const Document& document) {
  const TomlForm form = repeat_form(document);
  TomlWriter writer(document.extras);
  write_head(writer, document);
  write_yarns(writer, document, form);
  write_drawing(writer, document.grid);
  write_bands(writer, document, form);
  write_piece(writer, document.piece);
  write_rules(writer, document.rules);
  write_card(writer, document.card);
  write_marks(writer, document.marks.caught, "catch", form);
  write_marks(writer, document.marks.accepted, "accept", form);
  write_marks(writer, document.marks.kept, "protect", form);
  return writer.finish();
}

} // namespace punchwright
