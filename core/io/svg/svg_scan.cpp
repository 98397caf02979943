#include "core/io/svg/svg_scan.h"

#include <charconv>
#include <cmath>
#include <system_error>

namespace lidwright::svg {

bool isSpace(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

void Scanner::skipSpace()
{
    while (!atEnd() && isSpace(m_text[m_position]))
        ++m_position;
}

void Scanner::skipSeparator()
{
    skipSpace();
    if (accept(',')) skipSpace();
}

bool Scanner::accept(char c)
{
    if (atEnd() || m_text[m_position] != c) return false;
    ++m_position;
    return true;
}

std::optional<double> Scanner::number()
{
    const auto digitAt = [&](std::size_t i) {
        return i < m_text.size() && m_text[i] >= '0' && m_text[i] <= '9';
    };
    std::size_t begin = m_position;
    const bool sign = begin < m_text.size() && (m_text[begin] == '+' || m_text[begin] == '-');
    if (sign) ++begin;
    // from_chars would also take "inf", "nan" and a second sign.
    const bool point = begin < m_text.size() && m_text[begin] == '.';
    if (!digitAt(point ? begin + 1 : begin)) return std::nullopt;

    double value = 0;
    const char* const end = m_text.data() + m_text.size();
    const auto [next, code] = std::from_chars(m_text.data() + begin, end, value);
    const auto length = static_cast<std::size_t>(next - (m_text.data() + begin));
    if (code == std::errc::result_out_of_range) {
        const std::string_view token = m_text.substr(begin, length);
        // Too small for a double is as good as nothing; too large is no number that can be drawn.
        if (token.find("e-") == token.npos && token.find("E-") == token.npos) return std::nullopt;
        value = 0;
    } else if (code != std::errc() || !std::isfinite(value)) {
        return std::nullopt;
    }
    const bool negative = sign && m_text[m_position] == '-';
    m_position = begin + length;
    return negative ? -value : value;
}

std::string_view Scanner::word()
{
    const std::size_t begin = m_position;
    const auto belongs = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
               c == '_';
    };
    while (!atEnd() && belongs(m_text[m_position]))
        ++m_position;
    return m_text.substr(begin, m_position - begin);
}

std::string_view trimmed(std::string_view text)
{
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string lowered(std::string_view text)
{
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

bool startsWith(std::string_view text, std::string_view beginning)
{
    return text.substr(0, beginning.size()) == beginning;
}

std::vector<std::string_view> words(std::string_view text)
{
    std::vector<std::string_view> out;
    for (std::size_t i = 0; i < text.size();) {
        while (i < text.size() && isSpace(text[i]))
            ++i;
        const std::size_t begin = i;
        while (i < text.size() && !isSpace(text[i]))
            ++i;
        if (i > begin) out.push_back(text.substr(begin, i - begin));
    }
    return out;
}

std::vector<double> numberList(std::string_view text, bool* complete)
{
    std::vector<double> out;
    Scanner scan(text);
    scan.skipSpace();
    while (const auto value = scan.number()) {
        out.push_back(*value);
        scan.skipSeparator();
    }
    if (complete) *complete = scan.atEnd();
    return out;
}

}  // namespace lidwright::svg
