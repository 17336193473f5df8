// The small words in which the HTML sheets are written: an element with its text, an attribute.
#pragma once

#include <pugixml.hpp>
#include <string>

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

} // namespace punchwright
