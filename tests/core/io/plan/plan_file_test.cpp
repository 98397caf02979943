#include "core/io/plan/plan_file.h"

#include "tests/support/random_plan.h"

#include "core/io/plan/art_words.h"
#include "core/plan/catalogue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <clocale>
#include <cstring>
#include <fstream>
#include <iterator>

namespace lidwright {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

std::string fileText(const std::string& path)
{
    std::ifstream in(std::string(LIDWRIGHT_SOURCE_DIR) + "/" + path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

Plan readBack(const Plan& plan)
{
    const auto reading = readPlan(writePlan(plan), "f.lidplan");
    EXPECT_TRUE(reading.ok()) << reading.error().text();
    return reading.ok() ? reading->plan : Plan{};
}

/// What a JSON library of its own finds where the catalogue's key says.
nlohmann::json at(const nlohmann::json& file, const Parameter& p, int index)
{
    const std::string key = p.key;
    const std::string part = key.substr(0, key.find('.'));
    const std::string name = key.substr(key.rfind('.') + 1);
    return p.inList() ? file[part][static_cast<std::size_t>(index)][name] : file[part][name];
}

nlohmann::json spelled(const Plan& plan, const Parameter& p, int index)
{
    const ParameterValue value = get(plan, {&p, index});
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    const double number = std::get<double>(value);
    if (p.quantity == Quantity::Flag) return number != 0;
    if (p.quantity == Quantity::Choice) return p.choices[static_cast<std::size_t>(number)].word;
    return number;
}

bool sameBits(const Ring& a, const Ring& b)
{
    return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(Point)) == 0;
}

TEST(PlanFile, BeginsWithFormatAndVersion)
{
    const std::string text = writePlan(Plan{});
    EXPECT_THAT(text,
                StartsWith("{\n  \"format\": \"lidwright-plan\",\n  \"version\": 1,\n  \"units\": \"mm\",\n"
                           "  \"sheet\": {\n    \"title\": \"Box guitar\",\n"));
    EXPECT_EQ(text.substr(text.size() - 3), "\n}\n");
    EXPECT_EQ(text.find('\r'), std::string::npos);
    EXPECT_THAT(text, HasSubstr("    \"length\": 330,\n"));
    EXPECT_THAT(text, HasSubstr("    \"fit\": 0.2,\n"));
    EXPECT_THAT(text, HasSubstr("  \"hole\": [],\n"));
}

TEST(PlanFile, OutlinesStandOnOneLine)
{
    Plan plan;
    plan.box.outline =
        std::make_shared<FreeOutline>(FreeOutline{{{0, 0}, {10.5, -0.0}, {1e-7, 20}}, "b.svg"});
    EXPECT_THAT(writePlan(plan), HasSubstr("      \"points\": [[0,0],[10.5,-0.0],[1e-07,20]]\n"));
}

TEST(PlanFile, AFreshPlanComesBack)
{
    EXPECT_EQ(readBack(Plan{}), Plan{});
}

// The whole catalogue, drawings and outlines; and the file means to any JSON reader what the plan means.
TEST(PlanFile, RandomPlansComeBackExactly)
{
    testing::RandomPlans plans(20240901);
    for (int round = 0; round < 400; ++round) {
        const Plan plan = plans.next();
        const std::string text = writePlan(plan);
        const auto reading = readPlan(text, "f.lidplan");
        ASSERT_TRUE(reading.ok()) << "round " << round << ": " << reading.error().text();
        ASSERT_EQ(reading->plan, plan) << "round " << round;
        EXPECT_TRUE(reading->notes.empty());
        ASSERT_EQ(writePlan(reading->plan), text);
        EXPECT_FALSE(beyondPlanLimits(plan));

        const auto file = nlohmann::json::parse(text);
        for (const Parameter& p : catalogue()) {
            if (std::string_view(p.key).ends_with(".count")) continue;
            for (int i = 0; i < (p.inList() ? p.size(plan) : 1); ++i)
                ASSERT_EQ(at(file, p, i), spelled(plan, p, i)) << keyOf(p, i);
        }
        EXPECT_EQ(file["hole"].size(), plan.holes.size());
        EXPECT_EQ(file["tie"].size(), plan.ties.size());
        EXPECT_EQ(file["fixing"].size(), plan.fixings.size());
        EXPECT_EQ(file["block"].size(), plan.blocks.size());
        EXPECT_EQ(file["backing"].size(), plan.backingLayers.size());
        EXPECT_EQ(file["art"].size(), plan.art.size());
    }
}

TEST(PlanFile, OutlinesComeBackBitForBit)
{
    testing::RandomPlans dice(3);
    auto art = std::make_shared<Artwork>();
    art->paints = {{"fill #000000", "#000000", false, 0}};
    ArtRun run;
    for (int i = 0; i < 200; ++i)
        run.painted.rings.push_back(dice.ring(i % 2 == 0 ? 4999 : 1e-3));
    run.painted.rings.push_back({{-0.0, 0.0}, {5e-324, -5e-324}, {5000, -5000}});
    art->runs = {run};
    Plan plan;
    plan.art.resize(1);
    plan.art[0].art = art;
    const Plan back = readBack(plan);
    ASSERT_EQ(back.art.size(), 1u);
    const auto& rings = back.art[0].art->runs.at(0).painted.rings;
    ASSERT_EQ(rings.size(), run.painted.rings.size());
    for (std::size_t i = 0; i < rings.size(); ++i)
        EXPECT_TRUE(sameBits(rings[i], run.painted.rings[i])) << i;
}

TEST(PlanFile, ADrawingThatPiecesShareIsWrittenOnce)
{
    auto art = std::make_shared<Artwork>();
    art->paints = {{"a", "#000000", false, 0}, {"b", "#ff0000", true, 0.5}};
    art->runs = {{1, Region{{{{0, 0}, {7, 0}, {0, 7}}}}, {}}};
    Plan plan;
    plan.art.resize(3);
    for (ArtPiece& piece : plan.art)
        piece.art = art;
    plan.art[0].uses = {ArtUse::Cut, ArtUse::Wood};
    plan.art[1].uses = {ArtUse::Engraved};
    plan.art[2].mirrored = true;
    const std::string text = writePlan(plan);
    const auto file = nlohmann::json::parse(text);
    EXPECT_EQ(file["art"][1]["drawing-of"], 1);
    EXPECT_EQ(file["art"][1]["uses"], nlohmann::json::array({"engraved"}));
    EXPECT_FALSE(file["art"][1].contains("runs"));
    const Plan back = readBack(plan);
    EXPECT_EQ(back, plan);
    EXPECT_EQ(back.art[0].art, back.art[2].art);  // the same, not merely equal
    // The second piece keeps its drawing when the first goes.
    plan.art.erase(plan.art.begin());
    EXPECT_EQ(readBack(plan), plan);
}

TEST(PlanFile, MissingKeysTakeDefaults)
{
    const auto bare = readPlan(R"({"format":"lidwright-plan","version":1})", "f.lidplan");
    ASSERT_TRUE(bare.ok()) << bare.error().text();
    EXPECT_EQ(bare->plan, Plan{});
    EXPECT_TRUE(bare->notes.empty());

    const auto some = readPlan(
        R"({"format":"lidwright-plan","version":1,"neck":{"width":40},"hole":[{},{"x":5}]})", "f.lidplan");
    ASSERT_TRUE(some.ok());
    Plan wanted;
    wanted.neck.width = 40;
    wanted.holes.resize(2);
    wanted.holes[1].x = 5;
    EXPECT_EQ(some->plan, wanted);
}

TEST(PlanFile, KeysMayStandInAnyOrder)
{
    const auto reading = readPlan(
        R"({"hole":[{"width":30,"kind":"slot"}],"version":1,"box":{"width":200},"format":"lidwright-plan"})",
        "f.lidplan");
    ASSERT_TRUE(reading.ok()) << reading.error().text();
    EXPECT_EQ(reading->plan.box.width, 200);
    EXPECT_EQ(reading->plan.holes.at(0).kind, HoleKind::Slot);
}

TEST(PlanFile, AByteOrderMarkIsPassedOver)
{
    const auto reading = readPlan("\xef\xbb\xbf" + writePlan(Plan{}), "f.lidplan");
    ASSERT_TRUE(reading.ok()) << reading.error().text();
    EXPECT_EQ(reading->plan, Plan{});
}

TEST(PlanFile, TextsThatAreNoUtf8CanStillBeSaved)
{
    Plan plan;
    plan.sheet.title = "Caf\xe9";
    plan.sheet.notes = std::string(20000, '\xff');
    const Plan back = readBack(plan);
    EXPECT_EQ(back.sheet.title, "Caf?");
    EXPECT_EQ(back.sheet.notes, std::string(20000, '?'));
}

TEST(PlanFile, DecimalCommasOfTheSystemChangeNothing)
{
    Plan plan;
    plan.neck.width = 38.25;
    const std::string text = writePlan(plan);
    const std::string before = std::setlocale(LC_ALL, nullptr);
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "sv_SE.UTF-8"}) {
        // Where a locale is not installed, the round with it repeats the one before.
        std::setlocale(LC_ALL, name);
        EXPECT_EQ(writePlan(plan), text);
        EXPECT_EQ(readBack(plan), plan);
    }
    std::setlocale(LC_ALL, before.c_str());
}

