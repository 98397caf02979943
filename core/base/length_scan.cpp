#include "core/base/length_scan.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <system_error>

namespace lidwright {

namespace {

using Kind = LengthToken::Kind;

struct Symbol {
    std::string_view bytes;
    Kind kind;
    double value = 0;
};

// Longer marks before those they begin with.
constexpr std::array kSymbols{
    Symbol{"''", Kind::Inch},
    Symbol{"\u2032\u2032", Kind::Inch},
    Symbol{"\u2019\u2019", Kind::Inch},
    Symbol{"\"", Kind::Inch},
    Symbol{"\u2033", Kind::Inch},
    Symbol{"\u201D", Kind::Inch},
    Symbol{"'", Kind::Foot},
    Symbol{"\u2032", Kind::Foot},
    Symbol{"\u2019", Kind::Foot},
    Symbol{"\u00B0", Kind::Degree},
    Symbol{"+", Kind::Plus},
    Symbol{"-", Kind::Minus},
    Symbol{"\u2212", Kind::Minus},
    Symbol{"\u2010", Kind::Minus},
    Symbol{"\u2011", Kind::Minus},
    Symbol{"\u2013", Kind::Minus},
    Symbol{"*", Kind::Times},
    Symbol{"\u00D7", Kind::Times},
    Symbol{"/", Kind::Slash},
    Symbol{"\u2044", Kind::Slash},
    Symbol{"\u2215", Kind::Slash},
    Symbol{"\u00F7", Kind::Slash},
    Symbol{"(", Kind::Open},
    Symbol{")", Kind::Close},
    // The Unicode vulgar fractions: U+00BC-00BE and U+2150-215E.
    Symbol{"\u00BC", Kind::Fraction, 1.0 / 4},
    Symbol{"\u00BD", Kind::Fraction, 1.0 / 2},
    Symbol{"\u00BE", Kind::Fraction, 3.0 / 4},
    Symbol{"\u2150", Kind::Fraction, 1.0 / 7},
    Symbol{"\u2151", Kind::Fraction, 1.0 / 9},
    Symbol{"\u2152", Kind::Fraction, 1.0 / 10},
    Symbol{"\u2153", Kind::Fraction, 1.0 / 3},
    Symbol{"\u2154", Kind::Fraction, 2.0 / 3},
    Symbol{"\u2155", Kind::Fraction, 1.0 / 5},
    Symbol{"\u2156", Kind::Fraction, 2.0 / 5},
    Symbol{"\u2157", Kind::Fraction, 3.0 / 5},
    Symbol{"\u2158", Kind::Fraction, 4.0 / 5},
    Symbol{"\u2159", Kind::Fraction, 1.0 / 6},
    Symbol{"\u215A", Kind::Fraction, 5.0 / 6},
    Symbol{"\u215B", Kind::Fraction, 1.0 / 8},
    Symbol{"\u215C", Kind::Fraction, 3.0 / 8},
    Symbol{"\u215D", Kind::Fraction, 5.0 / 8},
    Symbol{"\u215E", Kind::Fraction, 7.0 / 8},
};

// No-break, thin, narrow no-break and figure space: all are used between number and unit.
constexpr std::array<std::string_view, 8> kSpaces{" ",      "\t",     "\n",     "\r",
                                                  "\u00A0", "\u2009", "\u202F", "\u2007"};

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isMark(char c)
{
    return c == '.' || c == ',';
}
bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string withoutTrailingZeros(std::string digits)
{
    while (!digits.empty() && digits.back() == '0')
        digits.pop_back();
    return digits;
}

class Scanner {
public:
    Scanner(std::string_view text, char decimalMark) : m_text(text), m_mark(decimalMark) {}

    Result<std::vector<LengthToken>> run()
    {
        skipSpace();
        constexpr std::string_view about = "\u2248";
        if (rest().substr(0, about.size()) == about) m_at += about.size();
        while (true) {
            LengthToken token;
            token.spaceBefore = skipSpace();
            token.position = static_cast<int>(m_at);
            if (m_at == m_text.size()) {
                m_tokens.push_back(token);
                return m_tokens;
            }
            const char c = m_text[m_at];
            if (isDigit(c) || isMark(c)) {
                if (auto error = number(token)) return *error;
            } else if (isLetter(c)) {
                word(token);
            } else if (!symbol(token)) {
                return lengthError(m_text, token.position, "this character means nothing in a number",
                                   "use digits, + - * / ( ) and units");
            }
            m_tokens.push_back(std::move(token));
        }
    }

private:
    std::string_view m_text;
    char m_mark;
    std::size_t m_at = 0;
    std::vector<LengthToken> m_tokens;

