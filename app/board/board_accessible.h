#pragma once

#include <string>

namespace lidwright {

class BoardWidget;

/// Lets assistive programs see the board's parts: one child per part, with its size and its findings.
/// Call before a board is shown; calling it again does nothing.
void installBoardAccessibility();

/// Tells assistive programs that names and places of the parts may have changed.
void announceChange(BoardWidget& board);
/// Tells them that the part has become the selected one; empty for none.
void announceSelection(BoardWidget& board, const std::string& part);

}  // namespace lidwright
