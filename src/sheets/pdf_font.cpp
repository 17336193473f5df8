// A subset of a TrueType file, table by table, as ISO 32000-1, 9.9, and the TrueType form of fonts describe it.
// Read through FreeType; only the outlines that are needed are ever loaded.
#include "sheets/pdf_font.hpp"

#include "sheets/text_metrics.hpp"

#include <algorithm>
#include <bit>
#include <fmt/format.h>
#include <ft2build.h>
#include <iterator>
#include FT_FREETYPE_H
#include FT_TRUETYPE_TABLES_H

namespace punchwright {
namespace {

std::uint16_t two_bytes(const std::string& bytes, std::size_t at) {
  return static_cast<std::uint16_t>((static_cast<unsigned char>(bytes.at(at)) << 8) |
                                    static_cast<unsigned char>(bytes.at(at + 1)));
}
std::uint32_t four_bytes(const std::string& bytes, std::size_t at) {
  return (static_cast<std::uint32_t>(two_bytes(bytes, at)) << 16) | two_bytes(bytes, at + 2);
}
void put_two(std::string& bytes, std::size_t at, std::uint32_t value) {
  bytes.at(at) = static_cast<char>(static_cast<unsigned char>(value >> 8));
  bytes.at(at + 1) = static_cast<char>(static_cast<unsigned char>(value));
}
void add_two(std::string& bytes, std::uint32_t value) {
  bytes.append(2, '\0');
  put_two(bytes, bytes.size() - 2, value);
}
void add_four(std::string& bytes, std::uint32_t value) {
  add_two(bytes, value >> 16);
  add_two(bytes, value & 0xFFFFU);
}
void pad_to_four(std::string& bytes) {
  bytes.append((4 - bytes.size() % 4) % 4, '\0');
}

std::uint32_t checksum(std::string table) {
  pad_to_four(table);
  std::uint32_t sum = 0;
  for (std::size_t at = 0; at < table.size(); at += 4) {
    sum += four_bytes(table, at);
  }
  return sum;
}

// Where the numbers of its parts stand in an outline that is composed of others.
std::vector<std::size_t> part_places(const std::string& outline) {
  constexpr std::uint16_t words = 0x0001, scale = 0x0008, more = 0x0020, two_scales = 0x0040, matrix = 0x0080;
  std::vector<std::size_t> places;
  if (outline.size() < 10 || (two_bytes(outline, 0) & 0x8000U) == 0) {
    return places; // a simple outline has a count of contours that isn't negative
  }
  std::size_t at = 10;
  std::uint16_t flags = more;
  while ((flags & more) != 0 && at + 4 <= outline.size()) {
    flags = two_bytes(outline, at);
    places.push_back(at + 2);
    at += 4 + ((flags & words) != 0 ? 4U : 2U);
    at += (flags & scale) != 0 ? 2U : ((flags & two_scales) != 0 ? 4U : ((flags & matrix) != 0 ? 8U : 0U));
  }
  return places;
}

std::string file_of_tables(const std::vector<std::pair<std::string, std::string>>& tables) {
  const auto count = static_cast<std::uint32_t>(tables.size());
  const auto exponent = static_cast<std::uint32_t>(std::bit_width(count) - 1);
  std::string file;
  add_four(file, 0x00010000U);
  add_two(file, count);
  add_two(file, 16U << exponent);
  add_two(file, exponent);
  add_two(file, 16U * count - (16U << exponent));
  std::size_t offset = 12 + 16 * tables.size();
  for (const auto& [tag, table] : tables) {
    file += tag;
    add_four(file, checksum(table));
    add_four(file, static_cast<std::uint32_t>(offset));
    add_four(file, static_cast<std::uint32_t>(table.size()));
    offset += (table.size() + 3) / 4 * 4;
  }
  for (const auto& [tag, table] : tables) {
    file += table;
    pad_to_four(file);
  }
  return file;
}

} // namespace

struct PdfFont::File {
  FT_Library library = nullptr;
  FT_Face face = nullptr;

  File() = default;
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  ~File() {
    if (face != nullptr) {
      FT_Done_Face(face);
    }
    if (library != nullptr) {
      FT_Done_FreeType(library);
    }
  }

