#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/fineness_argument.h"
#include "app/commandline/paper_argument.h"
#include "app/commandline/plan_input.h"
#include "app/exchange/build_sheet.h"

#include "core/checks/check.h"

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.html|FILE.pdf", "the file to write"},
    {"--fineness", "WORD", "of the lid and the air: coarse, usual or fine; fine where it is not given"},
    {"--size", "a4|letter|a3|tabloid", "paper of a PDF; by the locale where not said"},
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
    const Result<Fineness> fineness = finenessOf(arguments, Fineness::Fine);
    if (!fineness) return refuse(fineness.error());
    const Result<PaperSize> size = pagePaperOf(arguments);
    if (!size) return refuse(size.error());
    const Layout layout = derive(input->plan);
    const BenchSheet sheet =
        buildSheet(input->plan, layout, check(input->plan, layout), sheetOfToday(*fineness));
    const DrawingSession session;
    if (const auto error = writeBenchSheet(sheet, *size, path)) return refuse(*error);
    return finish(print(*file + ": written\n"), kExitFine);
}

}  // namespace

constinit const Command kSheetCommand{
    "sheet",
    "the build sheet: the steps of the work, with measures and cautions",
    "PLAN -o FILE.html|FILE.pdf [--fineness WORD] [--size a4|letter|a3|tabloid]\n"
    "              [--set KEY=VALUE]... [--art FILE.svg]...",
    "The steps in the order in which the work must go, each with its tools, its dimensions from the plan, "
    "pictures, a "
    "box to\n"
    "write what came out, and the usual cautions; then how it will sound, the findings and what the\n"
    "figures stand on. The lid and the air are reckoned as finely as can be, which takes some seconds.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
