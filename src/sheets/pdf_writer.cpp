// Sheets to a PDF in memory: pages and text by cairo, then the word to viewers not to scale, which cairo has no call
// for. That word is added as an incremental update (ISO 32000-1, 7.5.6): cairo's bytes stay as they are.
#include "sheets/cairo_canvas.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <cairo-pdf.h>
#include <charconv>
#include <fmt/format.h>
#include <memory>
#include <optional>

namespace punchwright {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;
constexpr double longest_page_mm = 5080.0; // ISO 32000-1, annex C: 14,400 units of 1/72 inch

cairo_status_t append_bytes(void* target, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(target)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

Failure too_long(const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets) {
    if (sheet.width > longest_page_mm || sheet.height > longest_page_mm) {
      return Error{{},
                   0,
                   0,
                   said("a page of {:.0f} × {:.0f} mm is larger than a PDF page may be, {:.0f} mm", sheet.width,
                        sheet.height, longest_page_mm),
                   tr("choose sheets of paper (a4, letter), or fewer rows on a blank in the profile")};
    }
  }
  return std::nullopt;
}

Result<std::string> pages_by_cairo(const std::vector<Sheet>& sheets) {
  const auto fonts = load_sheet_fonts();
  if (!fonts) {
    return fonts.error();
  }
  std::string bytes;
  const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &bytes, 1, 1), cairo_surface_destroy);
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_4);
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE,
                                 utf8_of(characters_of(sheets.front().title)).c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Punchwright " PUNCHWRIGHT_VERSION);
  // The same sheets give the same bytes on every day.
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
  const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> context(cairo_create(surface.get()), cairo_destroy);
  for (const Sheet& sheet : sheets) {
    cairo_pdf_surface_set_size(surface.get(), sheet.width * points_per_mm, sheet.height * points_per_mm);
    cairo_save(context.get());
    cairo_scale(context.get(), points_per_mm, points_per_mm);
    draw_sheet(context.get(), sheet, *fonts);
    cairo_restore(context.get());
    cairo_show_page(context.get());
  }
  cairo_surface_finish(surface.get());
  for (const cairo_status_t status : {cairo_status(context.get()), cairo_surface_status(surface.get())}) {
    if (status != CAIRO_STATUS_SUCCESS) {
      return cairo_error(tr("the PDF can't be drawn"), status);
    }
  }
  return bytes;
}

// The number that stands behind the last `word` of the file.
std::optional<long> last_number_after(const std::string& bytes, std::string_view word) {
  const auto place = bytes.rfind(word);
  if (place == std::string::npos) {
    return std::nullopt;
  }
  const auto digits = bytes.find_first_of("0123456789", place + word.size());
  long number = 0;
  const bool found = digits != std::string::npos &&
                     std::from_chars(bytes.data() + digits, bytes.data() + bytes.size(), number).ec == std::errc{};
  return found ? std::optional(number) : std::nullopt;
}

// For programs that read aloud; English, the language of the source, goes without saying.
std::string language_entry() {
  const std::string_view code = chosen_language().code;
  return code == languages().front().code ? "" : fmt::format(" /Lang ({})", code);
}

// The catalogue again, with the viewer's preferences in it, behind the file; a reader takes the later one.
Result<std::string> with_print_settings(std::string bytes) {
  const auto catalogue = last_number_after(bytes, "/Root ");
  const auto information = last_number_after(bytes, "/Info ");
  const auto count = last_number_after(bytes, "/Size ");
  const auto table = last_number_after(bytes, "startxref");
  const std::string head = fmt::format("\n{} 0 obj\n<<", catalogue.value_or(0));
  const auto old = bytes.rfind(head);
  if (!catalogue || !information || !count || !table || old == std::string::npos) {
    return Error{{}, 0, 0, tr("the PDF's catalogue can't be found in what cairo wrote"), tr("report this as a defect")};
  }
  const auto entries = old + head.size();
  const std::string kept = bytes.substr(entries, bytes.find("endobj", entries) - entries);
  bytes += '\n';
  const std::size_t place = bytes.size();
  bytes += fmt::format("{} 0 obj\n<< /ViewerPreferences << /PrintScaling /None >>{}{}endobj\n", *catalogue,
                       language_entry(), kept);
  const std::size_t new_table = bytes.size();
  bytes += fmt::format("xref\n{} 1\n{:010} 00000 n \ntrailer\n<< /Size {} /Root {} 0 R /Info {} 0 R /Prev {} >>\n"
                       "startxref\n{}\n%%EOF\n",
                       *catalogue, place, *count, *catalogue, *information, *table, new_table);
  return bytes;
}

} // namespace

Result<std::string> pdf_of(const std::vector<Sheet>& sheets) {
  if (sheets.empty()) {
    return Error{{}, 0, 0, tr("there is no page to write"), {}};
  }
  if (const auto failure = too_long(sheets)) {
    return *failure;
  }
  auto pages = pages_by_cairo(sheets);
  return pages ? with_print_settings(std::move(pages).value()) : pages;
}

} // namespace punchwright
