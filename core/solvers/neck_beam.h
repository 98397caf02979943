#pragma once

#include "core/base/result.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace lidwright {

inline constexpr double kGravity_m_s2 = 9.80665;  ///< standard gravity: 3rd CGPM (1901)
inline constexpr int kBeamFineness = 32;          ///< least number of elements over a beam's length
inline constexpr int kMostFineness = 200;
inline constexpr double kMostBucklingFactor = 1e4;
inline constexpr std::size_t kMostBeamParts = 100;  ///< pieces, supports, loads, each
/// Share of the beam's length: what stands nearer together counts as one place. A load that is moved so keeps
/// its moment, a spread load its sum and centre; a change of section is moved. Deflections differ by about as
/// much.
inline constexpr double kBeamNearest = 2e-4;
/// What solveBeam() answers is off by no more than this share of the largest value, against closed forms of
/// the same theory.
inline constexpr double kBeamAccuracy = 1e-3;

/// A cross-section of a beam that bends in one plane, up and down. Composite sections: see
/// core/solvers/laminated_section.h.
struct BeamSection {
    double bending_Nmm2 = 0;       ///< E I about the neutral axis, 1 to 1e16 N mm2
    double axial_N = 0;            ///< E A, 1 to 1e14 N
    double top = 0;                ///< mm from the neutral axis up to the outermost fibre, 0 to 1e4
    double bottom = 0;             ///< mm from the neutral axis down to it, 0 to 1e4
    double topModulus_MPa = 0;     ///< Young's modulus of the top fibre, 0 to 1e7; for its stress only
    double bottomModulus_MPa = 0;  ///< of the bottom fibre
    double mass_kg_m = 0;          ///< 0 to 1e4; for self weight only
    /// mm, height of the neutral axis over whatever line BeamAxial's heights are given over too, -1e4 to 1e4.
    double axis = 0;

    bool operator==(const BeamSection&) const = default;
};

/// A stretch of a beam; every value of its section goes linearly from start to end.
struct BeamPiece {
    double length = 0;  ///< mm, above 0
    BeamSection start, end;

    bool operator==(const BeamPiece&) const = default;
};

enum class SupportKind {
    Held,     ///< does not move up or down, turns freely
    Clamped,  ///< neither moves nor turns
    Spring,   ///< gives way in proportion to its force, turns freely
};

struct BeamSupport {
    double x = 0;
    SupportKind kind = SupportKind::Held;
    double spring_N_mm = 0;  ///< of a spring: 1e-3 to 1e9 N/mm

    bool operator==(const BeamSupport&) const = default;
};

/// At one place.
struct BeamLoad {
    double x = 0;
    double force_N = 0;     ///< positive up
    double moment_Nmm = 0;  ///< positive where it makes the slope dw/dx grow

    bool operator==(const BeamLoad&) const = default;
};

/// Spread along the beam, linearly from one end to the other.
struct BeamSpread {
    double from = 0, to = 0;                ///< from < to
    double atFrom_N_mm = 0, atTo_N_mm = 0;  ///< N per mm, positive up

    bool operator==(const BeamSpread&) const = default;
};

/// A force along the beam between two places, on the straight line between them. Off the neutral axis it
/// bends the beam too, by its amount times the distance: tension below the axis and compression above it, as
/// the strings' on a neck, make it sag.
struct BeamAxial {
    double from = 0, to = 0;              ///< at least kBeamNearest of the length apart
    double force_N = 0;                   ///< positive: tension
    double fromHeight = 0, toHeight = 0;  ///< mm, as BeamSection::axis, -1e4 to 1e4
    /// True: the two places pull at each other, as a string does that is tied to the beam at both; the force
    /// turns with the line between them. False: it keeps its direction, along x.
    bool tied = false;

    bool operator==(const BeamAxial&) const = default;
};

