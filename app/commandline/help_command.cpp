#include "app/commandline/command.h"
#include "app/commandline/console.h"

#include "core/base/near_word.h"

namespace lidwright {

namespace {

std::string optionLines(const Command& command)
{
    std::string out;
    for (const OptionSpec& option : command.options) {
        const std::string head =
            std::string(option.name) + (option.value ? std::string(" ") + option.value : "");
        constexpr std::size_t kWide = 26;
        const bool tooLong = head.size() >= kWide;
        out += "    " + (tooLong ? head + "\n    " + std::string(kWide, ' ') : padded(head, kWide)) +
               option.help + "\n";
    }
    return out;
}

std::string overview()
{
    std::string out =
        "Lidwright plans a box guitar before the first saw cut.\n\n"
        "    lidwright [PLAN]              opens the window\n"
        "    lidwright COMMAND ...         works without one\n\n"
        "Commands:\n";
    for (const Command& command : commands())
        out += "    " + padded(command.name, 14) + command.summary + "\n";
    out +=
        "\nlidwright help COMMAND says more. Where no PLAN is named, the built-in plan is used.\n"
        "lidwright --version says which version this is.\n";
    return out;
}

int run(const Arguments& arguments)
{
    if (arguments.plain().empty()) return finish(print(overview()), kExitFine);
    const std::string& name = arguments.plain().front();
    std::vector<std::string> names;
    for (const Command& command : commands()) {
        if (name == command.name) {
            std::string out =
                std::string("lidwright ") + command.name + " " + command.usage + "\n\n" + command.help;
            out += "\n";
            if (!command.options.empty()) out += "\nOptions:\n" + optionLines(command);
            return finish(print(out), kExitFine);
        }
        names.emplace_back(command.name);
    }
    const std::string near = nearestWord(name, names);
    return refuse({"there is no such command", name,
                   near.empty() ? "lidwright help lists them" : "did you mean " + near + "?"});
}

}  // namespace

constinit const Command kHelpCommand{
    "help", "what the commands do", "[COMMAND]", "Lists the commands, or says what one of them does.", {}, 1,
    run};

}  // namespace lidwright
