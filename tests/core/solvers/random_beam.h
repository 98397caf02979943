#pragma once

#include "core/solvers/neck_beam.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace lidwright::testing {

using Dice = std::mt19937;

inline double pick(Dice& dice, double low, double high)
{
    return std::uniform_real_distribution<double>(low, high)(dice);
}

inline BeamSection randomSection(Dice& dice)
{
    return {std::exp(pick(dice, std::log(1e8), std::log(2e9))),
            pick(dice, 1e6, 2e7),
            pick(dice, 5, 15),
            pick(dice, 5, 15),
            pick(dice, 8000, 15000),
            pick(dice, 8000, 15000),
            pick(dice, 0.2, 1),
            pick(dice, -5, 5)};
}

inline double lengthOf(const NeckBeam& beam)
{
    double length = 0;
    for (const BeamPiece& piece : beam.pieces)
        length += piece.length;
    return length;
}

/// Stepped or tapered, on two to four supports of any kind, without loads.
inline NeckBeam randomBeam(Dice& dice, bool tapered)
{
    NeckBeam beam;
    beam.start = pick(dice, -200, 200);
    const int pieces = 1 + static_cast<int>(dice() % 5);
    for (int i = 0; i < pieces; ++i) {
        const BeamSection start = randomSection(dice);
        beam.pieces.push_back({pick(dice, 60, 300), start, start});
        if (tapered) {
            beam.pieces.back().end = randomSection(dice);
            beam.pieces.back().end.bending_Nmm2 = start.bending_Nmm2 * pick(dice, 0.3, 3);
        }
    }
    const double length = lengthOf(beam);
    const int supports = 2 + static_cast<int>(dice() % 3);
    for (int i = 0; i < supports; ++i) {
        BeamSupport support;
        support.x = beam.start + length * (i + pick(dice, 0.1, 0.9)) / supports;
        support.kind = static_cast<SupportKind>(dice() % 3);
        if (support.kind == SupportKind::Spring) support.spring_N_mm = pick(dice, 5, 500);
        beam.supports.push_back(support);
    }
    return beam;
}

inline void addLoads(Dice& dice, NeckBeam& beam, bool spread)
{
    const double length = lengthOf(beam);
    const int loads = 1 + static_cast<int>(dice() % 4);
    for (int i = 0; i < loads; ++i)
        beam.loads.push_back(
            {beam.start + pick(dice, 0, length), pick(dice, -80, 80), pick(dice, -2000, 2000)});
    if (!spread) return;
    const double a = pick(dice, 0, 0.6) * length, b = a + pick(dice, 0.05, 0.4) * length;
    beam.spreads.push_back({beam.start + a, beam.start + b, pick(dice, -1, 1), pick(dice, -1, 1)});
    beam.selfWeight = true;
}

inline BeamAnswer solved(const NeckBeam& beam, int fineness = kBeamFineness)
{
    const Result<BeamAnswer> answer = solveBeam(beam, fineness);
    EXPECT_TRUE(answer) << answer.error().text();
    return answer ? *answer : BeamAnswer{};
}

}  // namespace lidwright::testing
