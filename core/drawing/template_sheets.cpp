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
    }
    return "";
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
    }
    return {};
}

}  // namespace lidwright
