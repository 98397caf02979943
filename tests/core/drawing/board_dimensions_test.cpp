#include "tests/core/drawing/drawn_plans.h"

#include "core/base/length_text.h"
#include "core/drawing/board_sheet.h"

#include <map>

namespace lidwright {
namespace {

using testing::all;
using testing::optionsOf;

std::string said(double mm, const UnitStyle& style)
{
    return formatLength(mm, style, false).text;
}

std::map<std::string, std::string> wordsByKey(const Sheet& sheet)
{
    std::map<std::string, std::string> out;
    for (const Dimension& d : all<Dimension>(sheet))
        if (!d.key.empty()) {
            EXPECT_FALSE(out.count(d.key)) << d.key << " is dimensioned twice";
            out[d.key] = d.words;
        }
    return out;
}

TEST(BoardDimensions, SayWhatTheLayoutMeasures)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const Layout l = derive(plan);
        const BoardOptions options = optionsOf(plan);
        auto words = wordsByKey(boardSheet(plan, l, options).sheet);
        const auto expect = [&](const std::string& key, double mm) {
            EXPECT_EQ(words[key], said(mm, options.style)) << name << ": " << key;
        };
        expect("box.length", l.body.width());
        expect("box.width", l.body.height());
        expect("box.height", l.walls.size());
        expect("box.base", l.base.size());
        expect("lid.thickness", l.lid.size());
        expect("neck.head-length", l.nutX - l.headEndX);
        expect("neck.tail-length", l.tailEndX - l.tailWall.outerMaxX);
        expect("neck.width", plan.neck.width);
        expect("neck.thickness", l.neckZ.size());
        expect("bridge.length", plan.bridge.length);
        expect("bridge.width", plan.bridge.width);
        expect("bridge.height", l.bridgeZ.size());
        if (plan.box.shape == BoxShape::Rectangle)
            expect("box.end-wall", l.headWall.innerX - l.headWall.outerX);
        if (plan.scale.hold != ScaleHold::SaddleToTail)
            expect("scale.nut-to-box", l.headWall.outerX - l.nutX);
        if (plan.scale.hold != ScaleHold::NutToBox)
            expect("scale.saddle-to-tail", l.tailWall.outerX - l.saddleX);
        // With a setback the distance drawn is not the scale length, and says so by having no key.
        if (plan.scale.hold != ScaleHold::BothAsMeasured && plan.scale.setback == 0)
            expect("scale.length", l.saddleX - l.nutX);
        if (plan.headOpening.cut) {
            expect("head-opening.width", l.headWall.openingWidth);
            expect("head-opening.depth", l.headWall.wall.high - l.headWall.opening.low);
        }
    }
}

// A key at a dimension is a promise: to change the number there changes the plan, and the drawing follows.
TEST(BoardDimensions, EveryKeyCanBeEditedAndTheDimensionFollows)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const BoardOptions options = optionsOf(plan);
        for (const auto& [key, words] : wordsByKey(boardSheet(plan, derive(plan), options).sheet)) {
            const auto ref = findParameter(plan, key);
            ASSERT_TRUE(ref.ok()) << key;
            EXPECT_TRUE(active(plan, *ref)) << name << ": " << key;
            const double now = std::get<double>(get(plan, *ref));
            EXPECT_EQ(words, said(now, options.style)) << name << ": " << key;
            const double next = now + 1.5875;
            const auto changed = set(plan, *ref, next);
            ASSERT_TRUE(changed.ok()) << name << ": " << key;
            const auto after = wordsByKey(boardSheet(*changed, derive(*changed), options).sheet);
            ASSERT_TRUE(after.count(key)) << name << ": " << key;
            EXPECT_EQ(after.at(key), said(next, options.style)) << name << ": " << key;
        }
    }
}

TEST(BoardDimensions, TheirLinesAreAsLongAsTheySay)
{
    Plan plan;
    plan.sheet.unit = PlanUnit::Millimetre;
    for (const Dimension& d : all<Dimension>(boardSheet(plan, derive(plan), optionsOf(plan)).sheet))
        EXPECT_EQ(said(distance(d.a, d.b), unitStyle(plan)), d.words);
}

