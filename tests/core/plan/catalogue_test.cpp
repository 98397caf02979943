#include "core/plan/catalogue.h"

#include "tests/support/random_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <regex>
#include <set>
#include <utility>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

constexpr UnitStyle kStyle;

/// A plan whose lists are all full.
Plan fullPlan()
{
    Plan plan;
    plan.art.resize(kMostPieces);
    plan.ties.resize(kMostPieces);
    plan.holes.resize(kMostPieces);
    plan.fixings.resize(kMostPieces);
    plan.stringSet.resize(kMostPieces);
    plan.blocks.resize(kMostPieces);
    plan.backingLayers.resize(kMostPieces);
    plan.hollows.resize(kMostPieces);
    plan.bars.resize(kMostPieces);
    plan.wiring.resize(kMostPieces);
    plan.stock.resize(kMostPieces);
    plan.prices.resize(kMostPieces);
    plan.accepted.resize(kMostPieces);
    return plan;
}

bool listCount(const Parameter& p)
{
    return std::string_view(p.key).ends_with(".count");
}

bool whole(const Parameter& p)
{
    return p.quantity == Quantity::Count || p.quantity == Quantity::Choice || p.quantity == Quantity::Flag;
}

std::string partOf(const Parameter& p)
{
    return std::string(p.key).substr(0, std::string_view(p.key).find('.'));
}

Plan changed(const Plan& plan, const ParameterRef& ref, const ParameterValue& value)
{
    const auto next = set(plan, ref, value);
    EXPECT_TRUE(next.ok()) << (next.ok() ? "" : next.error().text());
    return next.ok() ? *next : plan;
}

TEST(Catalogue, KeysAreUniqueAndOfKnownParts)
{
    const std::regex plain("[a-z]+(-[a-z]+)*\\.[a-z]+(-[a-z]+)*");
    const std::regex inList("[a-z]+\\.#\\.[a-z]+(-[a-z]+)*");
    std::set<std::string> keys;
    for (const Parameter& p : catalogue()) {
        EXPECT_TRUE(keys.insert(p.key).second) << p.key << " stands twice";
        EXPECT_TRUE(std::regex_match(p.key, p.inList() ? inList : plain)) << p.key;
        const std::string part = partOf(p);
        const auto known = std::find_if(parts().begin(), parts().end(),
                                        [&](const PartInfo& info) { return info.key == part; });
        ASSERT_NE(known, parts().end()) << p.key;
        // How many strings there are is asked for among what all strings share.
        const bool ofList = p.inList() || (listCount(p) && p.key != std::string_view("strings.count"));
        EXPECT_EQ(known->list, ofList) << p.key;
    }
}

TEST(Catalogue, PartsComeInOneOrderAndEachHasRows)
{
    std::vector<std::string> seen;
    for (const Parameter& p : catalogue())
        if (seen.empty() || seen.back() != partOf(p)) seen.push_back(partOf(p));
    std::vector<std::string> wanted;
    for (const PartInfo& part : parts())
        wanted.emplace_back(part.key);
    EXPECT_EQ(seen, wanted);
}

TEST(Catalogue, EveryRowIsDescribed)
{
    for (const Parameter& p : catalogue()) {
        SCOPED_TRACE(p.key);
        EXPECT_FALSE(std::string_view(p.label).empty());
        const std::string_view help = p.help;
        ASSERT_GT(help.size(), 5u);
        EXPECT_EQ(help.back(), '.');
        EXPECT_EQ(p.choices.empty(), p.quantity != Quantity::Choice);
        if (p.isText()) {
            EXPECT_TRUE(p.getText != nullptr && p.setText != nullptr);
            EXPECT_LE(std::get<std::string>(defaultValue(p)).size(), static_cast<std::size_t>(p.most));
            continue;
        }
        EXPECT_TRUE(p.get != nullptr && p.set != nullptr);
        EXPECT_LT(p.least, p.most);
        const double usual = std::get<double>(defaultValue(p));
        EXPECT_GE(usual, p.least);
        EXPECT_LE(usual, p.most);
    }
}

TEST(Catalogue, CustomaryRangesLieInHardOnesAndNameASource)
{
    for (const Parameter& p : catalogue()) {
        SCOPED_TRACE(p.key);
        const bool known = p.customaryLeast != 0 || p.customaryMost != 0;
        EXPECT_TRUE(!known || !std::string_view(p.source).empty());
        if (!known && std::string_view(p.source).empty()) continue;
        EXPECT_LE(p.customaryLeast, p.customaryMost);
        EXPECT_GE(p.customaryLeast, p.least);
        EXPECT_LE(p.customaryMost, p.most);
    }
}

