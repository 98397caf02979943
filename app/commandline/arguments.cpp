#include "app/commandline/arguments.h"

#include "core/base/near_word.h"

#include <algorithm>

namespace lidwright {

namespace {

Error unknownOption(const std::string& name, std::span<const OptionSpec> known)
{
    std::vector<std::string> names;
    for (const OptionSpec& spec : known)
        names.emplace_back(spec.name);
    const std::string near = nearestWord(name, names);
    std::string mend = "see lidwright help";
    if (!near.empty()) {
        mend = "did you mean " + near + "?";
    } else if (!names.empty()) {
        mend = "known here are";
        for (const std::string& n : names)
            mend += " " + n;
    }
    return {"there is no such option", name, mend};
}

}  // namespace

Result<Arguments> Arguments::parse(std::span<const std::string> words, std::span<const OptionSpec> known,
                                   std::size_t mostPlain)
{
    Arguments result;
    bool optionsOver = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (optionsOver || word.size() < 2 || word[0] != '-') {
            if (result.m_plain.size() == mostPlain) {
                return Error{"one word too many", word,
                             mostPlain == 0   ? "this command takes options only"
                             : mostPlain == 1 ? "this command takes one file; put names with spaces in quotes"
                                              : "put names with spaces in quotes"};
            }
            result.m_plain.push_back(word);
            continue;
        }
        if (word == "--") {
            optionsOver = true;
            continue;
        }
        // Only long options take "=": in "-o a=b.pdf" the sign belongs to the name.
        const std::size_t equals = word.rfind("--", 0) == 0 ? word.find('=') : std::string::npos;
        const std::string name = word.substr(0, equals);
        const auto spec =
            std::find_if(known.begin(), known.end(), [&](const OptionSpec& s) { return name == s.name; });
        if (spec == known.end()) return unknownOption(name, known);
        if (!spec->value) {
            if (equals != std::string::npos)
                return Error{"this option takes no value", name, "leave out everything from = on"};
            result.m_given.push_back({name, {}});
            continue;
        }
        std::string value;
        if (equals != std::string::npos) {
            value = word.substr(equals + 1);
        } else if (i + 1 < words.size()) {
            value = words[++i];
        } else {
            return Error{"its value is missing", name, "write it as " + name + " " + spec->value};
        }
        if (!spec->repeats && result.has(name))
            return Error{"this option stands twice", name, "give it once"};
        result.m_given.push_back({name, std::move(value)});
    }
    return result;
}

bool Arguments::has(std::string_view option) const
{
    return std::any_of(m_given.begin(), m_given.end(), [&](const Given& g) { return g.option == option; });
}

std::optional<std::string> Arguments::value(std::string_view option) const
{
    for (auto g = m_given.rbegin(); g != m_given.rend(); ++g)
        if (g->option == option) return g->value;
    return std::nullopt;
}

std::vector<std::string> Arguments::values(std::string_view option) const
{
    std::vector<std::string> all;
    for (const Given& g : m_given)
        if (g.option == option) all.push_back(g.value);
    return all;
}

}  // namespace lidwright
