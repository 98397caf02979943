#include "app/commandline/command_line.h"

#include "app/commandline/command.h"
#include "app/commandline/console.h"

#include "core/base/near_word.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <string_view>
#include <system_error>

namespace lidwright {

namespace {

const std::array<const Command*, 14> kCommands{
    &kFindingsCommand, &kValuesCommand, &kStudyCommand,   &kListsCommand, &kParametersCommand,
    &kArtCommand,      &kThinCommand,   &kLidCommand,     &kStockCommand, &kPaperCommand,
    &kBenchCommand,    &kSheetCommand,  &kPictureCommand, &kHelpCommand};

// Options that Qt's own start-up takes (QGuiApplication and QApplication, Qt 6.4 reference); they belong to
// the window. Each is known with one dash and with two.
constexpr std::string_view kWindowOptions[] = {"platform",        "platformpluginpath",
                                               "platformtheme",   "plugin",
                                               "qwindowgeometry", "qwindowicon",
                                               "qwindowtitle",    "reverse",
                                               "session",         "display",
                                               "geometry",        "fontengine",
                                               "dialogs",         "style",
                                               "stylesheet",      "widgetcount",
                                               "nograb",          "dograb",
                                               "qmljsdebugger"};

bool isWindowOption(std::string_view word)
{
    word.remove_prefix(word.substr(0, 2) == "--" ? 2 : 1);
    const std::string_view name = word.substr(0, word.find('='));
    return std::find(std::begin(kWindowOptions), std::end(kWindowOptions), name) != std::end(kWindowOptions);
}

int runCommand(const Command& command, const std::vector<std::string>& words)
{
    const bool asksHelp = std::any_of(words.begin(), words.end(),
                                      [](const std::string& w) { return w == "--help" || w == "-h"; });
    if (asksHelp) {
        const std::vector<std::string> name{command.name};
        return kHelpCommand.run(*Arguments::parse(name, {}, 1));
    }
    const Result<Arguments> arguments = Arguments::parse(words, command.options, command.mostPlain);
    if (!arguments) {
        Error error = arguments.error();
        error.where = std::string(command.name) + ", " + error.where;
        return refuse(error);
    }
    return command.run(*arguments);
}

/// What to say to a first word that is neither command nor option of ours; empty when it may be a plan.
std::optional<int> strangeWord(const std::string& word)
{
    std::vector<std::string> names{"--help", "--version"};
    for (const Command* command : kCommands)
        names.emplace_back(command->name);
    const std::string near = nearestWord(word, names);
    const std::string mend = near.empty() ? "see lidwright help" : "did you mean " + near + "?";
    if (word.size() > 1 && word[0] == '-') return refuse({"there is no such option", word, mend});

    // A bare word that is no file and is spelled almost like a command is a slip; anything else is a plan to
    // open, and the window says what is the matter with it.
    std::error_code code;
    const bool bare = word.find_first_of("./\\") == std::string::npos;
    if (bare && !near.empty() && !std::filesystem::exists(word, code))
        return refuse({"this is neither a command nor a file", word, mend});
    return std::nullopt;
}

}  // namespace

std::span<const Command> commands()
{
    // A copy of the table, in one piece for those who list it.
    static const std::vector<Command> all = [] {
        std::vector<Command> list;
        for (const Command* command : kCommands)
            list.push_back(*command);
        return list;
    }();
    return all;
}

std::optional<int> runCommandLine(int argc, char** argv)
{
    if (argc < 2) return std::nullopt;
    const std::string first = argv[1];
    const std::vector<std::string> rest(argv + 2, argv + argc);
    if (first == "--version" || first == "-v")
        return finish(print(std::string("Lidwright ") + LIDWRIGHT_VERSION + "\n"), kExitFine);
    if (first == "--help" || first == "-h") return runCommand(kHelpCommand, rest);
    for (const Command* command : kCommands)
        if (first == command->name) return runCommand(*command, rest);
    if (first.size() > 1 && first[0] == '-' && isWindowOption(first)) return std::nullopt;
    if (first == "--") return std::nullopt;
    return strangeWord(first);
}

}  // namespace lidwright
