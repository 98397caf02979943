#include "core/solvers/tuning_choice.h"

#include "core/base/pitch.h"
#include "core/solvers/string_tension.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

TEST(TuningChoice, EveryTuningGivesStringsThatHoldOnAnOrdinaryScale)
{
    ASSERT_GE(tunings().size(), 8U);
    for (const Tuning& tuning : tunings()) {
        const auto strings = stringsFor(tuning, 600, kConcertPitch_Hz);
        ASSERT_EQ(strings.size(), tuning.strings.size()) << tuning.id;
        for (std::size_t i = 0; i < strings.size(); ++i) {
            SCOPED_TRACE(tuning.id + " string " + std::to_string(i + 1));
            // The first string is the treble's.
            const auto& own = tuning.strings[tuning.strings.size() - 1 - i];
            EXPECT_DOUBLE_EQ(strings[i].pitch, own.pitch.semitone);
            const auto body = stringBody(*findStringKind(strings[i].kind), strings[i].gauge);
            ASSERT_TRUE(body.ok());
            if (own.gauge_in) continue;
            const auto load = stringLoad(*body, 600, *pitchFrequency_Hz(own.pitch));
            ASSERT_TRUE(load.ok());
            // A step of a thousandth of an inch is up to an eighth of the pull of the thinnest.
            EXPECT_NEAR(load->tension_N, kUsualPull_N, 0.13 * kUsualPull_N);
        }
    }
}

TEST(TuningChoice, TakesTheTrebleStringsWhereFewerAreWanted)
{
    for (const Tuning& tuning : tunings())
        if (tuning.strings.size() > 2) {
            const auto two = stringsFor(tuning, 635, kConcertPitch_Hz, 2);
            ASSERT_EQ(two.size(), 2U);
            EXPECT_DOUBLE_EQ(two[0].pitch, tuning.strings.back().pitch.semitone);
        }
}

}  // namespace
}  // namespace lidwright