    std::string_view rest() const { return m_text.substr(m_at); }

    bool skipSpace()
    {
        const std::size_t from = m_at;
        for (std::size_t before = m_text.size() + 1; before != m_at;) {
            before = m_at;
            for (const std::string_view space : kSpaces) {
                if (rest().substr(0, space.size()) == space) m_at += space.size();
            }
        }
        return m_at > from;
    }

    void word(LengthToken& token)
    {
        token.kind = Kind::Word;
        for (; m_at < m_text.size() && isLetter(m_text[m_at]); ++m_at) {
            const char c = m_text[m_at];
            token.text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }

    bool symbol(LengthToken& token)
    {
        for (const Symbol& s : kSymbols) {
            if (rest().substr(0, s.bytes.size()) != s.bytes) continue;
            m_at += s.bytes.size();
            token.kind = s.kind;
            token.value = s.value;
            token.text = s.bytes;
            return true;
        }
        return false;
    }

    /// Reads digits and marks; gives the error or nothing.
    std::optional<Error> number(LengthToken& token)
    {
        const std::size_t from = m_at;
        while (m_at < m_text.size() && (isDigit(m_text[m_at]) || isMark(m_text[m_at])))
            ++m_at;
        token.kind = Kind::Number;
        token.text = m_text.substr(from, m_at - from);
        std::string plain = token.text;
        const auto marks = std::count_if(plain.begin(), plain.end(), isMark);
        token.integer = marks == 0;
        if (!isDigit(plain.back())) {
            return lengthError(m_text, static_cast<int>(m_at) - 1,
                               "the number has no end after its decimal mark",
                               "write a digit after the mark or leave the mark out");
        }
        if (marks > 1) return manyMarks(token);
        if (marks == 1) {
            const std::size_t mark = plain.find_first_of(".,");
            if (auto error = maybeGrouped(token, mark)) return error;
            plain[mark] = '.';
            // from_chars wants a digit before the point.
            if (mark == 0) plain.insert(0, "0");
        }
        const auto [end, failed] = std::from_chars(plain.data(), plain.data() + plain.size(), token.value);
        if (failed != std::errc{} || end != plain.data() + plain.size()) {
            return lengthError(m_text, token.position, "the number is too large", "check the digits");
        }
        return std::nullopt;
    }

    Error manyMarks(const LengthToken& token) const
    {
        const std::string& t = token.text;
        const std::size_t first = t.find_first_of(".,"), last = t.find_last_of(".,");
        const int at = token.position + static_cast<int>(first);
        const bool alike = t[first] == t[last];
        // Groups: every mark is followed by three digits.
        const auto marks = static_cast<std::size_t>(std::count_if(t.begin(), t.end(), isMark));
        if (alike && (t.size() - first != 4 * marks || last + 4 != t.size())) {
            return lengthError(m_text, at, "the number has more than one decimal mark", "leave one mark");
        }
        std::string digits;
        for (std::size_t i = 0; i < t.size(); ++i) {
            if (isDigit(t[i])) digits += t[i];
            // Where the last mark differs from the first, it must be the decimal one.
            if (i == last && !alike) digits += m_mark;
        }
        return lengthError(m_text, at, "digits are not grouped here", "write it as " + digits);
    }

    std::optional<Error> maybeGrouped(const LengthToken& token, std::size_t mark) const
    {
        const std::string whole = token.text.substr(0, mark), decimals = token.text.substr(mark + 1);
        const bool couldBeGroup =
            decimals.size() == 3 && whole.size() >= 1 && whole.size() <= 3 && whole.front() != '0';
        if (!couldBeGroup || token.text[mark] == m_mark) return std::nullopt;
        const std::string few = withoutTrailingZeros(decimals);
        const std::string asDecimal = few.empty() ? whole : whole + m_mark + few;
        return lengthError(m_text, token.position + static_cast<int>(mark),
                           token.text + " can be read as " + asDecimal + " or as " + whole + decimals,
                           "write " + asDecimal + " or " + whole + decimals);
    }
};

}  // namespace

Result<std::vector<LengthToken>> scanLength(std::string_view text, char decimalMark)
{
    return Scanner(text, decimalMark == ',' ? ',' : '.').run();
}

Error lengthError(std::string_view text, int position, std::string what, std::string mend)
{
    // Bytes 10xxxxxx go on with a character of UTF-8.
    const auto before = text.substr(0, static_cast<std::size_t>(std::max(position, 0)));
    const auto characters = std::count_if(
        before.begin(), before.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    return {std::move(what), "character " + std::to_string(characters + 1), std::move(mend), position};
}

}  // namespace lidwright
