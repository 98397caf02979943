#include "core/io/svg/svg_entities.h"

#include "core/io/svg/svg_reader.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <vector>

namespace lidwright::svg {

namespace {

constexpr std::size_t kNameBytes = 200;
constexpr std::size_t kNesting = 32;

/// Where the DOCTYPE and its internal subset stand.
struct Doctype {
    std::size_t subsetBegin = 0, subsetEnd = 0;  ///< between the brackets
};

/// The position behind the next `end` from `from`, or npos.
std::size_t behind(std::string_view text, std::string_view end, std::size_t from)
{
    const std::size_t at = text.find(end, from);
    return at == text.npos ? at : at + end.size();
}

/// The end of the subset: the first ']' outside quotes and comments.
std::size_t subsetEnd(std::string_view text, std::size_t from)
{
    for (std::size_t i = from; i < text.size(); ++i) {
        if (text[i] == ']') return i;
        if (startsWith(text.substr(i), "<!--")) {
            i = behind(text, "-->", i);
        } else if (text[i] == '"' || text[i] == '\'') {
            i = behind(text, text.substr(i, 1), i + 1);
        } else {
            continue;
        }
        if (i == text.npos) return i;
        --i;
    }
    return text.npos;
}

std::optional<Doctype> findDoctype(std::string_view text)
{
    for (std::size_t i = text.find('<'); i != text.npos; i = text.find('<', i)) {
        const std::string_view rest = text.substr(i);
        if (startsWith(rest, "<?")) {
            i = behind(text, "?>", i);
        } else if (startsWith(rest, "<!--")) {
            i = behind(text, "-->", i);
        } else if (startsWith(rest, "<!DOCTYPE")) {
            // The identifiers before the subset may hold brackets between their quotes.
            for (++i; i < text.size() && text[i] != '>' && text[i] != '['; ++i) {
                if (text[i] != '"' && text[i] != '\'') continue;
                i = text.find(text[i], i + 1);
                if (i == text.npos) return std::nullopt;
            }
            if (i >= text.size() || text[i] != '[') return std::nullopt;
            return Doctype{i + 1, subsetEnd(text, i + 1)};
        } else {
            return std::nullopt;
        }
        if (i == text.npos) break;
    }
    return std::nullopt;
}

class Expander {
public:
    explicit Expander(std::string_view document) : m_document(document) {}

    Result<ExpandedText> run(const Doctype& doctype)
    {
        readDeclarations(m_document.substr(doctype.subsetBegin, doctype.subsetEnd - doctype.subsetBegin));
        m_out.text.reserve(m_document.size());
        m_out.text.append(m_document.substr(0, doctype.subsetBegin));
        // The lines are kept, so that a later mistake is found in the line it has in the file.
        for (std::size_t i = doctype.subsetBegin; i < doctype.subsetEnd; ++i) {
            if (m_document[i] == '\n') m_out.text += '\n';
        }
        copy(m_document.substr(doctype.subsetEnd));
        if (m_error) return *m_error;
        return std::move(m_out);
    }

private:
    enum class Place { Content, Tag, DoubleQuoted, SingleQuoted };

    std::string_view m_document;
    std::map<std::string, std::string, std::less<>> m_entities;
    std::vector<std::string_view> m_active;
    ExpandedText m_out;
    Place m_place = Place::Content;
    std::size_t m_quoteDepth = 0;  ///< how many entities deep the present value was opened
    std::optional<Error> m_error;

