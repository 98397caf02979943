#include "core/solvers/string_tension.h"

#include "tests/support/reference_table.h"

#include "core/base/pitch.h"
#include "core/base/units.h"
#include "core/materials/music_wire.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

constexpr double kNewtonsPerPound = 4.4482216152605;  // exact: 0.45359237 kg x 9.80665 m/s2
/// Makers' tables divide by 386.4 in/s2 (a string maker's technical reference, read), where standard gravity
/// is 9.80665 m/s2 = 386.089: their pounds are lower by 0.08 %.
constexpr double kMakersGravity = 9.80665 / 0.0254 / 386.4;
constexpr double kGuitarScale = 25.5 * kMillimetresPerInch;

double hertz(std::string_view pitch)
{
    return *pitchFrequency_Hz(*parsePitch(pitch));
}

StringBody body(std::string_view id, double gauge_in, std::optional<double> core_in = {})
{
    const Result<StringBody> made =
        stringBody(*findStringKind(id), gauge_in * kMillimetresPerInch,
                   core_in ? std::optional(*core_in * kMillimetresPerInch) : std::nullopt);
    EXPECT_TRUE(made) << made.error().text();
    return made ? *made : StringBody{};
}

StringLoad load(const StringBody& string, double length, std::string_view pitch)
{
    const Result<StringLoad> made = stringLoad(string, length, hertz(pitch));
    EXPECT_TRUE(made) << made.error().text();
    return made ? *made : StringLoad{};
}

TEST(StringTension, PublishedCheckValues)
{
    // tests/data/reference/string_check_values.csv, rows 9 to 13, with what their sources print.
    const testing::ReferenceTable values("string_check_values.csv");
    const auto expected = [&](const char* row) { return values.numbers(row, "expected").at(0); };
    const double wire = 7850 * kPi / 4 * 0.925e-3 * 0.925e-3;
    const double piano = *stringTension_N(wire, 181, 1046.502) / kNewtonsPerPound;
    EXPECT_NEAR(piano, expected("9"), 0.005);
    EXPECT_NEAR(piano, 170.2, 0.05);
    const auto nylon = [](double weight_lb_in, std::string_view pitch) {
        const double mass = weight_lb_in * kKilogramsPerMetreInPoundPerInch;
        return *stringTension_N(mass, kGuitarScale, hertz(pitch)) / kNewtonsPerPound * kMakersGravity;
    };
    EXPECT_NEAR(nylon(2.092e-5, "E4"), expected("10"), 0.005);
    EXPECT_NEAR(nylon(3.063e-4, "E2"), expected("11"), 0.005);
    const auto steel = [](double gauge_in, std::string_view pitch) {
        return load(body("plain-steel", gauge_in), kGuitarScale, pitch).tension_N / kNewtonsPerPound;
    };
    EXPECT_NEAR(steel(0.014, "D4"), expected("12"), 0.01);
    EXPECT_NEAR(steel(0.014, "D4"), 25.2, 0.05);
    EXPECT_NEAR(steel(0.016, "B3"), expected("13"), 0.01);
    EXPECT_NEAR(steel(0.016, "B3"), 23.3, 0.05);
}

TEST(StringTension, TwentyFourNylonStringsAsPrinted)
{
    const testing::ReferenceTable rows("classical_unit_weights.csv");
    ASSERT_EQ(rows.rows(), 24U);
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "item"));
        const std::string note = rows.text(row, "note");
        const bool plain = note == "E4" || note == "B3" || note == "G3";
        const StringLoad pulled =
            load(body(plain ? "nylon-plain" : "nylon-wound", rows.number(row, "dia_in")), kGuitarScale, note);
        const double pounds = pulled.tension_N / kNewtonsPerPound * kMakersGravity;
        EXPECT_NEAR(pounds, rows.number(row, "published_T_lb_25.5in"), 0.0125);
        EXPECT_NEAR(pounds, rows.number(row, "computed_T_lb"), 0.00051);
        EXPECT_NEAR(pulled.tension_N * kMakersGravity, rows.number(row, "T_N"), 0.0051);
        EXPECT_EQ(pulled.verdict, plain ? LoadVerdict::Fits : LoadVerdict::Unknown);
        EXPECT_EQ(pulled.share.has_value(), plain);
    }
}

