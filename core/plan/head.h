#pragma once

namespace lidwright {

/// How the head comes lower than the strings at the nut.
enum class HeadShape {
    Thinned,  ///< straight, its face stepped down behind the nut
    Scarfed,  ///< angled, glued on by a scarf joint
    Tree,     ///< straight, its face level with the stick's top; a string tree holds the strings down
};

/// The end of the stick beyond the nut. mm; lengths along the head are measured along its face from the nut's
/// front edge.
struct Head {
    HeadShape shape = HeadShape::Thinned;
    double width = 0;         ///< 0: as wide as the neck
    double thickness = 15;    ///< left where the tuners sit, square to the face
    double step = 8;          ///< nut's front edge to where the face begins to go down
    double ramp = 10;         ///< length of the slope of the step
    double angle = 14;        ///< degrees by which a scarfed head leans back
    double treeAt = 22;       ///< nut's front edge to the string tree
    double treeHeight = 2.5;  ///< head's face to the tree's underside, where it holds the strings

    bool operator==(const Head&) const = default;
};

/// On which edge of the head the tuners sit. An odd one among those on both sides goes to the side that is
/// named.
enum class TunerSide { BothOddBass, BothOddTreble, Bass, Treble };

/// The tuners, one for each string, all alike. mm.
struct Tuners {
    TunerSide side = TunerSide::BothOddBass;
    double first = 42;        ///< nut's front edge to the nearest post's middle
    double spacing = 38;      ///< from post to post of one row
    double edge = 10.5;       ///< head's edge to the middles of the posts at it
    double hole = 7;          ///< diameter of the hole through the head
    double bush = 10;         ///< diameter of the bush's collar on the face
    double bushLength = 8;    ///< how deep the bush reaches into the hole
    double post = 6;          ///< diameter
    double reach = 22;        ///< plate, at the head's back, to the middle of the post's string hole
    double tip = 3;           ///< middle of the string hole to the post's end
    int windings = 3;         ///< turns of a tuned string below its hole
    double plateLength = 30;  ///< of the gear plate behind the head, along the head
    double plateWidth = 14;   ///< across; the post stands in its middle
    double plateBefore = 10;  ///< post's middle to the plate's end on the nut's side
    double mass_kg = 0.028;   ///< of one, with its button and screws

    bool operator==(const Tuners&) const = default;
};

}  // namespace lidwright
