// Reads a .yoke file: TOML to a yoke, with the first error's place, what was found and what is allowed.
// Sizes come first, since a list of measures must have one for each of them.
#include "design/repeat_words.hpp"
#include "design/toml_extras.hpp"
#include "design/toml_values.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_words.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

class YokeReader {
public:
  YokeReader(const toml::table& file, TomlErrors& errors, std::map<std::string, Spot>& places)
      : file_(file), errors_(errors), places_(places) {}

  Yoke run() {
    read_head();
    read_machine();
    read_yarns();
    read_pieces();
    const TomlTable depth = table(root(), "depth", "depth.");
    if (root().require("depth", tr("a table [depth] with 'cm'"))) {
      yoke_.depth_cm = measures(depth, "cm", 1, 200);
      places_["depth.cm"] = depth.value_spot("cm");
    }
    read_tiers();
    read_wishes();
    return std::move(yoke_);
  }

private:
  const toml::table& file_;
  TomlErrors& errors_;
  std::map<std::string, Spot>& places_;
  const toml::table empty_;
  Yoke yoke_;

  [[nodiscard]] TomlTable root() const { return {file_, "", "", errors_}; }
  [[nodiscard]] TomlTable table(const TomlTable& outer, std::string_view name, std::string before) const {
    const toml::table* const found = outer.inner(name);
    return {found != nullptr ? *found : empty_, std::move(before), "", errors_};
  }

  // The tables of a [[name]] that must be there.
  [[nodiscard]] std::vector<TomlTable> needed_tables(std::string_view name, const std::string& allowed,
                                                     std::size_t most) const {
    return root().require(name, allowed) ? root().tables(name, allowed, most) : std::vector<TomlTable>{};
  }

  // A number for all sizes, or a list with one for each; `one` gives its value or refuses it.
  template <class Value, class One>
  [[nodiscard]] PerSize<Value> per_size(const TomlTable& from, std::string_view key, const std::string& what,
                                        One one) const {
    PerSize<Value> values;
    const std::string allowed = said("{}, or a list of {} such numbers, one for each size", what, yoke_.sizes.size());
    if (!from.require(key, allowed)) {
      return values;
    }
    const toml::node& found = *from.node(key);
    const toml::array* const list = found.as_array();
    if (list == nullptr) {
      if (const auto value = one(found)) {
        values.values.push_back(*value);
      } else {
        from.refuse(key, allowed);
      }
      return values;
    }
    if (list->size() != yoke_.sizes.size()) {
      errors_.add(spot_of(found),
                  said_count(static_cast<long>(list->size()), "{1} has {0} number, and there are {2} sizes",
                             "{1} has {0} numbers, and there are {2} sizes", from.name_of(key), yoke_.sizes.size()),
                  said("allowed: {}", allowed));
      return values;
    }
    for (const toml::node& entry : *list) {
      if (const auto value = one(entry)) {
        values.values.push_back(*value);
      } else {
        errors_.add(spot_of(entry), said("{} holds {}", from.name_of(key), found_text(entry)),
                    said("allowed: {}", what));
        return values;
      }
    }
    return values;
  }

  [[nodiscard]] PerSize<double> measures(const TomlTable& from, std::string_view key, double least, double most) const {
    const std::string what = said("a number from {} to {}", least, most);
    return per_size<double>(from, key, what, [&](const toml::node& node) -> std::optional<double> {
      const auto value = node.is_number() ? node.value<double>() : std::nullopt;
      const bool allowed = value && *value >= least && *value <= most; // refuses nan too
      return allowed ? value : std::nullopt;
    });
  }

  [[nodiscard]] PerSize<int> row_counts(const TomlTable& from, std::string_view key) const {
    return per_size<int>(from, key, said("a whole number from {} to {}", 0, most_plain_rows),
                         [](const toml::node& node) -> std::optional<int> {
                           const auto* const value = node.as_integer();
                           const bool allowed =
                               value != nullptr && value->get() >= 0 && value->get() <= most_plain_rows;
                           return allowed ? std::optional(static_cast<int>(value->get())) : std::nullopt;
                         });
  }

