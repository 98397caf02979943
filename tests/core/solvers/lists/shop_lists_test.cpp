#include "core/solvers/lists/shop_lists.h"

#include "tests/support/random_plan.h"

#include "core/solvers/lists/cut_pieces.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace lidwright {
namespace {

double number(const StudyCell& cell)
{
    const auto* value = std::get_if<double>(&cell);
    return value == nullptr ? std::nan("") : *value;
}

std::string words(const StudyCell& cell)
{
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::string() : *text;
}

using Row = std::vector<StudyCell>;

std::vector<Row> rowsWith(const StudyTable& table, std::size_t column, const std::string& text)
{
    std::vector<Row> out;
    for (const Row& row : table.rows)
        if (words(row[column]).find(text) != std::string::npos) out.push_back(row);
    return out;
}

Plan stocked()
{
    Plan plan;
    plan.stock = {{"sugar-maple", 915, 38, 25, 2, 0},
                  {"birch-plywood-3mm", 600, 300, 3, 1, 7.5},
                  {"yellow-poplar", 300, 60, 25, 1, 0},
                  {"spanish-cedar", 1000, 70, 8, 2, 9.25},
                  {"black-walnut", 500, 60, 6, 1, 0}};
    return plan;
}

TEST(ShopLists, AreStudiesOfAnyPlan)
{
    testing::RandomPlans plans(26);
    std::vector<Plan> all{Plan{}, stocked()};
    for (int i = 0; i < 20; ++i)
        all.push_back(plans.next());
    for (const Plan& plan : all) {
        const Layout layout = derive(plan);
        for (const StudyEntry& entry : shopLists()) {
            SCOPED_TRACE(entry.id);
            const Study study = entry.reckon(plan, layout);
            EXPECT_EQ(study.id, entry.id);
            EXPECT_EQ(study.title, entry.title);
            EXPECT_FALSE(study.problem);
            EXPECT_FALSE(study.table.rows.empty());
            EXPECT_FALSE(study.notes.empty());
            EXPECT_LE(study.table.places.size(), study.table.rows.size());
            for (const Row& row : study.table.rows) {
                ASSERT_EQ(row.size(), study.table.columns.size());
                for (std::size_t c = 0; c < row.size(); ++c) {
                    if (std::holds_alternative<double>(row[c])) {
                        EXPECT_NE(study.table.columns[c].quantity, Quantity::Text);
                        EXPECT_TRUE(std::isfinite(number(row[c])));
                    } else if (std::holds_alternative<std::string>(row[c])) {
                        EXPECT_EQ(study.table.columns[c].quantity, Quantity::Text);
                    }
                }
            }
            for (const Sentence& note : study.notes) {
                const std::string said = spoken(note, {});
                for (const char* left : {"%1", "%2", "%3", "%%"})
                    EXPECT_EQ(said.find(left), std::string::npos) << said;
            }
        }
    }
}

TEST(ShopLists, IdsAreTheirOwn)
{
    std::set<std::string> ids;
    for (const StudyEntry& entry : allSubjects())
        EXPECT_TRUE(ids.insert(entry.id).second) << entry.id;
    EXPECT_EQ(ids.size(), studies().size() + shopLists().size());
}

TEST(ShopLists, CutListHasEveryPieceAndSaysFromWhere)
{
    const Plan plan = stocked();
    const Layout layout = derive(plan);
    const StudyTable table = cutList(plan, layout).table;
    const auto pieces = cutPieces(plan, layout);
    ASSERT_EQ(table.rows.size(), pieces.size());
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        EXPECT_EQ(words(table.rows[i][0]), pieces[i].name);
        EXPECT_EQ(number(table.rows[i][1]), pieces[i].count);
        EXPECT_EQ(number(table.rows[i][5]), pieces[i].roughLength);
    }
    const auto from = [&](const std::string& name) { return words(rowsWith(table, 0, name).at(0).back()); };
    EXPECT_EQ(from("Stick"), "stock 1");
    EXPECT_EQ(from("Lid"), "stock 2");
    EXPECT_EQ(from("Corner block"), "stock 3");
    EXPECT_EQ(from("End wall"), "stock 4");
    EXPECT_EQ(from("Fretboard"), "stock 5");
    EXPECT_EQ(from("Base"), "the box itself, or to buy");
    EXPECT_EQ(from("Bridge"), "to buy");
}

