#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::svg {

/// Walks over attribute text: numbers, commas, words. Never reads past the end.
class Scanner {
public:
    explicit Scanner(std::string_view text) : m_text(text) {}

    bool atEnd() const { return m_position >= m_text.size(); }
    /// The next byte, or '\0' at the end.
    char peek() const { return atEnd() ? '\0' : m_text[m_position]; }
    std::size_t position() const { return m_position; }
    std::string_view rest() const { return m_text.substr(m_position); }

    void skipSpace();
    /// Spaces with at most one comma among them.
    void skipSeparator();
    /// Steps over `c` if it is next.
    bool accept(char c);
    /// A number as SVG writes it (sign, digits, point, exponent). Nothing where none stands or where its
    /// value is beyond a double; the position then stays.
    std::optional<double> number();
    /// The next run of letters, digits, '-' and '_'.
    std::string_view word();

private:
    std::string_view m_text;
    std::size_t m_position = 0;
};

bool isSpace(char c);
std::string_view trimmed(std::string_view text);
std::string lowered(std::string_view text);
bool startsWith(std::string_view text, std::string_view beginning);
/// The words between white space.
std::vector<std::string_view> words(std::string_view text);
/// All numbers of a list; stops at the first thing that is none, and then `complete` is false.
std::vector<double> numberList(std::string_view text, bool* complete = nullptr);

}  // namespace lidwright::svg
