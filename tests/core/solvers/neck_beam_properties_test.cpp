#include "tests/core/solvers/random_beam.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

using namespace testing;

/// Integral over the beam of a function of place and state, three Gauss points to an element, which is exact
/// for polynomials up to the fifth degree, four sub-intervals each.
template <typename Function>
double integral(const BeamAnswer& answer, Function function)
{
    const double root = std::sqrt(0.6);
    double sum = 0;
    for (const BeamElement& e : answer.elements)
        for (int part = 0; part < 4; ++part)
            for (const auto& [place, weight] :
                 {std::pair{-root, 5.0 / 18}, std::pair{0.0, 8.0 / 18}, std::pair{root, 5.0 / 18}}) {
                const double s = (part + 0.5 + place / 2) / 4;
                sum += weight * e.length / 4 * function(e, s, answer.at(e.x + s * e.length));
            }
    return sum;
}

double spreadOn(const BeamElement& e, double s)
{
    return std::lerp(e.startLoad_N_mm, e.endLoad_N_mm, s);
}

TEST(NeckBeamProperties, ForcesAndMomentsBalance)
{
    Dice dice(1);
    for (int round = 0; round < 200; ++round) {
        SCOPED_TRACE(round);
        NeckBeam beam = randomBeam(dice, round % 2 == 1);
        addLoads(dice, beam, round % 3 != 0);
        const BeamAnswer answer = solved(beam);
        const double about = pick(dice, -500, 1500);
        // Sums from the input, not from what the solver made of it.
        double force = 0, moment = 0, size = 0;
        for (const BeamLoad& load : beam.loads) {
            force += load.force_N;
            moment += load.force_N * (load.x - about) + load.moment_Nmm;
            size += std::abs(load.force_N);
        }
        for (const BeamSpread& spread : beam.spreads) {
            const double run = spread.to - spread.from;
            const double sum = run * (spread.atFrom_N_mm + spread.atTo_N_mm) / 2;
            force += sum;
            moment +=
                sum * (spread.from - about) + run * run * (spread.atFrom_N_mm + 2 * spread.atTo_N_mm) / 6;
        }
        double x = beam.start;
        for (const BeamPiece& piece : beam.pieces) {
            if (beam.selfWeight) {
                const double a = -piece.start.mass_kg_m * kGravity_m_s2 / 1000;
                const double b = -piece.end.mass_kg_m * kGravity_m_s2 / 1000;
                force += piece.length * (a + b) / 2;
                moment +=
                    piece.length * (a + b) / 2 * (x - about) + piece.length * piece.length * (a + 2 * b) / 6;
            }
            x += piece.length;
        }
        for (std::size_t i = 0; i < beam.supports.size(); ++i) {
            force += answer.reactions[i].force_N;
            moment +=
                answer.reactions[i].force_N * (beam.supports[i].x - about) + answer.reactions[i].moment_Nmm;
        }
        EXPECT_NEAR(force, 0, 1e-4 * (size + 10));
        // A change of section that is moved to a node takes its weight along.
        EXPECT_NEAR(moment, 0, 1e-4 * (size + 10) * 1000);
        // Free ends bear nothing.
        const BeamState end = answer.at(x);
        double endForce = 0;
        for (const BeamLoad& load : beam.loads)
            if (load.x > x - 1) endForce += load.force_N;
        if (endForce == 0) EXPECT_NEAR(end.shear_N, 0, 1e-4 * (size + 10));
    }
}

TEST(NeckBeamProperties, MomentRisesByTheShearAndJumpsByTheLoads)
{
    Dice dice(2);
    for (int round = 0; round < 100; ++round) {
        NeckBeam beam = randomBeam(dice, false);
        addLoads(dice, beam, true);
        const BeamAnswer answer = solved(beam);
        for (std::size_t i = 0; i < answer.elements.size(); ++i) {
            const BeamElement& e = answer.elements[i];
            const double x = e.x + 0.4 * e.length, d = 0.01 * e.length;
            const BeamState here = answer.at(x);
            const double size = std::abs(here.moment_Nmm) + 1000;
            EXPECT_NEAR((answer.at(x + d).moment_Nmm - answer.at(x - d).moment_Nmm) / (2 * d), here.shear_N,
                        1e-6 * size);
            // E I w'' is the moment: by differences of the slope.
            EXPECT_NEAR((answer.at(x + d).slope - answer.at(x - d).slope) / (2 * d) * e.start.bending_Nmm2,
                        here.moment_Nmm, 1e-4 * size);
            EXPECT_NEAR((answer.at(x + d).deflection - answer.at(x - d).deflection) / (2 * d), here.slope,
                        1e-7);
        }
    }
}

