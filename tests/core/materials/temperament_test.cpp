#include "core/materials/temperament.h"

#include "tests/support/reference_table.h"

#include "core/materials/material_tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <map>
#include <memory>
#include <sstream>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

const Temperament& known(const std::string& id)
{
    static std::vector<std::unique_ptr<Temperament>> kept;
    const Result<Temperament> found = findTemperament(id);
    EXPECT_TRUE(found) << id;
    kept.push_back(std::make_unique<Temperament>(found ? *found : Temperament{}));
    return *kept.back();
}

double ratioWritten(const std::string& text)
{
    const std::size_t bar = text.find('/');
    return std::stod(text.substr(0, bar)) / std::stod(text.substr(bar + 1));
}

TEST(Temperaments, EveryRowAgreesWithTheReference)
{
    // tests/data/reference/temperaments.csv and its sources.
    const testing::ReferenceTable reference("temperaments.csv");
    ASSERT_EQ(reference.rows(), 13U);
    const Temperament& equal = known("equal-12");
    const Temperament& just = known("five-limit-just");
    const Temperament& pythagorean = known("pythagorean");
    const Temperament& meantone = known("quarter-comma-meantone");
    const auto ratio = [](const Temperament& t, std::size_t note) {
        return note == 0 ? 1.0 : t.ratios[note - 1];
    };
    constexpr double kPrinted = 0.51e-6, kPrintedMm = 0.51e-4;
    for (std::size_t note = 0; note < reference.rows(); ++note) {
        SCOPED_TRACE(note);
        ASSERT_EQ(reference.number(note, "semitone"), note);
        EXPECT_NEAR(cents(ratio(equal, note)), reference.number(note, "et_cents"), 1e-9);
        EXPECT_NEAR(ratio(just, note), ratioWritten(reference.text(note, "ji5_ratio")), 1e-15);
        EXPECT_NEAR(cents(ratio(just, note)), reference.number(note, "ji5_cents"), kPrinted);
        EXPECT_NEAR(cents(ratio(just, note) / ratio(equal, note)), reference.number(note, "ji5_minus_et"),
                    kPrinted);
        EXPECT_NEAR(ratio(pythagorean, note), ratioWritten(reference.text(note, "pyth_ratio")), 1e-15);
        EXPECT_NEAR(cents(ratio(pythagorean, note)), reference.number(note, "pyth_cents"), kPrinted);
        EXPECT_NEAR(cents(ratio(pythagorean, note) / ratio(equal, note)),
                    reference.number(note, "pyth_minus_et"), kPrinted);
        EXPECT_NEAR(cents(ratio(meantone, note)), reference.number(note, "qc_meantone_cents"), kPrinted);
        EXPECT_NEAR(cents(ratio(meantone, note) / ratio(equal, note)), reference.number(note, "qcm_minus_et"),
                    kPrinted);
        const auto place = [&](const Temperament& t) { return 650 * (1 - 1 / ratio(t, note)); };
        EXPECT_NEAR(place(equal), reference.number(note, "et_mm_650"), kPrintedMm);
        EXPECT_NEAR(place(just), reference.number(note, "ji5_mm_650"), kPrintedMm);
        EXPECT_NEAR(place(pythagorean), reference.number(note, "pyth_mm_650"), kPrintedMm);
        EXPECT_NEAR(place(meantone), reference.number(note, "qcm_mm_650"), kPrintedMm);
    }
}

