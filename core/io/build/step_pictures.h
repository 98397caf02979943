#pragma once

#include "core/drawing/board_sheet.h"

#include <string>

namespace lidwright {

/// What a step of the work shows.
enum class StepView {
    Above,          ///< the board from above, with the dimensions along it
    LongSection,    ///< through the neck's centre line
    LidAbove,       ///< the lid alone, from above
    LidBelow,       ///< the lid turned over: blocks, bars, where glue goes
    Backing,        ///< its pattern
    StickSide,      ///< the stick from above and from the side
    HeadWall,       ///< the wall's opening, from outside
    TailWall,       ///< the other one's
    ReliefSection,  ///< the long section within the box, with the relief's measures
    Fretboard,      ///< with its slots
    Head,           ///< with the tuners' holes
    Nut,            ///< with its string slots
    Bridge,         ///< with its grooves
    Base,           ///< with its screws or nails
    Wiring,         ///< the diagram
    Heights         ///< the long section with the chain of heights up to the strings
};

/// A picture as a step asks for it.
struct StepPicture {
    StepView view = StepView::Above;
    std::string caption;  ///< marked English

    bool operator==(const StepPicture&) const = default;
};

/// The drawing, composed so that at the scale sheet.paper it is at most `width` and `height` mm large and no
/// word on it is lower than 2.5 mm (ISO 3098), never larger than life. Not to a round scale: lengths are read
/// from its dimensions. Empty where this plan has no such thing.
Sheet stepPicture(const Plan& plan, const Layout& layout, StepView view, double width, double height);

}  // namespace lidwright