/// Turns into anything, to count how many values a struct of plain values is made of.
struct Anything {
    template <typename T>
    operator T() const;
};
template <typename T, std::size_t... I>
constexpr bool madeOf(std::index_sequence<I...>)
{
    return requires
    {
        T{(static_cast<void>(I), Anything{})...};
    };
}
template <typename T, std::size_t N = 40>
constexpr int memberCount()
{
    if constexpr (madeOf<T>(std::make_index_sequence<N>()))
        return static_cast<int>(N);
    else
        return memberCount<T, N - 1>();
}

// A quantity that has a member and no row would be neither saved nor shown.
TEST(Catalogue, EveryMemberOfEveryPartHasItsRow)
{
    const auto rows = [](std::string_view part) {
        int count = 0;
        for (const Parameter& p : catalogue())
            if (partOf(p) == part && !listCount(p)) ++count;
        return count;
    };
    EXPECT_EQ(rows("sheet"), memberCount<Sheetwork>());
    EXPECT_EQ(rows("box"), memberCount<Box>() - 1);  // the outline is no quantity
    EXPECT_EQ(rows("lid"), memberCount<Lid>());
    EXPECT_EQ(rows("art"), memberCount<ArtPiece>() - 2);  // neither are drawing and uses
    EXPECT_EQ(rows("hole"), memberCount<SoundHole>());
    EXPECT_EQ(rows("scale"), memberCount<Scale>());
    EXPECT_EQ(rows("neck"), memberCount<Neck>());
    EXPECT_EQ(rows("head-opening"), memberCount<WallOpening>());
    EXPECT_EQ(rows("tail-opening"), memberCount<WallOpening>());
    EXPECT_EQ(rows("head"), memberCount<Head>());
    EXPECT_EQ(rows("tuners"), memberCount<Tuners>());
    EXPECT_EQ(rows("fretboard"), memberCount<Fretboard>());
    EXPECT_EQ(rows("strings"), memberCount<Strings>());
    EXPECT_EQ(rows("string"), memberCount<GuitarString>());
    EXPECT_EQ(rows("anchor"), memberCount<StringAnchor>());
    EXPECT_EQ(rows("frets"), memberCount<Frets>());
    EXPECT_EQ(rows("setup"), memberCount<lidwright::Setup>());
    EXPECT_EQ(rows("bridge"), memberCount<Bridge>());
    EXPECT_EQ(rows("corner-blocks"), memberCount<CornerBlocks>());
    EXPECT_EQ(rows("block"), memberCount<WallBlock>());
    EXPECT_EQ(rows("tie"), memberCount<TieSpot>());
    EXPECT_EQ(rows("fixing"), memberCount<LidFixing>());
    EXPECT_EQ(rows("shop"), memberCount<Shop>());
    EXPECT_EQ(rows("cutter"), memberCount<Cutter>());
    EXPECT_EQ(rows("backing-fit"), memberCount<Backing>());
    EXPECT_EQ(rows("backing"), memberCount<BackingLayer>());
    // The parts, and the keys that are not understood.
    EXPECT_EQ(memberCount<Plan>(), static_cast<int>(parts().size()) + 1);
}

// What one row sets, that row alone gives back.
TEST(Catalogue, EveryRowSetsItsOwnQuantityOnly)
{
    const Plan plan = fullPlan();
    testing::RandomPlans dice(1);
    for (const Parameter& p : catalogue()) {
        if (listCount(p)) continue;
        for (const int index : p.inList() ? std::vector<int>{0, 1, kMostPieces - 1} : std::vector<int>{0}) {
            const ParameterRef ref{&p, index};
            SCOPED_TRACE(ref.key());
            const ParameterValue before = get(plan, ref);
            std::vector<ParameterValue> values;
            if (p.isText())
                values = {std::string(), std::string("Oak \u2300"),
                          std::string(static_cast<std::size_t>(p.most), 'x')};
            else
                values = {p.least, p.most, dice.within(p), dice.within(p)};
            for (const ParameterValue& value : values) {
                const Plan next = changed(plan, ref, value);
                EXPECT_EQ(get(next, ref), value);
                EXPECT_EQ(next == plan, value == before);
                EXPECT_EQ(changed(next, ref, before), plan);
                for (const Parameter& other : catalogue())
                    for (int i = 0; i < (other.inList() ? kMostPieces : 1); i += kMostPieces - 1)
                        if (!(ParameterRef{&other, i} == ref)) {
                            ASSERT_EQ(get(next, {&other, i}), get(plan, {&other, i})) << keyOf(other, i);
                        }
            }
        }
    }
}

