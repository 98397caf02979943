#pragma once

#include "core/drawing/cut_drawing.h"

namespace lidwright {

/// Centre line, bridge, saddle and neck edges where they run over the lid, in the lid's frame.
std::vector<CutPath> lidMarks(const Layout& layout);

/// Lines of words below `top`, flush left, as strokes; then the line of 100 mm where `checkLine`.
std::vector<CutPath> markedWords(const std::vector<std::string>& lines, Point topLeft, double width,
                                 bool checkLine);

}  // namespace lidwright
