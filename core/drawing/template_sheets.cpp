#include "core/drawing/template_sheets.h"

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
        case TemplateKind::Wiring:
            return "wiring";
    }
    return "";
}

std::vector<TemplateKind> templatesOf(const Plan& plan)
{
    std::vector<TemplateKind> all{TemplateKind::Lid, TemplateKind::HeadWall, TemplateKind::TailWall};
    if (wallHasHoles(plan, DevicePlace::BassWall)) all.push_back(TemplateKind::BassWall);
    if (wallHasHoles(plan, DevicePlace::TrebleWall)) all.push_back(TemplateKind::TrebleWall);
    if (!plan.backingLayers.empty()) all.push_back(TemplateKind::Backing);
    all.insert(all.end(), {TemplateKind::Neck, TemplateKind::Fretboard, TemplateKind::StoryStick});
    if (!plan.wiring.empty()) all.push_back(TemplateKind::Wiring);
    return all;
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
        case TemplateKind::Wiring:
            return wiringSheet(plan, layout, style);
    }
    return {};
}

}  // namespace lidwright
