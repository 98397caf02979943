#include "core/base/pitch.h"

#include "tests/support/reference_table.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace lidwright {
namespace {

int semitone(std::string_view text)
{
    const Result<Pitch> pitch = parsePitch(text);
    EXPECT_TRUE(pitch) << text << ": " << pitch.error().text();
    return pitch ? pitch->semitone : -1;
}

TEST(Pitch, PublishedFrequencies)
{
    // ISO 16 (1975): tests/data/reference/string_check_values.csv, row 5.
    const std::vector<double> expected =
        testing::ReferenceTable("string_check_values.csv").numbers("5", "expected");
    const char* names[] = {"A4", "E4", "G3", "D3", "A2"};
    ASSERT_EQ(expected.size(), 5U);
    for (std::size_t i = 0; i < 5; ++i)
        EXPECT_NEAR(*pitchFrequency_Hz(*parsePitch(names[i])), expected[i], 1e-4) << names[i];
    EXPECT_EQ(*pitchFrequency_Hz({}), 440);
    EXPECT_NEAR(*pitchFrequency_Hz({69, 0}, 415), 415, 1e-12);
}

TEST(Pitch, SpellingsOfTheSameNote)
{
    EXPECT_EQ(semitone("C4"), 60);  // middle C of MIDI
    EXPECT_EQ(semitone("a4"), 69);
    EXPECT_EQ(semitone("C-1"), 0);
    EXPECT_EQ(semitone("C\u22121"), 0);
    EXPECT_EQ(semitone("B9"), 131);
    EXPECT_EQ(semitone("C#3"), 49);
    EXPECT_EQ(semitone("C\u266F3"), 49);
    EXPECT_EQ(semitone("Db3"), 49);
    EXPECT_EQ(semitone("D\u266D3"), 49);
    EXPECT_EQ(semitone("db3"), 49);
    EXPECT_EQ(semitone("bb3"), 58);
    EXPECT_EQ(semitone("b3"), 59);
    // The octave is the letter's, not the key's.
    EXPECT_EQ(semitone("B#3"), semitone("C4"));
    EXPECT_EQ(semitone("Cb4"), semitone("B3"));
    EXPECT_EQ(semitone("E#4"), semitone("F4"));
    EXPECT_EQ(semitone("Fb4"), semitone("E4"));
    EXPECT_EQ(semitone("F##4"), semitone("G4"));
    EXPECT_EQ(semitone("Fx4"), semitone("G4"));
    EXPECT_EQ(semitone("F\U0001D12A4"), semitone("G4"));
    EXPECT_EQ(semitone("Abb4"), semitone("G4"));
    EXPECT_EQ(semitone("A\U0001D12B4"), semitone("G4"));
    EXPECT_EQ(semitone("G\u266E4"), semitone("G4"));
    EXPECT_EQ(semitone("  G4\t"), semitone("G4"));
}

TEST(Pitch, Cents)
{
    EXPECT_EQ(*parsePitch("A4 +12.5 c"), (Pitch{69, 12.5}));
    EXPECT_EQ(*parsePitch("A4+12,5c"), (Pitch{69, 12.5}));
    EXPECT_EQ(*parsePitch("B3 -4 cents"), (Pitch{59, -4}));
    EXPECT_EQ(*parsePitch("B3 \u22124 \u00A2"), (Pitch{59, -4}));
    EXPECT_EQ(*parsePitch("B3 +1 cent "), (Pitch{59, 1}));
    EXPECT_EQ(*parsePitch("B3 +100 ct"), (Pitch{59, 100}));
    EXPECT_NEAR(*pitchFrequency_Hz({59, 100}), *pitchFrequency_Hz({60, 0}), 1e-10);
    EXPECT_NEAR(*pitchFrequency_Hz({69, 50}), 440 * std::pow(2, 1.0 / 24), 1e-10);
}

TEST(Pitch, TextAndBackForEverySemitone)
{
    for (Accidentals accidentals : {Accidentals::Sharps, Accidentals::Flats})
        for (bool trueSigns : {false, true})
            for (int s = kLowestSemitone; s <= kHighestSemitone; ++s)
                for (double off : {0.0, 7.5, -99.9, 100.0}) {
                    const std::string text = formatPitch({s, off}, accidentals, trueSigns);
                    const Result<Pitch> back = parsePitch(text);
                    ASSERT_TRUE(back) << text;
                    EXPECT_EQ(*back, (Pitch{s, off})) << text;
                }
    EXPECT_EQ(formatPitch({49, 0}), "C#3");
    EXPECT_EQ(formatPitch({49, 0}, Accidentals::Flats), "Db3");
    EXPECT_EQ(formatPitch({49, 0}, Accidentals::Sharps, true), "C\u266F3");
    EXPECT_EQ(formatPitch({49, 0}, Accidentals::Flats, true), "D\u266D3");
    EXPECT_EQ(formatPitch({0, 0}), "C-1");
    EXPECT_EQ(formatPitch({64, 12.34}), "E4 +12.3 c");
    EXPECT_EQ(formatPitch({64, -0.04}), "E4");
    EXPECT_EQ(formatPitch({132, 0}), "unknown");
    EXPECT_EQ(formatPitch({60, std::nan("")}), "unknown");
}

TEST(Pitch, FrequencyAndBack)
{
    for (double a4 : {415.0, 432.0, 440.0, 466.16})
        for (int s = kLowestSemitone; s <= kHighestSemitone; ++s)
            for (double off : {0.0, 49.0, -49.0}) {
                const Result<double> f = pitchFrequency_Hz({s, off}, a4);
                ASSERT_TRUE(f);
                const Result<Pitch> back = pitchOf(*f, a4);
                ASSERT_TRUE(back);
                EXPECT_EQ(back->semitone, s);
                EXPECT_NEAR(back->cents, off, 1e-9);
                if (s < kHighestSemitone)
                    EXPECT_NEAR(*pitchFrequency_Hz({s + 1, off}, a4) / *f, std::pow(2, 1.0 / 12), 1e-12);
            }
}

TEST(Pitch, BadTextIsNamedWhereItIsBad)
{
    const auto positionOf = [](std::string_view text) {
        const Result<Pitch> pitch = parsePitch(text);
        return pitch ? -1 : pitch.error().position;
    };
    EXPECT_EQ(positionOf(""), 0);
    EXPECT_EQ(positionOf("   "), 0);
    EXPECT_EQ(positionOf("H3"), 0);
    EXPECT_EQ(positionOf(" J3"), 1);
    EXPECT_EQ(positionOf("E"), 1);
    EXPECT_EQ(positionOf("E'"), 1);
    EXPECT_EQ(positionOf("C###3"), 3);
    EXPECT_EQ(positionOf("C#b3"), 2);
    EXPECT_EQ(positionOf("E10"), 1);
    EXPECT_EQ(positionOf("E-2"), 1);
    EXPECT_EQ(positionOf("E-1 "), -1);
    EXPECT_EQ(positionOf("Cb-1"), 0);
    EXPECT_EQ(positionOf("B#9"), 0);
    EXPECT_EQ(positionOf("E4 E4"), 3);
    EXPECT_EQ(positionOf("E4 +5"), 5);
    EXPECT_EQ(positionOf("E4 + c"), 3);
    EXPECT_EQ(positionOf("E4 +101 c"), 3);
    EXPECT_EQ(positionOf("E4 +1.2.3 c"), 7);
    EXPECT_EQ(positionOf("E4 +. c"), 3);
    EXPECT_EQ(positionOf("E4 +5 cm"), 7);
    EXPECT_EQ(positionOf(std::string(1000, 'C')), kPitchTextLimit);
    EXPECT_EQ(positionOf(std::string("E4\0", 3)), 2);
    EXPECT_NE(parsePitch("H3").error().mend.find("write B"), std::string::npos);
}

TEST(Pitch, AnyBytesAreReadOrRefused)
{
    std::mt19937 random(20240917);
    const std::string_view pieces[] = {"A", "b", "#",  "\u266F", "\xe2", "\u266D", "4",
                                       "-", "+", "12", ".",      "c",    " "};
    std::uniform_int_distribution<std::size_t> piece(0, std::size(pieces) - 1), count(0, 9);
    int read = 0;
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (std::size_t left = count(random); left > 0; --left)
            text += pieces[piece(random)];
        const Result<Pitch> pitch = parsePitch(text);
        if (!pitch) {
            EXPECT_LE(pitch.error().position, static_cast<int>(text.size()));
            continue;
        }
        ++read;
        EXPECT_TRUE(pitchFrequency_Hz(*pitch)) << text;
        EXPECT_NE(formatPitch(*pitch), "unknown") << text;
    }
    EXPECT_GT(read, 50);
}

TEST(Pitch, BadNumbersAreErrors)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (double bad : {nan, inf, -inf, 0.0, -440.0, 299.0, 601.0}) {
        EXPECT_EQ(pitchFrequency_Hz({}, bad).error().where, "concert pitch");
        EXPECT_EQ(pitchOf(440, bad).error().where, "concert pitch");
    }
    for (double bad : {nan, inf, -inf, 0.0, -1.0, 7.0, 1e5, 1e-300})
        EXPECT_EQ(pitchOf(bad).error().where, "frequency") << bad;
    for (const Pitch& bad : {Pitch{-1, 0}, Pitch{132, 0}, Pitch{60, 100.1}, Pitch{60, nan}})
        EXPECT_EQ(pitchFrequency_Hz(bad).error().where, "pitch");
}

}  // namespace
}  // namespace lidwright
