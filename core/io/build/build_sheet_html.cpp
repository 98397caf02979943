#include "core/io/build/build_sheet_html.h"

#include "core/base/sentence.h"
#include "core/drawing/board_sheet.h"
#include "core/io/build/build_steps.h"
#include "core/io/drawing/sheet_svg.h"
#include "core/solvers/study.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kStyle = R"(
body{font:12pt/1.4 sans-serif;color:#000;background:#fff;max-width:46em;margin:1em auto;padding:0 1em}
h1{font-size:20pt;margin:0}h2{font-size:14pt;margin:1.2em 0 .2em}
section{break-inside:avoid;border-top:1pt solid #000;margin-top:1em}
table{border-collapse:collapse;margin:.3em 0}td,th{border:.5pt solid #000;padding:.15em .5em;text-align:left}
td.write{min-width:7em}.box{display:inline-block;width:.9em;height:.9em;border:1pt solid #000;margin-right:.4em}
.caution{border-left:4pt solid #000;padding-left:.6em;margin:.3em 0}.small{font-size:10pt}
svg{width:100%;height:auto})";

std::string escaped(const std::string& text)
{
    std::string out;
    for (const char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

class Page {
public:
    explicit Page(UnitStyle style) : m_style(style) {}

    void raw(const std::string& html) { m_out += html; }
    void tag(const char* name, const std::string& words)
    {
        m_out += "<" + std::string(name) + ">" + escaped(words) + "</" + name + ">\n";
    }
    void sentence(const char* opening, const Sentence& sentence, const char* closing)
    {
        m_out += opening + escaped(spoken(sentence, m_style)) + closing + "\n";
    }
    std::string words(const Measure& measure) const { return escaped(spoken(measure, m_style)); }
    std::string take() { return std::move(m_out); }

private:
    UnitStyle m_style;
    std::string m_out;
};

void addStep(Page& page, const BuildStep& step, std::size_t number)
{
    page.raw("<section id=\"" + step.id + "\">\n<h2><span class=\"box\"></span>" + std::to_string(number) +
             ". " + escaped(step.title) + "</h2>\n<p class=\"small\">Tools: " + escaped(step.tools) +
             "</p>\n");
    for (const Sentence& sentence : step.work)
        page.sentence("<p>", sentence, "</p>");
    if (!step.measures.empty()) {
        page.raw("<table><tr><th>Measure</th><th>Plan</th><th>Came out</th></tr>\n");
        for (const StepMeasure& m : step.measures)
            page.raw("<tr><td>" + escaped(m.what) + "</td><td>" + page.words(m.value) +
                     "</td><td class=\"write\">" + (m.check ? "&nbsp;" : "&ndash;") + "</td></tr>\n");
        page.raw("</table>\n");
    }
    for (const Sentence& caution : step.cautions)
        page.sentence("<p class=\"caution\"><b>Caution.</b> ", caution, "</p>");
    page.raw("</section>\n");
}

void addFindings(Page& page, const std::vector<Finding>& findings)
{
    page.raw("<section id=\"findings\">\n<h2>Findings</h2>\n");
    bool any = false;
    for (const Finding& f : findings) {
        if (f.verdict == Verdict::Good) continue;
        any = true;
        page.raw("<p><b>" + std::string(word(f.verdict)) + "</b>, " + escaped(f.rule) + ": ");
        page.sentence("", f.sentence, "");
        if (!f.accepted.empty()) page.raw(" <i>Lived with: " + escaped(f.accepted) + "</i>");
        page.raw("</p>\n");
    }
    if (!any) page.tag("p", "Everything that could be judged is good.");
    page.raw("</section>\n");
}

void addLimits(Page& page, const Plan& plan, const Layout& layout)
{
    page.raw("<section id=\"limits\" class=\"small\">\n<h2>What the figures stand on</h2>\n");
    for (const StudyEntry& entry : studies()) {
        const Study study = entry.reckon(plan, layout);
        if (study.problem || study.notes.empty()) continue;
        page.tag("h3", study.title);
        for (const Sentence& note : study.notes)
            page.sentence("<p>", note, "</p>");
    }
    page.raw("</section>\n");
}

}  // namespace

std::string buildSheetHtml(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                           const BuildSheetInput& input)
{
    Page page(unitStyle(plan));
    page.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
             escaped(plan.sheet.title) + ": build sheet</title>\n<style>" + kStyle +
             "</style>\n</head>\n<body>\n");
    page.tag("h1", plan.sheet.title);
    const std::string fingerprint = planFingerprint(plan);
    page.raw("<p>Build sheet" + (plan.sheet.maker.empty() ? "" : " for " + escaped(plan.sheet.maker)) +
             (input.date.empty() ? "" : ", " + escaped(input.date)) + ". Plan " + fingerprint + ".</p>\n");
    if (!plan.sheet.notes.empty()) page.tag("p", plan.sheet.notes);
    const bool wrong = std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
        return f.verdict == Verdict::Wrong && f.accepted.empty();
    });
    if (wrong)
        page.raw(
            "<p><b>Something is wrong with this plan: see the findings at the end before you cut.</b></p>\n");
    if (input.drawing) {
        BoardOptions options;
        options.style = unitStyle(plan);
        options.projection = plan.sheet.projection;
        SheetSvgOptions look;
        look.tinted = false;
        look.paper = "#ffffff";
        std::string svg = writeSheetSvg(boardSheet(plan, layout, options).sheet, look);
        // Within a page there is no prologue.
        if (const auto at = svg.find("<svg"); at != std::string::npos) page.raw(svg.substr(at) + "\n");
    }
    page.raw("<section id=\"general\">\n<h2>Before you begin</h2>\n");
    for (const Sentence& caution : generalCautions())
        page.sentence("<p class=\"caution\">", caution, "</p>");
    page.raw("</section>\n");
    std::size_t number = 0;
    for (const BuildStep& step : buildSteps(plan, layout))
        addStep(page, step, ++number);
    addFindings(page, findings);
    addLimits(page, plan, layout);
    page.raw("<p class=\"small\">Plan " + fingerprint +
             (input.version.empty() ? "" : ", Lidwright " + escaped(input.version)) +
             ".</p>\n</body>\n</html>\n");
    return page.take();
}

}  // namespace lidwright