TEST(Temperaments, PublishedCheckValues)
{
    // tests/data/reference/fret_check_values.csv, rows 1 and 5 to 8.
    const testing::ReferenceTable values("fret_check_values.csv");
    const auto expected = [&](const std::string& id) { return values.numbers(id, "expected"); };
    const Temperament& equal = known("equal-12");
    EXPECT_NEAR(1 / (1 - 1 / equal.ratios[0]), expected("1")[0], 5e-8);
    EXPECT_NEAR(1 / (1 - 1 / equal.ratios[0]), 17.817, 5e-4);

    const std::vector<double> pitches = expected("5");  // A4, E4, G3, D3, A2
    ASSERT_EQ(pitches.size(), 5U);
    const int below[] = {0, 5, 14, 19, 24};  // semitones under A4
    const Result<std::vector<FretNote>> notes = fretNotes(equal, 24);
    ASSERT_TRUE(notes);
    for (std::size_t i = 0; i < 5; ++i) {
        const double ratio = below[i] == 0 ? 1 : (*notes)[static_cast<std::size_t>(below[i] - 1)].ratio;
        EXPECT_NEAR(440 / ratio, pitches[i], 1e-4);
    }

    const std::vector<double> just = expected("6");
    ASSERT_EQ(just.size(), 3U);
    EXPECT_NEAR(cents(known("five-limit-just").ratios[2]) - 300, just[0], 1e-6);
    EXPECT_NEAR(cents(known("five-limit-just").ratios[3]) - 400, just[1], 1e-6);
    EXPECT_NEAR(cents(known("five-limit-just").ratios[6]) - 700, just[2], 1e-6);

    const std::vector<double> pythagorean = expected("7");
    ASSERT_EQ(pythagorean.size(), 2U);
    EXPECT_NEAR(cents(known("pythagorean").ratios[5]), pythagorean[0], 0.005);
    EXPECT_NEAR(cents(known("pythagorean").ratios[0]), pythagorean[1], 0.005);

    const std::vector<double> meantone = expected("8");
    ASSERT_EQ(meantone.size(), 2U);
    const double fifth = cents(known("quarter-comma-meantone").ratios[6]);
    EXPECT_NEAR(fifth, meantone[0], 5e-4);
    EXPECT_NEAR(7 * 1200 - 12 * fifth, meantone[1], 5e-4);
}

TEST(Temperaments, MeantoneIsAChainOfFifthsFromEFlatToGSharp)
{
    // Every fifth of the chain is 5^(1/4), every major third within it 5/4.
    const Temperament& meantone = known("quarter-comma-meantone");
    for (int fifths = -3; fifths <= 8; ++fifths) {
        const int note = ((7 * fifths) % 12 + 12) % 12;
        double ratio = std::pow(5, fifths / 4.0);
        while (ratio < 1)
            ratio *= 2;
        while (ratio >= 2)
            ratio /= 2;
        const double stands = note == 0 ? 1 : meantone.ratios[static_cast<std::size_t>(note - 1)];
        EXPECT_NEAR(cents(stands / ratio), 0, 1e-8) << note;
    }
}

TEST(Temperaments, EqualStepsAreEqualAndCloseTheOctaveExactly)
{
    for (int n = 1; n <= kMostDivisions; ++n) {
        const Result<Temperament> equal = equalTemperament(n);
        ASSERT_TRUE(equal);
        ASSERT_EQ(equal->ratios.size(), static_cast<std::size_t>(n));
        EXPECT_EQ(equal->ratios.back(), 2);
        double before = 1;
        for (double ratio : equal->ratios) {
            EXPECT_NEAR(cents(ratio / before), 1200.0 / n, 1e-9);
            before = ratio;
        }
        EXPECT_EQ(*findTemperament("equal-" + std::to_string(n)), *equal);
        // Over as many octaves as there are, each octave exactly twice the one before.
        const int count = std::min(6 * n, kMostFrets);
        const Result<std::vector<FretNote>> notes = fretNotes(*equal, count);
        ASSERT_TRUE(notes);
        for (std::size_t k = 0; k < notes->size(); ++k) {
            EXPECT_EQ((*notes)[k].label, std::to_string(k + 1));
            const std::size_t octave = static_cast<std::size_t>(n);
            if (k >= octave) EXPECT_EQ((*notes)[k].ratio, 2 * (*notes)[k - octave].ratio);
            EXPECT_NEAR(cents((*notes)[k].ratio), 1200.0 * static_cast<double>(k + 1) / n, 1e-8);
        }
        EXPECT_EQ(notes->back().ratio, 64);
    }
    for (int n : {0, -1, 73, std::numeric_limits<int>::max(), std::numeric_limits<int>::min()})
        EXPECT_EQ(equalTemperament(n).error().where, "equal temperament");
}