TEST(PlanFile, LimitsOfWhatCanBeSavedAreKnownBeforehand)
{
    Plan plan;
    auto art = std::make_shared<Artwork>();
    art->paints = {{"a", "#000000", false, 0}};
    const Ring large(static_cast<std::size_t>(kPlanPointLimit) / 2 + 1, Point{1, 2});
    art->runs = {{0, Region{{large}}, {}}};
    plan.art.resize(2);
    plan.art[0].art = plan.art[1].art = art;
    EXPECT_FALSE(beyondPlanLimits(plan));  // shared: counted once
    EXPECT_TRUE(readPlan(writePlan(plan), "f.lidplan").ok());
    plan.art[1].art = std::make_shared<Artwork>(*art);
    ASSERT_TRUE(beyondPlanLimits(plan));
    EXPECT_THAT(beyondPlanLimits(plan)->text(), HasSubstr("2000002 points"));
    EXPECT_FALSE(readPlan(writePlan(plan), "f.lidplan").ok());

    Plan colourful;
    auto paints = std::make_shared<Artwork>();
    paints->paints.resize(static_cast<std::size_t>(kPlanValueLimit) / 6);
    colourful.art.resize(1);
    colourful.art[0].art = paints;
    EXPECT_TRUE(beyondPlanLimits(colourful));
}

