#pragma once

#include "app/board/board_scene.h"
#include "app/board/board_widget.h"
#include "app/board/bridge_lane_bar.h"
#include "app/board/dimension_editor.h"
#include "app/board/picking.h"
#include "app/board/station_rule.h"
#include "app/board/view_transform.h"
#include "app/document/plan_document.h"
#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

namespace lidwright::testing {

/// A board with a plan that has one drawing, one plain hole and one block, and hands to work it.
class BoardTest : public ::testing::Test {
protected:
    void SetUp() override
    {
        document.reset(startPlan(), {});
        board.resize(1200, 760);
        board.show();
        board.activateWindow();
        board.setFocus();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&board));
    }

    static Plan startPlan()
    {
        Plan plan;
        Region drawing;
        drawing.rings = {circleRing({0, 0}, 12), circleRing({30, 0}, 9)};
        ArtPiece piece = pieceOf(fill(drawing.rings, FillRule::NonZero));
        piece.x = 90;
        piece.y = -65;
        plan.art = {piece};
        plan.holes = {SoundHole{}};
        plan.blocks = {WallBlock{}};
        return plan;
    }

    /// The pixel at which a point of the view's plane is seen.
    QPoint pixel(View view, Point inView) const
    {
        const PlacedView* placed = board.scene().placed(view);
        EXPECT_NE(placed, nullptr);
        return board.transform().toWidget(placed->toSheet(inView)).toPoint();
    }
    Handle handleOf(const std::string& id, View view = View::Top) const
    {
        for (const Handle& h : handles(document.plan(), document.layout(), view))
            if (h.id == id) return h;
        ADD_FAILURE() << "no handle " << id;
        return {};
    }
    double scale() const { return board.transform().scale(); }
    const Layout& layout() const { return document.layout(); }

    void press(QPoint at) { QTest::mousePress(&board, Qt::LeftButton, {}, at); }
    void move(QPoint at) { QTest::mouseMove(&board, at); }
    void release(QPoint at) { QTest::mouseRelease(&board, Qt::LeftButton, {}, at); }
    void click(QPoint at) { QTest::mouseClick(&board, Qt::LeftButton, {}, at); }
    /// Presses, moves in three steps, releases.
    void dragMouse(QPoint from, QPoint to)
    {
        press(from);
        move(from + (to - from) / 3);
        move(from + 2 * (to - from) / 3);
        move(to);
        release(to);
    }
    void wheel(QPointF at, int notches, Qt::KeyboardModifiers modifiers = {})
    {
        QWheelEvent event(at, board.mapToGlobal(at), {}, {0, 120 * notches}, Qt::NoButton, modifiers,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(&board, &event);
    }
    void key(int key, Qt::KeyboardModifiers modifiers = {})
    {
        QTest::keyClick(&board, static_cast<Qt::Key>(key), modifiers);
    }
    int steps() { return document.undoStack().count(); }
    QString selected() const { return document.selectedPart(); }

    PlanDocument document;
    BoardWidget board{document};
};

}  // namespace lidwright::testing
