// Walks over a file's statements and puts everything that is no known value where the writer will look for it.
// A comment belongs to the line below it; one that clings to the line above, with a blank line below, ends that table.
#include "design/toml_extras.hpp"

#include <algorithm>
#include <map>

namespace punchwright {
namespace {

std::string joined(const TomlKey& key, std::size_t from, bool raw) {
  std::string out;
  for (std::size_t index = from; index < key.size(); ++index) {
    out += out.empty() ? "" : ".";
    out += raw ? std::string(key[index].raw) : key[index].name;
  }
  return out;
}

// Parts of a dotted name; none for "".
std::size_t parts_of(std::string_view name) {
  return name.empty() ? 0 : static_cast<std::size_t>(std::ranges::count(name, '.')) + 1;
}

bool begins_with(const TomlKey& key, std::string_view name) {
  for (std::size_t index = 0; !name.empty(); ++index) {
    const std::size_t dot = std::min(name.find('.'), name.size());
    if (index == key.size() || key[index].name != name.substr(0, dot)) {
      return false;
    }
    name.remove_prefix(std::min(dot + 1, name.size()));
  }
  return true;
}

void append_lines(std::vector<std::string>& lines, std::string_view text) {
  for (;;) {
    const std::size_t end = text.find('\n');
    lines.emplace_back(text.substr(0, end));
    if (end == std::string_view::npos) {
      return;
    }
    text.remove_prefix(end + 1);
  }
}

std::string inside(const std::string& place, std::string_view name) {
  return place.empty() ? std::string(name) : place + '.' + std::string(name);
}

class Finder {
public:
  Finder(std::string_view text, const TomlForm& form) : text_(text), form_(form) {}

  FoundExtras run(const std::vector<TomlStatement>& statements) {
    for (const TomlStatement& statement : statements) {
      switch (statement.kind) {
      case TomlKind::blank_line:
        clinging_ = clinging_ && !pending_.empty();
        if (!pending_.empty() && !pending_.back().empty()) {
          pending_.emplace_back();
        }
        break;
      case TomlKind::comment: pending_.emplace_back(statement.comment); break;
      case TomlKind::table:
      case TomlKind::array_table: header(statement); break;
      case TomlKind::key_value: key_value(statement); break;
      }
    }
    end_of_file();
    return std::move(found_);
  }

private:
  std::string_view text_;
  const TomlForm& form_;
  FoundExtras found_;

  TomlKey header_;          // of the table in which the walk is
  bool in_unknown_ = false; // that table is unknown
  std::string place_;       // its place, "" before the first table; in an unknown one, that of its lines
  std::map<std::string_view, std::size_t> elements_; // met of each repeated table
  std::vector<std::string> pending_;                 // comment lines that have met no statement yet
  bool clinging_ = false;                            // no blank line parts them from the statement above

  // The form's table with the longest name that begins `key`.
  [[nodiscard]] const TomlTableForm* form_of(const TomlKey& key) const {
    const TomlTableForm* best = nullptr;
    for (const TomlTableForm& table : form_.tables) {
      if (begins_with(key, table.name) && (best == nullptr || table.name.size() > best->name.size())) {
        best = &table;
      }
    }
    return best;
  }

  static void add(std::map<std::string, std::vector<std::string>>& places, const std::string& place,
                  const std::vector<std::string>& lines) {
    if (!lines.empty()) {
      auto& there = places[place];
      there.insert(there.end(), lines.begin(), lines.end());
    }
  }

  // Comments that cling to the table above and are parted from what follows are that table's end.
  void end_table() {
    const auto gap = std::ranges::find(pending_, std::string());
    if (!clinging_ || gap == pending_.end()) {
      return;
    }
    const std::vector<std::string> ending(pending_.begin(), gap);
    pending_.erase(pending_.begin(), gap + 1);
    add(in_unknown_ ? found_.extras.unknown : found_.extras.comments_before, in_unknown_ ? place_ : inside(place_, "$"),
        ending);
  }

  void end_of_file() {
    if (pending_.empty() || !pending_.back().empty()) {
      pending_.emplace_back();
    }
    end_table();
    while (!pending_.empty() && pending_.back().empty()) {
      pending_.pop_back();
    }
    add(found_.extras.comments_before, "$file", pending_);
  }

  void settle(const std::string& place, std::string_view comment) {
    add(found_.extras.comments_before, place, std::exchange(pending_, {}));
    if (!comment.empty()) {
      found_.extras.comments_after[place] = comment;
    }
    clinging_ = true;
  }

  void header(const TomlStatement& statement) {
    end_table();
    header_ = statement.key;
    const TomlTableForm* const form = form_of(header_);
    in_unknown_ = form == nullptr || parts_of(form->name) != header_.size();
    if (!in_unknown_) {
      place_ = form->repeated ? form_.element_place(form->name, elements_[form->name]++) : std::string(form->name);
      settle(place_, statement.comment);
      return;
    }
    found_.unknown.push_back({statement.line, true, joined(header_, 0, false)});
    const bool of_element = form != nullptr && form->repeated && elements_[form->name] > 0;
    place_ = inside(of_element ? form_.element_place(form->name, elements_[form->name] - 1) : "", "$tables");
    auto& lines = found_.extras.unknown[place_];
    lines.emplace_back();
    add(found_.extras.unknown, place_, std::exchange(pending_, {}));
    const bool array = statement.kind == TomlKind::array_table;
    lines.push_back((array ? "[[" : "[") + joined(header_, 0, true) + (array ? "]]" : "]") +
                    std::string(statement.comment));
    clinging_ = true;
  }

