// Writes a .yoke file in the form's own order. Keys without a value in the yoke are left out; all others are written,
// default or not.
#include "design/repeat_words.hpp"
#include "design/toml_strings.hpp"
#include "design/toml_writer.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_words.hpp"

namespace punchwright {
namespace {

template <class Value, class Text> std::string per_size_text(const PerSize<Value>& values, Text text) {
  if (values.values.size() == 1) {
    return text(values.values.front());
  }
  std::string list;
  for (const Value& value : values.values) {
    list += (list.empty() ? "[" : ", ") + text(value);
  }
  return list + "]";
}

std::string centimetres(const PerSize<double>& values) {
  return per_size_text(values, toml_number);
}

std::string element(std::string_view table, std::size_t index) {
  return std::string(table) + '.' + std::to_string(index + 1);
}

// What to gather the comments of lost elements by, behind the last one.
std::string lost_behind(std::string_view table, std::size_t index, std::size_t count) {
  return index + 1 == count ? std::string(table) + '.' : element(table, index) + '.';
}

void write_number(TomlWriter& writer, std::string_view key, const std::optional<double>& number) {
  if (number) {
    writer.key(key, toml_number(*number));
  }
}

void write_head(TomlWriter& writer, const Yoke& yoke) {
  writer.key("format", "1");
  writer.key("title", toml_quoted(yoke.title));
  if (!yoke.notes.empty()) {
    writer.key("notes", toml_paragraphs(yoke.notes));
  }
  std::string sizes;
  for (const std::string& size : yoke.sizes) {
    sizes += (sizes.empty() ? "" : ", ") + toml_quoted(size);
  }
  writer.key("sizes", '[' + sizes + ']');
  writer.key("edge", std::to_string(yoke.edge));
  writer.end_table();
}

void write_machine(TomlWriter& writer, const Yoke& yoke) {
  if (yoke.profile || yoke.extras.unknown.contains("machine")) {
    writer.table("[machine]", "machine", true);
    if (yoke.profile) {
      writer.key("profile", toml_quoted(*yoke.profile));
    }
    writer.end_table("machine.");
  }
  const YokeGauge& gauge = yoke.gauge;
  if (gauge.stitches || gauge.rows || yoke.extras.unknown.contains("gauge")) {
    writer.table("[gauge]", "gauge", true);
    write_number(writer, "stitches", gauge.stitches);
    write_number(writer, "rows", gauge.rows);
    writer.end_table();
  }
  if (gauge.plain_stitches || gauge.plain_rows || yoke.extras.unknown.contains("gauge.plain")) {
    writer.table("[gauge.plain]", "gauge.plain", true);
    write_number(writer, "stitches", gauge.plain_stitches);
    write_number(writer, "rows", gauge.plain_rows);
    writer.end_table("gauge.plain.");
  }
}

void write_yarns(TomlWriter& writer, const Yoke& yoke) {
  for (std::size_t index = 0; index < yoke.yarns.size(); ++index) {
    const YokeYarn& yarn = yoke.yarns[index];
    writer.table("[[yarn]]", element("yarn", index), index == 0);
    writer.key("key", toml_quoted(std::string(1, yarn.key)));
    write_number(writer, "metres_per_100g", yarn.metres_per_100g);
    write_number(writer, "loop_mm", yarn.loop_mm);
    write_number(writer, "plain_g_per_100cm2", yarn.plain_g_per_100cm2);
    write_number(writer, "two_colour_g_per_100cm2", yarn.two_colour_g_per_100cm2);
    writer.end_table(lost_behind("yarn", index, yoke.yarns.size()));
  }
}

void write_pieces(TomlWriter& writer, const Yoke& yoke) {
  for (std::size_t index = 0; index < yoke.pieces.size(); ++index) {
    const YokePiece& piece = yoke.pieces[index];
    writer.table("[[piece]]", element("piece", index), true);
    writer.key("name", toml_quoted(piece.name));
    if (piece.like.empty()) {
      writer.key("bottom_cm", centimetres(piece.bottom_cm));
      writer.key("top_cm", centimetres(piece.top_cm));
    } else {
      writer.key("like", toml_quoted(piece.like));
    }
    writer.end_table(lost_behind("piece", index, yoke.pieces.size()));
  }
  writer.table("[depth]", "depth", true);
  writer.key("cm", centimetres(yoke.depth_cm));
  writer.end_table("depth.");
}

void write_tiers(TomlWriter& writer, const Yoke& yoke) {
  for (std::size_t index = 0; index < yoke.tiers.size(); ++index) {
    const YokeTier& tier = yoke.tiers[index];
    writer.table("[[tier]]", element("tier", index), true);
    writer.key("repeat", toml_quoted(tier.repeat));
    writer.key("plain_above", per_size_text(tier.plain_above, [](int rows) { return std::to_string(rows); }));
    writer.end_table(lost_behind("tier", index, yoke.tiers.size()));
  }
}

void write_wishes(TomlWriter& writer, const Yoke& yoke) {
  writer.table("[fit]", "fit", true);
  writer.key("tolerance", toml_number(yoke.fit.tolerance));
  writer.key("seams", toml_quoted(word_for(yoke.fit.seams, seam_words)));
  writer.end_table("fit.");

  writer.table("[decreases]", "decreases", true);
  writer.key("way", toml_quoted(word_for(yoke.decreases.way, decrease_way_words)));
  writer.key("towards", toml_quoted(word_for(yoke.decreases.towards, towards_words)));
  writer.key("clear_of_seam", std::to_string(yoke.decreases.clear_of_seam));
  writer.key("clear_of_centre", yoke.decreases.clear_of_centre ? "true" : "false");
  writer.end_table("decreases.");
}

} // namespace

TomlForm yoke_form() {
  TomlForm form;
  form.tables = {
      {"", {"format", "title", "notes", "sizes", "edge"}},
      {"machine", {"profile"}},
      {"gauge", {"stitches", "rows"}},
      {"gauge.plain", {"stitches", "rows"}},
      {"yarn", {"key", "metres_per_100g", "loop_mm", "plain_g_per_100cm2", "two_colour_g_per_100cm2"}, true},
      {"piece", {"name", "bottom_cm", "top_cm", "like"}, true},
      {"depth", {"cm"}},
      {"tier", {"repeat", "plain_above"}, true},
      {"fit", {"tolerance", "seams"}},
      {"decreases", {"way", "towards", "clear_of_seam", "clear_of_centre"}},
  };
  form.element_place = element;
  return form;
}

std::string write_yoke(const Yoke& yoke) {
  TomlWriter writer(yoke.extras);
  write_head(writer, yoke);
  write_machine(writer, yoke);
  write_yarns(writer, yoke);
  write_pieces(writer, yoke);
  write_tiers(writer, yoke);
  write_wishes(writer, yoke);
  return writer.finish();
}

} // namespace punchwright
