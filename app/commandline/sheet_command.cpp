#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/plan_input.h"
#include "app/exchange/build_sheet.h"

#include "core/checks/check.h"

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.html|FILE.pdf", "the file to write; the drawing is in the page, not in the PDF"},
    kSetOption,
    kArtOption,
};

int run(const Arguments& arguments)
{
    const auto file = arguments.value("-o");
    if (!file || file->empty())
        return refuse({"where to?", "sheet", "name the file to write: lidwright sheet PLAN -o build.html"});
    const QString path = QString::fromStdString(*file);
    if (!isBuildSheetPath(path))
        return refuse({"this kind of build sheet is not known", *file, "end the name in .html or .pdf"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const Layout layout = derive(input->plan);
    const DrawingSession session;
    if (const auto error = writeBuildSheet(input->plan, layout, check(input->plan, layout), path))
        return refuse(*error);
    return finish(print(*file + ": written\n"), kExitFine);
}

}  // namespace

constinit const Command kSheetCommand{
    "sheet",
    "the build sheet: the steps of the work, with measures and cautions",
    "PLAN -o FILE.html|FILE.pdf [--set KEY=VALUE]... [--art FILE.svg]...",
    "The steps in the order in which the work must go, each with its tools, its dimensions from the plan, a "
    "box to\n"
    "write what came out, and the usual cautions; then the findings and what the figures stand on.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
