// One face of the sheets' typeface as a PDF embeds it: only the characters that were used, renumbered from 1, so that a
// card's font takes some 20 KB instead of 750.
#pragma once

#include "design/result.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

class PdfFont {
public:
  [[nodiscard]] static Result<PdfFont> open(bool bold);
  PdfFont(PdfFont&&) noexcept;
  PdfFont& operator=(PdfFont&&) noexcept;
  ~PdfFont();

  // Adds the text as hexadecimal glyph numbers, as a Tj operator takes them. Remembers what was used.
  void add_glyphs(std::string& operators, std::string_view text);

  [[nodiscard]] bool used() const { return glyphs_.size() > 1; }
  [[nodiscard]] std::string name() const;

  // The TrueType file with the used characters, and what a viewer needs to know about it.
  [[nodiscard]] std::string font_program() const;
  [[nodiscard]] std::string widths_array() const; // "[0 [600 634.77 …]]"
  [[nodiscard]] std::string unicode_map() const;  // a ToUnicode CMap, for search and copy
  [[nodiscard]] std::string descriptor_numbers() const;

private:
  struct File;
  explicit PdfFont(std::unique_ptr<File> file, bool bold);
  int number_of(char32_t code);
  [[nodiscard]] double advance(std::uint16_t glyph) const; // thousandths of the type size

  std::unique_ptr<File> file_;
  bool bold_;
  std::vector<std::uint16_t> glyphs_; // in the font file, by their number here; 0: 'no such character'
  std::vector<char32_t> codes_;       // what each stands for
  std::map<char32_t, int> number_of_;
};

} // namespace punchwright
