#include "core/io/build/step_pictures.h"

#include "core/drawing/template_parts.h"
#include "core/drawing/wiring_sheet.h"

#include <algorithm>
#include <functional>

namespace lidwright {
namespace {

/// Bare paper around a picture, mm on paper.
constexpr double kAround = 2;

using Keep = std::function<bool(const Element&)>;

/// The elements that are kept, with the paper's edge drawn close around them.
Sheet only(Sheet sheet, const Keep& keep)
{
    std::erase_if(sheet.elements, [&](const Element& e) { return !keep(e); });
    sheet.extent = {};
    for (const Element& e : sheet.elements)
        sheet.extent.include(elementBounds(e, sheet.paper));
    if (!sheet.extent.empty()) sheet.extent = sheet.extent.grown(kAround * sheet.paper);
    return sheet;
}

bool isNote(const Element& e)
{
    return e.part == "sheet" || e.layer == "check";
}

/// A full-size template without its notes, which are for the print at full size, and without the scales that
/// it names.
Sheet withoutNotes(Sheet sheet, double paper)
{
    sheet.paper = paper;
    for (Element& e : sheet.elements) {
        auto* text = std::get_if<Text>(&e.what);
        if (text == nullptr || !text->words.ends_with(" : 1")) continue;
        if (const auto comma = text->words.rfind(", "); comma != std::string::npos) text->words.erase(comma);
    }
    return only(std::move(sheet), [](const Element& e) { return !isNote(e); });
}

/// The step has a table of its own, with room to write.
Sheet withoutTable(Sheet sheet)
{
    return only(std::move(sheet), [](const Element& e) { return e.layer != "table"; });
}

/// Nothing that lies wholly below the lowest dimension: enlarged details and their words.
Sheet downToDimensions(Sheet sheet)
{
    Bounds measured;
    for (const Element& e : sheet.elements)
        if (std::holds_alternative<Dimension>(e.what)) measured.include(elementBounds(e, sheet.paper));
    if (measured.empty()) return sheet;
    const double paper = sheet.paper;
    return only(std::move(sheet), [&](const Element& e) {
        // The mark of the enlarged detail as well, which is a letter by a circle.
        const auto* text = std::get_if<Text>(&e.what);
        if (e.layer == "detail" || (text != nullptr && text->words.size() == 1)) return false;
        return elementBounds(e, paper).maxY > measured.minY;
    });
}

/// A part of a view: what is written or measured partly outside is left out, lines end at the edge.
Sheet window(Sheet sheet, const Bounds& part)
{
    const Bounds roomy = part.grown(1e-6);
    const double paper = sheet.paper;
    sheet = only(std::move(sheet), [&](const Element& e) {
        const Bounds b = elementBounds(e, paper);
        const bool words = std::holds_alternative<Text>(e.what) || std::holds_alternative<Dimension>(e.what);
        return words ? roomy.contains({b.minX, b.minY}) && roomy.contains({b.maxX, b.maxY}) : b.touches(part);
    });
    sheet.extent = part;
    return sheet;
}

class Composer {
public:
    Composer(const Plan& plan, const Layout& layout, double paper) : m_plan(plan), m_layout(layout)
    {
        m_options.style = unitStyle(plan);
        m_options.projection = plan.sheet.projection;
        m_options.paper = paper;
    }

    Sheet compose(StepView view)
    {
        switch (view) {
            case StepView::Above:
                return whole(View::Top, "");
            case StepView::LongSection:
                return whole(View::Section, "");
            case StepView::Heights:
                return whole(View::Section, "setup");
            case StepView::LidAbove:
                return lidAbove();
            case StepView::ReliefSection:
                return reliefSection();
            case StepView::LidBelow:
                return plain(lidBelowTemplate(input()));
            case StepView::Backing:
                return plain(backingTemplate(input()));
            case StepView::StickSide:
                return stick();
            case StepView::HeadWall:
            case StepView::TailWall:
                return downToDimensions(plain(wallTemplate(input(), view == StepView::HeadWall)));
            case StepView::Fretboard:
                return plain(fretboardTemplate(input()));
            case StepView::Head:
                return plain(headTemplate(input()));
            case StepView::Nut:
                return withoutTable(plain(nutTemplate(input())));
            case StepView::Bridge:
                return withoutTable(plain(bridgeTemplate(input())));
            case StepView::Base:
                return plain(baseTemplate(input()));
            case StepView::Wiring:
                return only(wiringSheet(m_plan, m_layout, m_options.style),
                            [](const Element&) { return true; });
        }
        return {};
    }

private:
    ViewInput input() const { return {m_plan, m_layout, m_options, Side::Below}; }

