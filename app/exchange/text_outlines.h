#pragma once

#include "core/io/svg/svg_text_run.h"

#include <optional>

namespace lidwright {

/// Outlines of words by the fonts of this computer. Where none of the wanted fonts is here, the one that the
/// system puts in its place; a font with serifs where none is wanted. Kerning and ligatures as the font has
/// them. Nothing where no QGuiApplication runs, where no font has one of the letters, where the words run to
/// the left, or where sizes and spacings are out of range (spacings: 10 em, words: about 4000 letters).
///
/// May be called on any thread while the application runs. Outlines are those of the font file to 1/64 of
/// 1/2048 em.
std::optional<TextShape> outlineByComputerFonts(const TextRun& run);

}  // namespace lidwright
