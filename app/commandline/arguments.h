#pragma once

#include "core/base/result.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// One option that a command knows.
struct OptionSpec {
    const char* name;   ///< with its dashes: "--set"
    const char* value;  ///< what follows, as the help shows it: "KEY=VALUE"; null where nothing follows
    const char* help;   ///< a few words
    bool repeats = false;
};

/// What stood on the command line after the command's name.
class Arguments {
public:
    /// Sorts `words` into options and the rest. An option's value is the next word or stands after "=";
    /// "--" ends the options. Errors name an unknown option together with the known one nearest to it.
    static Result<Arguments> parse(std::span<const std::string> words, std::span<const OptionSpec> known,
                                   std::size_t mostPlain);

    bool has(std::string_view option) const;
    /// The last value given, which wins; empty where the option was not given.
    std::optional<std::string> value(std::string_view option) const;
    std::vector<std::string> values(std::string_view option) const;  ///< in the order given
    const std::vector<std::string>& plain() const { return m_plain; }

private:
    struct Given {
        std::string option;
        std::string value;
    };
    std::vector<Given> m_given;
    std::vector<std::string> m_plain;
};

}  // namespace lidwright
