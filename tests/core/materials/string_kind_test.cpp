#include "core/materials/string_kind.h"

#include "tests/support/reference_table.h"

#include "core/materials/material_tables.h"
#include "core/materials/music_wire.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

const StringKind& kind(std::string_view id)
{
    const StringKind* found = findStringKind(id);
    EXPECT_NE(found, nullptr) << id;
    static const StringKind none;
    return found ? *found : none;
}

StringBody body(std::string_view id, double gauge_in, std::optional<double> core_in = {})
{
    const Result<StringBody> made =
        stringBody(kind(id), gauge_in * kMillimetresPerInch,
                   core_in ? std::optional(*core_in * kMillimetresPerInch) : std::nullopt);
    EXPECT_TRUE(made) << id << " " << gauge_in << ": " << made.error().text();
    return made ? *made : StringBody{};
}

double density_kg_m3(const StringBody& string)
{
    return string.mass_kg_m / (kPi / 4 * string.gauge * string.gauge * 1e-6);
}

TEST(StringKinds, EveryKindIsWholeAndStable)
{
    const Result<std::vector<StringKind>> read =
        readStringKinds(stringKindsTable(), stringUnitWeightsTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(stringKinds(), *read);
    const char* ids[] = {"plain-steel", "phosphor-bronze", "nickel-plated", "nylon-plain", "nylon-wound"};
    ASSERT_EQ(stringKinds().size(), std::size(ids));
    for (std::size_t i = 0; i < std::size(ids); ++i)
        EXPECT_EQ(stringKinds()[i].id, ids[i]);
    EXPECT_EQ(findStringKind("gut"), nullptr);
    EXPECT_TRUE(kind("phosphor-bronze").wound());
    EXPECT_TRUE(kind("phosphor-bronze").wire());
    EXPECT_FALSE(kind("nylon-wound").wire());
    EXPECT_FALSE(kind("nylon-plain").wound());
    // C51000, a mill's data sheet: string_check_values.csv, row 34.
    EXPECT_EQ(kind("phosphor-bronze").wrapDensity_kg_m3,
              testing::ReferenceTable("string_check_values.csv").numbers("34", "expected").at(0));
    EXPECT_EQ(kind("plain-steel").coreDensity_kg_m3, kMusicWireDensity_kg_m3);
}

TEST(StringKinds, PlainSteelAsComputedElsewhere)
{
    const testing::ReferenceTable rows("plain_steel_strings.csv");
    ASSERT_EQ(rows.rows(), 25U);
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "gauge_in"));
        const StringBody string = body("plain-steel", rows.number(row, "gauge_in"));
        EXPECT_NEAR(string.mass_kg_m * 1e3, rows.number(row, "mu_g_per_m"), 6e-6);
        EXPECT_NEAR(
            string.mass_kg_m / kKilogramsPerMetreInPoundPerInch / rows.number(row, "unit_weight_lb_per_in"),
            1, 3e-5);
        EXPECT_NEAR(*string.breakingLoad_N, rows.number(row, "min_break_N"), 6e-3);
        EXPECT_NEAR(*string.modulus_MPa / 1e3, rows.number(row, "E_GPa"), 1e-9);
        EXPECT_EQ(string.coreDiameter, string.gauge);
        EXPECT_FALSE(string.coreAssumed);
    }
}