TEST(BoardDimensions, NoWordsLieOverOthers)
{
    for (auto& [name, plan] : testing::drawnPlans())
        for (const Projection projection : {Projection::FirstAngle, Projection::ThirdAngle})
            for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchDecimal, PlanUnit::InchFraction})
                for (const bool under : {false, true}) {
                    Plan own = plan;
                    own.sheet.unit = unit;
                    own.sheet.projection = projection;
                    BoardOptions options = optionsOf(own);
                    options.under = under;
                    const Sheet sheet = boardSheet(own, derive(own), options).sheet;
                    EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty())
                        << name << ", unit " << static_cast<int>(unit) << ", first angle "
                        << (projection == Projection::FirstAngle) << ", under " << under;
                }
}

// Words of dimensions outside the views are not struck through by any extension line.
TEST(BoardDimensions, NoExtensionLineRunsThroughWords)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const Sheet sheet = boardSheet(plan, derive(plan), optionsOf(plan)).sheet;
        const auto dimensions = all<Dimension>(sheet);
        for (const Dimension& worded : dimensions) {
            if (worded.boxed) continue;
            const Ring words = textOutline(dimensionText(worded, sheet.paper), sheet.paper);
            for (const Dimension& lined : dimensions)
                for (const Element& e : dimensionElements(lined, "", sheet.paper))
                    if (const auto* s = std::get_if<Stroke>(&e.what)) {
                        EXPECT_FALSE(testing::overlap(words, s->points))
                            << name << ": " << worded.words << " by " << lined.words;
                    }
        }
    }
}

TEST(BoardDimensions, CanBeLeftOut)
{
    const Plan plan;
    BoardOptions options = optionsOf(plan);
    options.dimensions = false;
    EXPECT_TRUE(all<Dimension>(boardSheet(plan, derive(plan), options).sheet).empty());
}

TEST(BoardDimensions, TheSelectedPartShowsItsOwn)
{
    Plan plan;
    plan.art.push_back(testing::roundel());
    plan.holes.push_back({HoleKind::Slot, 70, -60, 12, 50, 30});
    plan.blocks.push_back({BoxWall::TrebleSide, 150, 60, 12, 12});
    const Layout layout = derive(plan);
    const std::map<std::string, std::vector<std::string>> keys{
        {"hole.1", {"hole.1.x", "hole.1.y", "hole.1.width", "hole.1.length"}},
        {"art.1", {"art.1.x", "art.1.y"}},
        {"block.1", {"block.1.at", "block.1.length", "block.1.depth"}},
        {"strings", {"strings.spread-at-nut", "strings.spread-at-saddle"}},
        {"fretboard", {"fretboard.width-at-nut", "fretboard.width-at-end"}},
        {"head", {"head.step"}},
        {"tuners", {"tuners.first", "tuners.spacing", "tuners.edge"}},
        {"corner-blocks", {"corner-blocks.along-end", "corner-blocks.along-side"}}};
    for (const auto& [part, expected] : keys) {
        BoardOptions options = optionsOf(plan);
        EXPECT_FALSE(wordsByKey(boardSheet(plan, layout, options).sheet).count(expected.front()));
        options.selected = part;
        const auto words = wordsByKey(boardSheet(plan, layout, options).sheet);
        for (const std::string& key : expected) {
            ASSERT_TRUE(words.count(key)) << key;
            const double value = std::abs(std::get<double>(get(plan, *findParameter(plan, key))));
            EXPECT_EQ(words.at(key), said(value, options.style)) << key;
        }
    }
}

TEST(BoardDimensions, AMemberThatIsNotThereShowsNothing)
{
    const Plan plan;
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    const std::size_t plain = boardSheet(plan, layout, options).sheet.elements.size();
    for (const char* part : {"hole.1", "art.0", "art.99999999999", "block.", "hole.1x", "nothing"}) {
        options.selected = part;
        EXPECT_EQ(boardSheet(plan, layout, options).sheet.elements.size(), plain) << part;
    }
}

}  // namespace
}  // namespace lidwright
