#pragma once

#include "core/geometry/point.h"
#include "core/plan/plan.h"

#include <vector>

namespace lidwright {

/// A point in space: in plan view, and its height.
struct RaisedPoint {
    Point at;
    double z = 0;

    bool operator==(const RaisedPoint&) const = default;
};

/// The plane of the head's face. A place on it is told by `s`, mm from the scale's origin along the head (the
/// nut's front edge, unless that is moved forward), and by y; a height over it is square to it. Between the
/// nut and where the face begins s runs level.
struct HeadFace {
    double startX = 0, startZ = 0;  ///< where the plane is met by the length `startS`
    double startS = 0;
    double cosine = 1, sine = 0;  ///< of the angle by which it leans back

    /// x and z of a point of the face, or `height` over it.
    Point at(double s, double height = 0) const;
    double s(Point xz) const;
    double height(Point xz) const;
};

/// One tuner. The i-th is that of the i-th string.
struct HeadPost {
    bool treble = false;           ///< sits at the treble edge
    int place = 0;                 ///< in its row, 0 nearest to the nut
    Point face;                    ///< middle on the face: s and y
    Point middle;                  ///< of it in plan view
    Ring hole, bush, post, plate;  ///< in plan view; the plate lies behind the head
    Bounds plateOnFace;            ///< the plate in s and y
};

/// One string's way beyond the nut.
struct HeadString {
    std::vector<RaisedPoint> way;  ///< its middle: nut, string tree where that holds it, and side of the post
    bool underTree = false;
    double splay = 0;  ///< degrees by which it turns at the nut in plan view, positive to the treble side
    double breakAngle = 0;  ///< degrees by which it bends down over the nut; negative: it would lift off
};

/// The head and what is on it. Every plan within the hard ranges gives one; what cannot be is for the checks.
struct HeadLayout {
    double width = 0;
    double thickness = 0;   ///< left, square to the face
    double faceLength = 0;  ///< nut's front edge to the head's end, along the face
    double wayEndS = 0;     ///< s from where the face is plane: behind the ramp or the angle
    HeadFace face;
    Ring outline;               ///< plan view, from the head's end to where the step or the angle begins
    std::vector<Point> upper;   ///< x, z: from the nut over the step or the angle to the head's end
    std::vector<Point> lower;   ///< x, z: from the head's end back to the stick's underside
    std::vector<double> lines;  ///< x of the edges across the face: step, end of its slope, angle, joint
    /// s from where the back is plane: past its own step or a scarf's heel; 0 where it is plane all along.
    double backThinFrom = 0;

    // Scarf joint; all 0 without one.
    double glueLength = 0;        ///< of the glued faces along the stick
    double scarfLength = 0;       ///< of the slope that is sawn through the stick
    double headPiece = 0;         ///< of the face that lies on the glued-on piece
    std::vector<Point> glueLine;  ///< x, z
    std::vector<Point> sawLine;   ///< x, z of the slope sawn through the stick: top to underside

    double blankUsed = 0;     ///< length of stick from the nut's front edge on, with the scarf's own saw cut
    double nutZ = 0;          ///< underside of the strings at the nut
    double holeOverFace = 0;  ///< middle of the posts' string holes
    double tipOverFace = 0;   ///< the posts' ends
    Ring tree;                ///< plan view of the string tree; empty without one
    double treeS = 0;

    std::vector<HeadPost> posts;      ///< one per Plan::stringSet
    std::vector<HeadString> strings;  ///< one per Plan::stringSet
};

struct Layout;

/// Where the head of the plan is; stations, neck, fretboard and strings must be laid out already. The
/// outermost string of a row goes to its nearest post, so that no two strings cross, and meets it on the side
/// away from the row's edge.
HeadLayout headLayout(const Plan& plan, const Layout& layout);

/// Distance between the middle line of a string's way and a round body that stands on the place of a post, of
/// `diameter` and up to `top` over the face, and reaches down without end: 0 or less inside. Exact up to 1e-6
/// mm: the distance to a convex body along a straight line is convex (Boyd and Vandenberghe, Convex
/// Optimization, 2004, section 3.2.5).
double wayToPost(const HeadLayout& head, std::size_t string, std::size_t post, double diameter, double top);

/// Air between a string and the post of another with that one's windings, mm; negative: inside.
double airToPost(const Plan& plan, const HeadLayout& head, std::size_t string, std::size_t post);

/// Least height of the string's middle over the head's face and over the step's edge.
double wayOverHead(const HeadLayout& head, std::size_t string);

}  // namespace lidwright