  void read_head() {
    const TomlTable head = root();
    if (head.require("format", "1")) {
      (void)head.whole("format", 1, 1);
    }
    yoke_.title = head.text("title").value_or("");
    yoke_.notes = head.text("notes").value_or("");
    read_sizes(head);
    yoke_.edge = head.whole("edge", 0, 50).value_or(yoke_.edge);
  }

  void read_sizes(const TomlTable& head) {
    const std::string allowed = said("a list of 1 to {} names, such as [\"small\", \"large\"]", most_yoke_sizes);
    if (!head.require("sizes", allowed)) {
      return;
    }
    const toml::array* const list = head.node("sizes")->as_array();
    if (list == nullptr) {
      head.refuse("sizes", allowed);
      return;
    }
    for (const toml::node& entry : *list) {
      const auto name = entry.value_exact<std::string>();
      if (!name || name->empty()) {
        errors_.add(spot_of(entry), said("{} holds {}", "'sizes'", found_text(entry)), said("allowed: {}", allowed));
      } else if (std::ranges::find(yoke_.sizes, *name) != yoke_.sizes.end()) {
        errors_.add(spot_of(entry), said("{} holds {} twice", "'sizes'", found_text(entry)),
                    tr("allowed: each name once"));
      } else {
        yoke_.sizes.push_back(*name);
      }
    }
    if (list->empty() || list->size() > most_yoke_sizes) {
      errors_.add(head.value_spot("sizes"), said("{} is a list of {}", "'sizes'", list->size()),
                  said("allowed: {}", allowed));
    }
  }

  void read_machine() {
    const TomlTable machine = table(root(), "machine", "machine.");
    const std::string what = tr("the name of a built-in profile, or the path of a .machine file");
    yoke_.profile = machine.text("profile", what);
    places_["machine.profile"] = machine.value_spot("profile");
    if (yoke_.profile && yoke_.profile->empty()) {
      machine.refuse("profile", what);
    }
    const TomlTable gauge = table(root(), "gauge", "gauge.");
    yoke_.gauge.stitches = gauge.number("stitches", 1, 200);
    yoke_.gauge.rows = gauge.number("rows", 1, 200);
    const TomlTable plain = table(gauge, "plain", "gauge.plain.");
    yoke_.gauge.plain_stitches = plain.number("stitches", 1, 200);
    yoke_.gauge.plain_rows = plain.number("rows", 1, 200);
  }

