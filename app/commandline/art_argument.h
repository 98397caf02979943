#pragma once

#include "core/base/result.h"

#include <string>
#include <utility>
#include <vector>

namespace lidwright {

/// What follows --art: a file and, after commas, how to read and place it.
struct ArtArgument {
    std::string file;
    std::string perInch;  ///< "per-inch=90": units of the drawing per inch; empty where not said
    std::string wide;     ///< "wide=80 mm": how wide the painted part is to be; empty where not said
    /// The rest, by the artwork's own parameters and in the order given: {"x", "120"}, {"turn", "45"} ...
    std::vector<std::pair<std::string, std::string>> settings;
};

/// Takes "FILE,KEY=VALUE,KEY=VALUE..." apart, from its end on, as long as the keys are known, so that commas
/// and equals signs in file names do no harm. A word that is a file's name as a whole is that file.
Result<ArtArgument> parseArtArgument(const std::string& word);

}  // namespace lidwright