  void key_value(const TomlStatement& statement) {
    TomlKey full = header_;
    full.insert(full.end(), statement.key.begin(), statement.key.end());
    const TomlTableForm* const form = in_unknown_ ? nullptr : form_of(full);
    if (form == nullptr) {
      add(found_.extras.unknown, place_, std::exchange(pending_, {}));
      append_lines(found_.extras.unknown[place_],
                   joined(statement.key, 0, true) + " = " + raw(statement.value) + std::string(statement.comment));
      clinging_ = true;
      return;
    }
    // Inside [[yarn]] the place is that of the yarn; elsewhere a dotted key may lead into another table.
    const std::string place =
        form->repeated && parts_of(form->name) == header_.size() ? place_ : std::string(form->name);
    known_table_key(*form, place, full, statement);
  }

  [[nodiscard]] std::string raw(const TomlValue& value) const {
    return std::string(text_.substr(value.begin, value.end - value.begin));
  }

  void known_table_key(const TomlTableForm& form, const std::string& place, const TomlKey& full,
                       const TomlStatement& statement) {
    const std::size_t depth = parts_of(form.name);
    if (full.size() == depth) { // a whole table on one line, or a list of them
      if (form.repeated) {
        const std::string first = form_.element_place(form.name, elements_[form.name]);
        comments_inside(first, statement);
        settle(first, statement.comment);
        for (const TomlValue& element : statement.value.entries) {
          entries(full, form_.element_place(form.name, elements_[form.name]++), element);
        }
      } else {
        comments_inside(place, statement);
        settle(place, statement.comment);
        entries(full, place, statement.value);
      }
      return;
    }
    const std::string& key = full[depth].name;
    if (!form.any_key && std::ranges::find(form.keys, key) == form.keys.end()) {
      unknown_key(form, place, full, statement.value, statement.line, std::string(statement.comment));
      clinging_ = true;
      return;
    }
    const std::string key_place = inside(place, key);
    if (joined(full, 0, false) == form_.rows_key) {
      rows(key_place, statement);
    } else {
      comments_inside(key_place, statement);
      settle(key_place, statement.comment);
    }
  }

  void unknown_key(const TomlTableForm& form, const std::string& place, const TomlKey& full, const TomlValue& value,
                   int line, const std::string& comment) {
    const std::size_t depth = parts_of(form.name);
    add(found_.extras.unknown, place, std::exchange(pending_, {}));
    append_lines(found_.extras.unknown[place], joined(full, depth, true) + " = " + raw(value) + comment);
    found_.unknown.push_back({line, false, joined(full, 0, false)});
  }

  // The entries of a known table that is written on one line.
  void entries(const TomlKey& table, const std::string& place, const TomlValue& value) {
    for (const TomlValue& entry : value.entries) {
      TomlKey full = table;
      full.insert(full.end(), entry.key.begin(), entry.key.end());
      const TomlTableForm* const form = form_of(full);
      const std::size_t depth = parts_of(form->name);
      const std::string entry_place = depth == table.size() ? place : std::string(form->name);
      if (full.size() == depth) {
        entries(full, entry_place, entry);
      } else if (!form->any_key && std::ranges::find(form->keys, full[depth].name) == form->keys.end()) {
        unknown_key(*form, entry_place, full, entry, entry.first_line, "");
      }
    }
  }

  void comments_inside(const std::string& place, const TomlStatement& statement) {
    for (const TomlComment& comment : statement.inside) {
      pending_.emplace_back(comment.text);
    }
    add(found_.extras.comments_before, place, std::exchange(pending_, {}));
  }

  // Row n's place is the list's name and n, counted from the last line: "repeat.rows.1".
  void rows(const std::string& place, const TomlStatement& statement) {
    const auto& rows = statement.value.entries;
    add(found_.extras.comments_before, place, std::exchange(pending_, {}));
    const auto row_place = [&](std::size_t index) {
      return index < rows.size() ? inside(place, std::to_string(rows.size() - index)) : inside(place, "$");
    };
    for (const TomlComment& comment : statement.inside) {
      const auto next = std::ranges::upper_bound(rows, comment.at, {}, &TomlValue::begin);
      const auto index = static_cast<std::size_t>(next - rows.begin());
      const bool beside_row = !comment.own_line && index > 0 && rows[index - 1].last_line == comment.line;
      const bool beside_name = !comment.own_line && index == 0 && statement.line == comment.line;
      if (!beside_row && !beside_name) {
        found_.extras.comments_before[row_place(index)].emplace_back(comment.text);
        continue;
      }
      std::string& there = found_.extras.comments_after[beside_row ? row_place(index - 1) : place];
      there = there.empty() ? std::string(comment.with_blanks) : there + " " + std::string(comment.text);
    }
    settle(inside(place, "$"), statement.comment);
  }
};

} // namespace

FoundExtras find_extras(std::string_view text, const std::vector<TomlStatement>& statements, const TomlForm& form) {
  return Finder(text, form).run(statements);
}

} // namespace punchwright