  void read_yarns() {
    for (const TomlTable& yarn : root().tables("yarn", tr("[[yarn]] with a key"), 62)) {
      const std::string one_key = tr("one letter a to z or A to Z, or one digit, that no yarn above has");
      if (!yarn.require("key", one_key)) {
        return;
      }
      const std::string key = yarn.text("key", one_key).value_or("A");
      if (!is_yarn_key(key) || std::ranges::find(yoke_.yarns, key[0], &YokeYarn::key) != yoke_.yarns.end()) {
        yarn.refuse("key", one_key);
        return;
      }
      places_[fmt::format("yarn.{}.key", yoke_.yarns.size() + 1)] = yarn.value_spot("key");
      yoke_.yarns.push_back({key[0], yarn.number("metres_per_100g", 1, 10'000), yarn.number("loop_mm", 1, 200),
                             yarn.number("plain_g_per_100cm2", 0.01, 100),
                             yarn.number("two_colour_g_per_100cm2", 0.01, 100)});
    }
  }

  void read_pieces() {
    const auto pieces = needed_tables("piece", tr("[[piece]] with a name and its widths"), most_yoke_pieces);
    for (const TomlTable& piece : pieces) {
      read_piece(piece);
      if (errors_.first()) {
        return;
      }
    }
    for (std::size_t index = 0; index < pieces.size(); ++index) {
      const std::string& like = yoke_.pieces[index].like;
      const auto found = std::ranges::find(yoke_.pieces, like, &YokePiece::name);
      if (!like.empty() && (found == yoke_.pieces.end() || !found->like.empty())) {
        pieces[index].refuse("like", tr("the name of a piece that has widths of its own"));
      }
    }
  }

  void read_piece(const TomlTable& piece) {
    const std::string a_name = tr("a name that no piece above has");
    if (!piece.require("name", a_name)) {
      return;
    }
    YokePiece next;
    next.name = piece.text("name", a_name).value_or("");
    if (next.name.empty() || std::ranges::find(yoke_.pieces, next.name, &YokePiece::name) != yoke_.pieces.end()) {
      piece.refuse("name", a_name);
    }
    const std::string place = fmt::format("piece.{}.", yoke_.pieces.size() + 1);
    if (piece.has("like")) {
      next.like = piece.text("like", tr("the name of a piece")).value_or("");
      for (const std::string_view key : {"bottom_cm", "top_cm"}) {
        if (piece.has(key)) {
          errors_.add(piece.key_spot(key), said("{} beside 'like'", piece.name_of(key)),
                      tr("allowed: the widths, or 'like' and the piece that has them"));
        }
      }
      if (next.like.empty()) {
        piece.refuse("like", tr("the name of a piece that has widths of its own"));
      }
      places_[place + "bottom_cm"] = piece.value_spot("like");
    } else {
      next.bottom_cm = measures(piece, "bottom_cm", narrowest_yoke_piece_cm, widest_yoke_piece_cm);
      next.top_cm = measures(piece, "top_cm", narrowest_yoke_piece_cm, widest_yoke_piece_cm);
      places_[place + "bottom_cm"] = piece.value_spot("bottom_cm");
    }
    yoke_.pieces.push_back(std::move(next));
  }

  void read_tiers() {
    const std::string path = tr("the path of a .repeat file");
    for (const TomlTable& tier : needed_tables(
             "tier", tr("[[tier]] with 'repeat' and 'plain_above', from the bottom upwards"), most_yoke_tiers)) {
      if (!tier.require("repeat", path)) {
        return;
      }
      YokeTier next{tier.text("repeat", path).value_or(""), row_counts(tier, "plain_above")};
      if (next.repeat.empty()) {
        tier.refuse("repeat", path);
      }
      const std::string place = fmt::format("tier.{}.", yoke_.tiers.size() + 1);
      places_[place + "repeat"] = tier.value_spot("repeat");
      places_[place + "plain_above"] = tier.value_spot("plain_above");
      yoke_.tiers.push_back(std::move(next));
    }
  }

  void read_wishes() {
    const TomlTable fit = table(root(), "fit", "fit.");
    yoke_.fit.tolerance = fit.number("tolerance", 0, 0.5).value_or(yoke_.fit.tolerance);
    yoke_.fit.seams = fit.word("seams", seam_words).value_or(yoke_.fit.seams);
    places_["fit.tolerance"] = fit.value_spot("tolerance");
    const TomlTable wishes = table(root(), "decreases", "decreases.");
    YokeDecreases& decreases = yoke_.decreases;
    decreases.way = wishes.word("way", decrease_way_words).value_or(decreases.way);
    decreases.towards = wishes.word("towards", towards_words).value_or(decreases.towards);
    decreases.clear_of_seam = wishes.whole("clear_of_seam", 0, 50).value_or(decreases.clear_of_seam);
    decreases.clear_of_centre = wishes.flag("clear_of_centre").value_or(decreases.clear_of_centre);
  }
};

} // namespace

Result<ReadYoke> read_yoke(std::string_view text, const std::string& file_name) {
  const Result<TomlRead> toml = read_toml(text, file_name);
  if (!toml) {
    return toml.error();
  }
  TomlErrors errors(file_name);
  refuse_other_form(toml->table, FileForm::yoke, errors);
  ReadYoke read;
  read.yoke = YokeReader(toml->table, errors, read.places).run();
  if (errors.first()) {
    return *errors.first();
  }
  FoundExtras found = find_extras(*toml->text, toml->statements, yoke_form());
  read.yoke.extras = std::move(found.extras);
  for (const UnknownName& unknown : found.unknown) {
    read.notes.push_back({unknown.line, unknown.table ? said("unknown table '{}' is kept as it is", unknown.name)
                                                      : said("unknown key '{}' is kept as it is", unknown.name)});
  }
  return read;
}

} // namespace punchwright