TEST(ShopLists, StockRowsAddUp)
{
    const Plan plan = stocked();
    const StudyTable table = stockList(plan, derive(plan)).table;
    std::map<std::string, double> whole, parts;
    int pieces = 0;
    for (const Row& row : table.rows) {
        const std::string stock = words(row[0]), what = words(row[1]);
        if (stock.find(", piece") == std::string::npos) continue;
        if (what.starts_with("all: ")) {
            whole[stock] = number(row[7]);
            EXPECT_NEAR(number(row[7]), number(row[4]) * number(row[5]), 1e-6) << stock;
        } else {
            parts[stock] += number(row[7]);
            if (what != "saw cuts" && what != "left over") ++pieces;
        }
    }
    EXPECT_GE(whole.size(), 5U);
    ASSERT_EQ(whole.size(), parts.size());
    for (const auto& [stock, area] : whole)
        EXPECT_NEAR(parts[stock], area, 1e-6) << stock;
    // Stick, lid, four blocks, four walls, fretboard; base, bridge and nut are missing.
    EXPECT_EQ(pieces, 11);
    EXPECT_EQ(rowsWith(table, 0, "to buy").size(), 3U);
    EXPECT_EQ(rowsWith(table, 1, "not begun, 1 piece").size(), 1U) << "the second stick";
}

TEST(ShopLists, HolesAreAllThereAtTheirPlaces)
{
    Plan plan;
    plan.holes = {SoundHole{}, SoundHole{HoleKind::Slot, 200, -70, 8, 60, 30}};
    plan.fixings = {LidFixing{}};
    plan.wiring = {Device{DeviceKind::Socket, DevicePlace::TrebleWall, 250, 0, 25, 9.5, 20, 20, 25, 8},
                   Device{DeviceKind::MagneticPickup, DevicePlace::Neck, 200, 0, 0, 0, 80, 20, 12, 0}};
    plan.fittings.strapAtTail = true;
    const Layout layout = derive(plan);
    const StudyTable table = holeList(plan, layout).table;
    EXPECT_EQ(rowsWith(table, 0, "Tuner post").size(), plan.stringSet.size());
    EXPECT_EQ(rowsWith(table, 0, "Nut slot").size(), plan.stringSet.size());
    EXPECT_EQ(rowsWith(table, 0, "String hole").size(), plan.stringSet.size());
    EXPECT_EQ(number(rowsWith(table, 0, "Fret slot").at(0)[2]),
              static_cast<double>(layout.frets.lines.size()));
    EXPECT_NEAR(number(rowsWith(table, 0, "Fret slot").at(0)[5]), 1.6 + 0.4, 1e-9);
    EXPECT_EQ(rowsWith(table, 0, "Marker dot").size(), layout.frets.markers.size());
    const Row hole = rowsWith(table, 0, "Sound hole").at(0);
    EXPECT_EQ(number(hole[3]), 25);
    EXPECT_EQ(number(hole[5]), 3);
    EXPECT_EQ(number(hole[6]), 80);
    EXPECT_EQ(number(hole[7]), 60);
    EXPECT_EQ(number(rowsWith(table, 0, "Sound slot").at(0)[4]), 60);
    EXPECT_EQ(number(rowsWith(table, 0, "Lid screw").at(0)[3]), 3);
    const Row socket = rowsWith(table, 0, "Output socket").at(0);
    EXPECT_EQ(words(socket[1]), "Treble-side wall");
    EXPECT_EQ(number(socket[5]), plan.box.sideWall);
    EXPECT_NEAR(number(socket[6]), 250, 1e-9);
    EXPECT_NEAR(number(socket[8]), 25, 1e-9);
    EXPECT_EQ(number(rowsWith(table, 0, "Magnetic pickup, cavity").at(0)[5]), 12);
    const auto notches = rowsWith(table, 0, "Notch for the stick");
    ASSERT_EQ(notches.size(), 2U);
    EXPECT_NEAR(number(notches[0][3]), 38 + 2 * 0.2, 1e-9);
    EXPECT_NEAR(number(notches[0][4]), 25, 1e-9) << "as deep as the stick, right under the lid";
    EXPECT_NEAR(number(notches[0][5]), 8, 1e-9);
    EXPECT_EQ(rowsWith(table, 0, "Strap button").size(), 1U);
    plan.anchor.kind = AnchorKind::Tailpiece;
    EXPECT_TRUE(rowsWith(holeList(plan, derive(plan)).table, 0, "String hole").empty());
}

