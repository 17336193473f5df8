// The writers: what every file must have, whatever is drawn.
#include "sheets/text_metrics.hpp"
#include "sheets/writers.hpp"

#include <cstddef>
#include <cstdint>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

Sheet small_sheet() {
  Sheet sheet;
  sheet.title = "Püffin & <cove>";
  sheet.width = 30;
  sheet.height = 20;
  Paint paint{Colour{0, 0, 0}, 0.2, Colour{200, 200, 200}, false};
  sheet.groups.push_back({"marks",
                          {CircleShape{{10, 10}, 3, paint, {"pattern", {{"data-row", "7"}}}},
                           TextShape{{5, 18}, "L12–R3 & <Grüße>", 2, Anchor::start, true, 0, {}},
                           PolylineShape{{{1, 1}, {29, 1}}, false, Paint{Colour{255, 0, 0}, 0.3, {}, true}, {}}}});
  return sheet;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::uint32_t number_at(const std::string& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t index = 0; index < 4; ++index) {
    value = value << 8 | static_cast<unsigned char>(bytes.at(at + index));
  }
  return value;
}

} // namespace

TEST_CASE("a PDF asks viewers not to scale, carries its title, no date of today, and is the same every time") {
  const std::string pdf = pdf_of({small_sheet(), small_sheet()}).value();
  CHECK(pdf.starts_with("%PDF-1."));
  CHECK(holds(pdf, "/ViewerPreferences << /PrintScaling /None")); // ISO 32000-1, table 150
  CHECK(holds(pdf, "/Count 2"));
  CHECK(holds(pdf, "/MediaBox [ 0 0 85.0393")); // 30 × 20 mm in points of 1/72 inch
  CHECK(holds(pdf, "<FEFF005000FC0066"));       // "Püf" in UTF-16
  CHECK(holds(pdf, "/CreationDate (20000101000000Z)"));
  CHECK(pdf == pdf_of({small_sheet(), small_sheet()}).value());
}

TEST_CASE("a page of more than 5,080 mm is refused") { // 14,400 units: ISO 32000-1, annex C
  Sheet sheet = small_sheet();
  sheet.height = 5080;
  CHECK(pdf_of({sheet}).ok());
  sheet.height = 5081;
  CHECK_FALSE(pdf_of({sheet}).ok());
  CHECK_FALSE(pdf_of({}).ok());
}

TEST_CASE("an SVG is in millimetres, with ids, classes, attributes and escaped text") {
  const std::string svg = svg_of(small_sheet());
  CHECK(holds(svg, "width=\"30mm\" height=\"20mm\" viewBox=\"0 0 30 20\""));
  CHECK(holds(svg, "<g id=\"marks\">"));
  CHECK(holds(svg, "<circle cx=\"10\" cy=\"10\" r=\"3\" class=\"pattern\" data-row=\"7\""));
  CHECK(holds(svg, "L12–R3 &amp; &lt;Grüße&gt;"));
  CHECK(holds(svg, "stroke-dasharray"));
}

TEST_CASE("control characters never reach an SVG") {
  Sheet sheet = small_sheet();
  sheet.title = "a\x01\x1b b\n\xff c";
  CHECK(holds(svg_of(sheet), "<title>a   b \xEF\xBF\xBD c</title>"));
}

TEST_CASE("a PNG says its density: 10 pixels a mm are 10,000 a metre") { // W3C PNG, pHYs
  const std::string png = png_of(small_sheet(), 10).value();
  CHECK(number_at(png, 16) == 300);
  CHECK(number_at(png, 20) == 200);
  CHECK(png.substr(37, 4) == "pHYs");
  CHECK(number_at(png, 41) == 10'000);
  CHECK(number_at(png, 45) == 10'000);
  CHECK(png[49] == 1);
}

TEST_CASE("a picture without density has no pHYs chunk; one that is too large is refused") {
  const std::vector<unsigned char> pixels(std::size_t{3} * 2 * 3, 128);
  CHECK_FALSE(holds(png_of_pixels(3, 2, pixels, 0, 0).value(), "pHYs"));
  Sheet sheet = small_sheet();
  sheet.width = 5000;
  sheet.height = 5000;
  CHECK_FALSE(png_of(sheet, 10).ok());
}

TEST_CASE("a sheet taller than cairo's largest picture is drawn in strips") {
  Sheet sheet = small_sheet();
  sheet.width = 2;
  sheet.height = 4000; // 40,000 pixels; cairo ends at 32,767
  const std::string png = png_of(sheet, 10).value();
  CHECK(number_at(png, 20) == 40'000);
}

TEST_CASE("widths add up, and grow with the type size") {
  CHECK(width_of("", 3, false) == 0);
  CHECK(width_of("ab", 3, false) == doctest::Approx(width_of("a", 3, false) + width_of("b", 3, false)));
  CHECK(width_of("Ink", 6, true) == doctest::Approx(2 * width_of("Ink", 3, true)));
  CHECK(width_of("0", 1, false) == doctest::Approx(1303.0 / 2048)); // the font's own table: every figure 1303 units
  CHECK(width_of("0", 1, false) == width_of("9", 1, false));
}

TEST_CASE("broken UTF-8 is replaced, one mark a byte") {
  CHECK(utf8_of(characters_of("a\xC3")) == "a\xEF\xBF\xBD");
  CHECK(utf8_of(characters_of("\xED\xA0\x80")) == "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"); // half of a pair
  CHECK(utf8_of(characters_of("\xF0\x9F\x90\xA7 ü€")) == "\xF0\x9F\x90\xA7 ü€");
}

TEST_CASE("lines break at spaces, and keep words whole that are no wider than a line") {
  const auto lines = lines_of("Ink out, end needles back", 3, false, 25);
  REQUIRE(lines.size() > 1);
  std::string joined;
  for (const auto& line : lines) {
    CHECK(width_of(line, 3, false) <= 25);
    joined += (joined.empty() ? "" : " ") + line;
  }
  CHECK(joined == "Ink out, end needles back");
  const auto broken = lines_of("Ink unbreakablewörd", 3, false, 8);
  CHECK(broken.size() > 3);
  std::string together;
  for (const std::string& line : broken) {
    CHECK(width_of(line, 3, false) <= 8);
    together += line;
  }
  CHECK(together == "Inkunbreakablewörd"); // nothing lost, and no letter torn
  CHECK(lines_of("Ink", 3, false, 0.1) == std::vector<std::string>{"I", "n", "k"});
}
