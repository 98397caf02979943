#include "core/solvers/fret_wire.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

FretScale equalScale(double length, int count, bool zeroFret = false)
{
    const Result<std::vector<FretNote>> notes = fretNotes(*equalTemperament(12), count);
    EXPECT_TRUE(notes);
    return *fretScale(length, *notes, zeroFret);
}

TEST(FretSlot, FlatBoardByHand)
{
    FretSlotCase slot;
    slot.tang = 1.5;
    slot.allowance = 0.3;
    slot.boardThickness = 6;
    slot.stopStandOff = 3;
    const Result<FretSlot> answer = fretSlot(slot);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->depth, 1.8, 1e-12);
    EXPECT_NEAR(answer->depthInMiddle, 1.8, 1e-12);
    EXPECT_EQ(answer->rounding, 0);
    EXPECT_NEAR(answer->woodLeft, 4.2, 1e-12);
    EXPECT_NEAR(answer->bladeProjection, 4.8, 1e-12);
    // A slot through a thin board is an answer, not an error.
    slot.boardThickness = 1.5;
    EXPECT_NEAR(fretSlot(slot)->woodLeft, -0.3, 1e-12);
}

TEST(FretSlot, RoundBoardByHand)
{
    // R 250, 60 wide: 250 - sqrt(62500 - 900) = 1.80653.
    FretSlotCase slot;
    slot.tang = 1.5;
    slot.allowance = 0.3;
    slot.boardThickness = 8;
    slot.boardWidth = 60;
    slot.boardRadius = 250;
    const FretSlot level = *fretSlot(slot);
    EXPECT_NEAR(level.rounding, 1.80653, 1e-5);
    EXPECT_NEAR(level.depthInMiddle, 3.60653, 1e-5);
    EXPECT_NEAR(level.woodLeft, 8 - 3.60653, 1e-5);
    EXPECT_NEAR(level.bladeProjection, 3.60653, 1e-5);
    slot.floor = SlotFloor::FollowsBoard;
    const FretSlot following = *fretSlot(slot);
    EXPECT_NEAR(following.depthInMiddle, 1.8, 1e-12);
    EXPECT_NEAR(following.bladeProjection, 1.8, 1e-12);
    EXPECT_EQ(following.woodLeft, level.woodLeft);
    // The wood under the slot, looked for across the board.
    for (SlotFloor floor : {SlotFloor::Level, SlotFloor::FollowsBoard}) {
        slot.floor = floor;
        const FretSlot answer = *fretSlot(slot);
        double least = 100;
        for (double y = -30; y <= 30; y += 0.01) {
            const double top = 8 - (250 - std::sqrt(250 * 250 - y * y));
            const double bottom = floor == SlotFloor::Level ? 8 - answer.depthInMiddle : top - answer.depth;
            EXPECT_GE(top - bottom, 1.8 - 1e-9);
            least = std::min(least, bottom);
        }
        EXPECT_NEAR(least, answer.woodLeft, 1e-3);
    }
    // A very large radius is flat.
    slot.boardRadius = 1e12;
    EXPECT_NEAR(fretSlot(slot)->rounding, 0, 1e-9);
    slot.boardRadius = 30;  // half round
    EXPECT_NEAR(fretSlot(slot)->rounding, 30, 1e-12);
}

TEST(FretSlot, FitGoesByTheTangAndTheBarbs)
{
    // 0.001 to 0.002 in over the bare tang: see fret_wire.h.
    FretSlotCase slot;
    slot.tangThickness = 0.5;
    const auto fitOf = [&](double overInch) {
        slot.slotWidth = 0.5 + overInch * kMillimetresPerInch;
        return fretSlot(slot)->fit;
    };
    EXPECT_EQ(fitOf(-0.002), SlotFit::Tight);
    EXPECT_EQ(fitOf(0), SlotFit::Tight);
    EXPECT_EQ(fitOf(0.0009), SlotFit::Tight);
    EXPECT_EQ(fitOf(0.001), SlotFit::Fits);
    EXPECT_EQ(fitOf(0.0015), SlotFit::Fits);
    EXPECT_EQ(fitOf(0.002), SlotFit::Fits);
    EXPECT_EQ(fitOf(0.0021), SlotFit::Loose);
    // The common 0.023 in slot (0.584 mm) is for tangs of 0.021 to 0.022 in.
    slot.slotWidth = 0.023 * kMillimetresPerInch;
    for (double tang : {0.021, 0.022}) {
        slot.tangThickness = tang * kMillimetresPerInch;
        EXPECT_EQ(fretSlot(slot)->fit, SlotFit::Fits);
    }
    EXPECT_TRUE(fretSlot(slot)->barbsHold);
    slot.barbThickness = 0.8;
    EXPECT_TRUE(fretSlot(slot)->barbsHold);
    slot.barbThickness = 0.58;
    EXPECT_FALSE(fretSlot(slot)->barbsHold);
    EXPECT_EQ(fretSlot(FretSlotCase{})->fit, SlotFit::Fits);
}

