#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/fineness_argument.h"
#include "app/commandline/paper_argument.h"
#include "app/commandline/plan_input.h"
#include "app/commandline/study_text.h"
#include "app/exchange/bench_folder.h"
#include "app/exchange/build_sheet.h"

#include "core/checks/check.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"-o", "DIR", "the folder to write into; it is made where it is not there"},
    {"--size", "a4|letter|a3|tabloid", "paper; by the locale where not said"},
    {"--fineness", "WORD", "of the lid and the air: coarse, usual or fine; fine where it is not given"},
    kDecimalCommaOption,
    kSetOption,
    kArtOption,
};

int run(const Arguments& arguments)
{
    const auto folder = arguments.value("-o");
    if (!folder || folder->empty())
        return refuse({"where to?", "bench", "name the folder to write into: lidwright bench PLAN -o bench"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const Result<Fineness> fineness = finenessOf(arguments, Fineness::Fine);
    if (!fineness) return refuse(fineness.error());
    BenchFolder bench;
    const Result<PaperSize> size = pagePaperOf(arguments);
    if (!size) return refuse(size.error());
    bench.paper.size = *size;
    bench.decimalComma = arguments.has(kDecimalCommaOption.name);
    bench.plan = input->plan;
    bench.layout = derive(bench.plan);
    const std::vector<Finding> findings = check(bench.plan, bench.layout);
    bench.paper.wrong = wrongSentences(findings, unitStyle(bench.plan));
    if (!bench.paper.wrong.isEmpty())
        remark("something is wrong with this plan (findings: " + std::to_string(bench.paper.wrong.size()) +
               "); the first pages say what, before you cut");
    bench.sheet = buildSheet(bench.plan, bench.layout, findings, sheetOfToday(*fineness));
    const DrawingSession session;
    const Result<QStringList> written = writeBenchFolder(bench, QString::fromStdString(*folder));
    if (!written) return refuse(written.error());
    std::string told;
    for (const QString& file : *written)
        told += file.toStdString() + ": written\n";
    return finish(print(told), kExitFine);
}

}  // namespace

constinit const Command kBenchCommand{
    "bench",
    "everything that the bench needs, into one folder",
    "PLAN -o DIR [--size a4|letter|a3|tabloid] [--fineness WORD] [--decimal-comma]\n"
    "              [--set KEY=VALUE]... [--art FILE.svg]...",
    "Full-size templates (templates.pdf), the build sheet (build-sheet.pdf and .html), the lid for the "
    "cutter\n"
    "(lid.svg and lid.dxf) and every list as CSV. Each file can be written alone, with more to choose, by "
    "paper,\n"
    "sheet, lid and lists.\n"
    "Exit code: 0 written, 2 the input cannot be used or a file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