TEST(Catalogue, RefusesWhatLiesOutsideAndNamesKeyAndRange)
{
    const Plan plan = fullPlan();
    for (const Parameter& p : catalogue()) {
        if (p.isText()) continue;
        for (const int index : p.inList() ? std::vector<int>{0, kMostPieces - 1} : std::vector<int>{0}) {
            const ParameterRef ref{&p, index};
            SCOPED_TRACE(ref.key());
            const double step = whole(p) ? 1 : 1e-9 * (p.most - p.least);
            for (const double outside : {p.least - step, p.most + step, -1e300, 1e300}) {
                const auto refused = set(plan, ref, outside);
                ASSERT_FALSE(refused.ok()) << outside;
                EXPECT_EQ(refused.error().where, ref.key());
                EXPECT_THAT(refused.error().mend, HasSubstr(formatValue(p, p.least, kStyle)));
                EXPECT_THAT(refused.error().mend, HasSubstr(formatValue(p, p.most, kStyle)));
            }
            for (const double none : {std::nan(""), std::numeric_limits<double>::infinity()})
                EXPECT_EQ(set(plan, ref, none).ok(), false);
            // Halfway to the next whole number, or within a range that is narrower than that.
            const double between = whole(p) ? 0.5 : std::min(0.5, (p.most - p.least) / 2);
            EXPECT_EQ(set(plan, ref, p.least + between).ok(), !whole(p));
            const auto text = set(plan, ref, std::string("7"));
            ASSERT_FALSE(text.ok());
            EXPECT_EQ(text.error().where, ref.key());
        }
    }
}

TEST(Catalogue, RefusesLongTextsAndNumbersForTexts)
{
    const Plan plan = fullPlan();
    for (const Parameter& p : catalogue()) {
        if (!p.isText()) continue;
        const ParameterRef ref{&p, 0};
        const auto tooLong = set(plan, ref, std::string(static_cast<std::size_t>(p.most) + 1, 'x'));
        ASSERT_FALSE(tooLong.ok());
        EXPECT_EQ(tooLong.error().where, ref.key());
        EXPECT_FALSE(set(plan, ref, 7.0).ok());
    }
}

TEST(Catalogue, RangesAreToldInTheUnitOfThePlan)
{
    Plan plan;
    plan.sheet.unit = PlanUnit::InchDecimal;
    const auto ref = findParameter(plan, "bridge.width");
    ASSERT_TRUE(ref.ok());
    const auto refused = set(plan, *ref, 254.0);
    ASSERT_FALSE(refused.ok());
    EXPECT_THAT(refused.error().what, HasSubstr("10 in"));
    EXPECT_THAT(refused.error().mend, HasSubstr("4.724 in"));  // 120 mm / 25.4
}

TEST(Catalogue, FindsEveryKey)
{
    const Plan plan = fullPlan();
    for (const Parameter& p : catalogue())
        for (int i = 0; i < (p.inList() ? kMostPieces : 1); ++i) {
            const auto found = findParameter(plan, keyOf(p, i));
            ASSERT_TRUE(found.ok()) << keyOf(p, i);
            EXPECT_EQ(*found, (ParameterRef{&p, i}));
        }
}

TEST(Catalogue, SuggestsANearSpelling)
{
    for (const auto& [typed, meant] :
         {std::pair{"neck.widht", "neck.width"}, std::pair{"nek.width", "neck.width"},
          std::pair{"scale.lenght", "scale.length"}, std::pair{"bridge.artmargin", "bridge.art-margin"},
          std::pair{"hole.1.withd", "hole.#.width"}}) {
        const auto found = findParameter(Plan{}, typed);
        ASSERT_FALSE(found.ok()) << typed;
        EXPECT_EQ(found.error().where, typed);
        EXPECT_THAT(found.error().mend, HasSubstr(std::string("did you mean ") + meant));
    }
}

TEST(Catalogue, AnswersAnyKeyWithoutHarm)
{
    Plan plan;
    plan.holes.resize(2);
    for (const std::string& key :
         {std::string(), std::string("."), std::string("hole.0.x"), std::string("hole.3.x"),
          std::string("hole.-1.x"), std::string("hole.99999999999999999999.x"), std::string("hole.#.x"),
          std::string("box.1.length"), std::string(100000, '.'), std::string("\xff\xfe")}) {
        const auto found = findParameter(plan, key);
        ASSERT_FALSE(found.ok()) << key.substr(0, 40);
        EXPECT_FALSE(found.error().what.empty());
    }
    EXPECT_THAT(findParameter(plan, "hole.3.x").error().mend, HasSubstr("from 1 to 2"));
    EXPECT_THAT(findParameter(plan, "art.1.x").error().mend, HasSubstr("add one first"));
}

