#pragma once

#include "core/base/result.h"
#include "core/solvers/plate/plate_problem.h"

#include <memory>
#include <optional>
#include <vector>

namespace lidwright {

struct PlateSystem;

/// Wood that hangs on nothing and falls out.
struct LoosePiece {
    Point inside;     ///< a point of it
    double area = 0;  ///< mm2

    bool operator==(const LoosePiece&) const = default;
};

/// The most of something, and where.
struct PlatePeak {
    Point at;
    double value = 0;  ///< with its sign

    bool operator==(const PlatePeak&) const = default;
};

/// A deflection over the plate; PlateModel::at() reads it.
struct PlateField {
    std::vector<double> unknowns;
};

/// Bending stress of the plate's own wood at its top, MPa, in the grain's axes; positive: tension.
struct PlateStress {
    double along = 0, across = 0, shear = 0;

    bool operator==(const PlateStress&) const = default;
};

/// A loaded plate at rest.
struct PlateAnswer {
    PlateField field;
    PlatePeak deflection;  ///< largest either way, mm, positive up: negative where the plate sags
    /// Largest stress along and across the grain, as PlateModel::stressAt() has it. By the plate's own
    /// stiffness, also where a patch or rib is. Beside a point load, a support's end and in a cut's inner
    /// corner thin plates have no largest stress: there it grows with the number of cells.
    PlatePeak stressAlong, stressAcross;
    double load_N = 0;                      ///< all loads together, positive down
    std::vector<double> supportReaction_N;  ///< on the plate, positive up; in the order of the supports
    double sideReaction_N = 0;              ///< of all held sides together
    double reactions_N = 0;                 ///< all of these together
};

/// A shape in which the plate rings.
struct PlateMode {
    double frequency_Hz = 0;
    PlateField field;       ///< scaled so that the largest deflection in `samples` is 1
    double mass_kg = 0;     ///< that swings, for a deflection of 1 at the place of the largest: m_p
    double piston_mm2 = 0;  ///< volume moved for that deflection: A_p; of either sign
    PlatePeak largest;
    std::vector<double> samples;  ///< on PlateModel::sampleGrid(), row by row from least y; NaN off the wood
};

/// A grid of points over the rectangle around the plate, its sides included.
struct PlateSamples {
    Bounds box;
    int countX = 0, countY = 0;

    Point at(int i, int j) const
    {
        return {box.minX + box.width() * i / (countX - 1), box.minY + box.height() * j / (countY - 1)};
    }
};

/// A plate made ready. Copies share their insides, which never change: threads may use one at the same time.
class PlateModel {
public:
    explicit PlateModel(std::shared_ptr<const PlateSystem> system) : m_system(std::move(system)) {}

    int unknowns() const;
    /// Of the wood that is reckoned with, pieces that fall out left off.
    double area_mm2() const;
    double mass_kg() const;
    /// What touches no support. Where nothing holds anything, all but the largest piece; then they stay in
    /// the reckoning.
    const std::vector<LoosePiece>& loosePieces() const;

    /// Error: wood that can move or turn without its supports giving way; a load that lies at no wood that is
    /// held; stopped.
    Result<PlateAnswer> rest(const PlateWatch& watch = {}) const;
    /// The `count` (1 to kMostPlateModes) lowest modes, motions without bending left out, from the lowest.
    /// There may be fewer where the plate has few unknowns. `samplesAlong` (2 to 1000) points along the
    /// longer side. Error: out of these ranges; not found; stopped.
    Result<std::vector<PlateMode>> modes(int count, const PlateWatch& watch = {},
                                         int samplesAlong = 97) const;
    PlateSamples sampleGrid(int samplesAlong = 97) const;

    /// Deflection at p, mm; nothing where no wood is reckoned with.
    std::optional<double> at(const PlateField& field, Point p) const;
    /// The stress there, of the plate's own stiffness alone.
    std::optional<PlateStress> stressAt(const PlateField& field, Point p) const;

private:
    std::shared_ptr<const PlateSystem> m_system;
};

inline constexpr int kMostPlateModes = 40;

/// Makes a plate ready: thin plates after Kirchhoff (no shear deflection, small deflections), orthotropic
/// with grain at any angle, by bicubic Hermite elements on a regular grid of `cells` (kLeastPlateCells to
/// kMostPlateCells) along the longer side. Cuts go through the cells as they are (finite cell method: J.
/// Parvizian, A. Duester and E. Rank, Finite cell method, Computational Mechanics 41 (2007) 121-133, from
/// memory): integrals over the wood are exact, void has 1e-8 of the stiffness and no mass, and pieces of wood
/// that a cut parts within a cell move on their own. Frequencies come out too high rather than too low.
/// Against closed forms and series the first frequency of full plates is right to 7e-5 at 16 cells and any of
/// the first six to 3e-4 at 24; with round holes the first to 1e-4 at 16, with square ones to 2e-3 at 15 and
/// 7e-4 at 31. Parts narrower than 4 cells are too stiff: a clamped tongue of 2 cells' width by 9 % of its
/// frequency, of 4 by 3 %, of 8 by 0.4 % (found with a prototype of this method). A lid of 240 mm with a disc
/// on eight bridges of 3 mm, against the finest grid that could be reckoned: 2.4 % at 48 cells, 0.3 % at 96;
/// other numbers of cells lie worse to the bridges, 6 % at 60, 3.3 % at 72 and up to 1.6 % from 84 to 160.
///
/// Errors name the part: numbers that are none or out of the ranges in plate_problem.h, no material, more
/// parts, corners or unknowns than the limits, a mass that lies at no wood, stopped by `watch`.
Result<PlateModel> buildPlate(const PlateProblem& problem, int cells, const PlateWatch& watch = {});

}  // namespace lidwright
