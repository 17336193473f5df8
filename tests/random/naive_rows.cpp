// Row by row, as one would do it with a pencil.
#include "random/naive_rows.hpp"

#include "support/builders.hpp"

#include <algorithm>

namespace punchwright::test {
namespace {

// A row on the needles. `sign`: of an inserted row, 0 for a drawn one.
struct Row {
  int drawn = -1; // from 0
  char sign = 0;
  char main = 0;
  char contrast = 0; // of the stitches that it has; 0: all main
  bool main_knits = true;
};

class NaiveKnitter {
public:
  NaiveKnitter(const Document& document, const Profile& profile)
      : document_(document), profile_(profile), lines_(lines_of(document.grid)) {
    std::reverse(lines_.begin(), lines_.end());
    for (std::size_t band = 0; band < document.bands.size(); ++band) {
      band_of_.insert(band_of_.end(), static_cast<std::size_t>(document.bands[band].rows), band);
    }
  }

  std::vector<Row> all() {
    const bool loop = document_.card.loop && profile_.card;
    std::vector<int> drawn;
    for (int time = 0; time < (loop ? 1 : document_.piece.times); ++time) {
      for (int row = 0; row < height(); ++row) {
        drawn.push_back(row);
      }
    }
    std::vector<Row> rows = straight(drawn, loop);
    if (!loop) {
      return rows;
    }
    insert_between(rows, height() - 1, drawn, rows);
    if (document_.rules.change_side != ChangeSide::any && passes_of(rows) % 2 == 1) {
      rows.push_back(plain(height() - 1, '%'));
    }
    const std::vector<Row> circuit = rows;
    for (int time = 1; time < document_.piece.times; ++time) {
      rows.insert(rows.end(), circuit.begin(), circuit.end());
    }
    circuit_ = circuit.size();
    return rows;
  }

  std::vector<std::string> in_words(const std::vector<Row>& rows) const {
    std::vector<std::string> words;
    Side side = document_.piece.carriage;
    for (const Row& row : rows) {
      std::string text = row.sign == 0 ? std::to_string(row.drawn + 1) : std::string(1, row.sign);
      text += ' ';
      text += row.main;
      text += row.contrast == 0 ? "" : std::string(row.main_knits ? "+" : "/") + row.contrast;
      text += side == Side::right ? " <" : " >";
      if (passes_of({row}) == 2) {
        text += "2";
      } else {
        side = side == Side::right ? Side::left : Side::right;
      }
      if (profile_.card) {
        const std::size_t round = circuit_ == 0 ? rows.size() : circuit_;
        text += " #" + std::to_string(words.size() % round + 1);
      }
      words.push_back(text);
    }
    return words;
  }

private:
  int height() const { return static_cast<int>(lines_.size()); }
  const Band& band(int drawn) const { return document_.bands[band_of_[static_cast<std::size_t>(drawn)]]; }
  bool begins_band(int drawn) const {
    return drawn == 0 || band_of_[static_cast<std::size_t>(drawn)] != band_of_[static_cast<std::size_t>(drawn) - 1];
  }
  const std::string& line(int drawn) const { return lines_[static_cast<std::size_t>(drawn)]; }

  Row knit(int drawn) const {
    const bool some_contrast = line(drawn).find('#') != std::string::npos;
    return {drawn, 0, band(drawn).main, some_contrast ? band(drawn).contrast.value() : char{0},
            line(drawn).find('.') != std::string::npos};
  }
  Row plain(int below, char sign) const { return {-1, sign, band(below).main, 0, true}; }

  int passes_of(const std::vector<Row>& rows) const {
    int passes = 0;
    for (const Row& row : rows) {
      passes += profile_.feeders == 1 && row.contrast != 0 && row.main_knits ? 2 : 1;
    }
    return passes;
  }

  std::vector<Row> straight(const std::vector<int>& drawn, bool loop) const {
    std::vector<Row> rows;
    for (std::size_t index = 0; index < drawn.size(); ++index) {
      if (index > 0 && begins_band(drawn[index])) {
        std::vector<int> upwards(drawn.begin() + static_cast<std::ptrdiff_t>(index), drawn.end());
        if (loop) { // above the card's last row lies its first
          upwards.insert(upwards.end(), drawn.begin(), drawn.begin() + static_cast<std::ptrdiff_t>(index));
        }
        insert_between(rows, drawn[index - 1], upwards, known_rows(upwards));
      }
      rows.push_back(knit(drawn[index]));
    }
    return rows;
  }

  // The rows that lie above a boundary whatever is worked out there.
  std::vector<Row> known_rows(const std::vector<int>& upwards) const {
    std::vector<Row> rows;
    for (std::size_t index = 0; index < upwards.size(); ++index) {
      if (index > 0 && begins_band(upwards[index])) {
        rows.insert(rows.end(), static_cast<std::size_t>(band(upwards[index]).plain_below.value_or(0)),
                    plain(upwards[index - 1], '='));
      }
      rows.push_back(knit(upwards[index]));
    }
    return rows;
  }

  void insert_between(std::vector<Row>& rows, int below, const std::vector<int>& upwards,
                      const std::vector<Row>& above) const {
    const Band& next = band(upwards.front());
    if (next.plain_below) {
      rows.insert(rows.end(), static_cast<std::size_t>(*next.plain_below), plain(below, '='));
      return;
    }
    if (next.contrast == band(below).contrast) {
      return;
    }
    const auto of_two_yarns = [](const Row& row) { return row.contrast != 0; };
    const auto under = std::find_if(rows.rbegin(), rows.rend(), of_two_yarns) - rows.rbegin();
    const auto over = std::find_if(above.begin(), above.end(), of_two_yarns) - above.begin();
    for (auto there = under + over; there < document_.rules.plain_rows; ++there) {
      rows.push_back(plain(below, '+'));
    }
    if (document_.rules.change_side != ChangeSide::any && threads_on_wrong_side(rows, upwards)) {
      rows.push_back(plain(below, '>'));
    }
  }

  // Where the carriage stands when it comes to the first row with a stitch of the new contrast.
  bool threads_on_wrong_side(std::vector<Row> rows, const std::vector<int>& upwards) const {
    const auto contrast = band(upwards.front()).contrast;
    for (std::size_t index = 0; contrast && index < upwards.size() && band(upwards[index]).contrast == contrast;
         ++index) {
      if (index > 0 && begins_band(upwards[index])) {
        rows.insert(rows.end(), static_cast<std::size_t>(band(upwards[index]).plain_below.value_or(0)),
                    plain(upwards[index - 1], '='));
      }
      if (knit(upwards[index]).contrast != 0) {
        const bool at_start = passes_of(rows) % 2 == 0;
        const bool on_the_right = (document_.piece.carriage == Side::right) == at_start;
        return on_the_right != (document_.rules.change_side == ChangeSide::right);
      }
      rows.push_back(knit(upwards[index]));
    }
    return false;
  }

  const Document& document_;
  const Profile& profile_;
  std::vector<std::string> lines_;   // row 1 first
  std::vector<std::size_t> band_of_; // by drawn row
  std::size_t circuit_ = 0;          // rows; 0: no loop
};

} // namespace

std::vector<std::string> naive_rows(const Document& document, const Profile& profile) {
  NaiveKnitter knitter(document, profile);
  return knitter.in_words(knitter.all());
}

} // namespace punchwright::test
