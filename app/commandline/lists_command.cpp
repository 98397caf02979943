#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/plan_input.h"
#include "app/commandline/study_text.h"
#include "app/document/safe_write.h"

#include "core/solvers/lists/shop_lists.h"

#include <filesystem>
#include <system_error>

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"--all", "DIR", "write every list, and the tables of frets and strings, into this folder"},
    kSetOption,
    kArtOption,
    {"--json", nullptr, "as JSON, at full precision"},
    {"--csv", nullptr, "as a table with a head line (RFC 4180), at full precision"},
    kDecimalCommaOption,
};

int writeAll(const Arguments& arguments, const std::string& folder)
{
    if (folder.empty())
        return refuse({"where to?", "--all", "name the folder: lidwright lists PLAN --all lists"});
    if (arguments.plain().size() > 1)
        return refuse({"one word too many", arguments.plain()[1],
                       "with --all name the plan alone: all lists are written"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    std::error_code code;
    std::filesystem::create_directories(folder, code);
    if (!std::filesystem::is_directory(folder, code))
        return refuse({"the folder cannot be made", folder, "choose another place"});
    // Written to be read by other programs: a table where nothing else is asked for.
    const StudyFormat asked = studyFormat(arguments);
    const StudyFormat format = asked == StudyFormat::Text ? StudyFormat::Csv : asked;
    const char* ending = format == StudyFormat::Json ? ".json" : ".csv";
    const Layout layout = derive(input->plan);
    std::string told;
    for (const StudyEntry& entry : benchLists()) {
        const Study study = entry.reckon(input->plan, layout);
        if (study.problem) {
            remark(std::string(entry.id) + ": " + study.problem->text());
            continue;
        }
        const std::string file = (std::filesystem::path(folder) / (std::string(entry.id) + ending)).string();
        const std::string bytes = studyBytes(study, format, input->name, unitStyle(input->plan));
        if (const auto error =
                writeFileSafely(QString::fromStdString(file), QByteArray::fromStdString(bytes)))
            return refuse(*error);
        told += file + ": written\n";
    }
    return finish(print(told), kExitFine);
}

int run(const Arguments& arguments)
{
    if (const auto folder = arguments.value("--all")) return writeAll(arguments, *folder);
    if (arguments.plain().empty()) return finish(print(entryList("Lists", shopLists())), kExitFine);
    const std::string& word = arguments.plain().front();
    const StudyEntry* entry = findEntry(shopLists(), word);
    if (entry == nullptr) return refuse(noSuchEntry("list", word, shopLists()));
    const Result<PlanInput> input = readPlanInput(arguments, 1);
    if (!input) return refuse(input.error());
    const Study study = entry->reckon(input->plan, derive(input->plan));
    if (study.problem) return refuse(*study.problem);
    return finish(print(studyBytes(study, studyFormat(arguments), input->name, unitStyle(input->plan))),
                  kExitFine);
}

}  // namespace

constinit const Command kListsCommand{
    "lists",
    "what the shop works by: cut list, stock, holes, relief, hardware",
    "[LIST [PLAN]] [--set KEY=VALUE]... [--art FILE.svg]... [--json|--csv|--decimal-comma]\n"
    "       lidwright lists [PLAN] --all DIR [--json|--csv|--decimal-comma] ...",
    "One list with notes on what it stands on, in the plan's unit. Without a list: which there are. Fret and "
    "string\n"
    "tables are studies (lidwright study frets); --all writes them too. JSON and CSV have the inside units "
    "(mm, mm2),\n"
    "which they name; a spreadsheet with the decimal comma reads what --decimal-comma gives.\n"
    "Exit code: 0 given or written, 2 the input cannot be used or a file not written.",
    kOptions,
    2,
    run};

}  // namespace lidwright