TEST(StringKinds, PrintedTensionsLieWithinTheStatedErrors)
{
    // At one pitch and length tensions are as the masses. The two wound strings whose metal is not printed
    // are left out.
    const testing::ReferenceTable rows("steel_wound_published_tensions.csv");
    ASSERT_EQ(rows.rows(), 15U);
    const auto idOf = [](const std::string& type) -> std::string {
        if (type == "plain") return "plain-steel";
        if (type == "PB") return "phosphor-bronze";
        return type == "NPS" ? "nickel-plated" : "";
    };
    std::map<std::string, std::vector<double>> errors_pct;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const std::string id = idOf(rows.text(row, "type"));
        if (id.empty()) continue;
        const StringBody string = body(id, rows.number(row, "gauge_in"));
        errors_pct[id].push_back(100 * (string.mass_kg_m * 1e3 / rows.number(row, "mu_g_per_m") - 1));
        EXPECT_EQ(string.error, kind(id).error);
        EXPECT_EQ(string.coreAssumed, id != "plain-steel");
    }
    EXPECT_EQ(errors_pct["plain-steel"].size(), 7U);
    EXPECT_EQ(errors_pct["phosphor-bronze"].size(), 3U);
    EXPECT_EQ(errors_pct["nickel-plated"].size(), 3U);
    for (const auto& [id, all] : errors_pct) {
        SCOPED_TRACE(id);
        const auto [low, high] = std::minmax_element(all.begin(), all.end());
        const ErrorRange& stated = kind(id).error;
        EXPECT_GE(*low, stated.low_pct);
        EXPECT_LE(*high, stated.high_pct);
        // Nor are they much wider than what was found.
        EXPECT_LE(*low, stated.low_pct + 0.6);
        EXPECT_GE(*high, stated.high_pct - 0.6);
    }
}

TEST(StringKinds, PrintedUnitWeightsOfNylonComeBack)
{
    const testing::ReferenceTable rows("classical_unit_weights.csv");
    ASSERT_EQ(rows.rows(), 24U);
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "item"));
        const std::string note = rows.text(row, "note");
        const bool plain = note == "E4" || note == "B3" || note == "G3";
        const StringBody string = body(plain ? "nylon-plain" : "nylon-wound", rows.number(row, "dia_in"));
        EXPECT_NEAR(string.mass_kg_m * 1e3, rows.number(row, "mu_g_per_m"), 6e-6);
        EXPECT_EQ(string.breakingLoad_N.has_value(), plain);
        EXPECT_TRUE(string.stretchFactor);
        EXPECT_FALSE(string.modulus_MPa);
    }
}

TEST(StringKinds, NylonBetweenItsNeighboursLiesWithinTheStatedError)
{
    for (const char* id : {"nylon-plain", "nylon-wound"}) {
        double low = 0, high = 0;
        for (std::size_t left = 1; left + 1 < kind(id).unitWeights.size(); ++left) {
            StringKind without = kind(id);
            without.unitWeights.erase(without.unitWeights.begin() + static_cast<std::ptrdiff_t>(left));
            const UnitWeight& asked = kind(id).unitWeights[left];
            const Result<StringBody> string = stringBody(without, asked.gauge_in * kMillimetresPerInch);
            ASSERT_TRUE(string);
            const double error_pct =
                100 * (string->mass_kg_m / kKilogramsPerMetreInPoundPerInch / asked.weight_lb_in - 1);
            low = std::min(low, error_pct);
            high = std::max(high, error_pct);
        }
        EXPECT_GE(low, kind(id).error.low_pct) << id;
        EXPECT_LE(high, kind(id).error.high_pct) << id;
        EXPECT_GE(high, kind(id).error.high_pct - 1.1) << id;
    }
    // Beyond them the density of the nearest goes on, and the printed densities spread less than stated.
    const ErrorRange beyond = *kind("nylon-plain").errorBeyond;
    EXPECT_EQ(body("nylon-plain", 0.022).error, beyond);
    EXPECT_EQ(body("nylon-plain", 0.044).error, beyond);
    EXPECT_EQ(body("nylon-plain", 0.03).error, kind("nylon-plain").error);
    const double thin = density_kg_m3(body("nylon-plain", 0.022));
    EXPECT_NEAR(thin, density_kg_m3(body("nylon-plain", 0.0275)), 1e-9);
    for (const UnitWeight& weight : kind("nylon-plain").unitWeights) {
        const double density = density_kg_m3(body("nylon-plain", weight.gauge_in));
        EXPECT_NEAR(density / thin, 1, beyond.high_pct / 100);
    }
}

