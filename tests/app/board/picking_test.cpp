#include "app/board/picking.h"

#include "tests/app/board/board_fixture.h"

namespace lidwright::testing {
namespace {

class Picking : public BoardTest {
protected:
    Picked at(View view, Point inView, QPointF pixelsAway = {})
    {
        PaintLook look;
        look.surface = Surface::Screen;
        look.scale = scale();
        look.origin = board.transform().toSheet({0, 0});
        look.paper = board.scene().sheet().paper;
        look.font = board.font();
        const Point sheet = board.scene().placed(view)->toSheet(inView) +
                            Point{pixelsAway.x() / scale(), -pixelsAway.y() / scale()};
        return pick(board.scene(), placedHandles(board.scene(), document.plan(), layout()), sheet, look,
                    document.selectedPart().toStdString());
    }
};

TEST_F(Picking, MarksHaveATargetOf24Pixels)
{
    const Point nut = handleOf("nut").at;
    for (const QPointF away : {QPointF(0, 0), QPointF(0, 11), QPointF(-11, 11), QPointF(11, 5)}) {
        const Picked found = at(View::Top, nut, away);
        ASSERT_TRUE(found.handle.has_value()) << away.x() << " " << away.y();
        EXPECT_EQ(found.handle->id, "nut");
    }
    const Picked beside = at(View::Top, nut, {0, 13});
    EXPECT_TRUE(!beside.handle || beside.handle->id != "nut");
}

TEST_F(Picking, AMarkDoesNotSwallowItsOwnPart)
{
    const Handle turn = handleOf("art.1.turn");
    EXPECT_EQ(at(View::Top, turn.at).handle->id, "art.1.turn");
    // However small the drawing is on the screen, its middle is the drawing's.
    for (const double factor : {1.0, 0.5, 0.5}) {
        board.zoomBy(factor);
        const double apart = (turn.at.y - document.plan().art[0].y) * scale();
        if (apart <= kMarkReach) break;
        const Picked middle = at(View::Top, {90, -65});
        ASSERT_TRUE(middle.handle.has_value());
        EXPECT_EQ(middle.handle->id, "art.1.move") << "at " << apart << " px";
    }
}

TEST_F(Picking, AnAreaInTheHandWinsOverTheStringsThatCrossIt)
{
    ASSERT_FALSE(layout().strings.empty());
    const Point onString = layout().strings.front().second;
    const Picked found = at(View::Top, {onString.x - 4, onString.y});
    EXPECT_EQ(found.part, "bridge");
    ASSERT_TRUE(found.handle.has_value());
    EXPECT_EQ(found.handle->id, "saddle");
    // Between box and nut the strings lie over a fretboard that has no grip: the line is what is meant.
    const auto& [nut, saddle] = layout().strings.front();
    const double t = 0.3;
    EXPECT_EQ(at(View::Top, {nut.x + t * (saddle.x - nut.x), nut.y + t * (saddle.y - nut.y)}).part,
              "string.1");
}

TEST_F(Picking, BarePaperIsNothing)
{
    const Picked found = at(View::Top, {layout().nutX + 20, -80});
    EXPECT_TRUE(found.part.empty());
    EXPECT_FALSE(found.handle.has_value());
    EXPECT_FALSE(found.dimension.has_value());
}

}  // namespace
}  // namespace lidwright::testing
