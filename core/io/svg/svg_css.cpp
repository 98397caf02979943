#include "core/io/svg/svg_css.h"

#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_selector.h"

#include <algorithm>

namespace lidwright::svg {

namespace {

constexpr int kMediaDepth = 8;

std::string withoutComments(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    for (std::size_t i = 0; i < text.size();) {
        if (startsWith(text.substr(i), "/*")) {
            const std::size_t end = text.find("*/", i + 2);
            if (end == text.npos) break;
            i = end + 2;
            out += ' ';
        } else {
            out += text[i++];
        }
    }
    return out;
}

/// The first of `stops` from `from` that stands outside quotes and parentheses.
std::size_t findOutside(std::string_view text, std::string_view stops, std::size_t from)
{
    int depth = 0;
    for (std::size_t i = from; i < text.size(); ++i) {
        const char c = text[i];
        if (depth == 0 && stops.find(c) != stops.npos) return i;
        if (c == '"' || c == '\'') {
            const std::size_t end = text.find(c, i + 1);
            if (end == text.npos) return text.npos;
            i = end;
        } else if (c == '(') {
            ++depth;
        } else if (c == ')' && depth > 0) {
            --depth;
        }
    }
    return text.npos;
}

/// The brace that closes the block opened at `open`.
std::size_t closingBrace(std::string_view text, std::size_t open)
{
    int depth = 0;
    for (std::size_t i = open; i != text.npos; i = findOutside(text, "{}", i + 1)) {
        depth += text[i] == '{' ? 1 : -1;
        if (depth == 0) return i;
    }
    return text.npos;
}

bool mediaApplies(std::string_view condition)
{
    const std::string lower = lowered(condition);
    return lower.find("all") != lower.npos || lower.find("screen") != lower.npos;
}

}  // namespace

std::vector<Declaration> parseDeclarations(std::string_view given)
{
    std::vector<Declaration> out;
    const std::string clean = given.find("/*") == given.npos ? std::string() : withoutComments(given);
    const std::string_view text = clean.empty() ? given : std::string_view(clean);
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(findOutside(text, ";", begin), text.size());
        const std::string_view part = text.substr(begin, end - begin);
        begin = end + 1;
        const std::size_t colon = part.find(':');
        if (colon == part.npos) continue;
        Declaration declaration{lowered(trimmed(part.substr(0, colon))), {}, false};
        std::string_view value = trimmed(part.substr(colon + 1));
        const std::size_t mark = value.rfind('!');
        if (mark != value.npos && lowered(trimmed(value.substr(mark + 1))) == "important") {
            declaration.important = true;
            value = trimmed(value.substr(0, mark));
        }
        declaration.value = value;
        if (!declaration.property.empty()) out.push_back(std::move(declaration));
    }
    return out;
}

void StyleSheet::add(std::string_view text, Notes& notes)
{
    addRules(withoutComments(text), notes, 0);
}

void StyleSheet::addRules(std::string_view text, Notes& notes, int depth)
{
    for (std::size_t i = 0; i < text.size();) {
        if (isSpace(text[i])) {
            ++i;
            continue;
        }
        const std::size_t stop = findOutside(text, text[i] == '@' ? "{;" : "{", i);
        if (stop == text.npos) {
            if (!startsWith(text.substr(i), "-->")) notes.add(Issue::BadStyle);
            return;
        }
        std::string_view head = trimmed(text.substr(i, stop - i));
        if (text[stop] == ';') {
            if (startsWith(lowered(head), "@import")) notes.add(Issue::External, "style sheet");
            i = stop + 1;
            continue;
        }
        const std::size_t end = closingBrace(text, stop);
        const std::string_view block = text.substr(stop + 1, std::min(end, text.size()) - stop - 1);
        if (startsWith(head, "<!--")) head = trimmed(head.substr(4));
        if (startsWith(head, "@media")) {
            if (mediaApplies(head) && depth < kMediaDepth) addRules(block, notes, depth + 1);
        } else if (!startsWith(head, "@")) {
            addRule(head, block, notes);
        }
        if (end == text.npos) return;
        i = end + 1;
    }
}

void StyleSheet::addRule(std::string_view selectors, std::string_view block, Notes& notes)
{
    const std::size_t index = m_blocks.size();
    m_blocks.push_back(parseDeclarations(block));
    for (std::size_t begin = 0; begin <= selectors.size();) {
        const std::size_t end = std::min(findOutside(selectors, ",", begin), selectors.size());
        auto parsed = parseSelector(selectors.substr(begin, end - begin));
        begin = end + 1;
        if (!parsed) {
            notes.add(Issue::BadStyle);
            continue;
        }
        m_byKey[keyOf(parsed->back())].push_back(m_rules.size());
        const int specificity = specificityOf(*parsed);
        m_rules.push_back({std::move(*parsed), specificity, index});
    }
}

std::vector<const std::vector<Declaration>*> StyleSheet::blocksFor(const pugi::xml_node& node,
                                                                   Budget& budget) const
{
    std::vector<const StyleRule*> found;
    if (m_rules.empty()) return {};
    const auto tryKey = [&](const std::string& key) {
        const auto list = m_byKey.find(key);
        if (list == m_byKey.end()) return;
        if (!budget.styleTests(list->second.size())) return;
        for (const std::size_t i : list->second) {
            const StyleRule& rule = m_rules[i];
            if (selectorMatches(rule.selector, node, budget)) found.push_back(&rule);
        }
    };
    for (const std::string& key : keysOf(node))
        tryKey(key);
    std::sort(found.begin(), found.end(), [](const StyleRule* a, const StyleRule* b) {
        return a->specificity != b->specificity ? a->specificity < b->specificity : a->block < b->block;
    });
    std::vector<const std::vector<Declaration>*> out;
    for (const StyleRule* rule : found) {
        const std::vector<Declaration>* block = &m_blocks[rule->block];
        if (out.empty() || out.back() != block) out.push_back(block);
    }
    return out;
}

}  // namespace lidwright::svg