TEST(ShopLists, ReliefPassesGoDownToTheFloorAndNoDeeper)
{
    for (const ReliefEnd end : {ReliefEnd::Square, ReliefEnd::Ramped, ReliefEnd::Round}) {
        Plan plan;
        plan.relief.end = end;
        plan.relief.depth = 7;
        plan.hollows = {Hollow{60, 30, 4}};
        const Layout layout = derive(plan);
        const StudyTable table = reliefList(plan, layout).table;
        std::size_t stations = 0;
        for (const ReliefCut& cut : layout.relief.cuts)
            stations += cut.floor.size();
        EXPECT_EQ(rowsWith(table, 1, "station").size(), stations);
        // 7 mm by 3: three passes in each of the two reliefs, 4 mm: two in the hollow.
        EXPECT_EQ(rowsWith(table, 1, "pass").size(), 2U * 3 + 2);
        double deepest = 0;
        for (const Row& row : rowsWith(table, 1, "pass")) {
            const double from = number(row[2]), to = number(row[3]), depth = number(row[4]);
            deepest = std::max(deepest, depth);
            EXPECT_LE(from, to);
            const bool hollow = words(row[0]) == "Hollow 1";
            // The floor by its own function, densely: within the stretch never less deep than the pass.
            for (int i = 1; i < 100; ++i) {
                const double x = layout.headWall.outerX + from + (to - from) * i / 100;
                double floor = 0;
                for (const ReliefCut& cut : layout.relief.cuts)
                    if ((cut.part == "hollow.1") == hollow) floor = std::max(floor, cut.depthAt(x));
                EXPECT_GE(floor, depth - 1e-6);
            }
            if (std::isnan(number(row[5]))) continue;
            EXPECT_NEAR(number(row[5]) - from, 6, 1e-9) << "half of a bit of 12";
            EXPECT_NEAR(to - number(row[6]), 6, 1e-9);
            EXPECT_GE(number(row[7]) * 12, to - from - 1e-6) << "strokes side by side cover it";
        }
        EXPECT_DOUBLE_EQ(deepest, 7);
    }
    Plan full;
    full.relief.cut = false;
    EXPECT_EQ(words(reliefList(full, derive(full)).table.rows.at(0)[1]), "stays full");
}

TEST(ShopLists, HardwareSumsWhatHasAPrice)
{
    const Plan plan = stocked();
    const StudyTable table = hardwareList(plan, derive(plan)).table;
    double sum = 0;
    for (std::size_t i = 0; i + 1 < table.rows.size(); ++i)
        if (!std::isnan(number(table.rows[i][7]))) {
            EXPECT_NEAR(number(table.rows[i][7]), number(table.rows[i][1]) * number(table.rows[i][6]), 1e-9);
            sum += number(table.rows[i][7]);
        }
    // One sheet of plywood; of Spanish-cedar 1000 long the walls of 324 and 240, two of each, take two.
    EXPECT_NEAR(sum, 7.5 + 2 * 9.25, 1e-9);
    EXPECT_DOUBLE_EQ(number(table.rows.back()[7]), sum);
    EXPECT_EQ(number(rowsWith(table, 0, "Tuner").at(0)[1]), 4);
    EXPECT_EQ(rowsWith(table, 0, "String ").size(), 4U);
    for (const Row& string : rowsWith(table, 0, "String "))
        EXPECT_GT(number(string[2]), plan.scale.length + plan.scale.saddleToTail - 95);
    EXPECT_EQ(rowsWith(table, 5, "rough size").size(), 3U) << "base, bridge, nut";

    EXPECT_EQ(spoken(StudyCell{1234.56}, table.columns[7], {}), "1234.56")
        << "money is not rounded to three figures";

    const StudyTable bare = hardwareList(Plan{}, derive(Plan{})).table;
    EXPECT_TRUE(std::holds_alternative<std::monostate>(bare.rows.back()[7])) << "nothing has a price";
}