/// A straight beam along x. All x in mm; forces and deflections up are positive.
struct NeckBeam {
    double start = 0;  ///< x where the first piece begins; each other begins where the one before ends
    std::vector<BeamPiece> pieces;
    std::vector<BeamSupport> supports;
    std::vector<BeamLoad> loads;
    std::vector<BeamSpread> spreads;
    std::vector<BeamAxial> axials;
    bool selfWeight = false;  ///< its mass pulls down

    bool operator==(const NeckBeam&) const = default;
};

/// Everything at one place of a loaded beam.
struct BeamState {
    double deflection = 0;        ///< mm, positive up
    double slope = 0;             ///< dw/dx
    double moment_Nmm = 0;        ///< E I w'': positive sags, the bottom is stretched
    double shear_N = 0;           ///< sum of the upward forces on the part towards the beam's start
    double axial_N = 0;           ///< positive: tension
    double topStress_MPa = 0;     ///< of the top fibre, with the axial force's; positive: tension
    double bottomStress_MPa = 0;  ///< of the bottom fibre

    bool operator==(const BeamState&) const = default;
};

/// What a support does to the beam.
struct BeamReaction {
    double force_N = 0;     ///< positive up
    double moment_Nmm = 0;  ///< of a clamp, in the sense of BeamLoad::moment_Nmm

    bool operator==(const BeamReaction&) const = default;
};

/// A piece of a solved beam between two of its reckoned places.
struct BeamElement {
    double x = 0, length = 0;
    BeamSection start, end;
    double axial_N = 0;
    double startLoad_N_mm = 0, endLoad_N_mm = 0;    ///< spread loads and own weight
    double startCouple_Nmm = 0, endCouple_Nmm = 0;  ///< moment of the axial forces about the neutral axis
    std::array<double, 4> moved{};                  ///< deflection, slope at the start; the same at the end
    std::array<double, 4>
        forces{};  ///< on the element, one for each of these: force, moment; couples included

    bool operator==(const BeamElement&) const = default;
};

/// Which side of a place is meant where something jumps there.
enum class BeamSide { TowardsStart, TowardsEnd };

struct BeamPeak {
    double x = 0;
    double value = 0;  ///< with its sign

    bool operator==(const BeamPeak&) const = default;
};

/// A solved beam.
struct BeamAnswer {
    std::vector<BeamElement> elements;    ///< from start to end
    std::vector<BeamReaction> reactions;  ///< in the order of NeckBeam::supports
    /// All axial forces times this make the beam buckle; above 1. Nothing where it is above
    /// kMostBucklingFactor or no such factor exists.
    std::optional<double> bucklingFactor;
    /// Largest deflection with the axial forces over that without; 1 without axial forces or deflection.
    double amplification = 1;

    /// The state at x; beyond the ends that of the end.
    BeamState at(double x, BeamSide side = BeamSide::TowardsEnd) const;
    /// The deflection that is most, either way; found to 1e-5 of it.
    BeamPeak largestDeflection() const;
    /// The fibre stress that is most, either way, top or bottom.
    BeamPeak largestStress() const;
};

/// Solves a beam by the theory of Euler and Bernoulli: sections stay plane and square to the axis, E I w'' is
/// the moment, deflections are small. Shear deflection is left out; the bending modulus of the Wood Handbook
/// has it in (a slender neck's is some percent). Axial forces bend a bent beam further (geometric stiffness:
/// S. P. Timoshenko and J. M. Gere, Theory of Elastic Stability (1961), chapter 1; J. S. Przemieniecki,
/// Theory of Matrix Structural Analysis (1968), chapter 15; both from memory). Hermite elements, at least
/// `fineness` (1 to kMostFineness) over the length: nodal values of uniform pieces are exact without axial
/// force, with the default the rest is within kBeamAccuracy.
///
/// Errors name the part: more than kMostBeamParts of it, a number that is none or out of the ranges above, a
/// place off the beam, stiffnesses further apart than 1e8, a total length not within 1 to 1e5 mm, supports in
/// one place, fewer than two supports without a clamp, axial forces at which the beam buckles.
Result<BeamAnswer> solveBeam(const NeckBeam& beam, int fineness = kBeamFineness);

}  // namespace lidwright
