#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace lidwright::dxf {

/// A group: the smallest thing of a DXF file.
struct Group {
    int code = 0;
    std::string_view value;  ///< without blanks around it
};

/// Takes a file apart, group by group; comments (code 999) are skipped.
class GroupReader {
public:
    explicit GroupReader(std::string_view text) : m_text(text) {}

    /// The next group, or nothing at the end and where a group code is no number: see broken().
    std::optional<Group> next();
    /// The group that next() gave last is given once more.
    void putBack() { m_again = true; }
    /// A group code was no number.
    bool broken() const { return m_broken; }
    /// Where the reader stands, counted from 1.
    int line() const { return m_line; }

private:
    std::string_view m_text;
    std::size_t m_at = 0;
    int m_line = 0;
    bool m_broken = false;
    bool m_again = false;
    Group m_last;

    std::optional<std::string_view> nextLine();
};

/// A number as DXF writes it. Nothing where none stands, or one beyond kDxfFarthest.
std::optional<double> numberOf(std::string_view text);
std::optional<int> wholeOf(std::string_view text);

/// A name as UTF-8 on one line, at most 60 bytes: \U+00E4 becomes its letter, bytes that are no UTF-8 are
/// taken as Latin-1, control characters are left out.
std::string cleanName(std::string_view text);
/// Names are the same whatever the case of their letters.
std::string nameKey(std::string_view text);

}  // namespace lidwright::dxf
