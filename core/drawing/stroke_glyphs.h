#pragma once

#include <string_view>
#include <vector>

namespace lidwright {

/// Two digits for each point, x then y: on a grid 6 wide, 9 high, letters from a for 10 and more above
/// capitals; a blank between strokes.
struct StrokeLetter {
    std::string_view body;
    std::string_view accent;
};

/// The letters that stand for a character: one as a rule, two for ligatures, none for control characters.
std::vector<StrokeLetter> lettersOf(char32_t code);

}  // namespace lidwright
