#pragma once

#include "core/base/result.h"
#include "core/io/svg/svg_notes.h"

#include <pugixml.hpp>

#include <memory>
#include <string>
#include <string_view>

namespace lidwright::svg {

/// A parsed file; the nodes live as long as it does.
struct XmlFile {
    std::unique_ptr<pugi::xml_document> document;
    pugi::xml_node root;  ///< the outermost svg element
};

/// Parses the text of a file. Errors carry no file name yet: compressed files, text that is no XML or no
/// SVG, too large or too deep, entities without bound.
Result<XmlFile> parseXml(std::string_view text, Notes& notes);

/// The element's name without prefix where it belongs to SVG, otherwise "" (also for text and comments).
std::string_view svgName(const pugi::xml_node& node);

/// The target of href or xlink:href, trimmed; "" where there is none.
std::string_view hrefOf(const pugi::xml_node& node);

/// An attribute's value, trimmed; "" where it is not given.
std::string_view attributeOf(const pugi::xml_node& node, const char* name);

/// The text directly inside the element, CDATA included.
std::string textInside(const pugi::xml_node& node);

}  // namespace lidwright::svg
