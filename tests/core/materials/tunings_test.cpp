#include "core/materials/tunings.h"

#include "core/base/units.h"
#include "core/materials/material_tables.h"
#include "core/materials/string_kind.h"

#include <gtest/gtest.h>

#include <cctype>
#include <set>

namespace lidwright {
namespace {

TEST(Tunings, EveryRowIsWholeAndHasItsSources)
{
    const Result<std::vector<Tuning>> read = readTunings(tuningsTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(tunings(), *read);
    EXPECT_EQ(tunings().size(), 14U);
    std::set<std::string> names;
    for (const Tuning& tuning : tunings()) {
        SCOPED_TRACE(tuning.id);
        EXPECT_EQ(findTuning(tuning.id), &tuning);
        EXPECT_TRUE(names.insert(tuning.name).second);
        EXPECT_GE(tuning.strings.size(), 3U);
        const bool sourced = tuning.source.find("read") != std::string::npos ||
                             tuning.source.find("common practice, no source") != std::string::npos;
        EXPECT_TRUE(sourced) << tuning.source;
        EXPECT_EQ(tuning.gauged(), !tuning.gaugeSource.empty());
        std::string letters;  // the id spells the pitches
        for (const TunedString& string : tuning.strings) {
            EXPECT_EQ(string.gauge_in.has_value(), tuning.gauged());
            EXPECT_EQ(string.kind.empty(), !tuning.gauged());
            letters += static_cast<char>(std::tolower(formatPitch(string.pitch)[0]));
        }
        EXPECT_EQ(tuning.id.substr(0, letters.size()), letters);
        for (std::size_t i = 1; i < tuning.strings.size(); ++i)
            EXPECT_GT(tuning.strings[i].pitch.semitone, tuning.strings[i - 1].pitch.semitone);
    }
    EXPECT_EQ(findTuning("none"), nullptr);
}

TEST(Tunings, IntervalsAreWhatTheirNamesSay)
{
    const auto above = [](const char* id) {
        std::vector<int> semitones;
        for (const TunedString& string : findTuning(id)->strings)
            semitones.push_back(string.pitch.semitone - findTuning(id)->strings[0].pitch.semitone);
        return semitones;
    };
    for (const char* open : {"gdg", "dad", "aea", "ebe"})  // root, fifth, octave
        EXPECT_EQ(above(open), (std::vector<int>{0, 7, 12})) << open;
    EXPECT_EQ(above("gbd"), (std::vector<int>{0, 4, 7}));  // major triad
    EXPECT_EQ(above("gdgb"), (std::vector<int>{0, 7, 12, 16}));
    EXPECT_EQ(above("gdgd"), (std::vector<int>{0, 7, 12, 19}));
    EXPECT_EQ(above("dadf-sharp"), (std::vector<int>{0, 7, 12, 16}));
    EXPECT_EQ(above("eadg"), (std::vector<int>{0, 5, 10, 15}));  // fourths
    EXPECT_EQ(above("dgbe"), (std::vector<int>{0, 5, 9, 14}));
    EXPECT_EQ(above("eadgbe-nylon"), (std::vector<int>{0, 5, 10, 15, 19, 24}));
}

TEST(Tunings, GaugesPullAsTheirSourcesPrint)
{
    // R. Turner (December 2000), 25.5 in: G2 130.33, D3 154.35, G3 145.90, B3 103.64, D4 112.10 N; bouzouki
    // sheet, 26 in: D3 123.96 (metal not stated), A3 96.99, D4 60.11 N.
    const auto tension = [](const char* id, std::size_t i, double scale_in) {
        const TunedString& string = findTuning(id)->strings.at(i);
        const StringBody body =
            *stringBody(*findStringKind(string.kind), *string.gauge_in * kMillimetresPerInch);
        const double speed = 2 * scale_in * 0.0254 * *pitchFrequency_Hz(string.pitch);
        return body.mass_kg_m * speed * speed;
    };
    const double printed[] = {130.33, 154.35, 145.90, 103.64};
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(tension("gdgb", i, 25.5) / printed[i], 1, 0.025);
    EXPECT_NEAR(tension("gdgd", 3, 25.5) / 112.10, 1, 0.005);
    const double bouzouki[] = {123.96, 96.99, 60.11};
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(tension("dad", i, 26) / bouzouki[i], 1, 0.025);
}

TEST(Tunings, HostileRowsAreNamed)
{
    const std::string head = "id,name,pitches,gauges_in,kinds,source,gauge_source\n";
    const std::string good = "gd,G D,G2 D3,0.042 0.012,phosphor-bronze plain-steel,read,read\n";
    const Result<std::vector<Tuning>> read = readTunings(head + good + "e,E,E4,none,none,s,none\n");
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_TRUE(read->front().gauged());
    EXPECT_FALSE(read->back().gauged());
    const auto columnOf = [&](const std::string& row) {
        const auto made = readTunings(head + row + "\n");
        const std::string line = "tunings.csv, line 2, column ";
        return made ? std::string("read") : made.error().where.substr(line.size());
    };
    EXPECT_EQ(columnOf("G,G,G2,none,none,s,none"), "id");
    EXPECT_EQ(columnOf("g,G,H2,none,none,s,none"), "pitches");
    EXPECT_EQ(columnOf("g,G,G2+5c,none,none,s,none"), "pitches");
    EXPECT_EQ(columnOf("g,G,none,none,none,s,none"), "pitches");
    EXPECT_EQ(columnOf("g,G,G2 G2 G2 G2 G2 G2 G2 G2 G2 G2 G2 G2 G2,none,none,s,none"), "pitches");
    EXPECT_EQ(columnOf("g,G,G2 D3,0.042,plain-steel,s,s"), "gauges_in");
    EXPECT_EQ(columnOf("g,G,G2,thin,plain-steel,s,s"), "gauges_in");
    EXPECT_EQ(columnOf("g,G,G2,nan,plain-steel,s,s"), "gauges_in");
    EXPECT_EQ(columnOf("g,G,G2,1,plain-steel,s,s"), "gauges_in");
    EXPECT_EQ(columnOf("g,G,G2,0.012,gut,s,s"), "kinds");
    EXPECT_EQ(columnOf("g,G,G2,0.012,none,s,s"), "kinds");
    EXPECT_EQ(columnOf("g,G,G2,none,plain-steel,s,none"), "kinds");
    EXPECT_EQ(columnOf("g,G,G2,0.012,plain-steel,s,none"), "gauge_source");
    EXPECT_EQ(columnOf("g,G,G2,none,none,s,s"), "gauge_source");
    EXPECT_EQ(columnOf("g,G,G2,none,none,,none"), "source");
    EXPECT_EQ(readTunings(head + good + good).error().where, "tunings.csv, line 3, column id");
}

}  // namespace
}  // namespace lidwright
