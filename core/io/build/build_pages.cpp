#include "core/io/build/build_pages.h"

#include "core/io/build/build_steps.h"
#include "core/solvers/study.h"

#include <algorithm>

namespace lidwright {
namespace {

using Look = BenchWords::Look;

/// Heights that pictures are given, mm: two go under one another on a page with their step's words.
constexpr double kPictureHeight = 110;
constexpr double kManyRows = 140;    ///< of dimensions under one another
constexpr double kTallHeight = 175;  ///< of drawings with many dimensions, or parts below one another
/// More columns are read better on paper that lies.
constexpr std::size_t kMostUpright = 7;

double heightOf(StepView view)
{
    switch (view) {
        case StepView::LidBelow:
            return kManyRows;
        case StepView::Head:
        case StepView::Nut:
        case StepView::Bridge:
        case StepView::Base:
        case StepView::Backing:
        case StepView::Wiring:
            return kTallHeight;
        default:
            return kPictureHeight;
    }
}

Sentence measure(const Measure& value)
{
    return {"%1", {value}};
}

BenchCell cellOf(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style)
{
    const bool number = std::holds_alternative<double>(cell) && column.quantity != Quantity::Pitch;
    if (const auto* words = std::get_if<std::string>(&cell)) return {{*words, {}}, false, false};
    return {{"%1", {spoken(cell, column, style)}}, false, number};
}

BenchTable tableOf(const StudyTable& study, bool check, const UnitStyle& style)
{
    BenchTable table;
    for (const StudyColumn& column : study.columns)
        table.head.push_back({{column.heading, {}}});
    if (check) table.head.push_back({{"Came out", {}}});
    for (const auto& row : study.rows) {
        std::vector<BenchCell>& cells = table.rows.emplace_back();
        for (std::size_t c = 0; c < study.columns.size(); ++c)
            cells.push_back(c < row.size() ? cellOf(row[c], study.columns[c], style) : BenchCell{});
        if (check) cells.push_back({{}, true, false});
    }
    return table;
}

class Builder {
public:
    Builder(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
            const BuildSheetInput& input)
        : m_plan(plan), m_layout(layout), m_findings(findings), m_input(input)
    {}

    BenchSheet build()
    {
        head();
        general();
        int number = 0;
        for (const BuildStep& step : buildSteps(m_plan, m_layout))
            add(step, ++number);
        sound();
        if (m_sheet.stopped) return std::move(m_sheet);
        findings();
        limits();
        return std::move(m_sheet);
    }

private:
    BenchSection& begin(std::string id, std::string title)
    {
        m_sheet.sections.push_back({std::move(id), std::move(title), 0, false, false, false, {}});
        return m_sheet.sections.back();
    }

    void picture(BenchSection& section, StepView view, const std::string& caption)
    {
        if (!m_input.pictures) return;
        Sheet sheet = stepPicture(m_plan, m_layout, view, kBenchWidth, heightOf(view));
        if (!sheet.elements.empty()) section.blocks.push_back(BenchPicture{std::move(sheet), caption});
    }

    void head()
    {
        const std::string fingerprint = planFingerprint(m_plan);
        m_sheet.style = unitStyle(m_plan);
        m_sheet.title = m_plan.sheet.title;
        std::string below = "Build sheet";
        std::vector<Sentence::Argument> words;
        const auto say = [&](const char* pattern, const std::string& word) {
            if (word.empty()) return;
            words.push_back(word);
            below += std::string(pattern) + "%" + std::to_string(words.size());
        };
        say(" for ", m_plan.sheet.maker);
        say(", ", m_input.date);
        say(". Plan ", fingerprint);
        m_sheet.below = {below + ".", std::move(words)};
        m_sheet.footer = m_plan.sheet.title + ", plan " + fingerprint +
                         (m_input.version.empty() ? "" : ", Lidwright " + m_input.version);
        BenchSection& section = begin("plan", "");
        if (!m_plan.sheet.notes.empty())
            section.blocks.push_back(BenchWords{Look::Plain, {"%1", {m_plan.sheet.notes}}});
        const bool wrong = std::any_of(m_findings.begin(), m_findings.end(), [](const Finding& f) {
            return f.verdict == Verdict::Wrong && f.accepted.empty();
        });
        if (wrong)
            section.blocks.push_back(BenchWords{
                Look::Strong,
                {"Something is wrong with this plan: see the findings at the end before you cut.", {}}});
        section.blocks.push_back(BenchWords{
            Look::Plain,
            {"Tick a step's box when it is done, and write down what came out where there is room for it. "
             "The "
             "pictures are not to a round scale: read their dimensions. Full-size templates are printed on "
             "their own.",
             {}}});
        picture(section, StepView::Above, "The board from above");
        picture(section, StepView::LongSection, "The long section through the neck's middle");
    }

