// Reads a .repeat file: TOML to a document, with the first error's place, what was found and what is allowed.
// Tables are read in the form's order; the drawing comes before the bands, which must fit it.
#include "design/repeat_file.hpp"
#include "design/repeat_rows.hpp"
#include "design/repeat_words.hpp"
#include "design/toml_extras.hpp"
#include "design/toml_statements.hpp"
#include "design/toml_values.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr int most_plain_rows_by_hand = 99; // plain_below
constexpr double widest_float = 1000;       // mm

// Colours for yarns that name none, by their order: the first two are those of the form's description.
constexpr std::array<Colour, 8> usual_colours{{{0xe8, 0xdc, 0xc2},
                                               {0x20, 0x30, 0x4a},
                                               {0xa6, 0x3d, 0x2f},
                                               {0x4f, 0x7a, 0x5b},
                                               {0xd9, 0xa4, 0x41},
                                               {0x6d, 0x8f, 0xa8},
                                               {0x6b, 0x4a, 0x63},
                                               {0x8c, 0x8c, 0x84}}};

class RepeatReader {
public:
  RepeatReader(const toml::table& file, std::string_view text, TomlErrors& errors)
      : file_(file), text_(text), errors_(errors) {}

  Document run() {
    read_head();
    read_gauge();
    read_yarns();
    read_drawing();
    read_bands();
    read_piece();
    read_rules();
    read_card();
    read_marks("catch", document_.marks.caught);
    read_marks("accept", document_.marks.accepted);
    read_marks("protect", document_.marks.kept);
    return std::move(document_);
  }

private:
  const toml::table& file_;
  std::string_view text_;
  TomlErrors& errors_;
  const toml::table empty_;
  Document document_;

  [[nodiscard]] TomlTable root() const { return {file_, "", "", errors_}; }
  [[nodiscard]] TomlTable table(const std::string& name) const {
    const toml::table* const found = root().inner(name);
    return {found != nullptr ? *found : empty_, name + ".", "", errors_};
  }

  // The tables of [[name]], or none and an error.
  [[nodiscard]] std::vector<TomlTable> tables(const std::string& name, const std::string& allowed) const {
    if (!root().require(name, allowed)) {
      return {};
    }
    return root().tables(name, allowed);
  }

  void read_head() {
    const TomlTable head = root();
    if (head.require("format", "1")) {
      (void)head.whole("format", 1, 1);
    }
    document_.title = head.text("title").value_or("");
    document_.notes = head.text("notes").value_or("");
    const TomlTable machine = table("machine");
    const std::string what = tr("the name of a built-in profile, or the path of a .machine file");
    document_.profile = machine.text("profile", what).value_or(document_.profile);
    if (document_.profile.empty()) {
      machine.refuse("profile", what);
    }
  }

  void read_gauge() {
    const TomlTable gauge = table("gauge");
    document_.gauge.stitches = gauge.number("stitches", 1, 200).value_or(document_.gauge.stitches);
    document_.gauge.rows = gauge.number("rows", 1, 200).value_or(document_.gauge.rows);
  }

  void read_yarns() {
    const std::string pair = tr("two [[yarn]] or more, each with a key");
    const std::vector<TomlTable> yarns = tables("yarn", pair);
    for (const TomlTable& yarn : yarns) {
      read_yarn(yarn);
    }
    if (yarns.size() == 1) {
      errors_.add(yarns.front().value_spot(""), tr("there is one yarn only"), said("allowed: {}", pair));
    }
  }

  void read_yarn(const TomlTable& yarn) {
    const std::string one_key = tr("one letter a to z or A to Z, or one digit");
    if (!yarn.require("key", one_key)) {
      return;
    }
    const std::string key = yarn.text("key", one_key).value_or("A");
    if (!is_yarn_key(key)) {
      yarn.refuse("key", one_key);
      return;
    }
    if (std::ranges::find(document_.yarns, key[0], &Yarn::key) != document_.yarns.end()) {
      yarn.refuse("key", said("a key that no yarn above has; taken: {}", yarn_keys()));
      return;
    }
    Yarn next{key[0], yarn.text("name").value_or(key), usual_colours[document_.yarns.size() % usual_colours.size()]};
    const std::string six_digits = tr("'#' and six hexadecimal digits: \"#e8dcc2\"");
    if (const auto hex = yarn.text("colour", six_digits)) {
      if (const auto colour = colour_from_hex(*hex)) {
        next.colour = *colour;
      } else {
        yarn.refuse("colour", six_digits);
      }
    }
    document_.yarns.push_back(std::move(next));
  }