    Sheet plain(Sheet sheet) const { return withoutNotes(std::move(sheet), m_options.paper); }

    Sheet whole(View view, const std::string& selected)
    {
        m_options.only = view;
        m_options.selected = selected;
        return only(boardSheet(m_plan, m_layout, m_options).sheet, [](const Element&) { return true; });
    }

    Sheet lidAbove()
    {
        if (m_layout.lidOutline.empty()) return {};
        // One drawing's place is shown; of several the text has it.
        const std::string selected = m_plan.art.size() == 1                           ? "art.1"
                                     : m_plan.art.empty() && m_plan.holes.size() == 1 ? "hole.1"
                                                                                      : "";
        Bounds lid = bounds(m_layout.lidOutline);
        lid.include(m_layout.body);
        return window(whole(View::Top, selected), lid.grown(8 * m_options.paper));
    }

    Sheet reliefSection()
    {
        if (!m_layout.headWall.crossed || !m_layout.tailWall.crossed) return {};
        Sheet sheet = whole(View::Section, "relief");
        Bounds part = sheet.extent;
        part.minX = m_layout.headWall.outerX - 12 * m_options.paper;
        part.maxX = std::max(m_layout.tailWall.outerX, m_layout.tailEndX) + 4 * m_options.paper;
        return window(std::move(sheet), part);
    }

    Sheet stick()
    {
        // The side alone: the stations have a template of their own, at full size; here their words would lie
        // one on another.
        Sheet sheet = plain(neckTemplate(input()));
        Bounds side;
        for (const Element& e : sheet.elements)
            if (e.layer == "side") side.include(elementBounds(e, m_options.paper));
        return only(std::move(sheet), [&](const Element& e) {
            return (e.layer == "side" || e.layer == "dimensions") &&
                   elementBounds(e, m_options.paper).centre().y < side.maxY;
        });
    }

    const Plan& m_plan;
    const Layout& m_layout;
    BoardOptions m_options;
};

}  // namespace

Sheet stepPicture(const Plan& plan, const Layout& layout, StepView view, double width, double height)
{
    if (!(width > 0) || !(height > 0)) return {};
    // Words keep their height on paper, so a smaller picture is another drawing. Its size is nearly a
    // straight line over the paper factor; where that meets the room is found as with the rule of false
    // position.
    constexpr int kRounds = 14;
    constexpr double kEnough = 0.96;  // of the room filled
    constexpr double kSpare = 1.005;
    const bool onPaper = view == StepView::Wiring;  // composed in mm of paper already
    double paper = 1, before = 0, neededBefore = 0;
    Sheet best;
    for (int round = 0; round < kRounds; ++round) {
        Sheet sheet = Composer(plan, layout, paper).compose(view);
        if (sheet.elements.empty() || sheet.extent.empty()) return {};
        const double needed = std::max(sheet.extent.width() / width, sheet.extent.height() / height);
        const bool fits = needed <= paper;
        if (fits && (best.elements.empty() || paper < best.paper)) best = std::move(sheet);
        if (onPaper && !fits) return sheet;
        if (fits && (paper <= 1 || needed >= kEnough * paper)) break;
        const double slope = round == 0 ? 0 : (needed - neededBefore) / (paper - before);
        const double crossing = slope < 0.9 ? (needed - slope * paper) / (1 - slope) : 1.5 * paper;
        before = paper;
        neededBefore = needed;
        // When half the rounds are over, only what is sure to end.
        paper = std::max(1.0, round < kRounds / 2 && crossing > 0 ? kSpare * crossing : 1.3 * paper);
        if (paper == before || (round >= kRounds / 2 && !best.elements.empty())) break;
    }
    return best;
}

}  // namespace lidwright