TEST(StringTension, PrintedSteelTensionsLieWithinTheStatedErrors)
{
    const testing::ReferenceTable rows("steel_wound_published_tensions.csv");
    const std::map<std::string, std::string> ids = {
        {"plain", "plain-steel"}, {"PB", "phosphor-bronze"}, {"NPS", "nickel-plated"}};
    int compared = 0;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const auto id = ids.find(rows.text(row, "type"));
        if (id == ids.end()) continue;  // the metal is not stated
        SCOPED_TRACE(rows.text(row, "label") + " " + rows.text(row, "gauge_in"));
        const StringBody string = body(id->second, rows.number(row, "gauge_in"));
        const double error_pct =
            100 * (load(string, rows.number(row, "scale_mm"), rows.text(row, "note")).tension_N /
                       rows.number(row, "published_T_N") -
                   1);
        EXPECT_GE(error_pct, string.error.low_pct);
        EXPECT_LE(error_pct, string.error.high_pct);
        ++compared;
    }
    EXPECT_EQ(compared, 13);
}

TEST(StringTension, SteelAsComputedElsewhere)
{
    // tests/data/reference/steel_box_guitar_model_output.csv: there phosphor bronze has 7220 kg/m3
    // throughout.
    const testing::ReferenceTable rows("steel_box_guitar_model_output.csv");
    ASSERT_GE(rows.rows(), 14U);
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "set") + " " + rows.text(row, "note"));
        const double scale = rows.text(row, "set").find("25.5in") != std::string::npos
                                 ? kGuitarScale
                                 : 25 * kMillimetresPerInch;
        const std::string type = rows.text(row, "type");
        StringBody string = body(type == "plain" ? "plain-steel"
                                 : type == "PB"  ? "phosphor-bronze"
                                                 : "nickel-plated",
                                 rows.number(row, "gauge_in"), rows.number(row, "core_in"));
        string.mass_kg_m = rows.number(row, "mu_g_m") * 1e-3;
        const StringLoad pulled = load(string, scale, rows.text(row, "note"));
        EXPECT_NEAR(pulled.tension_N / rows.number(row, "T_N"), 1, 2e-4);
        EXPECT_NEAR(100 * *pulled.share, rows.number(row, "T_%_of_core_break"), 0.06);
        EXPECT_NEAR(pulled.stretchFactor, rows.number(row, "kappa"), 0.06);
        EXPECT_NEAR(pulled.stiffness, rows.number(row, "B0_eps"), 6e-7);
        EXPECT_NEAR(pulled.inharmonicity / rows.number(row, "B_fletcher"), 1, 2e-4);
    }
}

TEST(StringTension, InharmonicityAgreesWithYoung)
{
    // R. W. Young (1952): the n-th partial of a plain string lies K n^2 d^2 / (f0^2 l^4) cents high, K
    // = 3.4e13 (cm, Hz), where E / rho = 25.5e10 cm2/s2: string_check_values.csv, row 18.
    const double computed =
        testing::ReferenceTable("string_check_values.csv").numbers("18", "expected").at(0);
    const double density = 7806, modulus_MPa = 25.5e6 * density * 1e-6;
    for (double diameter : {0.25, 0.4, 0.9})
        for (double length : {300.0, 650.0})
            for (double f : {110.0, 440.0}) {
                const double mass = density * kPi / 4 * diameter * diameter * 1e-6;
                const double b =
                    *inharmonicity(modulus_MPa, diameter, *stringTension_N(mass, length, f), length);
                const double k =
                    600 / std::log(2.0) * b * f * f * std::pow(length / 10, 4) / std::pow(diameter / 10, 2);
                EXPECT_NEAR(k / computed, 1, 2e-4);
                EXPECT_NEAR(k / 3.4e13, 1, 0.01);
            }
}

TEST(StringTension, StretchFactorIsThePapersOwn)
{
    // string_check_values.csv, row 30: r 0.368 mm, T 70.0 N, E 7.56 GPa; printed 46.0 (string C-4).
    StringBody string;
    string.gauge = string.coreDiameter = 2 * 0.368;
    string.modulus_MPa = 7560;
    string.mass_kg_m = 2e-3;
    const double f = *tunedFrequency_Hz(string.mass_kg_m, 650, 70.0);
    const StringLoad pulled = *stringLoad(string, 650, f);
    EXPECT_NEAR(pulled.stretchFactor,
                testing::ReferenceTable("string_check_values.csv").numbers("30", "expected").at(0), 0.005);
    EXPECT_NEAR(pulled.stretchFactor / 46.0, 1, 0.0035);
    EXPECT_NEAR(pulled.stiffness, 0.00192, 6e-6);  // printed beside it
    EXPECT_NEAR(pulled.inharmonicity, *inharmonicity(7560, 2 * 0.368, 70, 650), 1e-15);
    EXPECT_EQ(pulled.verdict, LoadVerdict::Unknown);
}