  // A part of a table; all of it where `length` is 0. Empty where there is no such table.
  [[nodiscard]] std::string table(const char* tag, std::size_t from = 0, std::size_t length = 0) const {
    const auto code =
        static_cast<FT_ULong>(FT_MAKE_TAG(static_cast<unsigned char>(tag[0]), static_cast<unsigned char>(tag[1]),
                                          static_cast<unsigned char>(tag[2]), static_cast<unsigned char>(tag[3])));
    FT_ULong size = length;
    if (length == 0 && (FT_Load_Sfnt_Table(face, code, 0, nullptr, &size) != 0 || size == 0)) {
      return {};
    }
    std::string bytes(size, '\0');
    const auto failed =
        FT_Load_Sfnt_Table(face, code, static_cast<FT_Long>(from), reinterpret_cast<FT_Byte*>(bytes.data()), &size);
    return failed != 0 ? std::string() : bytes;
  }

  [[nodiscard]] bool long_places() const { return two_bytes(table("head"), 50) != 0; }

  [[nodiscard]] std::string outline(std::uint16_t glyph, const std::string& places, bool long_form) const {
    const std::size_t from = long_form ? four_bytes(places, glyph * 4U) : two_bytes(places, glyph * 2U) * 2U;
    const std::size_t to = long_form ? four_bytes(places, glyph * 4U + 4U) : two_bytes(places, glyph * 2U + 2U) * 2U;
    return to > from ? table("glyf", from, to - from) : std::string();
  }
};

PdfFont::PdfFont(std::unique_ptr<File> file, bool bold)
    : file_(std::move(file)), bold_(bold), glyphs_{0}, codes_{0xFFFD} {}
PdfFont::PdfFont(PdfFont&&) noexcept = default;
PdfFont& PdfFont::operator=(PdfFont&&) noexcept = default;
PdfFont::~PdfFont() = default;

Result<PdfFont> PdfFont::open(bool bold) {
  auto file = std::make_unique<File>();
  if (FT_Init_FreeType(&file->library) != 0 ||
      FT_New_Face(file->library, font_file(bold).c_str(), 0, &file->face) != 0) {
    return Error{font_file(bold), 0, 0, "the font can't be read", "install Debian's package fonts-dejavu-core"};
  }
  return PdfFont(std::move(file), bold);
}

std::string PdfFont::name() const {
  // Six letters before a plus sign say that it is a subset (ISO 32000-1, 9.6.4).
  return bold_ ? "PWCARD+DejaVuSans-Bold" : "PWCARD+DejaVuSans";
}

int PdfFont::number_of(char32_t code) {
  const auto [entry, added] = number_of_.try_emplace(code, 0);
  if (added) {
    const FT_UInt glyph = FT_Get_Char_Index(file_->face, code);
    if (glyph != 0 || code != codes_.front()) {
      entry->second = static_cast<int>(glyphs_.size());
      glyphs_.push_back(static_cast<std::uint16_t>(glyph));
      codes_.push_back(code);
    }
  }
  return entry->second;
}

void PdfFont::add_glyphs(std::string& operators, std::string_view text) {
  constexpr std::string_view digits = "0123456789abcdef";
  for (const Character& character : characters_of(text)) {
    const auto number = static_cast<unsigned>(number_of(character.code));
    for (const unsigned shift : {12U, 8U, 4U, 0U}) {
      operators += digits[(number >> shift) & 0xFU];
    }
  }
}

double PdfFont::advance(std::uint16_t glyph) const {
  if (FT_Load_Glyph(file_->face, glyph, FT_LOAD_NO_SCALE | FT_LOAD_NO_HINTING) != 0) {
    return 600.0;
  }
  return static_cast<double>(file_->face->glyph->metrics.horiAdvance) * 1000.0 / file_->face->units_per_EM;
}

std::string PdfFont::font_program() const {
  const std::string places = file_->table("loca");
  const bool long_form = file_->long_places();
  const std::string all_metrics = file_->table("hmtx");
  std::string heading = file_->table("hhea");
  const std::size_t pairs = two_bytes(heading, 34);

  std::vector<std::uint16_t> glyphs = glyphs_; // grows by the parts of composed outlines
  std::string outlines;
  std::string starts;
  std::string metrics;
  for (std::size_t index = 0; index < glyphs.size(); ++index) {
    const std::uint16_t glyph = glyphs[index];
    std::string outline = file_->outline(glyph, places, long_form);
    for (const std::size_t place : part_places(outline)) {
      const std::uint16_t part = two_bytes(outline, place);
      auto found = std::ranges::find(glyphs, part);
      if (found == glyphs.end()) {
        glyphs.push_back(part);
        found = glyphs.end() - 1;
      }
      put_two(outline, place, static_cast<std::uint32_t>(found - glyphs.begin()));
    }
    add_four(starts, static_cast<std::uint32_t>(outlines.size()));
    outlines += outline;
    pad_to_four(outlines);
    const std::size_t pair = std::min<std::size_t>(glyph, pairs - 1);
    metrics += all_metrics.substr(pair * 4, 2);
    metrics +=
        glyph < pairs ? all_metrics.substr(glyph * 4U + 2, 2) : all_metrics.substr(pairs * 4 + (glyph - pairs) * 2, 2);
  }
  add_four(starts, static_cast<std::uint32_t>(outlines.size()));
  put_two(heading, 34, static_cast<std::uint32_t>(glyphs.size()));
  std::string limits = file_->table("maxp");
  put_two(limits, 4, static_cast<std::uint32_t>(glyphs.size()));
  std::string head = file_->table("head");
  put_two(head, 50, 1); // outlines' places in four bytes
  std::vector<std::pair<std::string, std::string>> tables;
  for (const char* tag : {"cvt ", "fpgm"}) {
    tables.emplace_back(tag, file_->table(tag));
  }
  tables.emplace_back("glyf", outlines);
  tables.emplace_back("head", head);
  tables.emplace_back("hhea", heading);
  tables.emplace_back("hmtx", metrics);
  tables.emplace_back("loca", starts);
  tables.emplace_back("maxp", limits);
  tables.emplace_back("prep", file_->table("prep"));
  std::erase_if(tables, [](const auto& table) { return table.second.empty(); });
  return file_of_tables(tables);
}

std::string PdfFont::widths_array() const {
  std::string text = "[0 [";
  for (const std::uint16_t glyph : glyphs_) {
    fmt::format_to(std::back_inserter(text), "{:.4g} ", advance(glyph));
  }
  return text + "]]";
}

std::string PdfFont::unicode_map() const {
  std::string text = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                     "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
                     "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
                     "1 begincodespacerange\n<0000> <ffff>\nendcodespacerange\n";
  auto out = std::back_inserter(text);
  constexpr std::size_t most = 100; // lines in one block
  for (std::size_t first = 1; first < codes_.size(); first += most) {
    const std::size_t end = std::min(first + most, codes_.size());
    fmt::format_to(out, "{} beginbfchar\n", end - first);
    for (std::size_t number = first; number < end; ++number) {
      const auto code = static_cast<std::uint32_t>(codes_[number]);
      if (code < 0x10000) {
        fmt::format_to(out, "<{:04x}> <{:04x}>\n", number, code);
      } else {
        const std::uint32_t rest = code - 0x10000;
        fmt::format_to(out, "<{:04x}> <{:04x}{:04x}>\n", number, 0xD800 + (rest >> 10), 0xDC00 + (rest & 0x3FF));
      }
    }
    text += "endbfchar\n";
  }
  return text + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string PdfFont::descriptor_numbers() const {
  const FT_Face face = file_->face;
  const auto thousandths = [face](FT_Pos units) { return units * 1000 / face->units_per_EM; };
  return fmt::format("/Flags 4 /FontBBox [{} {} {} {}] /ItalicAngle 0 /Ascent {} /Descent {} /CapHeight 729 /StemV {}",
                     thousandths(face->bbox.xMin), thousandths(face->bbox.yMin), thousandths(face->bbox.xMax),
                     thousandths(face->bbox.yMax), thousandths(face->ascender), thousandths(face->descender),
                     bold_ ? 140 : 80);
}

} // namespace punchwright
