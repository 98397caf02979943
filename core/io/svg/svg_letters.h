#pragma once

#include "core/io/svg/svg_length.h"

#include <pugixml.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::svg {

/// One character of a text and where the drawing itself puts it, user units.
struct Letter {
    std::size_t offset = 0;      ///< of its first byte in the whole text
    std::size_t span = 0;        ///< number of the style that it is written in
    std::optional<double> x, y;  ///< given places; each begins a new chunk (SVG 1.1, section 10.4)
    double dx = 0, dy = 0;       ///< given steps
};

/// Gathers the characters of one text element: white space by the rules of xml:space (SVG 1.1, section
/// 10.15; line ends count as blanks, as viewers take them), places by the lists of x, y, dx and dy.
class Letters {
public:
    /// The lists of a text or tspan element, whose characters come between open() and close().
    void open(const pugi::xml_node& node, const LengthContext& lengths);
    void close() { m_open.pop_back(); }
    void add(std::string_view characters, bool preserve, std::size_t span);
    /// Takes off the blank at the end, unless it was to be preserved; one in front of a given place is gone
    /// already.
    void finish();

    /// All words, with a blank where another line begins.
    std::string lines() const;
    const std::vector<Letter>& all() const { return m_letters; }
    /// The bytes of the letters first ... last - 1.
    std::string words(std::size_t first, std::size_t last) const;
    /// False where something in it runs from right to left.
    bool leftToRight() const { return m_leftToRight; }

private:
    struct Lists {
        std::vector<double> x, y, dx, dy;
        std::size_t next = 0;  ///< index of the next character, in units of UTF-16 as SVG counts them
    };

    std::string m_text;
    std::vector<Letter> m_letters;
    std::vector<Lists> m_open;  ///< outermost first
    bool m_blankBefore = true;
    bool m_blankPreserved = false;
    bool m_leftToRight = true;

    void put(std::string_view character, char32_t code, std::size_t span);
    void dropBlank(Letter& next);
};

/// xml:space="preserve" holds at the node.
bool preservesSpace(pugi::xml_node node);

}  // namespace lidwright::svg