TEST(StringTension, HighestPitchOfPlainWire)
{
    // The last column of tests/data/reference/plain_steel_strings.csv, 25 in; sqrt(strength / density) / (2
    // L).
    const testing::ReferenceTable rows("plain_steel_strings.csv");
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const StringBody string = body("plain-steel", rows.number(row, "gauge_in"));
        const double highest = *highestFrequency_Hz(string, 635, 1);
        EXPECT_NEAR(highest, rows.number(row, "breaking_pitch_Hz_at_25in"), 0.006);
        const double strength_Pa = musicWireStrength(string.gauge)->least_MPa * 1e6;
        EXPECT_NEAR(highest, std::sqrt(strength_Pa / 7806) / (2 * 0.635), 1e-9);
        // Tuned to a share of its load it bears just that.
        for (double share : {kWarnLoadShare, kRefuseLoadShare}) {
            const StringLoad pulled = *stringLoad(string, 635, *highestFrequency_Hz(string, 635, share));
            EXPECT_NEAR(*pulled.share, share, 1e-12);
        }
    }
}

TEST(StringTension, VerdictsTurnAtTheirLimits)
{
    const StringBody string = body("plain-steel", 0.010);
    const auto at = [&](double tension_N) {
        return stringLoad(string, 635, *tunedFrequency_Hz(string.mass_kg_m, 635, tension_N))->verdict;
    };
    const double breaks = *string.breakingLoad_N;
    EXPECT_EQ(at(string.slack_N * 0.999), LoadVerdict::Slack);
    EXPECT_EQ(at(string.slack_N * 1.001), LoadVerdict::Fits);
    EXPECT_EQ(at(breaks * 0.6499), LoadVerdict::Fits);
    EXPECT_EQ(at(breaks * 0.6501), LoadVerdict::High);
    EXPECT_EQ(at(breaks * 0.7499), LoadVerdict::High);
    EXPECT_EQ(at(breaks * 0.7501), LoadVerdict::TooHigh);
    EXPECT_EQ(at(breaks * 2), LoadVerdict::TooHigh);
    StringBody unknown = body("nylon-wound", 0.030);
    EXPECT_EQ(stringLoad(unknown, 650, 40)->verdict, LoadVerdict::Slack);
    EXPECT_EQ(stringLoad(unknown, 650, 146)->verdict, LoadVerdict::Unknown);
}

TEST(StringTension, RisesWithGaugeLengthAndPitch)
{
    for (const StringKind& kind : stringKinds()) {
        double before = 0;
        for (int step = 0; step <= 50; ++step) {
            const double gauge_in = kind.thinnest_in + step * (kind.thickest_in - kind.thinnest_in) / 50;
            const double now = load(body(kind.id, gauge_in), 635, "G3").tension_N;
            EXPECT_GT(now, before) << kind.id;
            before = now;
        }
        const StringBody string = body(kind.id, kind.thickest_in);
        EXPECT_NEAR(load(string, 635, "G4").tension_N / load(string, 635, "G3").tension_N, 4, 1e-9);
        EXPECT_NEAR(load(string, 700, "G3").tension_N / load(string, 350, "G3").tension_N, 4, 1e-9);
        // A stiff short string is more inharmonic, a tight one less.
        EXPECT_GT(load(string, 350, "G3").inharmonicity, load(string, 700, "G3").inharmonicity);
        const double tension = load(string, 635, "G3").tension_N;
        EXPECT_NEAR(*tunedFrequency_Hz(string.mass_kg_m, 635, tension), hertz("G3"), 1e-9);
    }
}

