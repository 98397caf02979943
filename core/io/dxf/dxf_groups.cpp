#include "core/io/dxf/dxf_groups.h"

#include "core/io/dxf/dxf_reader.h"

#include <charconv>
#include <cmath>

namespace lidwright::dxf {
namespace {

constexpr int kComment = 999;

std::string_view trimmed(std::string_view s)
{
    constexpr std::string_view blanks = " \t\r\n\v\f";
    const std::size_t begin = s.find_first_not_of(blanks);
    if (begin == std::string_view::npos) return {};
    return s.substr(begin, s.find_last_not_of(blanks) - begin + 1);
}

void appendUtf8(std::string& out, unsigned code)
{
    const auto byte = [&](unsigned bits) { out += static_cast<char>(bits); };
    if (code < 0x80) return byte(code);
    if (code < 0x800) {
        byte(0xC0U | (code >> 6U));
    } else {
        byte(0xE0U | (code >> 12U));
        byte(0x80U | ((code >> 6U) & 0x3FU));
    }
    byte(0x80U | (code & 0x3FU));
}

bool isUtf8(std::string_view s)
{
    for (std::size_t i = 0; i < s.size();) {
        const auto c = static_cast<unsigned char>(s[i]);
        const std::size_t n = c < 0x80                ? 1
                              : c >= 0xC2 && c < 0xE0 ? 2
                              : c >= 0xE1 && c < 0xF0 ? 3
                              : c >= 0xF1 && c < 0xF4 ? 4
                                                      : 0;
        if (n == 0 || i + n > s.size()) return false;
        for (std::size_t k = 1; k < n; ++k)
            if ((static_cast<unsigned char>(s[i + k]) & 0xC0U) != 0x80U) return false;
        // Halves of surrogate pairs.
        if (c == 0xED && static_cast<unsigned char>(s[i + 1]) >= 0xA0) return false;
        i += n;
    }
    return true;
}

/// The character that \U+XXXX spells at i, 0 where none stands there.
unsigned spelledCode(std::string_view s, std::size_t i)
{
    if (s.substr(i, 3) != "\\U+" || i + 7 > s.size()) return 0;
    unsigned code = 0;
    const auto [end, error] = std::from_chars(s.data() + i + 3, s.data() + i + 7, code, 16);
    const bool letter = code >= 0x20 && !(code >= 0xD800 && code < 0xE000) && code < 0xFFFE;
    return error == std::errc() && end == s.data() + i + 7 && letter ? code : 0;
}

}  // namespace

std::optional<std::string_view> GroupReader::nextLine()
{
    if (m_at >= m_text.size()) return std::nullopt;
    const std::size_t end = std::min(m_text.find('\n', m_at), m_text.size());
    const std::string_view line = m_text.substr(m_at, end - m_at);
    m_at = end + 1;
    ++m_line;
    return trimmed(line);
}

std::optional<Group> GroupReader::next()
{
    if (m_again) {
        m_again = false;
        return m_last;
    }
    while (!m_broken) {
        const auto code = nextLine();
        // Some programs end a file with empty lines.
        if (!code || (code->empty() && trimmed(m_text.substr(std::min(m_at, m_text.size()))).empty()))
            return std::nullopt;
        const auto number = wholeOf(*code);
        if (!number) {
            m_broken = true;
            return std::nullopt;
        }
        const auto value = nextLine();
        if (!value) return std::nullopt;
        if (*number == kComment) continue;
        m_last = {*number, *value};
        return m_last;
    }
    return std::nullopt;
}

std::optional<double> numberOf(std::string_view text)
{
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    if (!(std::abs(value) <= kDxfFarthest)) return std::nullopt;
    return value;
}

std::optional<int> wholeOf(std::string_view text)
{
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return value;
}

std::string cleanName(std::string_view text)
{
    constexpr std::size_t kLongest = 60;
    const bool utf8 = isUtf8(text);
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        if (const unsigned code = spelledCode(text, i)) {
            appendUtf8(out, code);
            i += 6;
        } else if (c >= 0x80 && !utf8) {
            // 0x80 to 0x9F are control characters in Latin-1.
            if (c >= 0xA0) appendUtf8(out, c);
        } else if (c >= 0x20 && c != 0x7F) {
            out += text[i];
        }
    }
    if (out.size() <= kLongest) return out;
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U)
        --end;
    return out.substr(0, end);
}

std::string nameKey(std::string_view text)
{
    std::string key(text);
    for (char& c : key)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return key;
}

}  // namespace lidwright::dxf
