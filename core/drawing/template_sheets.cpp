#include "core/drawing/template_sheets.h"

#include "core/drawing/template_parts.h"

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
        case TemplateKind::Backing:
            return "backing";
    }
    return "";
}

std::vector<TemplateKind> templatesOf(const Plan& plan)
{
    std::vector<TemplateKind> all{TemplateKind::Lid, TemplateKind::HeadWall, TemplateKind::TailWall};
    if (!plan.backingLayers.empty()) all.push_back(TemplateKind::Backing);
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
        case TemplateKind::Backing:
            return backingTemplate(in);
    }
    return {};
}

}  // namespace lidwright
