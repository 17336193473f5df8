// Sheets to a PDF in memory (ISO 32000-1): pages, the two faces, and the word to viewers not to scale.
//
// Written out here and not by cairo: a process that has cairo draw a card's circles, and qpdf add the print settings,
// needs 50 ms, of which loading qpdf alone takes 8; this takes a fraction of it, and gives the same bytes every day.
#include "sheets/pdf_content.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/writers.hpp"

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;
constexpr double longest_page_mm = 5080.0; // 14,400 units: ISO 32000-1, annex C

// What most cards need; growing would copy everything again.
constexpr std::size_t first_room = 400'000;

// Objects are numbered in the order in which their numbers are taken; they may be written in any other.
class ObjectWriter {
public:
  ObjectWriter() {
    bytes_.reserve(first_room);
    bytes_ = "%PDF-1.6\n%\xE2\xE3\xCF\xD3\n"; // the second line says that this is no text file
  }

  int take_number() {
    offsets_.push_back(0);
    return static_cast<int>(offsets_.size());
  }

  void write(int number, const std::string& content) {
    offsets_[static_cast<std::size_t>(number - 1)] = bytes_.size();
    bytes_ += fmt::format("{} 0 obj\n", number);
    bytes_ += content;
    bytes_ += "\nendobj\n";
  }

  void write_stream(int number, const std::string& dictionary, const std::string& data) {
    offsets_[static_cast<std::size_t>(number - 1)] = bytes_.size();
    bytes_ += fmt::format("{} 0 obj\n<< {} /Length {} >>\nstream\n", number, dictionary, data.size());
    bytes_ += data;
    bytes_ += "\nendstream\nendobj\n";
  }

  std::string finish(int root, int information) {
    const std::string identity = digest();
    const std::size_t start = bytes_.size();
    bytes_ += fmt::format("xref\n0 {}\n0000000000 65535 f \n", offsets_.size() + 1);
    for (const std::size_t offset : offsets_) {
      bytes_ += fmt::format("{:010} 00000 n \n", offset);
    }
    bytes_ +=
        fmt::format("trailer\n<< /Size {0} /Root {1} 0 R /Info {2} 0 R /ID [<{3}> <{3}>] >>\nstartxref\n{4}\n%%EOF\n",
                    offsets_.size() + 1, root, information, identity, start);
    return std::move(bytes_);
  }

private:
  // The file's identity, from what it holds (FNV-1a over eight bytes at a time, twice): the same for the same sheets.
  [[nodiscard]] std::string digest() const {
    std::uint64_t one = 0xcbf29ce484222325U;
    std::uint64_t other = 0x84222325cbf29ce4U;
    for (std::size_t at = 0; at < bytes_.size(); at += sizeof(std::uint64_t)) {
      std::uint64_t word = 0;
      std::memcpy(&word, bytes_.data() + at, std::min(sizeof word, bytes_.size() - at));
      one = (one ^ word) * 0x100000001b3U;
      other = (other ^ (one >> 29)) * 0x100000001b3U;
    }
    return fmt::format("{:016x}{:016x}", one, other);
  }

  std::string bytes_;
  std::vector<std::size_t> offsets_;
};

// A string of any characters: UTF-16 with its mark, in hexadecimal.
std::string text_string(const std::string& text) {
  std::string hexadecimal = "<feff";
  for (const Character& character : characters_of(text)) {
    const auto code = static_cast<std::uint32_t>(character.code);
    hexadecimal += code < 0x10000 ? fmt::format("{:04x}", code)
                                  : fmt::format("{:04x}{:04x}", 0xD800 + ((code - 0x10000) >> 10),
                                                0xDC00 + ((code - 0x10000) & 0x3FF));
  }
  return hexadecimal + '>';
}