TEST(NeckBeamProperties, TheLoadsWorkIsTheBentBeamsEnergy)
{
    Dice dice(3);
    for (int round = 0; round < 150; ++round) {
        SCOPED_TRACE(round);
        const bool tapered = round % 2 == 1;
        NeckBeam beam = randomBeam(dice, tapered);
        addLoads(dice, beam, round % 3 != 0);
        const BeamAnswer answer = solved(beam);
        double work = integral(answer, [](const BeamElement& e, double s, const BeamState& state) {
            return spreadOn(e, s) * state.deflection / 2;
        });
        for (const BeamLoad& load : beam.loads)
            work +=
                (load.force_N * answer.at(load.x).deflection + load.moment_Nmm * answer.at(load.x).slope) / 2;
        double energy = integral(answer, [](const BeamElement& e, double s, const BeamState& state) {
            return state.moment_Nmm * state.moment_Nmm /
                   (2 * std::lerp(e.start.bending_Nmm2, e.end.bending_Nmm2, s));
        });
        for (std::size_t i = 0; i < beam.supports.size(); ++i)
            if (beam.supports[i].kind == SupportKind::Spring)
                energy += std::pow(answer.reactions[i].force_N, 2) / (2 * beam.supports[i].spring_N_mm);
        EXPECT_NEAR(work, energy, (tapered ? kBeamAccuracy : 2e-4) * energy);
    }
}

TEST(NeckBeamProperties, MaxwellAndBetti)
{
    // What the forces of one load case do on the deflections of another is the same the other way round.
    Dice dice(4);
    for (int round = 0; round < 150; ++round) {
        SCOPED_TRACE(round);
        const NeckBeam bare = randomBeam(dice, round % 2 == 1);
        NeckBeam one = bare, other = bare;
        addLoads(dice, one, false);
        addLoads(dice, other, false);
        if (round % 3 == 0)  // with the same axial force it holds too
            one.axials = other.axials = {{bare.start, bare.start + 0.7 * lengthOf(bare), -60}};
        for (NeckBeam* beam : {&one, &other})
            for (BeamAxial& axial : beam->axials)
                axial.tied = round % 2 == 0;
        // The couples of a force off the axis are a load of their own.
        for (NeckBeam* beam : {&one, &other})
            for (BeamPiece& piece : beam->pieces)
                piece.start.axis = piece.end.axis = 0;
        const BeamAnswer a = solved(one), b = solved(other);
        // Loads that are put at the next node are that much off in both.
        double first = 0, second = 0, size = 0;
        for (const BeamLoad& load : one.loads) {
            const double part = load.force_N * b.at(load.x).deflection + load.moment_Nmm * b.at(load.x).slope;
            first += part;
            size += std::abs(part);
        }
        for (const BeamLoad& load : other.loads) {
            const double part = load.force_N * a.at(load.x).deflection + load.moment_Nmm * a.at(load.x).slope;
            second += part;
            size += std::abs(part);
        }
        EXPECT_NEAR(first, second, kBeamAccuracy * size);
    }
}

