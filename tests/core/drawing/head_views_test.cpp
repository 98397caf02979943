#include "tests/core/drawing/drawn_plans.h"

#include "core/drawing/board_sheet.h"

namespace lidwright {
namespace {

using testing::optionsOf;
using testing::viewOf;

/// Elements of one part in one view alone.
template <typename T>
std::vector<T> of(const Plan& plan, View view, const std::string& part, const std::string& layer)
{
    BoardOptions options = optionsOf(plan);
    options.only = view;
    std::vector<T> out;
    for (const Element& e : boardSheet(plan, derive(plan), options).sheet.elements)
        if (e.part == part && e.layer == layer)
            if (const auto* what = std::get_if<T>(&e.what)) out.push_back(*what);
    return out;
}

TEST(HeadViews, TheSectionShowsTheNeckWithoutWhatIsTakenOff)
{
    Plan plan;
    double stick = plan.neck.thickness * derive(plan).neckNeeded;
    for (const ReliefCut& cut : derive(plan).relief.cuts)
        stick -= cut.sectionArea();
    const Head& head = plan.head;
    const double off =
        (plan.neck.thickness - head.thickness) * (plan.neck.headLength - head.step - head.ramp / 2);
    for (const HeadShape shape : {HeadShape::Thinned, HeadShape::Tree}) {
        plan.head.shape = shape;
        const auto fills = of<Fill>(plan, View::Section, "neck", "neck");
        ASSERT_EQ(fills.size(), 1U);
        EXPECT_NEAR(std::abs(signedArea(fills[0].ring)), stick - off, 1e-3);
    }
    plan.head.shape = HeadShape::Scarfed;
    const auto fills = of<Fill>(plan, View::Section, "neck", "neck");
    ASSERT_EQ(fills.size(), 1U);
    // It leans back: its end lies lower than the stick.
    const double low = bounds(fills[0].ring).height();
    EXPECT_GT(low, plan.neck.thickness + 10);
}

TEST(HeadViews, FromAboveEveryTunerHasItsHolePostBushPlateAndCross)
{
    for (const HeadShape shape : {HeadShape::Thinned, HeadShape::Scarfed, HeadShape::Tree}) {
        Plan plan;
        plan.head.shape = shape;
        const std::size_t count = plan.stringSet.size();
        std::size_t hidden = 0, visible = 0;
        for (const Stroke& s : of<Stroke>(plan, View::Top, "tuners", "tuners"))
            ++(s.kind == LineKind::Hidden ? hidden : visible);
        EXPECT_EQ(hidden, 2 * count);   // plate and hole
        EXPECT_EQ(visible, 2 * count);  // bush and post
        for (const Stroke& s : of<Stroke>(plan, View::Top, "tuners", "centre"))
            EXPECT_EQ(s.kind, LineKind::Centre);
        EXPECT_EQ(of<Stroke>(plan, View::Top, "tuners", "centre").size(), 2 * count);
    }
}

TEST(HeadViews, StringsRunOnToTheirPostsInBothViews)
{
    for (const HeadShape shape : {HeadShape::Thinned, HeadShape::Scarfed, HeadShape::Tree}) {
        Plan plan;
        plan.head.shape = shape;
        const Layout l = derive(plan);
        for (const View view : {View::Top, View::Section}) {
            BoardOptions options = optionsOf(plan);
            options.only = view;
            const BoardSheet board = boardSheet(plan, l, options);
            const PlacedView& placed = *viewOf(board, view);
            for (const HeadString& string : l.head.strings) {
                const RaisedPoint& end = string.way.back();
                const Point wanted = placed.toSheet(view == View::Top ? end.at : Point{end.at.x, end.z});
                double nearest = 1e300;
                for (const Element& e : board.sheet.elements)
                    if (const auto* s = std::get_if<Stroke>(&e.what); s != nullptr && e.part == "strings")
                        nearest = std::min(nearest, distance(s->points.back(), wanted));
                EXPECT_LT(nearest, 1e-9);
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
