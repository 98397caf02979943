#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/fineness_argument.h"
#include "app/commandline/plan_input.h"
#include "app/commandline/study_text.h"

#include "core/solvers/plate/plate_problem.h"
#include "core/solvers/study.h"

#include <string_view>

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    kSetOption,
    kArtOption,
    {"--fineness", "WORD", "of the lid and the air: coarse, usual or fine; usual where it is not given"},
    {"--json", nullptr, "as JSON, at full precision, with the plots' lines"},
    {"--csv", nullptr, "as a table with a head line (RFC 4180), at full precision"},
    kDecimalCommaOption,
};

/// Whether the one word names a plan and not a subject.
bool isPlanName(const std::string& word)
{
    constexpr std::string_view kEnding = ".lidplan";
    return word.size() > kEnding.size() && word.ends_with(kEnding);
}

/// The studies that take long, one after the other.
int runSlow(const Arguments& arguments)
{
    const StudyFormat format = studyFormat(arguments);
    if (format == StudyFormat::Csv || format == StudyFormat::CsvDecimalComma)
        return refuse({"CSV holds one table, and there is one for each subject", arguments.plain().front(),
                       "name the subject: lidwright study lid PLAN --csv"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const Result<Fineness> fineness = finenessOf(arguments, Fineness::Usual);
    if (!fineness) return refuse(fineness.error());
    const Layout layout = derive(input->plan);
    std::string out;
    for (const StudyEntry& entry : studies()) {
        if (entry.slowly == nullptr) continue;
        const Study study = entry.slowly(input->plan, layout, *fineness, {});
        if (study.problem) return refuse(*study.problem);
        if (!out.empty()) out += format == StudyFormat::Json ? ",\n" : "\n";
        out += studyBytes(study, format, input->name, unitStyle(input->plan));
    }
    return finish(print(format == StudyFormat::Json ? "[\n" + out + "]\n" : out), kExitFine);
}

int run(const Arguments& arguments)
{
    if (arguments.plain().size() == 1 && isPlanName(arguments.plain().front())) return runSlow(arguments);
    if (arguments.plain().empty()) return finish(print(entryList("Subjects", studies())), kExitFine);
    const std::string& word = arguments.plain().front();
    const StudyEntry* entry = findEntry(studies(), word);
    if (entry == nullptr) return refuse(noSuchEntry("subject", word, studies()));
    const Result<PlanInput> input = readPlanInput(arguments, 1);
    if (!input) return refuse(input.error());
    const Result<Fineness> fineness = finenessOf(arguments, Fineness::Usual);
    if (!fineness) return refuse(fineness.error());
    const Layout layout = derive(input->plan);
    const Study study = entry->slowly != nullptr ? entry->slowly(input->plan, layout, *fineness, {})
                                                 : entry->reckon(input->plan, layout);
    if (study.problem) return refuse(*study.problem);
    return finish(print(studyBytes(study, studyFormat(arguments), input->name, unitStyle(input->plan))),
                  kExitFine);
}

}  // namespace

constinit const Command kStudyCommand{
    "study",
    "the figures of one subject: a table, and what it stands on",
    "[SUBJECT [PLAN] | PLAN.lidplan] [--set KEY=VALUE]... [--art FILE.svg]... [--fineness WORD]\n"
    "              [--json|--csv|--decimal-comma]",
    "A table of figures with notes on what they stand on and where they end, in the plan's unit. Without a "
    "subject:\n"
    "the list of subjects; with a plan alone the slow ones, lid and air (JSON: an array). JSON and CSV have "
    "the inside units (mm, N, MPa, ...), which they name.\n"
    "Exit code: 0 figures given, 2 the input cannot be used or there are no figures for this plan.",
    kOptions,
    2,
    run};

}  // namespace lidwright
