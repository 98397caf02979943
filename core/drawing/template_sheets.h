#pragma once

#include "core/drawing/board_sheet.h"

namespace lidwright {

enum class TemplateKind {
    Overview,  ///< all views to scale on one sheet; no template, but what hangs over the bench
    Lid,
    LidBelow,  ///< the lid turned over: bars, blocks, backing, where the glue goes
    HeadWall,
    TailWall,
    BassWall,    ///< side wall, where wiring has a hole in it
    TrebleWall,  ///< the other one
    Base,
    Blocks,  ///< corner blocks, wall blocks and bars
    Backing,
    Neck,         ///< the stick from above and from the side
    Head,         ///< tuner holes with punch marks
    Fretboard,    ///< with its slots
    Nut,          ///< with its string slots
    Bridge,       ///< with its slots and the saddle line
    Gauges,       ///< string spacings at nut and saddle, depth of the fret slots
    StoryStick,   ///< every station along the neck on one strip
    CuttingPlan,  ///< pieces laid on the stock, small
    Wiring        ///< the wiring's diagram and list; not a template, but wanted at the bench with them
};

/// All of them in the order in which they are offered.
inline constexpr TemplateKind kTemplateKinds[] = {
    TemplateKind::Overview,   TemplateKind::Lid,         TemplateKind::LidBelow,   TemplateKind::HeadWall,
    TemplateKind::TailWall,   TemplateKind::BassWall,    TemplateKind::TrebleWall, TemplateKind::Base,
    TemplateKind::Blocks,     TemplateKind::Backing,     TemplateKind::Neck,       TemplateKind::Head,
    TemplateKind::Fretboard,  TemplateKind::Nut,         TemplateKind::Bridge,     TemplateKind::Gauges,
    TemplateKind::StoryStick, TemplateKind::CuttingPlan, TemplateKind::Wiring};

/// The templates that this plan has: the backing's only where it has layers of it, a side wall's only where
/// it is drilled or screwed, blocks, cutting plan and wiring
/// only where there are some.
std::vector<TemplateKind> templatesOf(const Plan& plan);

/// The words by which the command line and files name a template: "overview", "lid", "lid-below",
/// "head-wall", "tail-wall", "bass-wall", "treble-wall", "base", "blocks", "backing", "neck", "head",
/// "fretboard", "nut", "bridge", "gauges", "story-stick", "cutting-plan", "wiring".
const char* word(TemplateKind kind);

/// True of what a template says in words below the drawing, and of its check line: they may stand anywhere.
bool isTemplateNote(const Element& element);

/// A full-size template (1 sheet mm = 1 mm): cut lines, centre lines, stations, dimensions, what it is, which
/// face, grain, wood thickness, which side of the line to cut.
Sheet templateSheet(const Plan& plan, const Layout& layout, TemplateKind kind, const UnitStyle& style);

}  // namespace lidwright