  [[nodiscard]] std::string yarn_keys() const {
    std::vector<std::string> keys;
    keys.reserve(document_.yarns.size());
    for (const Yarn& yarn : document_.yarns) {
      keys.push_back(fmt::format("\"{}\"", yarn.key));
    }
    return one_of(keys);
  }

  void read_drawing() {
    if (!root().require("repeat", tr("a table [repeat] with 'width' and 'rows'"))) {
      return;
    }
    const TomlTable repeat = table("repeat");
    if (!repeat.require("width", said("a whole number from 1 to {}", widest_repeat)) ||
        !repeat.require("rows", said("a list of 1 to {} rows of '.' and '#'", tallest_repeat))) {
      return;
    }
    if (const auto width = repeat.whole("width", 1, widest_repeat)) {
      document_.grid = read_repeat_rows(repeat, *width, text_, errors_);
    }
  }

  void read_bands() {
    const std::vector<TomlTable> bands = tables("band", tr("[[band]] with 'rows' and 'main', from row 1 upwards"));
    int covered = 0; // at most 100,000 bands of 2,000 rows: no overflow
    for (const TomlTable& band : bands) {
      if (errors_.first()) {
        return;
      }
      read_band(band, covered);
    }
    if (!errors_.first() && covered != document_.grid.height()) {
      const TomlTable& top = bands.back();
      errors_.add(top.value_spot("rows"),
                  said_count(covered, "the bands together have {} row, the drawing has {}",
                             "the bands together have {} rows, the drawing has {}", document_.grid.height()),
                  tr("allowed: bands that cover every row of the drawing, and no more"));
    }
  }

  // Of a yarn that the file has.
  [[nodiscard]] std::optional<char> band_yarn(const TomlTable& band, std::string_view key) const {
    const auto found = band.text(key, said("a yarn of this file: {}", yarn_keys()));
    if (found &&
        (found->size() != 1 || std::ranges::find(document_.yarns, (*found)[0], &Yarn::key) == document_.yarns.end())) {
      band.refuse(key, said("a yarn of this file: {}", yarn_keys()));
      return std::nullopt;
    }
    return found ? std::optional((*found)[0]) : std::nullopt;
  }

  void read_band(const TomlTable& band, int& covered) {
    if (!band.require("rows", said("a whole number from 1 to {}", tallest_repeat)) ||
        !band.require("main", said("a yarn of this file: {}", yarn_keys()))) {
      return;
    }
    Band next;
    next.rows = band.whole("rows", 1, tallest_repeat).value_or(1);
    next.main = band_yarn(band, "main").value_or('A');
    next.contrast = band_yarn(band, "contrast");
    next.plain_below = band.whole("plain_below", 0, most_plain_rows_by_hand);
    if (errors_.first()) {
      return;
    }
    if (next.contrast == next.main) {
      band.refuse("contrast", tr("another yarn than the band's main; or no 'contrast', for a band of one yarn"));
    } else if (!next.contrast) {
      refuse_contrast_stitches(covered, next.rows);
    }
    covered += next.rows;
    document_.bands.push_back(next);
  }

  // In a band of one yarn; the highest row first, as the file has it.
  void refuse_contrast_stitches(int first_row, int rows) {
    const Grid& grid = document_.grid;
    for (int row = std::min(first_row + rows, grid.height()) - 1; row >= first_row; --row) {
      if (!grid.has_contrast(row)) {
        continue;
      }
      const auto column = grid.row_text(row).find('#');
      errors_.add(spot_of_stitch(*table("repeat").node("rows")->as_array(), row, static_cast<int>(column), text_),
                  said("'#' in row {}, which lies in band {}, a band of one yarn", row + 1, document_.bands.size() + 1),
                  tr("allowed: '.' in such a band, or a 'contrast' for it"));
      return;
    }
  }

  void read_piece() {
    const TomlTable table_of_piece = table("piece");
    Piece& piece = document_.piece;
    piece.stitches = table_of_piece.whole("stitches", 1, 1000);
    piece.first_needle = table_of_piece.needle("first_needle");
    piece.first_column = table_of_piece.whole("first_column", 1, std::max(1, document_.grid.width()));
    piece.times = table_of_piece.whole("times", 1, 1000).value_or(piece.times);
    piece.carriage = table_of_piece.word("carriage", side_words).value_or(piece.carriage);
    piece.end_needles = table_of_piece.word("end_needles", end_needle_words).value_or(piece.end_needles);
    piece.edge = table_of_piece.whole("edge", 0, 50).value_or(piece.edge);
  }

