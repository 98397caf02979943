#pragma once

namespace lidwright {

/// How finely a slow study is reckoned.
enum class Fineness {
    Coarse,  ///< while things are moved, and for findings
    Usual,   ///< on the screen
    Fine,    ///< for the build sheet
};
/// "coarse", "usual", "fine".
const char* word(Fineness fineness);

}  // namespace lidwright
