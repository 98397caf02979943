#include "tests/app/board/board_fixture.h"

namespace lidwright::testing {
namespace {

class DimensionEditing : public BoardTest {
protected:
    DimensionEditor& editor() { return board.dimensionEditor(); }
    /// The middle of the words of the dimension that edits this key.
    QPoint words(const std::string& key)
    {
        for (const Element& e : board.scene().sheet().elements) {
            const auto* d = std::get_if<Dimension>(&e.what);
            if (!d || d->key != key) continue;
            const Text text = dimensionText(*d, board.scene().sheet().paper);
            // The words stand upright or along the neck; half a letter above the base line lies within them.
            const double up = text.height / 2 * board.scene().sheet().paper;
            const double angle = text.angle * kPi / 180;
            return board.transform()
                .toWidget(text.at + Point{-up * std::sin(angle), up * std::cos(angle)})
                .toPoint();
        }
        ADD_FAILURE() << "no dimension for " << key;
        return {};
    }
    void open(const std::string& key)
    {
        QTest::mouseDClick(&board, Qt::LeftButton, {}, words(key));
        ASSERT_TRUE(editor().isOpen()) << key;
        EXPECT_EQ(editor().key(), key);
        EXPECT_TRUE(editor().hasFocus());
    }
    void type(const char* text) { QTest::keyClicks(&editor(), text); }
};

TEST_F(DimensionEditing, TypingASumChangesThePlanInOneStep)
{
    open("box.length");
    EXPECT_EQ(editor().accessibleName().isEmpty(), false);
    type("300 + 1/2 in");
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_FALSE(editor().isOpen());
    EXPECT_NEAR(document.plan().box.length, 312.7, 1e-9);
    EXPECT_EQ(steps(), 1);
    EXPECT_TRUE(document.undoStack().undoText().contains("312.7 mm"));
    EXPECT_TRUE(board.hasFocus());
}

TEST_F(DimensionEditing, EscapeLeavesEverything)
{
    const Plan start = document.plan();
    open("scale.length");
    type("500");
    QTest::keyClick(&editor(), Qt::Key_Escape);
    EXPECT_FALSE(editor().isOpen());
    EXPECT_EQ(document.plan(), start);
}

TEST_F(DimensionEditing, WhatCannotBeReadKeepsTheFieldOpenAndSaysWhy)
{
    const Plan start = document.plan();
    open("box.length");
    type("3oo");
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_TRUE(editor().isOpen());
    EXPECT_FALSE(editor().error().isEmpty());
    EXPECT_EQ(document.plan(), start);
    // Outside the hard range: read, but refused.
    editor().selectAll();
    type("99999");
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_TRUE(editor().isOpen());
    EXPECT_EQ(document.plan(), start);
    editor().selectAll();
    type("320");
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_FALSE(editor().isOpen());
    EXPECT_EQ(document.plan().box.length, 320);
}

TEST_F(DimensionEditing, AnUntouchedRoundedValueStaysExact)
{
    document.reset(with(startPlan(), {{"sheet.unit", 2.0}, {"box.length", 333.333}}), {});
    open("box.length");
    EXPECT_FALSE(editor().text().startsWith(QChar(0x2248)));
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_EQ(document.plan().box.length, 333.333);
    EXPECT_EQ(steps(), 0);
}

TEST_F(DimensionEditing, F2AndTabGoThroughThePartsDimensions)
{
    document.select("bridge");
    key(Qt::Key_F2);
    ASSERT_TRUE(editor().isOpen());
    const std::string first = editor().key();
    EXPECT_EQ(first.rfind("bridge.", 0), 0U);
    QTest::keyClick(&editor(), Qt::Key_Tab);
    ASSERT_TRUE(editor().isOpen());
    EXPECT_NE(editor().key(), first);
    QTest::keyClick(&editor(), Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(editor().key(), first);
    type("21");
    QTest::keyClick(&editor(), Qt::Key_Return);
    EXPECT_EQ(steps(), 1);
}

TEST_F(DimensionEditing, EveryDimensionWithAKeyOpensByItsOwnWords)
{
    std::vector<std::string> keys;
    for (const Element& e : board.scene().sheet().elements)
        if (const auto* d = std::get_if<Dimension>(&e.what); d && !d->key.empty()) keys.push_back(d->key);
    std::sort(keys.begin(), keys.end());
    keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
    ASSERT_GT(keys.size(), 8U);
    for (const std::string& k : keys) {
        ASSERT_TRUE(editor().open(k, {400, 300})) << k;
        EXPECT_FALSE(editor().text().isEmpty()) << k;
        EXPECT_FALSE(editor().toolTip().isEmpty()) << k;
        editor().close();
    }
    EXPECT_FALSE(editor().open("no.such-key", {400, 300}));
}

TEST_F(DimensionEditing, ClickingElsewhereKeepsWhatWasTyped)
{
    open("box.width");
    type("250");
    click({30, 30});
    EXPECT_FALSE(editor().isOpen());
    EXPECT_EQ(document.plan().box.width, 250);
}

}  // namespace
}  // namespace lidwright::testing