  void read_rules() {
    const TomlTable rules = table("rules");
    document_.rules.longest_float = rules.whole("longest_float", 1, widest_repeat);
    document_.rules.longest_float_mm = rules.number("longest_float_mm", 1, widest_float);
    if (rules.has("longest_float") && rules.has("longest_float_mm")) {
      const Spot stitches = rules.key_spot("longest_float");
      const Spot millimetres = rules.key_spot("longest_float_mm");
      const bool last = std::pair(stitches.line, stitches.column) < std::pair(millimetres.line, millimetres.column);
      errors_.add(last ? millimetres : stitches,
                  tr("both 'rules.longest_float' and 'rules.longest_float_mm' are given"),
                  tr("allowed: one of the two, or neither"));
    }
    document_.rules.plain_rows = rules.whole("plain_rows", 0, 9).value_or(document_.rules.plain_rows);
    document_.rules.change_side = rules.word("change_side", change_side_words).value_or(document_.rules.change_side);
  }

  void read_card() {
    const TomlTable card = table("card");
    document_.card.paper = card.word("paper", paper_words).value_or(document_.card.paper);
    document_.card.loop = card.flag("loop").value_or(document_.card.loop);
    document_.card.scale_x = card.number("scale_x", 0.5, 2).value_or(document_.card.scale_x);
    document_.card.scale_y = card.number("scale_y", 0.5, 2).value_or(document_.card.scale_y);
  }

  // [[name]] with a row and its columns, from the lowest row upwards.
  void read_marks(const std::string& name, Grid& layer) {
    if (!root().has(name) || errors_.first()) {
      return;
    }
    int above = 1; // the lowest row that may come next
    for (const TomlTable& marks : tables(name, said("[[{}]] with 'row' and 'columns', from row 1 upwards", name))) {
      const std::string columns =
          said("columns 1 to {} in ascending order: \"4\", or \"4, 9-12\"", document_.grid.width());
      if (!marks.require("row", said("a whole number from 1 to {}", document_.grid.height())) ||
          !marks.require("columns", columns)) {
        return;
      }
      const auto row = marks.whole("row", 1, document_.grid.height());
      const auto text = marks.text("columns", columns);
      if (!row || !text) {
        return;
      }
      if (*row < above) {
        marks.refuse("row", said("each row once, the lowest first: here a row above {}", above - 1));
        return;
      }
      if (layer.width() == 0) {
        layer = Grid(document_.grid.width(), document_.grid.height());
      }
      if (!set_columns_text(layer, *row - 1, *text)) {
        marks.refuse("columns", columns);
        return;
      }
      above = *row + 1;
    }
  }
};

// Of every key in a table that stands once.
std::map<std::string, KeyPlace> places_of(const toml::table& file) {
  std::map<std::string, KeyPlace> places;
  const auto spot = [](const toml::source_position& at) {
    return Spot{static_cast<int>(at.line), static_cast<int>(at.column)};
  };
  for (const auto& [name, node] : file) {
    places[std::string(name.str())] = {spot(name.source().begin), spot_of(node)};
    if (const toml::table* const table = node.as_table()) {
      for (const auto& [key, value] : *table) {
        places[std::string(name.str()) + '.' + std::string(key.str())] = {spot(key.source().begin), spot_of(value)};
      }
    }
  }
  return places;
}

} // namespace

Result<ReadDocument> read_repeat(std::string_view text, const std::string& file_name) {
  const Result<TomlRead> toml = read_toml(text, file_name);
  if (!toml) {
    return toml.error();
  }
  TomlErrors errors(file_name);
  refuse_other_form(toml->table, FileForm::repeat, errors);
  ReadDocument read;
  read.document = RepeatReader(toml->table, *toml->text, errors).run();
  if (errors.first()) {
    return *errors.first();
  }
  FoundExtras found = find_extras(*toml->text, toml->statements, repeat_form(read.document));
  read.document.extras = std::move(found.extras);
  for (const UnknownName& unknown : found.unknown) {
    read.notes.push_back({unknown.line, unknown.table ? said("unknown table '{}' is kept as it is", unknown.name)
                                                      : said("unknown key '{}' is kept as it is", unknown.name)});
  }
  read.places = places_of(toml->table);
  return read;
}

} // namespace punchwright