TEST(Temperaments, TableIsReadWholeAndHasSources)
{
    const Result<std::vector<Temperament>> read = readTemperaments(temperamentsTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(temperaments(), *read);
    EXPECT_EQ(temperaments().size(), 3U);
    for (const Temperament& temperament : temperaments()) {
        EXPECT_EQ(temperament.ratios.size(), 12U);
        EXPECT_EQ(temperament.ratios.back(), 2);
        EXPECT_TRUE(temperament.repeats);
        EXPECT_EQ(*findTemperament(temperament.id), temperament);
        const Result<std::vector<FretNote>> notes = fretNotes(temperament, 72);
        ASSERT_TRUE(notes);
        EXPECT_EQ(notes->back().ratio, 64);
        EXPECT_EQ((*notes)[23].ratio, 4);
    }
}

TEST(Temperaments, UnknownWordsAreMended)
{
    EXPECT_EQ(findTemperament("pythagoraen").error().mend, "write pythagorean");
    EXPECT_THAT(findTemperament("zzz").error().mend, HasSubstr("one of equal-12, five-limit-just"));
    EXPECT_FALSE(findTemperament(""));
    EXPECT_FALSE(findTemperament("equal-"));
    EXPECT_FALSE(findTemperament("equal-12x"));
    EXPECT_FALSE(findTemperament("equal--3"));
    EXPECT_FALSE(findTemperament("equal-99999999999999999999"));
    EXPECT_EQ(findTemperament("equal-73").error().where, "equal temperament");
    EXPECT_FALSE(findTemperament(std::string(1'000'000, 'x')));
}

TEST(FretPatterns, KeepTheFretsOfTheReference)
{
    // tests/data/reference/diatonic_patterns.csv: labels and semitones over two octaves, from 0, the nut.
    const testing::ReferenceTable reference("diatonic_patterns.csv");
    const std::map<std::string, std::string> ids{{"dulcimer_traditional", "dulcimer"},
                                                 {"dulcimer_6plus", "dulcimer-6plus"},
                                                 {"dulcimer_1plus_6plus", "dulcimer-1plus-6plus"},
                                                 {"major_only_stick", "major"},
                                                 {"chromatic", "chromatic"}};
    ASSERT_EQ(reference.rows(), ids.size());
    EXPECT_EQ(fretPatterns().size(), ids.size());
    for (std::size_t row = 0; row < reference.rows(); ++row) {
        const std::string id = ids.at(reference.text(row, "pattern"));
        SCOPED_TRACE(id);
        const FretPattern* pattern = findFretPattern(id);
        ASSERT_NE(pattern, nullptr);
        std::istringstream labels(reference.text(row, "labels"));
        std::istringstream semitones(reference.text(row, "semitones_kept"));
        std::vector<FretNote> expected;
        std::string label;
        int semitone = 0;
        while (labels >> label && semitones >> semitone)
            if (semitone > 0) expected.push_back({label, std::exp2(semitone / 12.0)});
        const Result<std::vector<FretNote>> notes =
            fretNotes(known("equal-12"), *pattern, static_cast<int>(expected.size()));
        ASSERT_TRUE(notes);
        ASSERT_EQ(notes->size(), expected.size());
        for (std::size_t k = 0; k < expected.size(); ++k) {
            EXPECT_EQ((*notes)[k].label, expected[k].label);
            EXPECT_NEAR((*notes)[k].ratio, expected[k].ratio, 1e-12);
        }
    }
}

TEST(FretPatterns, TakeTheNotesOfAnyTemperamentOfTwelve)
{
    const FretPattern& pattern = *findFretPattern("dulcimer-6plus");
    for (const Temperament& temperament : temperaments()) {
        const Result<std::vector<FretNote>> all = fretNotes(temperament, 72);
        const Result<std::vector<FretNote>> kept = fretNotes(temperament, pattern, 24);
        ASSERT_TRUE(all && kept);
        EXPECT_EQ((*kept)[6].label, "6+");
        EXPECT_EQ((*kept)[6].ratio, temperament.ratios[10]);
        EXPECT_EQ((*kept)[14].label, "13+");
        EXPECT_EQ((*kept)[23].label, "21");
        EXPECT_EQ((*kept)[23].ratio, 8);
        for (const FretNote& note : *kept)
            EXPECT_EQ(std::count_if(all->begin(), all->end(),
                                    [&](const FretNote& other) { return other.ratio == note.ratio; }),
                      1);
    }
    EXPECT_EQ(findFretPattern("zzz"), nullptr);
    const Result<std::vector<FretNote>> refused = fretNotes(known("equal-19"), pattern, 5);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().where, "dulcimer-6plus");
    // A fret for every note fits whatever the octave's division.
    EXPECT_EQ(*fretNotes(known("equal-19"), *findFretPattern("chromatic"), 40),
              *fretNotes(known("equal-19"), 40));
    EXPECT_FALSE(fretNotes(known("equal-12"), FretPattern{}, 5));
}