/// Everything that format 1 can say.
Plan frozenPlan()
{
    Plan plan;
    plan.sheet = {
        "Cedar box",           "A. Maker", "Oak lid,\n\"first try\" \u2300 3 mm", PlanUnit::InchFraction, 32,
        Projection::ThirdAngle};
    plan.box = {BoxShape::Outline,    301.5, 190,    12, 58, 7, 6.5, 3.2, "spanish-cedar",
                BaseFastening::Glued, 80,    nullptr};
    plan.box.outline = std::make_shared<FreeOutline>(
        FreeOutline{{{0, 0}, {300, -20.25}, {310, 90}, {0.1, 100}}, "pear.svg"});
    plan.lid = {2.8, LidSeat::LetIn, LidFastening::Glued, 8};
    plan.holes = {{HoleKind::Circle, 70, -50, 22.5, 60, 0}, {HoleKind::Slot, 75, 50, 8, 44, -12.5}};
    plan.neck = {900, 40, 22, -6.35, 2.8, 0, 140, 30};
    plan.headOpening = {true, -6.3, 40.6, 24, 1.5};
    plan.tailOpening = {false, 0, 39, 26, 0};
    plan.fretboard = {460, 5.5, 37, 44, FretboardEnd::OverLid, 62};
    plan.scale = {622.3, ScaleHold::BothAsMeasured, 395, 0, 0, 82};
    plan.strings.spreadAtNut = 24;
    plan.strings.spreadAtSaddle = 38;
    plan.stringSet.resize(3);
    plan.bridge = {80, 14, 10.5, 2.5, "sugar-maple", 2};
    plan.cornerBlocks = {false, 20, 22, 40};
    plan.blocks = {{BoxWall::HeadEnd, -30, 44, 10, 20}, {BoxWall::TrebleSide, 150, 90, 12, 14}};
    plan.shop = {1.6, 0.15};

    auto art = std::make_shared<Artwork>();
    art->fileName = "fox.svg";
    art->fileSize = 48213;
    art->width = 42;
    art->height = 31.5;
    art->paints = {{"fill #1a2b3c", "#1a2b3c", false, 0},
                   {"line #ff0000", "#ff0000", true, 0.1},
                   {"fill #ffffff", "#ffffff", false, 0},
                   {"fill #808080", "#808080", false, 0},
                   {"fill gradient", "#406080", false, 0}};
    art->runs = {
        {0, Region{{{{-20, -15}, {20, -15}, {20, 15}}, {{5, -5}, {6, -4}, {6, -6}}}}, {}},
        {1, Region{{{{0, 0}, {1, 0}, {1, 1}}}}, Region{{{{0.25, 0.25}, {0.75, 0.25}, {0.75, 0.5}}}}}};
    art->messages = {"text is left out: turn it into outlines"};
    plan.art = {{"Fox",
                 art,
                 {ArtUse::Cut, ArtUse::CutInside, ArtUse::Wood, ArtUse::Engraved, ArtUse::Ignored},
                 180,
                 -40,
                 15,
                 1.25,
                 true},
                {"Fox, small", art, {ArtUse::Engraved}, 90, 40, 0, 0.5, false}};
    return plan;
}

std::vector<std::string> linesWithoutCommas(const std::string& text)
{
    std::vector<std::string> lines;
    std::size_t start = 0;
    while (start < text.size()) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        std::string line = text.substr(start, end - start);
        if (!line.empty() && line.back() == ',') line.pop_back();
        lines.push_back(line);
        start = end + 1;
    }
    return lines;
}

// The file was written once by format 1 and is never written again: whatever comes, it must be read.
TEST(PlanFile, TheFrozenFileOfFormat1IsRead)
{
    const std::string text = fileText("tests/data/plans/format/v1.lidplan");
    ASSERT_FALSE(text.empty());
    const auto reading = readPlan(text, "v1.lidplan");
    ASSERT_TRUE(reading.ok()) << reading.error().text();
    EXPECT_EQ(reading->plan, frozenPlan());
    EXPECT_TRUE(reading->notes.empty());

    // Its lines come back in their order; keys may join them.
    const auto written = linesWithoutCommas(writePlan(reading->plan));
    auto place = written.begin();
    for (const std::string& line : linesWithoutCommas(text)) {
        place = std::find(place, written.end(), line);
        ASSERT_NE(place, written.end()) << line;
        ++place;
    }
}

}  // namespace
}  // namespace lidwright