TEST(NeckBeamProperties, MirroredBeamMirrorsItsAnswer)
{
    Dice dice(5);
    int buckles = 0;
    for (int round = 0; round < 60; ++round) {
        SCOPED_TRACE(round);
        NeckBeam beam = randomBeam(dice, round % 2 == 1);
        addLoads(dice, beam, true);
        const double length = lengthOf(beam), end = beam.start + length;
        beam.axials = {{beam.start + 0.1 * length, beam.start + 0.8 * length, -60, 20, 15, round % 3 == 0}};
        NeckBeam mirrored = beam;
        mirrored.start = -end;
        std::reverse(mirrored.pieces.begin(), mirrored.pieces.end());
        for (BeamPiece& piece : mirrored.pieces)
            std::swap(piece.start, piece.end);
        for (BeamSupport& support : mirrored.supports)
            support.x = -support.x;
        for (BeamLoad& load : mirrored.loads)
            load = {-load.x, load.force_N, -load.moment_Nmm};
        for (BeamSpread& spread : mirrored.spreads)
            spread = {-spread.to, -spread.from, spread.atTo_N_mm, spread.atFrom_N_mm};
        for (BeamAxial& axial : mirrored.axials)
            axial = {-axial.to, -axial.from, axial.force_N, axial.toHeight, axial.fromHeight, axial.tied};
        const BeamAnswer a = solved(beam), b = solved(mirrored);
        const double most = std::abs(a.largestDeflection().value);
        const double stress = std::abs(a.largestStress().value);
        for (double x = beam.start; x < end; x += 7.3) {
            const BeamState here = a.at(x), there = b.at(-x, BeamSide::TowardsStart);
            EXPECT_NEAR(here.deflection, there.deflection, 1e-5 * most);
            EXPECT_NEAR(here.slope, -there.slope, 1e-6 * most);
            EXPECT_NEAR(here.moment_Nmm, there.moment_Nmm, 1e-5 * (std::abs(here.moment_Nmm) + 1000));
            EXPECT_NEAR(here.shear_N, -there.shear_N, 1e-3);
            EXPECT_NEAR(here.topStress_MPa, there.topStress_MPa, 1e-5 * stress);
        }
        ASSERT_EQ(a.bucklingFactor.has_value(), b.bucklingFactor.has_value());
        buckles += a.bucklingFactor.has_value();
        EXPECT_NEAR(a.bucklingFactor.value_or(0), b.bucklingFactor.value_or(0),
                    1e-5 * a.bucklingFactor.value_or(0));
        EXPECT_NEAR(a.amplification, b.amplification, 1e-5);
    }
    EXPECT_GT(buckles, 20);
}

TEST(NeckBeamProperties, StringsBendByTheirDistanceFromTheAxisAlone)
{
    // Two supports, strings tied on between two places, nothing else: no support bears anything, and the
    // moment is tension times the distance from the string's line to the bent axis, whatever the sections.
    Dice dice(7);
    for (int round = 0; round < 60; ++round) {
        SCOPED_TRACE(round);
        NeckBeam beam = randomBeam(dice, round % 2 == 1);
        const double length = lengthOf(beam), from = beam.start + 0.05 * length,
                     to = beam.start + 0.9 * length;
        beam.supports = {{beam.start + 0.2 * length}, {beam.start + 0.7 * length}};
        constexpr double kT = 150, kFrom = 25, kTo = 18;
        beam.axials = {{from, to, -kT, kFrom, kTo, true}};
        const BeamAnswer answer = solved(beam);
        EXPECT_NEAR(answer.reactions[0].force_N, 0, 1e-4 * kT);
        EXPECT_NEAR(answer.reactions[1].force_N, 0, 1e-4 * kT);
        const double atFrom = answer.at(from).deflection, atTo = answer.at(to).deflection;
        for (const BeamElement& e : answer.elements) {
            const double s = 0.37, x = e.x + s * e.length;
            const BeamState state = answer.at(x);
            if (x < from || x > to) {
                EXPECT_NEAR(state.moment_Nmm, 0, 1e-3 * kT);
                continue;
            }
            const double t = (x - from) / (to - from);
            const double line = std::lerp(kFrom + atFrom, kTo + atTo, t);
            const double axis = std::lerp(e.start.axis, e.end.axis, s) + state.deflection;
            EXPECT_NEAR(state.moment_Nmm, kT * (line - axis), 1e-4 * kT * 20);
            EXPECT_EQ(state.axial_N, -kT);
        }
    }
}

}  // namespace
}  // namespace lidwright