    void general()
    {
        BenchSection& section = begin("general", "Before you begin");
        section.newPage = true;
        for (Sentence& caution : generalCautions(m_plan))
            section.blocks.push_back(BenchWords{Look::Caution, std::move(caution)});
    }

    void add(const BuildStep& step, int number)
    {
        BenchSection& section = begin(step.id, step.title);
        section.number = number;
        section.tick = true;
        section.together = true;
        section.newPage = number == 1;
        section.blocks.push_back(BenchWords{Look::Plain, {step.tools, {}}, "Tools"});
        // Before the work: what can hurt is read first.
        for (std::size_t i = 0; i < step.cautions.size(); ++i)
            section.blocks.push_back(BenchWords{Look::Caution, step.cautions[i], i == 0 ? "Caution" : ""});
        for (const Sentence& sentence : step.work)
            section.blocks.push_back(BenchWords{Look::Plain, sentence});
        for (const StepPicture& wanted : step.pictures)
            picture(section, wanted.view, wanted.caption);
        if (!step.measures.empty()) {
            BenchTable table;
            table.head = {{{"Measure", {}}}, {{"Plan", {}}}, {{"Came out", {}}}};
            for (const StepMeasure& m : step.measures)
                table.rows.push_back({{{m.what, {}}},
                                      {measure(m.value), false, true},
                                      {m.check ? Sentence{} : Sentence{"\xE2\x80\x93", {}}, m.check, false}});
            section.blocks.push_back(std::move(table));
        }
        for (const StepTable& table : step.tables)
            section.blocks.push_back(tableOf(table.table, table.check, m_sheet.style));
    }

    bool stopped() const { return m_input.watch.cancelled && m_input.watch.cancelled(); }

    /// The slow studies, each once: their tables here, their notes under the limits.
    void sound()
    {
        std::vector<const StudyEntry*> slow;
        for (const StudyEntry& entry : studies())
            if (entry.slowly != nullptr) slow.push_back(&entry);
        const auto count = static_cast<double>(slow.size());
        BenchSection& section = begin("sound", "How it will sound");
        section.together = true;
        section.blocks.push_back(
            BenchWords{Look::Plain,
                       {"Reckoned for the plan as it stands, by a grid whose fineness is called %1. What the "
                        "figures stand on is said at the end.",
                        {std::string(word(m_input.fineness))}}});
        for (std::size_t i = 0; i < slow.size(); ++i) {
            const double from = static_cast<double>(i) / count;
            Study study = slow[i]->slowly(m_plan, m_layout, m_input.fineness,
                                          stageOf(m_input.watch, from, from + 1 / count));
            m_sheet.stopped = m_sheet.stopped || stopped();
            if (m_sheet.stopped) return;
            section.blocks.push_back(BenchWords{Look::Heading, {study.title, {}}});
            if (study.problem)
                section.blocks.push_back(
                    BenchWords{Look::Plain, {"There are no figures: %1", {study.problem->text()}}});
            else
                section.blocks.push_back(tableOf(study.table, false, m_sheet.style));
            m_slow.push_back(std::move(study));
        }
    }