TEST(Catalogue, PartsGiveTheirOwnRows)
{
    Plan plan;
    plan.holes.resize(12);
    std::vector<std::string> keys;
    for (const ParameterRef& ref : parametersOf(plan, "hole.2"))
        keys.push_back(ref.key());
    EXPECT_EQ(keys, (std::vector<std::string>{"hole.2.kind", "hole.2.x", "hole.2.y", "hole.2.width",
                                              "hole.2.length", "hole.2.turn"}));
    EXPECT_EQ(parametersOf(plan, "hole.12").size(), 6u);
    EXPECT_TRUE(parametersOf(plan, "hole.13").empty());
    EXPECT_TRUE(parametersOf(plan, "hole.1.").empty());
    ASSERT_EQ(parametersOf(plan, "hole").size(), 1u);
    EXPECT_EQ(parametersOf(plan, "hole")[0].key(), "hole.count");
    EXPECT_TRUE(parametersOf(plan, "roof").empty());
    // Every quantity belongs to exactly one part.
    std::size_t all = 0;
    for (const PartInfo& part : parts()) {
        all += parametersOf(plan, part.key).size();
        for (int i = 1; part.list && i <= 12; ++i)
            all += parametersOf(plan, std::string(part.key) + "." + std::to_string(i)).size();
    }
    std::size_t wanted = 0;
    for (const Parameter& p : catalogue())
        wanted += p.inList() ? static_cast<std::size_t>(p.size(plan)) : 1;
    EXPECT_EQ(all, wanted);
}

TEST(Catalogue, DefaultsAreThoseOfAFreshPlan)
{
    Plan plan;
    plan.ties.resize(1);
    plan.holes.resize(1);
    plan.fixings.resize(1);
    plan.backingLayers.resize(1);
    plan.hollows.resize(1);
    plan.bars.resize(1);
    plan.wiring.resize(1);
    plan.stock.resize(1);
    plan.prices.resize(1);
    plan.accepted.resize(1);
    for (const Parameter& p : catalogue())
        if (!listCount(p) && partOf(p) != "art" && partOf(p) != "block") {
            EXPECT_EQ(defaultValue(p), get(plan, {&p, 0})) << p.key;
        }
    const auto count = findParameter(plan, "hole.count");
    EXPECT_EQ(std::get<double>(defaultValue(*count->parameter)), 0);
}

TEST(Catalogue, SaysWhatAnotherChoiceMakesMeaningless)
{
    Plan plan;
    plan.holes.resize(2);
    plan.holes[1].kind = HoleKind::Slot;
    const auto isActive = [&](const char* key) { return active(plan, *findParameter(plan, key)); };
    EXPECT_FALSE(isActive("hole.1.length"));
    EXPECT_TRUE(isActive("hole.2.length"));
    EXPECT_TRUE(isActive("scale.nut-to-box"));
    EXPECT_FALSE(isActive("scale.saddle-to-tail"));
    plan.scale.hold = ScaleHold::SaddleToTail;
    EXPECT_FALSE(isActive("scale.nut-to-box"));
    EXPECT_TRUE(isActive("scale.saddle-to-tail"));
    plan.scale.hold = ScaleHold::BothAsMeasured;
    EXPECT_TRUE(isActive("scale.nut-to-box") && isActive("scale.saddle-to-tail"));
    EXPECT_FALSE(isActive("head-opening.depth"));
    plan.headOpening.cut = true;
    EXPECT_TRUE(isActive("head-opening.depth"));
    EXPECT_FALSE(isActive("tail-opening.depth"));
    EXPECT_TRUE(isActive("box.corner-radius") && isActive("corner-blocks.height"));
    plan.box.shape = BoxShape::Outline;
    EXPECT_FALSE(isActive("box.corner-radius") || isActive("corner-blocks.height"));
    EXPECT_FALSE(isActive("sheet.fraction"));
    EXPECT_FALSE(isActive("fretboard.over-lid"));
}

TEST(Catalogue, EditsAreAppliedInOrderOrNotAtAll)
{
    const Plan plan;
    const std::vector<Edit> edits = {{"hole.count", 2.0}, {"hole.2.x", 55.0}, {"neck.width", 41.0}};
    const auto next = applyEdits(plan, edits);
    ASSERT_TRUE(next.ok());
    EXPECT_EQ(next->holes.size(), 2u);
    EXPECT_EQ(next->holes[1].x, 55);
    EXPECT_EQ(next->neck.width, 41);

    const std::vector<Edit> wrongOrder = {{"hole.2.x", 55.0}, {"hole.count", 2.0}};
    const auto refused = applyEdits(plan, wrongOrder);
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().where, "hole.2.x");

    const std::vector<Edit> tooMany = {{"hole.count", 65.0}};
    EXPECT_FALSE(applyEdits(plan, tooMany).ok());
    // The outlines of a drawing are shared, not copied, by an edit.
    Plan withArt;
    withArt.art.resize(1);
    withArt.art[0].art = std::make_shared<Artwork>();
    EXPECT_EQ(applyEdits(withArt, edits)->art[0].art, withArt.art[0].art);
}

}  // namespace
}  // namespace lidwright