TEST(FretPatterns, HostileRowsAreNamed)
{
    const std::string head = "id,name,labels,notes,source\n";
    const auto whatOf = [&](const std::string& row) {
        const Result<std::vector<FretPattern>> read = readFretPatterns(head + row + "\n");
        return read ? std::string("read") : read.error().where + ": " + read.error().what;
    };
    EXPECT_EQ(whatOf("a,a,1 2,5 12,s"), "read");
    EXPECT_THAT(whatOf("a,a,1,5 12,s"), HasSubstr("line 2, column notes: there is not one label"));
    EXPECT_THAT(whatOf("a,a,1 2,5 11,s"), HasSubstr("the last note is not 12"));
    EXPECT_THAT(whatOf("a,a,1 2,12 12,s"), HasSubstr("do not rise"));
    EXPECT_THAT(whatOf("a,a,1 2,5 13,s"), HasSubstr("do not rise"));
    EXPECT_THAT(whatOf("a,a,1 2,x 12,s"), HasSubstr("do not rise"));
    EXPECT_THAT(whatOf("a,a,1 2,-5 12,s"), HasSubstr("do not rise"));
    EXPECT_THAT(whatOf("a,a,x 2,5 12,s"), HasSubstr("no label such as"));
    EXPECT_THAT(whatOf("a,a,++ 2,5 12,s"), HasSubstr("no label such as"));
    EXPECT_THAT(whatOf("a,a,2 2,5 12,s"), HasSubstr("does not come after"));
    EXPECT_THAT(whatOf("a,a,1+ 1,5 12,s"), HasSubstr("does not come after"));
    EXPECT_THAT(whatOf("a,a,1 2+,5 12,s"), HasSubstr("octave's label has a +"));
    EXPECT_THAT(whatOf("a,a,1 2,5 12,"), HasSubstr("column source"));
    const std::string twice = "a,a,1 2,5 12,s\na,a,1 2,5 12,s";
    EXPECT_THAT(whatOf(twice), HasSubstr("line 3, column id"));
}

TEST(Temperaments, HostileRowsAreNamed)
{
    const std::string head = "id,name,ratios,source\n";
    const auto whatOf = [&](const std::string& row) {
        const Result<std::vector<Temperament>> read = readTemperaments(head + row + "\n");
        return read ? std::string("read") : read.error().where + ": " + read.error().what;
    };
    EXPECT_EQ(whatOf("a,a,3/2 2/1,s"), "read");
    EXPECT_THAT(whatOf("a,a,3/2 3/1,s"), HasSubstr("line 2, column ratios: the last note is not the octave"));
    EXPECT_THAT(whatOf("a,a,3/2 4/3 2/1,s"), HasSubstr("column ratios: notes, entry 2"));
    EXPECT_THAT(whatOf("a,a,,s"), HasSubstr("column ratios"));
    EXPECT_THAT(whatOf("a,a,2/1,"), HasSubstr("column source"));
    EXPECT_THAT(whatOf("A,a,2/1,s"), HasSubstr("column id"));
}

TEST(FretNotes, BadCountsAndTemperamentsAreRefused)
{
    EXPECT_TRUE(fretNotes(known("equal-12"), 0)->empty());
    EXPECT_EQ(fretNotes(known("equal-12"), 72)->size(), 72U);
    EXPECT_THAT(fretNotes(known("equal-12"), 73).error().mend, HasSubstr("at most 72 frets"));
    EXPECT_EQ(fretNotes(known("equal-12"), -1).error().where, "frets");
    EXPECT_EQ(fretNotes(known("equal-12"), kMostFrets + 1).error().where, "frets");
    EXPECT_EQ(fretNotes(known("equal-72"), kMostFrets)->back().ratio, 64);
    EXPECT_FALSE(fretNotes(known("equal-1"), 7));
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (const std::vector<double>& bad : std::vector<std::vector<double>>{
             {}, {1}, {0.5, 2}, {1.5, 1.5}, {1.5, 1.25}, {nan}, {1.5, nan}, {inf}, {-2}}) {
        Temperament broken;
        broken.id = "broken";
        broken.ratios = bad;
        EXPECT_EQ(fretNotes(broken, 1).error().where, "broken");
    }
}

}  // namespace
}  // namespace lidwright