TEST(FretSlot, BadSizesAreNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (double bad : {-1.0, nan, inf, 1e300}) {
        const auto whereOf = [bad](double FretSlotCase::*member) {
            FretSlotCase slot;
            slot.*member = bad;
            const Result<FretSlot> answer = fretSlot(slot);
            return answer ? std::string("answered") : answer.error().where;
        };
        EXPECT_EQ(whereOf(&FretSlotCase::tang), "fret slot tang depth");
        EXPECT_EQ(whereOf(&FretSlotCase::allowance), "fret slot allowance");
        EXPECT_EQ(whereOf(&FretSlotCase::tangThickness), "fret slot tang thickness");
        EXPECT_EQ(whereOf(&FretSlotCase::barbThickness), "fret slot barb thickness");
        EXPECT_EQ(whereOf(&FretSlotCase::slotWidth), "fret slot width");
        EXPECT_EQ(whereOf(&FretSlotCase::boardThickness), "fret slot board thickness");
        EXPECT_EQ(whereOf(&FretSlotCase::boardWidth), "fret slot board width");
        EXPECT_EQ(whereOf(&FretSlotCase::stopStandOff), "fret slot stop stand-off");
    }
    FretSlotCase slot;
    for (double bad : {0.0, -300.0, 19.9, nan, inf}) {
        slot.boardRadius = bad;
        EXPECT_EQ(fretSlot(slot).error().where, "fret slot radius");
    }
}

TEST(WireNeed, TaperedBoardByHand)
{
    // 640 mm: frets 12 at 320 mm and 24 at 480 mm; 40 mm wide at the nut, 50 mm at 400 mm.
    const Result<std::vector<FretNote>> octaves = fretNotes(*equalTemperament(1), 2);
    const FretScale scale = *fretScale(640, *octaves, true);
    const Result<WireNeed> need = wireNeed(scale, {40, 50, 400, {}}, {2, 0.5, 0.1});
    ASSERT_TRUE(need);
    ASSERT_EQ(need->pieces.size(), 2U);
    EXPECT_EQ(need->pieces[0], (WirePiece{"0", 40, 44}));
    EXPECT_EQ(need->pieces[1].label, "1");
    EXPECT_NEAR(need->pieces[1].boardWidth, 48, 1e-12);
    EXPECT_NEAR(need->pieces[1].length, 52, 1e-12);
    EXPECT_EQ(need->offBoard, 1U);
    EXPECT_NEAR(need->inFrets, 96, 1e-12);
    EXPECT_NEAR(need->withCuts, 97, 1e-12);
    EXPECT_NEAR(need->toBuy, 106.7, 1e-9);
    // At the very end of the board there is a fret still.
    EXPECT_EQ(wireNeed(scale, {40, 50, 480, {}}, {})->pieces.size(), 3U);
    EXPECT_EQ(wireNeed(FretScale{640, {}}, {40, 50, 400, {}}, {})->toBuy, 0);
}

TEST(WireNeed, SumsAndBends)
{
    const FretScale scale = equalScale(635, 19);
    const WireNeed flat = *wireNeed(scale, {36, 38, 450, {}}, {1.5, 1, 0.1});
    double sum = 0;
    for (std::size_t i = 0; i < flat.pieces.size(); ++i) {
        sum += flat.pieces[i].length;
        EXPECT_GT(flat.pieces[i].boardWidth, 36);
        EXPECT_LE(flat.pieces[i].boardWidth, 38);
        if (i > 0) EXPECT_GT(flat.pieces[i].length, flat.pieces[i - 1].length);
    }
    EXPECT_NEAR(flat.inFrets, sum, 1e-9);
    EXPECT_EQ(flat.pieces.size() + flat.offBoard, 19U);
    EXPECT_EQ(flat.pieces.size(), fretsBefore(scale, 450));
    // A round board: the arc by the sum of short chords.
    const WireNeed round = *wireNeed(scale, {36, 38, 450, 120.0}, {1.5, 1, 0.1});
    for (std::size_t i = 0; i < round.pieces.size(); ++i) {
        const double w = round.pieces[i].boardWidth;
        EXPECT_EQ(w, flat.pieces[i].boardWidth);
        double arc = 0, before = std::sqrt(120 * 120 - w * w / 4);
        constexpr int kSteps = 2000;
        for (int k = 1; k <= kSteps; ++k) {
            const double y = -w / 2 + w * k / kSteps, z = std::sqrt(120 * 120 - y * y);
            arc += std::hypot(w / kSteps, z - before);
            before = z;
        }
        EXPECT_NEAR(round.pieces[i].length, arc + 3, 1e-6);
        EXPECT_GT(round.pieces[i].length, flat.pieces[i].length);
    }
}

TEST(WireNeed, BadSizesAreNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const FretScale scale = equalScale(635, 19);
    for (double bad : {-1.0, nan, std::numeric_limits<double>::infinity(), 1e300}) {
        EXPECT_EQ(wireNeed(scale, {bad, 38, 450, {}}, {}).error().where, "fret wire board width at the nut");
        EXPECT_EQ(wireNeed(scale, {36, bad, 450, {}}, {}).error().where, "fret wire board width at the end");
        EXPECT_EQ(wireNeed(scale, {36, 38, bad, {}}, {}).error().where, "fret wire board length");
        EXPECT_EQ(wireNeed(scale, {36, 38, 450, {}}, {bad, 1, 0}).error().where, "fret wire overhang");
        EXPECT_EQ(wireNeed(scale, {36, 38, 450, {}}, {1, bad, 0}).error().where, "fret wire loss per cut");
        EXPECT_EQ(wireNeed(scale, {36, 38, 450, {}}, {1, 1, bad}).error().where, "fret wire waste share");
    }
    EXPECT_EQ(wireNeed(scale, {36, 38, 0, {}}, {}).error().where, "fret wire board length");
    for (double bad : {18.9, 0.0, -250.0, nan})
        EXPECT_EQ(wireNeed(scale, {36, 38, 450, bad}, {}).error().where, "fret wire radius");
}

}  // namespace
}  // namespace lidwright
