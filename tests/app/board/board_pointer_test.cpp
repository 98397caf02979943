#include "app/board/board_marks.h"
#include "tests/app/board/board_fixture.h"

#include <functional>

namespace lidwright::testing {
namespace {

using BoardPointer = BoardTest;

/// A place on the bridge that no string and no mark covers.
Point onBridge(const Layout& l)
{
    const Bounds b = bounds(l.bridgeOutline);
    return {l.saddleX + b.width() / 4, b.minY + b.height() * 0.1};
}

TEST_F(BoardPointer, ClickSelectsThePartAndPaperClearsIt)
{
    click(pixel(View::Top, onBridge(layout())));
    EXPECT_EQ(selected(), "bridge");
    click(pixel(View::Top, {90, -65}));
    EXPECT_EQ(selected(), "art.1");
    click(pixel(View::Top, {80, 60}));
    EXPECT_EQ(selected(), "hole.1");
    // Beside the neck there is nothing but paper.
    click(pixel(View::Top, {layout().nutX + 20, -70}));
    EXPECT_EQ(selected(), "");
    EXPECT_EQ(steps(), 0);
}

TEST_F(BoardPointer, DraggingTheBridgeIsWhatCoreSaysAndOneStep)
{
    const Plan start = document.plan();
    const Layout startLayout = layout();
    const Handle saddle = handleOf("saddle");
    const QPoint from = pixel(View::Top, onBridge(startLayout));
    const QPoint to = from + QPoint(-25, 3);
    const double drawn = scale();  // at the end the sheet may be fitted anew
    const double mm = 25 / drawn;
    dragMouse(from, to);

    ASSERT_EQ(steps(), 1);
    EXPECT_LT(layout().saddleX, startLayout.saddleX);
    // Independent of core's own word: the way on the screen, but for a step of 1 mm or an attraction 8 px
    // wide.
    EXPECT_NEAR(startLayout.saddleX - layout().saddleX, mm, std::max(1.0, 8 / drawn));
    // What the document holds is one of core's answers for this handle at this place.
    const Drag said =
        drag(start, startLayout, saddle, saddle.at + Point{-25 / drawn, -3 / drawn}, {true, 8 / drawn, 1});
    const auto expected = applyEdits(start, said.edits);
    ASSERT_TRUE(expected.ok());
    EXPECT_NEAR(document.plan().scale.nutToBox, expected->scale.nutToBox, 1e-9);
    Plan elsewhere = document.plan();
    elsewhere.scale = start.scale;
    EXPECT_EQ(elsewhere, start) << "something else was changed";
    EXPECT_TRUE(document.undoStack().undoText().startsWith("Move bridge"))
        << document.undoStack().undoText().toStdString();
    // The nut is not left behind: the scale length is what it was.
    EXPECT_NEAR(layout().saddleX - layout().nutX, start.scale.length, 1e-9);

    document.undoStack().undo();
    EXPECT_EQ(document.plan(), start);
}

TEST_F(BoardPointer, EscapeTakesADragBack)
{
    const Plan start = document.plan();
    const QPoint from = pixel(View::Top, onBridge(layout()));
    press(from);
    move(from + QPoint(-15, 0));
    move(from + QPoint(-40, 0));
    EXPECT_TRUE(document.dragging());
    EXPECT_NE(document.plan(), start);
    key(Qt::Key_Escape);
    EXPECT_FALSE(document.dragging());
    EXPECT_EQ(document.plan(), start);
    // The hand is still down: nothing more may happen.
    move(from + QPoint(-60, 0));
    release(from + QPoint(-60, 0));
    EXPECT_EQ(document.plan(), start);
    EXPECT_EQ(steps(), 0);
    EXPECT_EQ(selected(), "bridge");
}

TEST_F(BoardPointer, ATrembleIsNoDrag)
{
    const Plan start = document.plan();
    const QPoint at = pixel(View::Top, onBridge(layout()));
    press(at);
    move(at + QPoint(1, 1));
    release(at + QPoint(1, 1));
    EXPECT_EQ(document.plan(), start);
    EXPECT_EQ(steps(), 0);
}

TEST_F(BoardPointer, MarksMoveNutTailBoxEdgeAndBase)
{
    // A drag of so many pixels changes the value by so many mm, but for a round step and a pixel at either
    // end.
    const auto expectDrag = [&](const std::string& id, View view, QPoint way,
                                const std::function<double()>& value, double factor = 1) {
        const double before = value();
        const double drawn = scale();  // at the end the sheet may be fitted anew
        const QPoint from = pixel(view, handleOf(id, view).at);
        dragMouse(from, from + way);
        EXPECT_NEAR(value(), before + factor * way.manhattanLength() / drawn, factor * (1.5 + 1.5 / drawn))
            << id;
    };
    const auto& plan = document.plan();
    expectDrag("nut", View::Top, {-30, 0}, [&] { return plan.scale.nutToBox; });
    EXPECT_EQ(steps(), 1);
    expectDrag("neck.tail-end", View::Top, {24, 0}, [&] { return plan.neck.tailLength; });
    EXPECT_EQ(steps(), 2);
    expectDrag("box.tail", View::Top, {40, 0}, [&] { return plan.box.length; });
    expectDrag(
        "box.side", View::Top, {0, -20}, [&] { return plan.box.width; }, 2);
    expectDrag("box.base", View::Section, {0, 18}, [&] { return plan.box.height; });
    EXPECT_EQ(steps(), 5);
}

TEST_F(BoardPointer, HeadEndViewIsMirroredForTheHandToo)
{
    const double before = document.plan().box.width;
    const Handle side = handleOf("box.side", View::HeadEnd);
    const QPoint from = pixel(View::HeadEnd, side.at);
    // The treble side lies at the left there: outward is to the left.
    EXPECT_LT(from.x(), pixel(View::HeadEnd, {0, side.at.y}).x());
    dragMouse(from, from + QPoint(-15, 0));
    EXPECT_GT(document.plan().box.width, before);
}

TEST_F(BoardPointer, ArtworkTurnsAndScalesByItsMarks)
{
    // Large enough that a pixel is a small angle.
    board.fitView(View::Top);
    board.zoomBy(1.5);
    ASSERT_TRUE(board.canvas().contains(pixel(View::Top, {90, -65})));
    click(pixel(View::Top, {90, -65}));
    const QPoint centre = pixel(View::Top, {90, -65});
    QPoint grip = pixel(View::Top, handleOf("art.1.turn").at);
    // A quarter turn counter-clockwise: from above the middle to its left.
    const QPoint arm = grip - centre;
    dragMouse(grip, centre + QPoint(arm.y(), -arm.x()));
    EXPECT_NEAR(document.plan().art[0].turn, 90, 3);

    const double scaleBefore = document.plan().art[0].scale;
    grip = pixel(View::Top, handleOf("art.1.scale").at);
    dragMouse(grip, centre + (grip - centre) * 3 / 2);
    EXPECT_NEAR(document.plan().art[0].scale, 1.5 * scaleBefore, 0.1);
    EXPECT_EQ(steps(), 2);
}

TEST_F(BoardPointer, ArtworkIsCarriedByItsArea)
{
    // Near enough that the grips of the drawing do not cover its whole area.
    board.fitView(View::Top);
    const QPoint from = pixel(View::Top, {90, -65});
    const double drawn = scale();
    dragMouse(from, from + QPoint(30, -20));
    EXPECT_NEAR(document.plan().art[0].x, 90 + 30 / drawn, 8 / drawn + 1);
    EXPECT_NEAR(document.plan().art[0].y, -65 + 20 / drawn, 8 / drawn + 1);
}

TEST_F(BoardPointer, SnappingCanBeSwitchedOff)
{
    board.setSnapping(false);
    EXPECT_FALSE(board.snapping());
    const double before = layout().saddleX;
    const QPoint from = pixel(View::Top, onBridge(layout()));
    const double pixelMm = 1 / scale();
    dragMouse(from, from + QPoint(-13, 0));
    EXPECT_NEAR(layout().saddleX, before - 13 * pixelMm, 1e-6);
}

TEST_F(BoardPointer, WheelKeepsWhatLiesUnderThePointer)
{
    for (const QPointF at : {QPointF(700, 420), QPointF(60, 200), QPointF(1100, 90)}) {
        const double before = scale();
        const Point held = board.transform().toSheet(at);
        wheel(at, 3);
        EXPECT_GT(scale(), before * 1.5);
        EXPECT_NEAR(board.transform().toWidget(held).x(), at.x(), 1e-6);
        EXPECT_NEAR(board.transform().toWidget(held).y(), at.y(), 1e-6);
        wheel(at, -3);
        EXPECT_NEAR(scale(), before, 1e-9);
    }
}

TEST_F(BoardPointer, ZoomHasEndsAndSaysThePercentage)
{
    QSignalSpy zoom(&board, &BoardWidget::zoomChanged);
    wheel({600, 300}, 200);
    EXPECT_DOUBLE_EQ(scale(), ViewTransform::kMostScale);
    ASSERT_FALSE(zoom.isEmpty());
    // 100 % is full size: the logical resolution's pixels to the inch.
    EXPECT_NEAR(zoom.last().at(0).toDouble(), 100 * scale() * 25.4 / board.logicalDpiX(), 1e-6);
    wheel({600, 300}, -400);
    EXPECT_DOUBLE_EQ(scale(), ViewTransform::kLeastScale);
    board.fitAll();
    const QRectF sheet = board.transform().toWidget(board.scene().sheet().extent);
    EXPECT_TRUE(board.canvas().contains(sheet));
    EXPECT_GT(sheet.width() / board.canvas().width(), 0.85);
}

TEST_F(BoardPointer, MiddleButtonAndSpacePan)
{
    const QPointF before = board.transform().origin();
    QTest::mousePress(&board, Qt::MiddleButton, {}, {500, 300});
    QTest::mouseMove(&board, {540, 290});
    QTest::mouseRelease(&board, Qt::MiddleButton, {}, {540, 290});
    EXPECT_EQ(board.transform().origin(), before + QPointF(40, -10));

    // With Space the part under the pointer stays where it is.
    const Plan start = document.plan();
    const QPoint at = pixel(View::Top, onBridge(layout()));
    QTest::keyPress(&board, Qt::Key_Space);
    dragMouse(at, at + QPoint(-30, 12));
    QTest::keyRelease(&board, Qt::Key_Space);
    EXPECT_EQ(board.transform().origin(), before + QPointF(10, 2));
    EXPECT_EQ(document.plan(), start);
}

TEST_F(BoardPointer, HairlineAndCaptionFollowThePointer)
{
    QSignalSpy caption(&board, &BoardWidget::caption);
    const QImage before = board.grab().toImage();
    const QPoint at = pixel(View::Top, {150, 80});
    move(at);
    ASSERT_FALSE(caption.isEmpty());
    EXPECT_TRUE(caption.last().at(0).toString().contains("from the nut"))
        << caption.last().at(0).toString().toStdString();
    const QImage after = board.grab().toImage();
    const auto changed = [&](QPoint p) {
        // The line lies within a pixel of the place.
        for (int x = p.x() - 1; x <= p.x() + 1; ++x)
            if (before.pixel(x, p.y()) != after.pixel(x, p.y())) return true;
        return false;
    };
    // In the top view, in the long section over it, in the lane and in the rule.
    EXPECT_TRUE(changed({at.x(), pixel(View::Top, {150, 20}).y()}));
    EXPECT_TRUE(changed({at.x(), pixel(View::Section, {150, -30}).y()}));
    EXPECT_TRUE(changed({at.x(), board.bridgeLaneBar().geometry().bottom() - 1}) ||
                changed({at.x(), board.bridgeLaneBar().geometry().top() + 1}));
    EXPECT_TRUE(changed({at.x(), board.stationRule().geometry().bottom() - 4}));
    // And the height across, where the end views show it.
    EXPECT_TRUE(changed(pixel(View::TailEnd, {80, -40})));
    EXPECT_TRUE(changed(pixel(View::HeadEnd, {80, -40})));
}

TEST_F(BoardPointer, DoubleClickOpensTheFormOfAPart)
{
    QSignalSpy activated(&board, &BoardWidget::partActivated);
    QTest::mouseDClick(&board, Qt::LeftButton, {}, pixel(View::Top, onBridge(layout())));
    ASSERT_EQ(activated.count(), 1);
    EXPECT_EQ(activated.first().at(0).toString(), "bridge");
}

TEST_F(BoardPointer, WhatIsHeldStaysUnderTheHandWhenTheSheetGrows)
{
    // The section's box grows downward while its base is dragged; all views keep their places on the screen.
    const QPoint from = pixel(View::Section, handleOf("box.base", View::Section).at);
    press(from);
    move(from + QPoint(0, 20));
    move(from + QPoint(0, 50));
    const QPoint now = pixel(View::Section, handleOf("box.base", View::Section).at);
    EXPECT_NEAR(now.y(), from.y() + 50, scale() * 1.0 + 2);
    EXPECT_NEAR(now.x(), from.x(), 2);
    release(from + QPoint(0, 50));
}

TEST_F(BoardPointer, UnderViewTakesTheTopViewsPlace)
{
    board.setUnderView(true);
    EXPECT_TRUE(board.underView());
    EXPECT_EQ(board.scene().placed(View::Top), nullptr);
    ASSERT_NE(board.scene().placed(View::Under), nullptr);
    // Turned over about its length: the treble side lies below.
    EXPECT_GT(pixel(View::Under, {100, 80}).y(), pixel(View::Under, {100, -80}).y());
    const double before = document.plan().art[0].y;
    const QPoint from = pixel(View::Under, {90, -65});
    dragMouse(from, from + QPoint(0, 30));
    EXPECT_GT(document.plan().art[0].y, before + 10);
}

TEST_F(BoardPointer, PlacesAreFramedAndBroughtIntoSight)
{
    board.zoomBy(12);
    const Place place{View::Section, {layout().tailEndX - 10, -20, layout().tailEndX, -5}};
    board.showPlaces({place});
    ASSERT_EQ(board.markedPlaces().size(), 1U);
    const PlacedView* section = board.scene().placed(View::Section);
    EXPECT_TRUE(board.canvas().contains(board.transform().toWidget(section->toSheet(place.box.centre()))));
    const QImage with = board.grab().toImage();
    key(Qt::Key_Escape);
    EXPECT_TRUE(board.markedPlaces().empty());
    EXPECT_NE(with, board.grab().toImage());

    // Two places too far apart for the present zoom: all of both is shown.
    board.zoomBy(4);
    const Place far{View::Section, {layout().headEndX, -20, layout().headEndX + 10, -5}};
    board.showPlaces({place, far});
    for (const Place& p : {place, far})
        EXPECT_TRUE(board.canvas().contains(board.transform().toWidget(section->toSheet(p.box.centre()))));
}

TEST_F(BoardPointer, AMarkOfAFindingLeadsToItsPart)
{
    // The bridge in the middle of the drawing is wrong; its mark can be clicked.
    document.reset(with(startPlan(), {{"art.1.x", 235.0}, {"art.1.y", 0.0}}), {});
    const auto& findings = document.findings();
    ASSERT_FALSE(findings.empty());
    ASSERT_EQ(findings.front().verdict, Verdict::Wrong);
    ASSERT_FALSE(findings.front().places.empty());
    const auto spots = markSpots(findings, board.scene(), board.transform());
    ASSERT_FALSE(spots.empty());
    for (std::size_t i = 0; i < spots.size(); ++i)
        for (std::size_t j = i + 1; j < spots.size(); ++j)
            EXPECT_FALSE(spots[i].box.intersects(spots[j].box));
    click(spots.front().box.center().toPoint());
    EXPECT_EQ(selected().toStdString(), findings[spots.front().finding].part);
    EXPECT_FALSE(board.markedPlaces().empty());
}

TEST_F(BoardPointer, ATieIsDraggedAcrossItsDrawing)
{
    Plan plan = startPlan();
    plan.art[0].turn = 90;
    plan.ties = {{1, -8, 0, 4}};
    document.reset(plan, {});
    board.fitAll();
    board.setSnapping(false);
    document.select(QStringLiteral("tie.1"));
    const Point from = layout().ties[0].at;
    const Bounds outline = bounds(layout().ties[0].outline);
    const QPoint start = pixel(View::Top, outline.centre());
    dragMouse(start, start + QPoint(20, 0));
    EXPECT_EQ(steps(), 1);
    EXPECT_NEAR(layout().ties[0].at.x, from.x + 20 / scale(), 1 / scale());
    EXPECT_NEAR(layout().ties[0].at.y, from.y, 1 / scale());
    document.undoStack().undo();
    EXPECT_EQ(document.plan(), plan);
}

TEST_F(BoardPointer, AFixingHoleIsDragged)
{
    Plan plan = startPlan();
    plan.fixings = {LidFixing{FixingKind::Pin, 60, 70, 5}};
    document.reset(plan, {});
    board.fitAll();
    board.setSnapping(false);
    const QPoint start = pixel(View::Top, {60, 70});
    dragMouse(start, start + QPoint(12, 9));
    EXPECT_EQ(selected(), "fixing.1");
    EXPECT_NEAR(document.plan().fixings[0].x, 60 + 12 / scale(), 1 / scale());
    EXPECT_NEAR(document.plan().fixings[0].y, 70 - 9 / scale(), 1 / scale());
    EXPECT_EQ(steps(), 1);
}

TEST_F(BoardPointer, ARemedyIsShownWithoutChangingThePlan)
{
    const auto lidLines = [this] {
        std::size_t points = 0;
        for (const Element& e : board.scene().sheet().elements)
            if (e.part == "hole.1")
                if (const auto* area = std::get_if<Fill>(&e.what)) points += area->ring.size();
        return points;
    };
    const Plan before = document.plan();
    const std::size_t drawn = lidLines();
    ASSERT_GT(drawn, 0U);
    board.showPreview({{"Take the hole out", {}}, {{"hole.count", 0.0}}});
    EXPECT_FALSE(board.previewing()) << "a pointer that only passes shows nothing";
    ASSERT_TRUE(QTest::qWaitFor([this] { return board.previewing(); }));
    EXPECT_EQ(lidLines(), 0U);
    EXPECT_EQ(document.plan(), before);
    EXPECT_EQ(steps(), 0);
    board.endPreview();
    EXPECT_FALSE(board.previewing());
    EXPECT_EQ(lidLines(), drawn);
    // A change of the plan ends it too.
    board.showPreview({{"Take the hole out", {}}, {{"hole.count", 0.0}}});
    ASSERT_TRUE(QTest::qWaitFor([this] { return board.previewing(); }));
    document.edit({{"box.length", 321.0}}, QStringLiteral("Length"));
    EXPECT_FALSE(board.previewing());
    EXPECT_EQ(document.plan().box.length, 321);
}

}  // namespace
}  // namespace lidwright::testing
