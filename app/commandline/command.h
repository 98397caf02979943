#pragma once

#include "app/commandline/arguments.h"

#include <span>

namespace lidwright {

/// One command of the command line.
struct Command {
    const char* name;
    const char* summary;  ///< one line for the list of commands
    const char* usage;    ///< what follows the name: "[PLAN] [--json]"
    const char* help;     ///< what it gives and what its exit codes mean
    std::span<const OptionSpec> options;
    std::size_t mostPlain;  ///< how many words may stand that are no options
    int (*run)(const Arguments&);
};

/// All commands in the order in which help lists them.
std::span<const Command> commands();

// One file each.
extern const Command kFindingsCommand;
extern const Command kValuesCommand;
extern const Command kParametersCommand;
extern const Command kArtCommand;
extern const Command kThinCommand;
extern const Command kStudyCommand;
extern const Command kListsCommand;
extern const Command kBenchCommand;
extern const Command kSheetCommand;
extern const Command kLidCommand;
extern const Command kStockCommand;
extern const Command kPaperCommand;
extern const Command kPictureCommand;
extern const Command kHelpCommand;

}  // namespace lidwright
