#include "core/drawing/template_sheets.h"

#include "core/drawing/cutting_plan.h"
#include "core/drawing/overview_sheet.h"
#include "core/drawing/template_parts.h"
#include "core/drawing/wall_holes.h"
#include "core/drawing/wiring_sheet.h"

namespace lidwright {

const char* word(TemplateKind kind)
{
    switch (kind) {
        case TemplateKind::Lid:
            return "lid";
        case TemplateKind::HeadWall:
            return "head-wall";
        case TemplateKind::TailWall:
            return "tail-wall";
        case TemplateKind::BassWall:
            return "bass-wall";
        case TemplateKind::TrebleWall:
            return "treble-wall";
        case TemplateKind::Backing:
            return "backing";
        case TemplateKind::Neck:
            return "neck";
        case TemplateKind::Fretboard:
            return "fretboard";
        case TemplateKind::StoryStick:
            return "story-stick";
        case TemplateKind::Overview:
            return "overview";
        case TemplateKind::LidBelow:
            return "lid-below";
        case TemplateKind::Base:
            return "base";
        case TemplateKind::Blocks:
            return "blocks";
        case TemplateKind::Head:
            return "head";
        case TemplateKind::Nut:
            return "nut";
        case TemplateKind::Bridge:
            return "bridge";
        case TemplateKind::Gauges:
            return "gauges";
        case TemplateKind::CuttingPlan:
            return "cutting-plan";
        case TemplateKind::Wiring:
            return "wiring";
    }
    return "";
}

std::vector<TemplateKind> templatesOf(const Plan& plan)
{
    std::vector<TemplateKind> all{TemplateKind::Overview, TemplateKind::Lid, TemplateKind::LidBelow,
                                  TemplateKind::HeadWall, TemplateKind::TailWall};
    const bool fastened = plan.box.baseFastening != BaseFastening::Glued;
    if (fastened || wallHasHoles(plan, DevicePlace::BassWall)) all.push_back(TemplateKind::BassWall);
    if (fastened || wallHasHoles(plan, DevicePlace::TrebleWall)) all.push_back(TemplateKind::TrebleWall);
    all.push_back(TemplateKind::Base);
    if (plan.cornerBlocks.present || !plan.blocks.empty() || !plan.bars.empty())
        all.push_back(TemplateKind::Blocks);
    if (!plan.backingLayers.empty()) all.push_back(TemplateKind::Backing);
    all.insert(all.end(), {TemplateKind::Neck, TemplateKind::Head, TemplateKind::Fretboard, TemplateKind::Nut,
                           TemplateKind::Bridge, TemplateKind::Gauges, TemplateKind::StoryStick});
    if (!plan.stock.empty()) all.push_back(TemplateKind::CuttingPlan);
    if (!plan.wiring.empty()) all.push_back(TemplateKind::Wiring);
    return all;
}

bool isTemplateNote(const Element& element)
{
    return element.layer == "notes" || element.layer == "check";
}

Sheet templateSheet(const Plan& plan, const Layout& layout, TemplateKind kind, const UnitStyle& style)
{
    BoardOptions options;
    options.style = style;
    options.paper = 1;
    const ViewInput in{plan, layout, options, Side::Below};
    switch (kind) {
        case TemplateKind::Lid:
            return lidTemplate(in);
        case TemplateKind::HeadWall:
        case TemplateKind::TailWall:
            return wallTemplate(in, kind == TemplateKind::HeadWall);
        case TemplateKind::BassWall:
        case TemplateKind::TrebleWall:
            return sideWallTemplate(in, kind == TemplateKind::TrebleWall);
        case TemplateKind::Backing:
            return backingTemplate(in);
        case TemplateKind::Neck:
            return neckTemplate(in);
        case TemplateKind::Fretboard:
            return fretboardTemplate(in);
        case TemplateKind::StoryStick:
            return storyStickTemplate(in);
        case TemplateKind::LidBelow:
            return lidBelowTemplate(in);
        case TemplateKind::Base:
            return baseTemplate(in);
        case TemplateKind::Blocks:
            return blockTemplates(in);
        case TemplateKind::Head:
            return headTemplate(in);
        case TemplateKind::Nut:
            return nutTemplate(in);
        case TemplateKind::Bridge:
            return bridgeTemplate(in);
        case TemplateKind::Gauges:
            return gaugeTemplates(in);
        case TemplateKind::Overview:
            return overviewSheet(plan, layout, style, OverviewPaper::A3);
        case TemplateKind::CuttingPlan:
            return cuttingPlanSheet(plan, layout, style);
        case TemplateKind::Wiring:
            return wiringSheet(plan, layout, style);
    }
    return {};
}

}  // namespace lidwright