// Moved forward by 0.6 mm the nut's front edge is that much farther from every post.
TEST(ShopLists, PostsAreMeasuredFromWhereTheNutStands)
{
    Plan plan;
    const auto first = [](const Plan& p) {
        return number(rowsWith(holeList(p, derive(p)).table, 0, "Tuner post, string 1").at(0)[6]);
    };
    const double before = first(plan);
    plan.scale.nutForward = 0.6;
    EXPECT_NEAR(first(plan) - before, 0.6, 1e-9);
}

TEST(ShopLists, PricesGoByTheNumberOrByTheMetre)
{
    Plan plan;
    plan.prices = {{"Tuner", 3.5},  {"Fret wire", 4}, {"String", 1},
                   {"String 2", 2}, {"Wood glue", 6}, {"Sail", 9}};
    const Study list = hardwareList(plan, derive(plan));
    const auto price = [&](const char* what) { return number(rowsWith(list.table, 0, what).at(0)[7]); };
    EXPECT_DOUBLE_EQ(price("Tuner"), 4 * 3.5);
    EXPECT_NEAR(price("Fret wire"), 4 * number(rowsWith(list.table, 0, "Fret wire").at(0)[2]) / 1000, 1e-9);
    EXPECT_DOUBLE_EQ(price("String 1"), 1);
    EXPECT_DOUBLE_EQ(price("String 2"), 2) << "the longer words count";
    EXPECT_DOUBLE_EQ(price("Wood glue"), 6) << "what has neither number nor length is bought once";
    EXPECT_NEAR(number(list.table.rows.back()[7]), 14 + price("Fret wire") + 3 + 2 + 6, 1e-9);
    const auto unknown = std::count_if(list.notes.begin(), list.notes.end(), [](const Sentence& note) {
        return note.pattern.starts_with("A price is entered for");
    });
    EXPECT_EQ(unknown, 1) << "no sail is bought for a guitar";
}

// The box of 330 x 230 has 290 mm between the outer screws of its long walls: four gaps of at most 80 mm; 190
// mm make three.
TEST(ShopLists, TheBasesScrewsAreCounted)
{
    Plan plan;
    plan.box.baseFastening = BaseFastening::Screwed;
    EXPECT_EQ(number(rowsWith(hardwareList(plan, derive(plan)).table, 0, "Wood screw").at(0)[1]),
              2 * (5 + 4));
    plan.box.baseSpacing = 500;
    EXPECT_EQ(number(rowsWith(hardwareList(plan, derive(plan)).table, 0, "Wood screw").at(0)[1]), 8);
}

TEST(ShopLists, HardwareKnowsTheWiringAndTheCloth)
{
    Plan plan;
    plan.holes = {SoundHole{}};
    plan.wiring = {Device{},
                   Device{DeviceKind::Socket, DevicePlace::TrebleWall, 250, 0, 25, 9.5, 20, 20, 25, 8}};
    plan.fittings.feet = true;
    plan.fittings.strapAtTail = plan.fittings.strapAtNeck = true;
    plan.fixings.resize(3);
    const StudyTable table = hardwareList(plan, derive(plan)).table;
    EXPECT_EQ(number(rowsWith(table, 0, "Contact pickup, disc").at(0)[1]), 1);
    EXPECT_EQ(number(rowsWith(table, 0, "Output socket").at(0)[1]), 1);
    EXPECT_GT(number(rowsWith(table, 0, "Hook-up wire").at(0)[2]), 2 * 60.0);
    EXPECT_EQ(number(rowsWith(table, 0, "Foot").at(0)[1]), 4);
    EXPECT_EQ(number(rowsWith(table, 0, "Strap button").at(0)[1]), 2);
    EXPECT_EQ(number(rowsWith(table, 0, "Wood screw").at(0)[1]), 3);
    EXPECT_EQ(rowsWith(table, 0, "Fret wire").size(), 1U);
    plan.frets.kind = FretKind::Lines;
    EXPECT_TRUE(rowsWith(hardwareList(plan, derive(plan)).table, 0, "Fret wire").empty());
}

}  // namespace
}  // namespace lidwright