TEST(StringTension, GaugeForATensionHasIt)
{
    for (const StringKind& kind : stringKinds())
        for (double length : {400.0, 635.0, 700.0})
            for (std::string_view pitch : {"D3", "G3", "E4"})
                for (double tension : {30.0, 55.0, 80.0, 110.0}) {
                    SCOPED_TRACE(kind.id + " " + std::string(pitch));
                    const double f = hertz(pitch);
                    const Result<GaugeChoice> choice = gaugeForTension(kind, length, f, tension);
                    if (!choice) {
                        const double least = load(body(kind.id, kind.thinnest_in), length, pitch).tension_N;
                        const double most = load(body(kind.id, kind.thickest_in), length, pitch).tension_N;
                        EXPECT_TRUE(tension < least || tension > most);
                        EXPECT_EQ(choice.error().where, "gauge");
                        EXPECT_THAT(choice.error().mend, HasSubstr(" N"));
                        continue;
                    }
                    const double got =
                        load(body(kind.id, choice->gauge / kMillimetresPerInch), length, pitch).tension_N;
                    EXPECT_NEAR(got / tension, 1, 1e-6);
                    const double thousandths = choice->ordinaryGauge / kMillimetresPerInch * 1000;
                    EXPECT_NEAR(thousandths, std::round(thousandths), 1e-9);
                    EXPECT_LE(std::abs(choice->ordinaryGauge - choice->gauge), 0.0005 * 25.4 + 2e-9);
                    EXPECT_NEAR(choice->ordinaryTension_N,
                                load(body(kind.id, thousandths / 1000), length, pitch).tension_N, 1e-9);
                }
    // 0.014 in at D4 on 25.5 in pulls 25.22 lb (R. Turner, Acoustic Guitar, December 2000, prints 25.2).
    const Result<GaugeChoice> known =
        gaugeForTension(*findStringKind("plain-steel"), kGuitarScale, hertz("D4"), 25.2 * kNewtonsPerPound);
    ASSERT_TRUE(known);
    EXPECT_NEAR(known->ordinaryGauge, 0.014 * kMillimetresPerInch, 1e-9);
    // A range without a whole thousandth in it keeps the exact end's side and answers all the same.
    StringKind narrow = *findStringKind("plain-steel");
    narrow.thinnest_in = 0.0139;
    narrow.thickest_in = 0.0141;
    EXPECT_TRUE(gaugeForTension(narrow, kGuitarScale, hertz("D4"), 112));
}

TEST(StringTension, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const StringBody good = body("plain-steel", 0.01);
    const StringKind& kind = *findStringKind("plain-steel");
    for (double bad : {0.0, -1.0, nan, inf, 1e300, 1e-300}) {
        EXPECT_EQ(stringTension_N(bad, 650, 440).error().where, "string mass");
        EXPECT_EQ(stringTension_N(1e-3, bad, 440).error().where, "string length");
        EXPECT_EQ(stringTension_N(1e-3, 650, bad).error().where, "string frequency");
        EXPECT_EQ(tunedFrequency_Hz(bad, 650, 100).error().where, "string mass");
        EXPECT_EQ(tunedFrequency_Hz(1e-3, bad, 100).error().where, "string length");
        EXPECT_EQ(tunedFrequency_Hz(1e-3, 650, bad).error().where, "string tension");
        EXPECT_EQ(inharmonicity(bad, 0.25, 100, 650).error().where, "string modulus");
        EXPECT_EQ(inharmonicity(2e5, bad, 100, 650).error().where, "string core diameter");
        EXPECT_EQ(inharmonicity(2e5, 0.25, bad, 650).error().where, "string tension");
        EXPECT_EQ(inharmonicity(2e5, 0.25, 100, bad).error().where, "string length");
        EXPECT_EQ(stringLoad(good, bad, 440).error().where, "string length");
        EXPECT_EQ(stringLoad(good, 650, bad).error().where, "string frequency");
        EXPECT_EQ(highestFrequency_Hz(good, bad).error().where, "string length");
        EXPECT_EQ(gaugeForTension(kind, bad, 440, 70).error().where, "string length");
        EXPECT_EQ(gaugeForTension(kind, 650, bad, 70).error().where, "string frequency");
        EXPECT_EQ(gaugeForTension(kind, 650, 330, bad).error().where, "string tension");
        StringBody broken = good;
        broken.coreDiameter = bad;
        EXPECT_EQ(stringLoad(broken, 650, 440).error().where, "string core diameter");
        broken = good;
        broken.modulus_MPa = bad;
        EXPECT_EQ(stringLoad(broken, 650, 440).error().where, "string stretch factor");
        broken = good;
        broken.breakingLoad_N = bad;
        EXPECT_EQ(stringLoad(broken, 650, 440).error().where, "string breaking load");
    }
    StringBody bare = good;
    bare.modulus_MPa.reset();
    EXPECT_EQ(stringLoad(bare, 650, 440).error().where, "string stretch factor");
    bare.breakingLoad_N.reset();
    EXPECT_EQ(highestFrequency_Hz(bare, 650).error().where, "string breaking load");
    for (double bad : {0.0, -0.1, 1.01, nan})
        EXPECT_EQ(highestFrequency_Hz(good, 650, bad).error().where, "share");
    // A kind that no reader checked cannot make the search run on.
    StringKind endless = *findStringKind("nylon-plain");
    endless.thickest_in = 1e4;
    EXPECT_NEAR(gaugeForTension(endless, 650, 330, 70)->gauge, 0.71, 0.02);
    endless.thickest_in = 1e30;
    EXPECT_FALSE(gaugeForTension(endless, 650, 330, 70));
}

}  // namespace
}  // namespace lidwright
