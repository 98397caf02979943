#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/plan_input.h"
#include "app/paper/paper_job.h"
#include "app/paper/paper_size.h"

#include "core/base/length_text.h"
#include "core/base/near_word.h"
#include "core/checks/check.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.pdf", "the file to write"},
    {"--size", "a4|letter|a3|tabloid|roll", "paper; by the locale where not said"},
    {"--only",
     "overview,lid,lid-below,head-wall,tail-wall,bass-wall,treble-wall,base,blocks,backing,neck,head,"
     "fretboard,nut,bridge,gauges,story-stick,cutting-plan,wiring",
     "which templates; all that the plan has where not said"},
    {"--overlap", "LENGTH", "strip that neighbouring pages share; 15 mm where not said"},
    {"--correct-x", "FACTOR", "nominal over measured length on your printer, level"},
    {"--correct-y", "FACTOR", "the same, upright"},
    kSetOption,
    kArtOption,
};

Error noSuchWord(const std::string& option, const std::string& word, const std::vector<std::string>& known)
{
    const std::string near = nearestWord(word, known);
    std::string mend = near.empty() ? "known are" : "did you mean " + near + "?";
    if (near.empty())
        for (const std::string& k : known)
            mend += " " + k;
    return {"there is no such choice", option + " " + word, mend};
}

Result<std::vector<TemplateKind>> templatesNamed(const std::string& list)
{
    std::vector<std::string> known;
    for (const TemplateKind kind : kTemplateKinds)
        known.emplace_back(word(kind));
    std::vector<TemplateKind> chosen;
    std::size_t start = 0;
    while (start <= list.size()) {
        const std::size_t end = std::min(list.find(',', start), list.size());
        const std::string name = list.substr(start, end - start);
        const auto found = std::find_if(std::begin(kTemplateKinds), std::end(kTemplateKinds),
                                        [&](TemplateKind kind) { return name == word(kind); });
        if (found == std::end(kTemplateKinds)) return noSuchWord("--only", name, known);
        if (std::find(chosen.begin(), chosen.end(), *found) == chosen.end()) chosen.push_back(*found);
        start = end + 1;
    }
    return chosen;
}

Result<PaperSize> sizeNamed(const std::string& name)
{
    if (const auto size = paperSizeNamed(name)) return *size;
    std::vector<std::string> known;
    for (const PaperFormat& format : paperFormats())
        known.emplace_back(format.word);
    return noSuchWord("--size", name, known);
}

Result<double> factorOf(const std::string& option, const std::string& text)
{
    const Result<double> factor = parseNumber(text);
    if (!factor) return Error{factor.error().what, option + " " + text, factor.error().mend};
    if (!(*factor >= kLeastCorrection && *factor <= kMostCorrection)) {
        return Error{
            "a correction lies between 0.90 and 1.10", option + " " + text,
            "it is the nominal length over the measured one; if more is off, the page was fitted: print at "
            "actual size"};
    }
    return *factor;
}

Result<PaperJob> jobOf(const Arguments& arguments, const UnitStyle& style)
{
    PaperJob job;
    job.size = usualPaperSize(QLocale::system());
    if (const auto name = arguments.value("--size")) {
        const Result<PaperSize> size = sizeNamed(*name);
        if (!size) return size.error();
        job.size = *size;
    }
    if (const auto list = arguments.value("--only")) {
        const Result<std::vector<TemplateKind>> kinds = templatesNamed(*list);
        if (!kinds) return kinds.error();
        job.templates = *kinds;
    }
    if (const auto text = arguments.value("--overlap")) {
        const Result<double> overlap = parseLength(*text, style);
        if (!overlap) return Error{overlap.error().what, "--overlap " + *text, overlap.error().mend};
        if (!(*overlap >= kLeastOverlap && *overlap <= kMostOverlap))
            return Error{"the overlap lies between 6 and 50 mm", "--overlap " + *text, "15 mm is usual"};
        job.overlap = *overlap;
    }
    for (const auto& [option, factor] :
         {std::pair{"--correct-x", &job.correctionX}, std::pair{"--correct-y", &job.correctionY}}) {
        const auto text = arguments.value(option);
        if (!text) continue;
        const Result<double> value = factorOf(option, *text);
        if (!value) return value.error();
        *factor = *value;
    }
    return job;
}

int run(const Arguments& arguments)
{
    const auto file = arguments.value("-o");
    if (!file || file->empty())
        return refuse(
            {"where to?", "paper", "name the file to write: lidwright paper PLAN -o templates.pdf"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const Result<PaperJob> asked = jobOf(arguments, unitStyle(input->plan));
    if (!asked) return refuse(asked.error());

    const std::vector<Finding> findings = check(input->plan, derive(input->plan));
    const auto wrong = std::count_if(findings.begin(), findings.end(),
                                     [](const Finding& f) { return f.verdict == Verdict::Wrong; });
    if (wrong > 0) {
        remark("something is wrong with this plan (" + std::to_string(wrong) +
               (wrong == 1 ? " finding" : " findings") + "); lidwright findings says what, before you cut");
    }
    const DrawingSession session;
    PaperJob job = *asked;
    job.wrong = wrongSentences(findings, unitStyle(input->plan));
    const QString problem = writePaperPdf(input->plan, job, QString::fromStdString(*file));
    if (!problem.isEmpty()) return refuse({problem.toStdString(), {}, {}});
    return finish(print(*file + ": written (" + formatOf(job.size).word +
                        "); print it at actual size, 100 %: lp -o print-scaling=none '" + *file + "'\n"),
                  kExitFine);
}

}  // namespace

constinit const Command kPaperCommand{
    "paper",
    "full-size templates as a PDF, true to size",
    "PLAN -o FILE.pdf [--size a4|letter|a3|tabloid|roll] [--only lid,head-wall,...]\n"
    "                [--overlap LENGTH] [--correct-x FACTOR] [--correct-y FACTOR] [--set KEY=VALUE]...\n"
    "                [--art FILE.svg]...",
    "Writes the full-size templates of every part, the story stick and gauges, the wiring, and an overview "
    "of "
    "all views\n"
    "on A3 or tabloid. Large ones are spread over pages with marks to join them, small ones share a page; "
    "with\n"
    "rulers to check the printer by, a map of the pages, and what is wrong with the plan before all of it.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