    void readDeclarations(std::string_view subset);
    void copy(std::string_view text);
    std::size_t copyReference(std::string_view text, std::size_t at);
    std::size_t copyMarkup(std::string_view text, std::size_t at);
    void expand(std::string_view name);
    void put(char c);
};

void Expander::readDeclarations(std::string_view subset)
{
    for (std::size_t i = 0; i < subset.size();) {
        const std::string_view rest = subset.substr(i);
        if (startsWith(rest, "<!--")) {
            i = behind(subset, "-->", i);
        } else if (startsWith(rest, "<!ENTITY")) {
            Scanner scan(rest.substr(8));
            scan.skipSpace();
            const bool parameter = scan.peek() == '%';
            const std::string_view name = scan.rest().substr(0, scan.rest().find_first_of(" \t\r\n\"'>"));
            const std::string_view after = trimmed(scan.rest().substr(name.size()));
            const char quote = after.empty() ? '\0' : after.front();
            if (quote == '"' || quote == '\'') {
                const std::size_t end = after.find(quote, 1);
                if (end == after.npos) return;
                // The first declaration of a name counts.
                if (!parameter) m_entities.emplace(std::string(name), std::string(after.substr(1, end - 1)));
                i = static_cast<std::size_t>(after.data() - subset.data()) + end + 1;
            } else {
                if (startsWith(after, "SYSTEM") || startsWith(after, "PUBLIC")) m_out.external = true;
                if (!parameter) m_entities.emplace(std::string(name), std::string());
                i = behind(subset, ">", i);
            }
        } else {
            ++i;
        }
        if (i == subset.npos) return;
    }
}

void Expander::put(char c)
{
    if (m_out.text.size() > m_document.size() + kSvgEntityGrowthLimit) {
        if (!m_error) {
            m_error = Error{"its entities grow beyond 16 MiB", {}, "save it without entities, as plain SVG"};
        }
        return;
    }
    const bool inValue = m_place == Place::DoubleQuoted || m_place == Place::SingleQuoted;
    // Inside a value, what an entity brings may neither end it nor open a tag.
    const bool brought = inValue && m_active.size() > m_quoteDepth;
    if (brought && c == '"') {
        m_out.text += "&quot;";
    } else if (brought && c == '\'') {
        m_out.text += "&apos;";
    } else if (brought && c == '<') {
        m_out.text += "&lt;";
    } else {
        m_out.text += c;
    }
}

void Expander::copy(std::string_view text)
{
    for (std::size_t i = 0; i < text.size() && !m_error;) {
        const char c = text[i];
        if (c == '&') {
            i = copyReference(text, i);
            continue;
        }
        if (m_place == Place::Content) {
            if (c == '<') {
                i = copyMarkup(text, i);
                continue;
            }
        } else if (m_place == Place::Tag) {
            if (c == '>') m_place = Place::Content;
            if (c == '"' || c == '\'') {
                m_place = c == '"' ? Place::DoubleQuoted : Place::SingleQuoted;
                m_quoteDepth = m_active.size();
            }
            m_out.text += c;
            ++i;
            continue;
        } else if (m_active.size() <= m_quoteDepth && c == (m_place == Place::DoubleQuoted ? '"' : '\'')) {
            m_place = Place::Tag;
        }
        put(c);
        ++i;
    }
}

/// Comments, CDATA sections and instructions go over as they are; a tag is entered.
std::size_t Expander::copyMarkup(std::string_view text, std::size_t at)
{
    const std::string_view rest = text.substr(at);
    std::size_t end = at + 1;
    if (startsWith(rest, "<!--")) {
        end = behind(text, "-->", at + 4);
    } else if (startsWith(rest, "<![CDATA[")) {
        end = behind(text, "]]>", at);
    } else if (startsWith(rest, "<?")) {
        end = behind(text, "?>", at);
    } else {
        m_place = Place::Tag;
    }
    end = std::min(end, text.size());
    for (const char c : text.substr(at, end - at))
        put(c);
    return end;
}

std::size_t Expander::copyReference(std::string_view text, std::size_t at)
{
    const std::size_t end = text.find(';', at);
    const std::string_view name =
        end == text.npos || end - at > kNameBytes ? std::string_view() : text.substr(at + 1, end - at - 1);
    if (m_entities.find(name) == m_entities.end()) {
        put('&');
        return at + 1;
    }
    expand(name);
    return end + 1;
}

void Expander::expand(std::string_view name)
{
    const bool cyclic = std::find(m_active.begin(), m_active.end(), name) != m_active.end();
    if (cyclic || m_active.size() >= kNesting) {
        m_error = Error{"the entity \"" + std::string(name) + "\" contains itself",
                        {},
                        "save it without entities, as plain SVG"};
        return;
    }
    const auto entity = m_entities.find(name);
    m_active.push_back(entity->first);
    copy(entity->second);
    m_active.pop_back();
}

}  // namespace

bool declaresEntities(std::string_view document)
{
    return findDoctype(document).has_value();
}

Result<ExpandedText> expandEntities(std::string_view document)
{
    const auto doctype = findDoctype(document);
    if (!doctype) return ExpandedText{std::string(document), false};
    if (doctype->subsetEnd == document.npos) {
        return Error{"its document type declaration has no end", {}, "save it anew as plain SVG"};
    }
    return Expander(document).run(*doctype);
}

}  // namespace lidwright::svg