// Number of the font's object.
int write_font(ObjectWriter& out, const PdfFont& font) {
  const int number = out.take_number();
  const int descendant = out.take_number();
  const int descriptor = out.take_number();
  const int program = out.take_number();
  const int unicode = out.take_number();
  out.write(number,
            fmt::format("<< /Type /Font /Subtype /Type0 /BaseFont /{} /Encoding /Identity-H /DescendantFonts [{} 0 "
                        "R] /ToUnicode {} 0 R >>",
                        font.name(), descendant, unicode));
  out.write(descendant, fmt::format("<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{} /CIDSystemInfo << /Registry "
                                    "(Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {} 0 R /DW 600 "
                                    "/CIDToGIDMap /Identity /W {} >>",
                                    font.name(), descriptor, font.widths_array()));
  out.write(descriptor, fmt::format("<< /Type /FontDescriptor /FontName /{} {} /FontFile2 {} 0 R >>", font.name(),
                                    font.descriptor_numbers(), program));
  const std::string file = font.font_program();
  out.write_stream(program, fmt::format("/Length1 {}", file.size()), file);
  out.write_stream(unicode, "", font.unicode_map());
  return number;
}

void write_resources(ObjectWriter& out, int number, const PdfResources& resources) {
  std::string fonts;
  if (resources.regular.used()) {
    fonts += fmt::format("/F0 {} 0 R ", write_font(out, resources.regular));
  }
  if (resources.bold.used()) {
    fonts += fmt::format("/F1 {} 0 R ", write_font(out, resources.bold));
  }
  std::string circles;
  for (std::size_t index = 0; index < resources.circles.size(); ++index) {
    const CircleKind& kind = resources.circles[index];
    const double reach = kind.radius + kind.paint.stroke_mm;
    const int circle = out.take_number();
    out.write_stream(
        circle,
        fmt::format("/Type /XObject /Subtype /Form /BBox [-{0:.3f} -{0:.3f} {0:.3f} {0:.3f}] /Resources << >>",
                    reach + 0.01),
        circle_content(kind));
    circles += fmt::format("/C{} {} 0 R ", index, circle);
  }
  out.write(number, fmt::format("<< /Font << {}>> /XObject << {}>> >>", fonts, circles));
}

std::string file_of(const std::vector<Sheet>& sheets, PdfResources& resources) {
  ObjectWriter out;
  const int root = out.take_number();
  const int pages = out.take_number();
  const int information = out.take_number();
  const int shared = out.take_number();
  out.write(root,
            fmt::format("<< /Type /Catalog /Pages {} 0 R /ViewerPreferences << /PrintScaling /None /DisplayDocTitle "
                        "true >> >>",
                        pages));
  const std::string program = text_string("Punchwright " PUNCHWRIGHT_VERSION);
  out.write(information, fmt::format("<< /Title {} /Creator {} /Producer {} >>", text_string(sheets.front().title),
                                     program, program));
  std::string kids;
  std::string drawn; // kept from page to page, for its room
  for (const Sheet& sheet : sheets) {
    const int page = out.take_number();
    const int content = out.take_number();
    kids += fmt::format("{} 0 R ", page);
    out.write(page,
              fmt::format("<< /Type /Page /Parent {} 0 R /MediaBox [0 0 {:.3f} {:.3f}] /Resources {} 0 R /Contents {} "
                          "0 R >>",
                          pages, sheet.width * points_per_mm, sheet.height * points_per_mm, shared, content));
    write_page(drawn, sheet, resources);
    out.write_stream(content, "", drawn);
  }
  out.write(pages, fmt::format("<< /Type /Pages /Count {} /Kids [{}] >>", sheets.size(), kids));
  write_resources(out, shared, resources);
  return out.finish(root, information);
}

} // namespace

Result<std::string> pdf_of(const std::vector<Sheet>& sheets) {
  if (sheets.empty()) {
    return Error{{}, 0, 0, "there is no page to write", {}};
  }
  for (const Sheet& sheet : sheets) {
    if (sheet.width > longest_page_mm || sheet.height > longest_page_mm) {
      return Error{{},
                   0,
                   0,
                   fmt::format("a page of {:.0f} × {:.0f} mm is larger than a PDF page may be, {:.0f} mm", sheet.width,
                               sheet.height, longest_page_mm),
                   "choose sheets of paper (a4, letter), or fewer rows on a blank in the profile"};
    }
  }
  auto regular = PdfFont::open(false);
  if (!regular) {
    return regular.error();
  }
  auto bold = PdfFont::open(true);
  if (!bold) {
    return bold.error();
  }
  PdfResources resources{std::move(regular).value(), std::move(bold).value(), {}};
  return file_of(sheets, resources);
}

} // namespace punchwright