TEST(StringKinds, StretchFactorOfNylonIsAsPrinted)
{
    // tests/data/reference/setbacks_reproduction.csv: sets B, C, D and D2, of one revision.
    const testing::ReferenceTable rows("setbacks_reproduction.csv");
    std::map<std::string, std::vector<double>> factors;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const std::string string = rows.text(row, "string");
        if (rows.text(row, "variant") != "closed+geom" || string == "B-2") continue;
        factors[string.back() <= '3' ? "nylon-plain" : "nylon-wound"].push_back(rows.number(row, "kappa"));
    }
    EXPECT_EQ(factors["nylon-plain"].size() + factors["nylon-wound"].size(), 23U);
    for (const auto& [id, all] : factors) {
        double sum = 0;
        for (double factor : all) {
            sum += factor;
            EXPECT_GE(factor, 45);
            EXPECT_LE(factor, 61);
        }
        EXPECT_NEAR(*kind(id).stretchFactor, sum / static_cast<double>(all.size()), 1.5) << id;
    }
}

TEST(StringKinds, WoundWireByItsGeometry)
{
    // 0.042 in of phosphor bronze around 0.016 in, by hand: core 0.1297 mm2, ring 0.7642 mm2; 1.0126 +
    // 0.7854 x 8.86 x 0.7642 = 6.330 g/m.
    const StringBody string = body("phosphor-bronze", 0.042, 0.016);
    EXPECT_NEAR(string.mass_kg_m * 1e3, 6.330, 1e-3);
    EXPECT_FALSE(string.coreAssumed);
    EXPECT_NEAR(string.coreDiameter, 0.4064, 1e-12);
    EXPECT_NEAR(*string.breakingLoad_N, *body("plain-steel", 0.016).breakingLoad_N, 1e-9);
    // The effective density lies between the wrap's share of its ring and solid steel and bronze.
    for (const char* id : {"phosphor-bronze", "nickel-plated"})
        for (double gauge = 0.016; gauge <= 0.070; gauge += 0.001) {
            const double density = density_kg_m3(body(id, gauge));
            EXPECT_GT(density, kPi / 4 * kind(id).wrapDensity_kg_m3) << gauge;
            EXPECT_LT(density, kind(id).coreDensity_kg_m3) << gauge;
        }
    // What the header says: a core 0.002 in thinner or thicker changes a string by up to 3 %.
    for (double gauge : {0.022, 0.032, 0.042, 0.056}) {
        const double usual = usualCore(gauge * kMillimetresPerInch) / kMillimetresPerInch;
        const double mass = body("phosphor-bronze", gauge).mass_kg_m;
        EXPECT_NEAR(body("phosphor-bronze", gauge, usual - 0.002).mass_kg_m / mass, 1, 0.03);
        EXPECT_NEAR(body("phosphor-bronze", gauge, usual + 0.002).mass_kg_m / mass, 1, 0.03);
    }
    EXPECT_NEAR(usualCore(0.025 * kMillimetresPerInch), 0.013 * kMillimetresPerInch, 1e-12);
    EXPECT_NEAR(usualCore(0.056 * kMillimetresPerInch), 0.018 * kMillimetresPerInch, 1e-12);
}

TEST(StringKinds, MassRisesWithTheGauge)
{
    for (const StringKind& each : stringKinds()) {
        double before = 0;
        for (int step = 0; step <= 2000; ++step) {
            const double gauge_in = each.thinnest_in + step * (each.thickest_in - each.thinnest_in) / 2000;
            const Result<StringBody> string = stringBody(each, gauge_in * kMillimetresPerInch);
            ASSERT_TRUE(string) << each.id << " " << gauge_in;
            EXPECT_GT(string->mass_kg_m, before) << each.id << " " << gauge_in;
            EXPECT_LE(string->coreDiameter, string->gauge);
            before = string->mass_kg_m;
        }
    }
}

TEST(StringKinds, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const StringKind& each : stringKinds())
        for (double bad :
             {0.0, -1.0, nan, 1e300, each.thinnest_in * 25.4 * 0.99, each.thickest_in * 25.4 * 1.01}) {
            const Result<StringBody> string = stringBody(each, bad);
            ASSERT_FALSE(string) << each.id << " " << bad;
            EXPECT_EQ(string.error().where, "gauge");
            EXPECT_THAT(string.error().mend, HasSubstr(" in"));
        }
    for (double bad : {0.0, -0.1, 1.0, 2.0, nan, 0.05}) {
        const Result<StringBody> string = stringBody(kind("phosphor-bronze"), 1.0, bad);
        ASSERT_FALSE(string) << bad;
        EXPECT_EQ(string.error().where, "core diameter");
    }
    StringKind bare = kind("nylon-plain");
    bare.unitWeights.clear();
    EXPECT_EQ(stringBody(bare, 0.8).error().where, "nylon-plain");
}