    /// The worst first; those that are lived with after those that are not.
    std::vector<const Finding*> sorted(bool accepted) const
    {
        std::vector<const Finding*> out;
        for (const Verdict verdict : {Verdict::Wrong, Verdict::Unknown, Verdict::Tight})
            for (const Finding& f : m_findings)
                if (f.verdict == verdict && f.accepted.empty() != accepted) out.push_back(&f);
        return out;
    }

    void findings()
    {
        BenchSection& section = begin("findings", "Findings");
        const auto list = [&](const std::vector<const Finding*>& all, const char* title) {
            if (all.empty()) return;
            section.blocks.push_back(BenchWords{Look::Heading, {title, {}}});
            for (const Finding* f : all) {
                section.blocks.push_back(BenchWords{Look::Plain, f->sentence, word(f->verdict), f->rule});
                if (!f->accepted.empty())
                    section.blocks.push_back(BenchWords{Look::Indented, {"Lived with: %1", {f->accepted}}});
            }
        };
        list(sorted(false), "Open");
        list(sorted(true), "Accepted by the maker");
        const auto good = std::count_if(m_findings.begin(), m_findings.end(),
                                        [](const Finding& f) { return f.verdict == Verdict::Good; });
        section.blocks.push_back(BenchWords{Look::Plain,
                                            {static_cast<std::size_t>(good) == m_findings.size()
                                                 ? "Everything that could be judged is good: %1 findings."
                                                 : "Good: %1 findings.",
                                             {Measure{static_cast<double>(good), Quantity::Count}}}});
    }

    void limits()
    {
        BenchSection& section = begin("limits", "What the figures stand on");
        const auto add = [&](const Study& study) {
            if (study.problem || study.notes.empty()) return;
            section.blocks.push_back(BenchWords{Look::Heading, {study.title, {}}});
            for (const Sentence& note : study.notes)
                section.blocks.push_back(BenchWords{Look::Small, note});
        };
        for (const StudyEntry& entry : studies()) {
            if (entry.slowly == nullptr) {
                add(entry.reckon(m_plan, m_layout));
                continue;
            }
            for (const Study& study : m_slow)
                if (study.id == entry.id) add(study);
        }
        section.blocks.push_back(BenchWords{Look::Small,
                                            {"%1. The fingerprint tells this plan from any other; print the "
                                             "sheet anew when the plan changes.",
                                             {m_sheet.footer}}});
    }

    const Plan& m_plan;
    const Layout& m_layout;
    const std::vector<Finding>& m_findings;
    const BuildSheetInput& m_input;
    BenchSheet m_sheet;
    std::vector<Study> m_slow;
};

}  // namespace

BenchSheet buildSheet(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                      const BuildSheetInput& input)
{
    return Builder(plan, layout, findings, input).build();
}

BenchSheet figureSheet(const Plan& plan, const Study& study, const BuildSheetInput& input)
{
    BenchSheet sheet;
    sheet.style = unitStyle(plan);
    sheet.title = study.title;
    const std::string fingerprint = planFingerprint(plan);
    sheet.below = input.date.empty()
                      ? Sentence{"%1. Plan %2.", {plan.sheet.title, fingerprint}}
                      : Sentence{"%1, %3. Plan %2.", {plan.sheet.title, fingerprint, input.date}};
    sheet.footer = plan.sheet.title + ", plan " + fingerprint +
                   (input.version.empty() ? "" : ", Lidwright " + input.version);
    sheet.lying = study.table.columns.size() > kMostUpright;
    BenchSection section{"figures", "", 0, false, false, false, {}};
    if (study.problem)
        section.blocks.push_back(
            BenchWords{Look::Strong, {"There are no figures: %1", {study.problem->text()}}});
    else
        section.blocks.push_back(tableOf(study.table, false, sheet.style));
    if (!study.problem)
        for (const Sentence& note : study.notes)
            section.blocks.push_back(BenchWords{Look::Small, note});
    sheet.sections.push_back(std::move(section));
    return sheet;
}

}  // namespace lidwright
