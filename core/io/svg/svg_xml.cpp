#include "core/io/svg/svg_xml.h"

#include "core/io/svg/svg_entities.h"
#include "core/io/svg/svg_reader.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <cstddef>

namespace lidwright::svg {

namespace {

constexpr std::string_view kSvgSpace = "http://www.w3.org/2000/svg";
constexpr std::string_view kXlinkSpace = "http://www.w3.org/1999/xlink";

/// What the prefix stands for at this element.
std::string_view spaceOf(const pugi::xml_node& node, std::string_view prefix)
{
    const std::string name = "xmlns:" + std::string(prefix);
    for (pugi::xml_node up = node; up; up = up.parent()) {
        const pugi::xml_attribute declared = up.attribute(name.c_str());
        if (declared) return trimmed(declared.value());
    }
    return {};
}

Error unreadable(const pugi::xml_parse_result& result, std::string_view text)
{
    const auto offset = static_cast<std::size_t>(std::max<std::ptrdiff_t>(result.offset, 0));
    const std::string_view before = text.substr(0, std::min(offset, text.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    Error error{"it is not well formed (" + lowered(result.description()) + ")",
                "line " + std::to_string(line), "open it in the drawing program and save it anew"};
    error.position = static_cast<int>(std::min(offset, text.size()));
    return error;
}

/// Counts elements and levels without recursion; the error of the limit that is passed.
std::optional<Error> checkSize(const pugi::xml_node& root)
{
    std::size_t elements = 0;
    int depth = 1;
    for (pugi::xml_node node = root; node;) {
        if (node.type() == pugi::node_element && ++elements > 2 * kSvgElementLimit) {
            return Error{"more than 400,000 elements", {}, "simplify the drawing or leave out part of it"};
        }
        if (depth > kSvgDepthLimit) {
            return Error{"more than 512 elements inside one another", {}, "ungroup the drawing"};
        }
        if (node.first_child()) {
            node = node.first_child();
            ++depth;
            continue;
        }
        while (node && node != root && !node.next_sibling()) {
            node = node.parent();
            --depth;
        }
        if (node == root) break;
        node = node.next_sibling();
    }
    return std::nullopt;
}

}  // namespace

Result<XmlFile> parseXml(std::string_view given, Notes& notes)
{
    if (given.size() > kSvgFileLimit) {
        return Error{"the file is larger than 64 MiB", {}, "simplify the drawing"};
    }
    if (startsWith(given, "\x1f\x8b")) {
        return Error{"the file is compressed (.svgz)", {}, "save it as plain, uncompressed SVG"};
    }
    std::string expanded;
    std::string_view text = given;
    if (declaresEntities(text)) {
        auto result = expandEntities(text);
        if (!result) return result.error();
        if (result->external) notes.add(Issue::External);
        expanded = std::move(result).value().text;
        text = expanded;
    }
    XmlFile file{std::make_unique<pugi::xml_document>(), {}};
    unsigned flags = pugi::parse_default | pugi::parse_pi;
    // Blanks between elements matter between the parts of a text only.
    if (text.find("text") != text.npos) flags |= pugi::parse_ws_pcdata;
    const pugi::xml_parse_result result = file.document->load_buffer(text.data(), text.size(), flags);
    if (!result) return unreadable(result, text);
    for (const pugi::xml_node node : file.document->children()) {
        if (node.type() == pugi::node_pi && std::string_view(node.name()) == "xml-stylesheet") {
            notes.add(Issue::External, "style sheet");
        }
        if (node.type() == pugi::node_element && !file.root) file.root = node;
    }
    const std::string_view name = file.root ? file.root.name() : "";
    if (name.substr(name.find(':') == name.npos ? 0 : name.find(':') + 1) != "svg") {
        return Error{"it is no SVG drawing", {}, "save the drawing as SVG"};
    }
    if (const auto error = checkSize(file.root)) return *error;
    return file;
}

std::string_view svgName(const pugi::xml_node& node)
{
    if (node.type() != pugi::node_element) return {};
    const std::string_view name = node.name();
    const std::size_t colon = name.find(':');
    if (colon == name.npos) {
        // The outermost element is taken whatever its name space: old files spell it in many ways.
        const std::string_view space = attributeOf(node, "xmlns");
        const bool outermost = node.parent().type() == pugi::node_document;
        return space.empty() || space == kSvgSpace || outermost ? name : std::string_view();
    }
    if (name.substr(0, colon) != "svg" && spaceOf(node, name.substr(0, colon)) != kSvgSpace) return {};
    return name.substr(colon + 1);
}

std::string_view hrefOf(const pugi::xml_node& node)
{
    const std::string_view plain = attributeOf(node, "href");
    if (!plain.empty()) return plain;
    for (const pugi::xml_attribute attribute : node.attributes()) {
        const std::string_view name = attribute.name();
        const std::size_t colon = name.find(':');
        if (colon == name.npos || name.substr(colon + 1) != "href") continue;
        const std::string_view prefix = name.substr(0, colon);
        if (prefix == "xlink" || spaceOf(node, prefix) == kXlinkSpace) return trimmed(attribute.value());
    }
    return {};
}

std::string_view attributeOf(const pugi::xml_node& node, const char* name)
{
    return trimmed(node.attribute(name).value());
}

std::string textInside(const pugi::xml_node& node)
{
    std::string out;
    for (const pugi::xml_node child : node.children()) {
        if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) out += child.value();
    }
    return out;
}

}  // namespace lidwright::svg