TEST(StringKinds, HostileRowsAreNamed)
{
    const std::string head =
        "id,name,build,core_density_kg_m3,wrap_density_kg_m3,stretch_factor,strength_MPa,thinnest_in,"
        "thickest_in,slack_N,error_low_pct,error_high_pct,beyond_low_pct,beyond_high_pct,mass_source,"
        "strength_source,slack_source,error_source\n";
    const std::string weightHead = "kind,gauge_in,unit_weight_lb_in\n";
    const std::string wound = "w,w,wound-wire,7806,8860,,,0.016,0.07,40,-2,1,,,a,b,c,d\n";
    const std::string nylon = "n,n,plain-nylon,,,53,300,0.02,0.045,35,-1,1,-9,9,a,b,c,d\n";
    const std::string weights = "n,0.028,2e-5\nn,0.04,5e-5\n";
    ASSERT_TRUE(readStringKinds(head + wound + nylon, weightHead + weights));
    const auto whereOf = [&](const std::string& kinds, const std::string& rows) {
        const auto read = readStringKinds(head + kinds, weightHead + rows);
        return read ? std::string("read") : read.error().where;
    };
    const std::string line = "string_kinds.csv, line 2, column ";
    EXPECT_EQ(whereOf("w,w,glass,7806,8860,,,0.016,0.07,40,-2,1,,,a,b,c,d\n", ""), line + "build");
    EXPECT_EQ(whereOf("w,w,wound-wire,,8860,,,0.016,0.07,40,-2,1,,,a,b,c,d\n", ""),
              line + "core_density_kg_m3");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,,,,0.016,0.07,40,-2,1,,,a,b,c,d\n", ""),
              line + "wrap_density_kg_m3");
    EXPECT_EQ(whereOf("n,n,plain-nylon,,,,300,0.02,0.045,35,-1,1,,,a,b,c,d\n", ""), line + "stretch_factor");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,8860,,,0.07,0.016,40,-2,1,,,a,b,c,d\n", ""), line + "thickest_in");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,8860,,,0.016,0.07,-4,-2,1,,,a,b,c,d\n", ""), line + "slack_N");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,8860,,,0.016,0.07,40,2,1,,,a,b,c,d\n", ""),
              line + "error_high_pct");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,8860,,,0.016,0.07,40,-2,1,3,,a,b,c,d\n", ""),
              line + "beyond_high_pct");
    EXPECT_EQ(whereOf("w,w,wound-wire,7806,8860,,,0.016,0.07,40,-2,1,,,a,,c,d\n", ""),
              line + "strength_source");
    EXPECT_EQ(whereOf(wound + wound, ""), "string_kinds.csv, line 3, column id");
    EXPECT_EQ(whereOf(wound + nylon, ""), "string_unit_weights.csv");
    EXPECT_EQ(whereOf(wound + nylon, "n,0.028,2e-5\n"), "string_unit_weights.csv");
    const std::string second = "string_unit_weights.csv, line 3, column ";
    EXPECT_EQ(whereOf(nylon, "n,0.028,2e-5\nx,0.04,5e-5\n"), second + "kind");
    EXPECT_EQ(whereOf(wound + nylon, "n,0.028,2e-5\nw,0.04,5e-5\n"), second + "kind");
    EXPECT_EQ(whereOf(nylon, "n,0.028,2e-5\nn,0.028,5e-5\n"), second + "gauge_in");
    EXPECT_EQ(whereOf(nylon, "n,0.028,2e-5\nn,0.04,2e-5\n"), second + "unit_weight_lb_in");
    EXPECT_EQ(whereOf(nylon, "n,0.028,2e-5\nn,0.04,nan\n"), second + "unit_weight_lb_in");
}

}  // namespace
}  // namespace lidwright
