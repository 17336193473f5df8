// The steps as one web page without scripts, for a tablet beside the machine. Well-formed XML too.
#include "sheets/chart_words.hpp"
#include "sheets/html_nodes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/step_forms.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <sstream>

namespace punchwright {
namespace {

using Node = pugi::xml_node;

constexpr const char* style = R"(
:root { color-scheme: light dark; }
body { font: 1.2rem/1.4 "DejaVu Sans", Verdana, sans-serif; color: CanvasText; background: Canvas;
  margin: 1rem auto; max-width: 50rem; padding: 0 1rem; }
h1 { font-size: 1.6rem; margin: 0 0 .3rem; }
h2 { font-size: 1.35rem; margin: 1.4rem 0 .4rem; break-after: avoid; }
p { margin: .3rem 0; }
ol { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: .7rem; padding: .45rem 0; border-bottom: 1px solid rgba(128,128,128,.5); break-inside: avoid; }
input { width: 1.5rem; height: 1.5rem; margin: .1rem 0; flex: none; }
b { min-width: 2.2rem; text-align: right; flex: none; }
@media print {
  @page { margin: 10mm 10mm 14mm; @bottom-right { content: PAGE-OF-PAGES; } }
  :root { color-scheme: light; }
  body { margin: 0; padding: 0; max-width: none; font-size: 4.5mm; }
}
)";

} // namespace

std::string step_html(const StepList& list, const Document& document, const Profile& profile) {
  const std::string title = step_title(document);
  pugi::xml_document page;
  page.append_child(pugi::node_doctype).set_value("html");
  Node html = with(with(page.append_child("html"), "xmlns", "http://www.w3.org/1999/xhtml"), "lang",
                   std::string(chosen_language().code));
  Node head = html.append_child("head");
  with(head.append_child("meta"), "charset", "utf-8");
  with(with(head.append_child("meta"), "name", "viewport"), "content", "width=device-width, initial-scale=1");
  element(head, "title", title);
  element(head, "style", with_page_counters(style));
  Node body = html.append_child("body");
  element(body, "h1", title);
  element(body, "p", one_line(profile.title.empty() ? profile.name : title_of_machine(profile)));
  element(body, "p", step_head_words(list, document));
  std::optional<StepPart> part;
  Node steps;
  int number = 0;
  for (const Step& step : list.steps) {
    ++number;
    if (part != step.part) {
      part = step.part;
      element(body, "h2", std::string(heading_of(step.part)));
      steps = with(body.append_child("ol"), "start", std::to_string(number));
    }
    Node item = with(steps.append_child("li"), "id", fmt::format("step-{}", number));
    with(with(item.append_child("input"), "type", "checkbox"), "aria-label", said("step {} done", number));
    element(item, "b", fmt::format("{}.", number));
    element(item, "span", one_line(step.text));
  }
  element(body, "p", std::string(care_words()));
  std::ostringstream out;
  out.imbue(std::locale::classic());
  page.save(out, " ", pugi::format_indent | pugi::format_no_declaration, pugi::encoding_utf8);
  return std::move(out).str();
}

} // namespace punchwright
