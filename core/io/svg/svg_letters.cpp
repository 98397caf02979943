#include "core/io/svg/svg_letters.h"

#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_xml.h"

#include <algorithm>
#include <array>
#include <utility>

namespace lidwright::svg {

namespace {

struct Decoded {
    char32_t code = 0;
    std::size_t bytes = 1;
};

/// The character of UTF-8 at the beginning of `text`, which is not empty; a byte that begins none stands for
/// itself.
Decoded decoded(std::string_view text)
{
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(0);
    const std::size_t bytes = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
    if (bytes == 1 || bytes > text.size()) return {first, 1};
    char32_t code = first & (0x7Fu >> bytes);
    for (std::size_t i = 1; i < bytes; ++i) {
        if ((byte(i) & 0xC0) != 0x80) return {first, 1};
        code = code << 6 | (byte(i) & 0x3Fu);
    }
    return {code, bytes};
}

using Range = std::pair<char32_t, char32_t>;

template <std::size_t N>
bool within(char32_t code, const std::array<Range, N>& ranges)
{
    return std::any_of(ranges.begin(), ranges.end(),
                       [&](const Range& range) { return code >= range.first && code <= range.second; });
}

/// Blocks of scripts that run to the left, and marks that turn the direction (Unicode 15, DerivedBidiClass).
bool turnsLeft(char32_t code)
{
    constexpr std::array<Range, 8> kRanges{{{0x0590, 0x08FF},
                                            {0x200F, 0x200F},
                                            {0x202A, 0x202E},
                                            {0x2066, 0x2069},
                                            {0xFB1D, 0xFDFF},
                                            {0xFE70, 0xFEFE},
                                            {0x10800, 0x10FFF},
                                            {0x1E800, 0x1EFFF}}};
    return within(code, kRanges);
}

/// Marks and joiners that make one letter with the character before.
bool joinsOn(char32_t code)
{
    constexpr std::array<Range, 6> kRanges{{{0x0300, 0x036F},
                                            {0x1AB0, 0x1AFF},
                                            {0x1DC0, 0x1DFF},
                                            {0x200C, 0x200D},
                                            {0x20D0, 0x20FF},
                                            {0xFE00, 0xFE0F}}};
    return within(code, kRanges);
}

std::vector<double> lengthList(std::string_view text, Axis axis, const LengthContext& lengths)
{
    std::vector<double> out;
    for (const Length& length : parseLengths(text).value_or(std::vector<Length>()))
        out.push_back(lengths.user(length, axis));
    return out;
}

}  // namespace

void Letters::open(const pugi::xml_node& node, const LengthContext& lengths)
{
    m_open.push_back({lengthList(attributeOf(node, "x"), Axis::X, lengths),
                      lengthList(attributeOf(node, "y"), Axis::Y, lengths),
                      lengthList(attributeOf(node, "dx"), Axis::X, lengths),
                      lengthList(attributeOf(node, "dy"), Axis::Y, lengths), 0});
}

void Letters::add(std::string_view characters, bool preserve, std::size_t span)
{
    while (!characters.empty()) {
        const Decoded next = decoded(characters);
        const std::string_view character = characters.substr(0, next.bytes);
        characters.remove_prefix(next.bytes);
        const bool blank = next.bytes == 1 && isSpace(character.front());
        if (blank && !preserve && m_blankBefore) continue;
        put(blank ? " " : character, blank ? U' ' : next.code, span);
        m_blankBefore = blank;
        m_blankPreserved = preserve;
    }
}

void Letters::put(std::string_view character, char32_t code, std::size_t span)
{
    if (turnsLeft(code)) m_leftToRight = false;
    Letter letter;
    letter.offset = m_text.size();
    letter.span = span;
    m_text += character;
    // The innermost list that reaches this far counts.
    for (Lists& lists : m_open) {
        const std::size_t i = lists.next;
        if (i < lists.x.size()) letter.x = lists.x[i];
        if (i < lists.y.size()) letter.y = lists.y[i];
        if (i < lists.dx.size()) letter.dx = lists.dx[i];
        if (i < lists.dy.size()) letter.dy = lists.dy[i];
        lists.next += code > 0xFFFF ? 2 : 1;
    }
    if (joinsOn(code) && !m_letters.empty()) return;
    // A blank in front of another line is there for the file's own looks; it would move an anchored line.
    if (letter.x || letter.y) dropBlank(letter);
    m_letters.push_back(letter);
}

/// Takes off the blank in front of `next`, whose bytes are written already.
void Letters::dropBlank(Letter& next)
{
    if (m_letters.empty() || !m_blankBefore || m_blankPreserved) return;
    m_letters.pop_back();
    m_text.erase(--next.offset, 1);
}

void Letters::finish()
{
    Letter end;
    end.offset = m_text.size();
    dropBlank(end);
}

std::string Letters::lines() const
{
    std::string out;
    for (std::size_t i = 0; i < m_letters.size(); ++i)
        out += (m_letters[i].y ? " " : "") + words(i, i + 1);
    return out;
}

std::string Letters::words(std::size_t first, std::size_t last) const
{
    const std::size_t begin = m_letters[first].offset;
    const std::size_t end = last < m_letters.size() ? m_letters[last].offset : m_text.size();
    return m_text.substr(begin, end - begin);
}

bool preservesSpace(pugi::xml_node node)
{
    for (; node; node = node.parent()) {
        const pugi::xml_attribute given = node.attribute("xml:space");
        if (given) return trimmed(given.value()) == "preserve";
    }
    return false;
}

}  // namespace lidwright::svg
