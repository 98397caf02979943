#pragma once

#include "core/drawing/board_sheet.h"

namespace lidwright {

enum class TemplateKind { Lid, HeadWall, TailWall, Backing };

/// The templates that this plan has: the backing's only where it has layers of it.
std::vector<TemplateKind> templatesOf(const Plan& plan);

/// The words by which the command line and files name a template: "lid", "head-wall", "tail-wall",
/// "backing".
const char* word(TemplateKind kind);

/// A full-size template (1 sheet mm = 1 mm): cut lines, centre lines, stations, dimensions, what it is, which
/// face, grain, wood thickness, which side of the line to cut.
Sheet templateSheet(const Plan& plan, const Layout& layout, TemplateKind kind, const UnitStyle& style);

}  // namespace lidwright
