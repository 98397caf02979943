#pragma once

#include "core/drawing/cut_drawing.h"
#include "core/io/cut/cut_dxf_text.h"

namespace lidwright {

/// The block that model space is to R2000: owner of all entities.
inline constexpr std::uint64_t kDxfModelSpace = 0x20;

/// Everything before the entities; `seed` is a handle above all others.
void writeDxfHead12(DxfText& out, const CutDrawing& drawing);
void writeDxfHead2000(DxfText& out, const CutDrawing& drawing, std::uint64_t seed);
/// Everything after the entities.
void writeDxfTail12(DxfText& out);
void writeDxfTail2000(DxfText& out);

}  // namespace lidwright
