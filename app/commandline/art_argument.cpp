#include "app/commandline/art_argument.h"

#include "core/base/near_word.h"
#include "core/plan/catalogue.h"

#include <algorithm>
#include <filesystem>
#include <string_view>
#include <system_error>

namespace lidwright {

namespace {

constexpr std::string_view kArtPrefix = "art.#.";

/// The words that may stand before "=": the artwork's parameters and the two that belong to reading.
std::vector<std::string> knownKeys()
{
    std::vector<std::string> keys{"per-inch", "wide"};
    for (const Parameter& parameter : catalogue()) {
        const std::string_view key = parameter.key;
        if (key.substr(0, kArtPrefix.size()) == kArtPrefix) keys.emplace_back(key.substr(kArtPrefix.size()));
    }
    return keys;
}

bool isFile(const std::string& name)
{
    std::error_code code;
    return std::filesystem::exists(name, code);
}

}  // namespace

Result<ArtArgument> parseArtArgument(const std::string& word)
{
    const std::vector<std::string> known = knownKeys();
    ArtArgument result;
    result.file = word;
    std::vector<std::pair<std::string, std::string>> backwards;
    while (!isFile(result.file)) {
        const std::size_t comma = result.file.rfind(',');
        const std::size_t equals = comma == std::string::npos ? comma : result.file.find('=', comma);
        if (equals == std::string::npos) break;
        const std::string key = result.file.substr(comma + 1, equals - comma - 1);
        if (std::find(known.begin(), known.end(), key) == known.end()) {
            const std::string near = nearestWord(key, known);
            std::string mend = near.empty() ? "known are" : "did you mean " + near + "?";
            if (near.empty())
                for (const std::string& k : known)
                    mend += " " + k;
            return Error{"neither is there such a file, nor is \"" + key + "\" known for an artwork",
                         "--art " + word, mend};
        }
        backwards.emplace_back(key, result.file.substr(equals + 1));
        result.file.resize(comma);
    }
    for (auto setting = backwards.rbegin(); setting != backwards.rend(); ++setting) {
        if (setting->first == "per-inch") {
            result.perInch = setting->second;
        } else if (setting->first == "wide") {
            result.wide = setting->second;
        } else {
            result.settings.push_back(*setting);
        }
    }
    return result;
}

}  // namespace lidwright
