#pragma once

#include "core/drawing/board_sheet.h"

namespace lidwright {

enum class TemplateKind {
    Lid,
    HeadWall,
    TailWall,
    BassWall,    ///< side wall, where wiring has a hole in it
    TrebleWall,  ///< the other one
    Backing,
    Neck,        ///< the stick from above and from the side
    Fretboard,   ///< with its slots
    StoryStick,  ///< every station along the neck on one strip
    Wiring       ///< the wiring's diagram and list; not a template, but wanted at the bench with them
};

/// All of them in the order in which they are offered.
inline constexpr TemplateKind kTemplateKinds[] = {
    TemplateKind::Lid,        TemplateKind::HeadWall, TemplateKind::TailWall, TemplateKind::BassWall,
    TemplateKind::TrebleWall, TemplateKind::Backing,  TemplateKind::Neck,     TemplateKind::Fretboard,
    TemplateKind::StoryStick, TemplateKind::Wiring};

/// The templates that this plan has: the backing's only where it has layers of it, a side wall's only where
/// it is drilled, the wiring's only where there is some.
std::vector<TemplateKind> templatesOf(const Plan& plan);

/// The words by which the command line and files name a template: "lid", "head-wall", "tail-wall",
/// "bass-wall", "treble-wall", "backing", "neck", "fretboard", "story-stick", "wiring".
const char* word(TemplateKind kind);

/// A full-size template (1 sheet mm = 1 mm): cut lines, centre lines, stations, dimensions, what it is, which
/// face, grain, wood thickness, which side of the line to cut.
Sheet templateSheet(const Plan& plan, const Layout& layout, TemplateKind kind, const UnitStyle& style);

}  // namespace lidwright
