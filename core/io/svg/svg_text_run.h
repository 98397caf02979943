#pragma once

#include "core/io/svg/svg_outline.h"

#include <compare>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// Words that one font writes in one go, from left to right.
struct TextRun {
    std::string words;  ///< UTF-8; blanks are meant, at both ends too
    /// Wanted fonts, best first; generic names ("serif", "sans-serif", "monospace" ...) may be among them.
    /// Empty where the drawing leaves the choice open: viewers then take one with serifs.
    std::vector<std::string> families;
    double size = 16;      ///< the em, user units, above 0
    int weight = 400;      ///< 1 ... 1000 as in CSS Fonts 4, section 2.2: 400 regular, 700 bold
    double stretch = 100;  ///< width of the letters, 50 ... 200 % as in CSS Fonts 4, section 2.3
    bool italic = false;   ///< or slanted
    bool smallCapitals = false;
    double letterSpacing = 0;  ///< added behind every letter, user units
    double wordSpacing = 0;    ///< added behind every blank, user units
    bool underline = false, overline = false, strikeOut = false;

    auto operator<=>(const TextRun&) const = default;
};

/// How the words look. All in user units, y down, the origin at the beginning of the base line.
struct TextShape {
    svg::Outline letters;            ///< to be filled by the nonzero rule
    svg::Outline lines;              ///< lines under, over and through the words
    double advance = 0;              ///< from here to where the next words begin
    double xHeight = 0;              ///< height of the small letters above the base line
    double ascent = 0;               ///< reach of the font above the base line
    double descent = 0;              ///< reach below it, usually above 0
    std::vector<std::string> fonts;  ///< names of those that were really used
};

/// Turns words into outlines; nothing where that cannot be done, down to a single letter. It is called on
/// the thread that reads the drawing and must not keep what it is given.
using TextOutliner = std::function<std::optional<TextShape>(const TextRun&)>;

}  // namespace lidwright
