#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// A piece of a length text.
struct LengthToken {
    enum class Kind {
        Number,    ///< digits with at most one decimal mark
        Fraction,  ///< one character such as ¾
        Plus,
        Minus,
        Times,
        Slash,
        Open,
        Close,
        Foot,    ///< ' or its typographic forms; the words are Kind::Word
        Inch,    ///< " or '' or their typographic forms
        Degree,  ///< °
        Word,    ///< letters
        End
    };

    Kind kind = Kind::End;
    int position = 0;          ///< first byte in the text
    bool spaceBefore = false;  ///< white space stands before it
    double value = 0;          ///< of a Number or a Fraction
    bool integer = false;      ///< a Number of digits only
    std::string text;          ///< as written; a Word in lower case
};

/// Cuts a text into tokens; the last is Kind::End. A leading ≈ is skipped.
///
/// `decimalMark` ('.' or ',') is the writer's own: only after it may exactly three digits stand for
/// decimals where they could also be a group of thousands. Errors: unreadable characters, grouped or
/// ambiguous digits, numbers without an end.
Result<std::vector<LengthToken>> scanLength(std::string_view text, char decimalMark);

/// The error at a byte of `text`; where counts characters from 1.
Error lengthError(std::string_view text, int position, std::string what, std::string mend);

}  // namespace lidwright
