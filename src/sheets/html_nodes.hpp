// The small words in which the HTML sheets are written: an element with its text, an attribute.
#pragma once

#include "words/words.hpp"

#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace punchwright {

inline pugi::xml_node element(pugi::xml_node parent, const char* name, const std::string& text = "") {
  pugi::xml_node node = parent.append_child(name);
  if (!text.empty()) {
    node.append_child(pugi::node_pcdata).set_value(text.c_str());
  }
  return node;
}

// With a class as its first attribute; null: none.
inline pugi::xml_node classed(pugi::xml_node parent, const char* name, const char* class_name,
                              const std::string& text = "") {
  pugi::xml_node node = element(parent, name, text);
  if (class_name != nullptr) {
    node.append_attribute("class") = class_name;
  }
  return node;
}

inline pugi::xml_node with(pugi::xml_node node, const char* name, const std::string& value) {
  node.append_attribute(name) = value.c_str();
  return node;
}

// The style sheet with words for its PAGE-OF-PAGES: "page " counter(page) " of " counter(pages).
inline std::string with_page_counters(std::string style) {
  constexpr std::string_view place = "PAGE-OF-PAGES";
  std::string words = '"' + said("page {} of {}", R"(" counter(page) ")", R"(" counter(pages) ")") + '"';
  for (const std::string_view nothing : {R"("" )", R"( "")"}) { // a counter at either end
    if (const std::size_t at = words.find(nothing); at != std::string::npos) {
      words.erase(at, nothing.size());
    }
  }
  const std::size_t at = style.find(place);
  return at == std::string::npos ? style : style.replace(at, place.size(), words);
}

} // namespace punchwright
