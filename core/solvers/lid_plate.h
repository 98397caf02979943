#pragma once

#include "core/layout/layout.h"
#include "core/solvers/fineness.h"
#include "core/solvers/neck_bow.h"
#include "core/solvers/plate/plate_model.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// Cells along the lid's longer side. Against a lid with eight bridges of 3 mm: 144 cells are 0.25 % high, 96
/// 1.1 %, 48 2.8 % (computed, reference lid of core/solvers/plate's tests).
int plateCells(Fineness fineness);

/// The lid's sheet as a plate: a wood by its ratios, sawn as planned, or a panel in bending.
struct LidSheet {
    SheetElasticity sheet;
    double density_kg_m3 = 0;
    double bendingAlong_MPa = 0;   ///< strength
    double bendingAcross_MPa = 0;  ///< of a wood its tension across the grain
    std::string note;              ///< whose ratios stand in, marked English; empty where they are its own
};
/// Errors: a material that is not known or has no value across the grain.
Result<LidSheet> lidSheet(const Plan& plan);

/// A frequency is known to about this share by the wood's own scatter: half the coefficient of variation of
/// its stiffness, 22 % (Wood Handbook, FPL-GTR-190 (2010), Table 5-6, from memory).
inline constexpr double kWoodScatter = 0.11;
/// After a trial of the real lid (common practice, no source).
inline constexpr double kTriedScatter = 0.04;
/// Woods sink in the course of years to about this many times (common practice, no source; see kCreepFactor).
inline constexpr double kLidCreep = kCreepFactor;

/// What the plate is made of: the lid with everything cut through it, its wood, what bears it and what is
/// glued to it. The load is 1 N on the bridge's place. Walls bear where they stand under the lid: glued as a
/// stiff bed, screwed as a hinge along their inner edge; a lid let in is a hinge at its own edge. Blocks,
/// lands and pad bear as they lie. Bars stiffen, and the bridge as a board that lies on the lid; backing
/// weighs but does not stiffen. `bare` leaves the bridge off. Errors: of lidSheet(); a lid without an
/// outline.
Result<PlateProblem> lidProblem(const Plan& plan, const Layout& layout, bool bare = false);

/// The lid under the strings and as it rings.
struct LidAnswer {
    std::optional<Error> problem;  ///< why there are no figures

    double load_N = 0;     ///< of the strings on the bridge, positive down
    bool onStick = false;  ///< the stick bears the bridge
    double sag = 0;        ///< mm, at the deepest, fresh; positive down
    Point sagAt;
    double sagAtBridge = 0;                            ///< mm, under the bridge's middle
    double sagOverStick = 0;                           ///< mm, most over the relieved stick
    double stressAlong_MPa = 0, stressAcross_MPa = 0;  ///< largest
    double safety = 0;                                 ///< least of strength over stress, both ways
    Point weakestAt;
    bool weakestAcross = false;
    std::vector<PlateMode> modes;  ///< the lowest, with bridge
    PlateSamples samples;
    std::vector<LoosePiece> loose;
    int unknowns = 0;
    /// What a trial of the real lid makes of the wood's stiffness; 1 without one.
    double triedStiffness = 1;
    double scatter = kWoodScatter;    ///< share by which frequencies are known
    std::string note;                 ///< LidSheet::note
    std::optional<PlateModel> model;  ///< for deflections at any place
    PlateField unit;                  ///< under 1 N at the bridge
};

/// The strings' downforce on the bridge is that of `bow`. Linear in it: answers of lids that differ in load
/// only are kept from one call to the next, as are the last few lids of all. May be asked from several
/// threads. Without an answer where stopped by `watch`, with the problem "stopped".
///
/// Limits: Kirchhoff's thin plate, small deflections; glue lines, walls and blocks as elastic beds of wood
/// across the grain (500 MPa, from memory); the pad holds the lid down as well as up; the stick does not give
/// way. Peaks of stress in corners of cuts grow with the fineness. The wood's own scatter is larger than all
/// of it.
LidAnswer lidAnswer(const Plan& plan, const Layout& layout, const NeckBow& bow, Fineness fineness,
                    const PlateWatch& watch = {});

}  // namespace lidwright
