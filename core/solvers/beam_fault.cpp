#include "core/base/length_text.h"
#include "core/solvers/beam_mesh.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace lidwright {
namespace {

constexpr double kShortest = 1, kLongest = 1e5;  // mm, of a whole beam
constexpr double kMostLoad = 1e8;                // N, N/mm
constexpr double kMostMoment_Nmm = 1e12;
constexpr double kMostContrast = 1e8;  // stiffest over softest section

std::string numbered(const char* part, std::size_t i)
{
    return std::string(part) + " " + std::to_string(i + 1);
}

bool within(double value, double low, double high)
{
    return value >= low && value <= high;  // false for what is no number
}

struct Quantity {
    const char* name;
    double value, low, high;
};

std::optional<Error> rangeFault(std::initializer_list<Quantity> quantities, const std::string& where)
{
    for (const Quantity& q : quantities)
        if (!within(q.value, q.low, q.high))
            return Error{std::string("its ") + q.name + " is out of range or no number", where,
                         "give from " + exactNumber(q.low) + " to " + exactNumber(q.high)};
    return std::nullopt;
}

std::optional<Error> sectionFault(const BeamSection& s, const std::string& where)
{
    return rangeFault({{"bending stiffness", s.bending_Nmm2, 1, 1e16},
                       {"axial stiffness", s.axial_N, 1, 1e14},
                       {"top fibre's distance", s.top, 0, 1e4},
                       {"bottom fibre's distance", s.bottom, 0, 1e4},
                       {"top fibre's modulus", s.topModulus_MPa, 0, 1e7},
                       {"bottom fibre's modulus", s.bottomModulus_MPa, 0, 1e7},
                       {"mass", s.mass_kg_m, 0, 1e4},
                       {"neutral axis' height", s.axis, -1e4, 1e4}},
                      where);
}

std::optional<Error> piecesFault(const NeckBeam& beam)
{
    if (beam.pieces.empty()) return Error{"the beam has no piece", "beam", "give it a piece with stiffness"};
    double softest = HUGE_VAL, stiffest = 0;
    for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
        const BeamPiece& piece = beam.pieces[i];
        const std::string where = numbered("beam piece", i);
        if (!(piece.length > 0 && piece.length <= kLongest))
            return Error{"its length is not above 0 or out of range", where, "give it in millimetres"};
        for (const BeamSection* section : {&piece.start, &piece.end}) {
            if (auto fault = sectionFault(*section, where)) return fault;
            softest = std::min(softest, section->bending_Nmm2);
            stiffest = std::max(stiffest, section->bending_Nmm2);
        }
    }
    if (stiffest > kMostContrast * softest)
        return Error{"one piece is more than 1e8 times as stiff as another", "beam",
                     "leave the soft piece out or make it stiffer"};
    return std::nullopt;
}

std::optional<Error> supportsFault(const NeckBeam& beam, double from, double to)
{
    std::vector<double> places;
    bool clamped = false;
    for (std::size_t i = 0; i < beam.supports.size(); ++i) {
        const BeamSupport& support = beam.supports[i];
        const std::string where = numbered("beam support", i);
        if (!within(support.x, from, to)) return Error{"it lies off the beam", where, "put it on the beam"};
        if (support.kind == SupportKind::Spring)
            if (auto fault = rangeFault({{"spring rate", support.spring_N_mm, 1e-3, 1e9}}, where))
                return fault;
        for (double other : places)
            if (std::abs(other - support.x) < 2 * kBeamNearest * (to - from))
                return Error{"it lies at another support", where, "make one of the two"};
        places.push_back(support.x);
        clamped = clamped || support.kind == SupportKind::Clamped;
    }
    if (!clamped && beam.supports.size() < 2)
        return Error{"nothing holds the beam", "beam supports", "give it two supports or a clamp"};
    return std::nullopt;
}

std::optional<Error> loadsFault(const NeckBeam& beam, double from, double to)
{
    for (std::size_t i = 0; i < beam.loads.size(); ++i)
        if (auto fault = rangeFault({{"place", beam.loads[i].x, from, to},
                                     {"force", beam.loads[i].force_N, -kMostLoad, kMostLoad},
                                     {"moment", beam.loads[i].moment_Nmm, -kMostMoment_Nmm, kMostMoment_Nmm}},
                                    numbered("beam load", i)))
            return fault;
    for (std::size_t i = 0; i < beam.spreads.size(); ++i) {
        const BeamSpread& spread = beam.spreads[i];
        const std::string where = numbered("spread load", i);
        if (auto fault = rangeFault({{"beginning", spread.from, from, to},
                                     {"end", spread.to, from, to},
                                     {"load", spread.atFrom_N_mm, -kMostLoad, kMostLoad},
                                     {"load", spread.atTo_N_mm, -kMostLoad, kMostLoad}},
                                    where))
            return fault;
        if (!(spread.to > spread.from))
            return Error{"it does not end after it begins", where, "give it a length"};
    }
    for (std::size_t i = 0; i < beam.axials.size(); ++i) {
        const BeamAxial& axial = beam.axials[i];
        const std::string where = numbered("axial force", i);
        if (auto fault = rangeFault({{"beginning", axial.from, from, to},
                                     {"end", axial.to, from, to},
                                     {"force", axial.force_N, -kMostLoad, kMostLoad},
                                     {"height", axial.fromHeight, -1e4, 1e4},
                                     {"height", axial.toHeight, -1e4, 1e4}},
                                    where))
            return fault;
        if (!(axial.to - axial.from >= 2 * kBeamNearest * (to - from)))
            return Error{"it does not end after it begins", where, "give it a length"};
    }
    return std::nullopt;
}

}  // namespace

std::optional<Error> beamFault(const NeckBeam& beam)
{
    for (std::size_t parts : {beam.pieces.size(), beam.supports.size(), beam.loads.size(),
                              beam.spreads.size(), beam.axials.size()})
        if (parts > kMostBeamParts)
            return Error{"the beam has more than " + std::to_string(kMostBeamParts) + " parts of one kind",
                         "beam", "leave some out"};
    if (auto fault = piecesFault(beam)) return fault;
    double length = 0;
    for (const BeamPiece& piece : beam.pieces)
        length += piece.length;
    if (!within(length, kShortest, kLongest) || !within(beam.start, -kLongest, kLongest))
        return Error{"its length or start is out of range", "beam", "give 1 mm to 100 m in all"};
    // A place that was added up in another order than the pieces still lies on the beam.
    const double room = 1e-9 * length;
    if (auto fault = supportsFault(beam, beam.start - room, beam.start + length + room)) return fault;
    return loadsFault(beam, beam.start - room, beam.start + length + room);
}

}  // namespace lidwright
