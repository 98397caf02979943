#pragma once

namespace lidwright {

/// How finely a slow study is reckoned.
enum class Fineness {
    Sketch,  ///< at each step of a drag
    Coarse,  ///< for findings, and until a finer answer is there
    Usual,   ///< on the screen
    Fine,    ///< for the build sheet
};
/// "sketch", "coarse", "usual", "fine".
const char* word(Fineness fineness);

}  // namespace lidwright
