#include "core/io/svg/svg_selector.h"

#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_xml.h"

#include <algorithm>

namespace lidwright::svg {

namespace {

constexpr std::size_t kSelectorParts = 99;

bool hasClass(const pugi::xml_node& node, std::string_view wanted)
{
    const std::vector<std::string_view> list = words(node.attribute("class").value());
    return std::find(list.begin(), list.end(), wanted) != list.end();
}

std::string_view localName(const pugi::xml_node& node)
{
    const std::string_view name = node.name();
    const std::size_t colon = name.find(':');
    return colon == name.npos ? name : name.substr(colon + 1);
}

/// "[name]", "[name=value]" or "[name='value']", the bracket already passed.
bool parseAttributeTest(Scanner& scan, SimpleSelector& selector)
{
    scan.skipSpace();
    SimpleSelector::AttributeTest test{std::string(scan.word()), {}, false};
    scan.skipSpace();
    if (scan.accept('=')) {
        test.exact = true;
        scan.skipSpace();
        const char quote = scan.peek();
        if (scan.accept('"') || scan.accept('\'')) {
            while (!scan.atEnd() && scan.peek() != quote) {
                test.value += scan.peek();
                scan.accept(scan.peek());
            }
            scan.accept(quote);
        } else {
            test.value = scan.word();
        }
        scan.skipSpace();
    }
    if (test.name.empty() || !scan.accept(']')) return false;
    selector.attributes.push_back(std::move(test));
    return true;
}

/// A name of a selector may hold bytes of any letter.
std::string name(Scanner& scan)
{
    std::string out;
    const auto belongs = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
               c == '_' || static_cast<unsigned char>(c) >= 0x80;
    };
    while (!scan.atEnd() && (belongs(scan.peek()) || scan.peek() == '\\')) {
        if (scan.accept('\\') && scan.atEnd()) break;
        out += scan.peek();
        scan.accept(scan.peek());
    }
    return out;
}

std::optional<SimpleSelector> parseSimple(Scanner& scan)
{
    SimpleSelector out;
    bool any = false;
    if (scan.accept('*')) {
        any = true;
    } else {
        out.type = name(scan);
        any = !out.type.empty();
    }
    while (!scan.atEnd()) {
        if (scan.accept('.')) {
            out.classes.push_back(name(scan));
            if (out.classes.back().empty()) return std::nullopt;
        } else if (scan.accept('#')) {
            out.id = name(scan);
            if (out.id.empty()) return std::nullopt;
        } else if (scan.accept('[')) {
            if (!parseAttributeTest(scan, out)) return std::nullopt;
        } else {
            break;
        }
        any = true;
    }
    return any ? std::optional(std::move(out)) : std::nullopt;
}

}  // namespace

bool SimpleSelector::matches(const pugi::xml_node& node) const
{
    if (!type.empty() && localName(node) != type) return false;
    if (!id.empty() && id != node.attribute("id").value()) return false;
    for (const std::string& wanted : classes) {
        if (!hasClass(node, wanted)) return false;
    }
    return std::all_of(attributes.begin(), attributes.end(), [&](const AttributeTest& test) {
        const pugi::xml_attribute attribute = node.attribute(test.name.c_str());
        return attribute && (!test.exact || test.value == attribute.value());
    });
}

std::optional<std::vector<SimpleSelector>> parseSelector(std::string_view text)
{
    std::vector<SimpleSelector> out;
    Scanner scan(trimmed(text));
    bool child = false;
    while (!scan.atEnd()) {
        auto part = parseSimple(scan);
        if (!part || out.size() >= kSelectorParts) return std::nullopt;
        part->child = child;
        out.push_back(std::move(*part));
        const std::size_t before = scan.position();
        scan.skipSpace();
        child = scan.accept('>');
        if (child) scan.skipSpace();
        if (!scan.atEnd() && scan.position() == before) return std::nullopt;
    }
    if (out.empty() || child) return std::nullopt;
    return out;
}

int specificityOf(const std::vector<SimpleSelector>& selector)
{
    std::size_t ids = 0, classes = 0, types = 0;
    for (const SimpleSelector& part : selector) {
        ids += part.id.empty() ? 0 : 1;
        classes += part.classes.size() + part.attributes.size();
        types += part.type.empty() ? 0 : 1;
    }
    constexpr std::size_t kMost = 99;
    return static_cast<int>(std::min(ids, kMost) * 10'000 + std::min(classes, kMost) * 100 +
                            std::min(types, kMost));
}

bool selectorMatches(const std::vector<SimpleSelector>& selector, const pugi::xml_node& node, Budget& budget)
{
    if (!selector.back().matches(node)) return false;
    if (selector.size() == 1) return true;
    std::vector<pugi::xml_node> line;
    for (pugi::xml_node up = node; up && up.type() == pugi::node_element; up = up.parent())
        line.push_back(up);
    // From the outermost element inwards: which beginnings of the selector end here, and which ended
    // anywhere above. Linear, where trying every way would be exponential.
    const std::size_t parts = selector.size();
    if (!budget.styleTests(parts * line.size())) return false;
    std::vector<bool> above(parts, false), here(parts, false), parent(parts, false);
    for (auto element = line.rbegin(); element != line.rend(); ++element) {
        for (std::size_t k = 0; k < parts; ++k) {
            const bool reached = k == 0 || (selector[k].child ? parent[k - 1] : above[k - 1]);
            here[k] = reached && selector[k].matches(*element);
        }
        for (std::size_t k = 0; k < parts; ++k)
            above[k] = above[k] || here[k];
        parent = here;
    }
    return here[parts - 1];
}

std::string keyOf(const SimpleSelector& last)
{
    if (!last.id.empty()) return "#" + last.id;
    if (!last.classes.empty()) return "." + last.classes.front();
    return last.type;
}

std::vector<std::string> keysOf(const pugi::xml_node& node)
{
    std::vector<std::string> keys{"", std::string(localName(node))};
    const std::string_view id = node.attribute("id").value();
    if (!id.empty()) keys.push_back("#" + std::string(id));
    for (const std::string_view word : words(node.attribute("class").value())) {
        std::string key = "." + std::string(word);
        if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(std::move(key));
    }
    return keys;
}

}  // namespace lidwright::svg
