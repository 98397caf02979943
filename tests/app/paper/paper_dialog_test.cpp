#include "app/paper/paper_dialog.h"

#include "app/paper/page_preview.h"
#include "app/paper/printing.h"
#include "app/properties/length_edit.h"
#include "tests/app/paper/paper_plans.h"
#include "tests/app/paper/pdf_tools.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QGroupBox>
#include <QLabel>
#include <QPrinter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

namespace lidwright {
namespace {

class PaperDialogTest : public ::testing::Test {
protected:
    PaperDialogTest() : m_settings(m_folder.filePath(QStringLiteral("s.ini")))
    {
        m_dialog = std::make_unique<PaperDialog>(testing::largePlan(), QString(), m_settings);
        m_dialog->show();
        m_dialog->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(m_dialog.get()));
    }

    template <typename W>
    W* named(const QString& accessibleName)
    {
        for (W* widget : m_dialog->findChildren<W*>())
            if (widget->accessibleName() == accessibleName) return widget;
        ADD_FAILURE() << "no " << accessibleName.toStdString();
        return nullptr;
    }
    QCheckBox* check(const QString& label)
    {
        for (QCheckBox* box : m_dialog->findChildren<QCheckBox*>())
            if (box->text() == label) return box;
        ADD_FAILURE() << "no " << label.toStdString();
        return nullptr;
    }
    void type(LengthEdit* edit, const char* text)
    {
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, QLatin1String(text));
        QTest::keyClick(edit, Qt::Key_Return);
    }
    PagePreview* preview() { return m_dialog->findChild<PagePreview*>(); }

    QTemporaryDir m_folder;
    Settings m_settings;
    std::unique_ptr<PaperDialog> m_dialog;
};

TEST_F(PaperDialogTest, ShowsThePagesOfTheJob)
{
    EXPECT_EQ(m_dialog->job().templates, templatesOf(testing::largePlan()));
    const auto press = [&](const char* name) {
        for (auto* button : m_dialog->findChildren<QPushButton*>())
            if (button->text() == QLatin1String(name)) QTest::mouseClick(button, Qt::LeftButton);
    };
    press("None");
    EXPECT_TRUE(m_dialog->job().templates.empty());
    EXPECT_EQ(preview()->pages().pages.size(), 0U);
    press("All");
    EXPECT_EQ(m_dialog->job().templates, templatesOf(testing::largePlan()));
    press("None");
    for (const char* one : {"Lid", "Head-end wall", "Tail-end wall"})
        QTest::keyClick(check(QString::fromLatin1(one)), Qt::Key_Space);
    EXPECT_EQ(m_dialog->job().templates.size(), 3U);
    const auto all = preview()->pages().pages.size();
    EXPECT_GT(all, 5U);
    check(QStringLiteral("Lid"))->setFocus();
    QTest::keyClick(check(QStringLiteral("Lid")), Qt::Key_Space);
    EXPECT_EQ(m_dialog->job().templates.size(), 2U);
    EXPECT_EQ(preview()->pages().pages.size(), 4U)
        << "a cover, both walls of 300 mm on two pages, their notes";
    QTest::keyClick(check(QStringLiteral("Head-end wall")), Qt::Key_Space);
    QTest::keyClick(check(QStringLiteral("Tail-end wall")), Qt::Key_Space);
    EXPECT_EQ(preview()->pages().pages.size(), 0U);
    int saving = 0;
    for (const auto* button : m_dialog->findChildren<QAbstractButton*>()) {
        if (!button->text().contains(QLatin1String("PDF..."))) continue;
        EXPECT_FALSE(button->isEnabled());
        ++saving;
    }
    EXPECT_EQ(saving, 1);
}

TEST_F(PaperDialogTest, ReadsTheOverlapAsMakersWriteIt)
{
    auto* overlap = named<LengthEdit>(QStringLiteral("Overlap"));
    ASSERT_TRUE(overlap);
    type(overlap, "1/2 in");
    EXPECT_DOUBLE_EQ(m_dialog->job().overlap, 12.7);
    type(overlap, "nonsense");
    EXPECT_TRUE(overlap->hasError());
    EXPECT_DOUBLE_EQ(m_dialog->job().overlap, 12.7);
    EXPECT_FALSE(m_dialog->savePdfAs(m_folder.filePath(QStringLiteral("t.pdf"))))
        << "not while a number is unreadable";
    type(overlap, "400 mm");
    EXPECT_EQ(preview()->pages().pages.size(), 0U) << "no such overlap";
}

TEST_F(PaperDialogTest, TurnsPagesByKeysAndMap)
{
    PagePreview* pages = preview();
    pages->setFocus();
    EXPECT_EQ(pages->page(), 0);
    QTest::keyClick(pages, Qt::Key_PageDown);
    EXPECT_EQ(pages->page(), 1);
    EXPECT_TRUE(pages->accessibleDescription().contains(QLatin1String("Overview")))
        << pages->pageText().toStdString();
    QTest::keyClick(pages, Qt::Key_PageDown);
    EXPECT_TRUE(pages->accessibleDescription().contains(QLatin1String("Lid, A1")))
        << pages->pageText().toStdString();
    QTest::keyClick(pages, Qt::Key_End);
    const int last = static_cast<int>(pages->pages().pages.size()) - 1;
    EXPECT_EQ(pages->page(), last);
    QTest::keyClick(pages, Qt::Key_PageDown);
    EXPECT_EQ(pages->page(), last);
    EXPECT_TRUE(QRectF(pages->rect()).contains(pages->mapCell(last))) << "the map moves with the pages";
    pages->showPage(2);
    EXPECT_TRUE(QRectF(pages->rect()).contains(pages->mapCell(2)));
    QTest::mouseClick(pages, Qt::LeftButton, {}, pages->mapCell(2).center().toPoint());
    EXPECT_EQ(pages->page(), 2);
    QTest::keyClick(pages, Qt::Key_Home);
    EXPECT_EQ(pages->page(), 0);
}

TEST_F(PaperDialogTest, WritesThePdfAndSaysSo)
{
    QSignalSpy made(m_dialog.get(), &PaperDialog::paperMade);
    const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
    EXPECT_TRUE(m_dialog->savePdfAs(path));
    EXPECT_EQ(made.size(), 1);
    EXPECT_EQ(testing::runTool(QStringLiteral("qpdf"), {QStringLiteral("--check"), path}).code, 0);
    EXPECT_FALSE(m_dialog->savePdfAs(m_folder.filePath(QStringLiteral("no/such/t.pdf"))));
    EXPECT_EQ(made.size(), 1);
}

TEST_F(PaperDialogTest, MeasuringThePrinterCorrectsAndIsRemembered)
{
    auto* correcting = m_dialog->findChildren<QGroupBox*>().last();
    for (QGroupBox* box : m_dialog->findChildren<QGroupBox*>())
        if (box->isCheckable()) correcting = box;
    correcting->setChecked(true);
    EXPECT_EQ(m_dialog->job().correctionX, 1);
    auto* x = named<LengthEdit>(QStringLiteral("Measured X"));
    const double nominal = x->millimetres();
    const std::string shorter = std::to_string(nominal / 1.01) + " mm";
    type(x, shorter.c_str());
    EXPECT_NEAR(m_dialog->job().correctionX, 1.01, 1e-5);
    EXPECT_EQ(m_dialog->job().correctionY, 1);
    type(x, "60 mm");
    EXPECT_TRUE(x->hasError()) << "nobody's printer is that far off";
    EXPECT_NEAR(m_dialog->job().correctionX, 1.01, 1e-5);
    QTest::keyClick(x, Qt::Key_Escape);

    correcting->setChecked(false);
    EXPECT_EQ(m_dialog->job().correctionX, 1) << "off by one click";

    PaperDialog again(Plan{}, {}, m_settings);
    EXPECT_NEAR(again.job().correctionX, 1.01, 1e-5);
    EXPECT_FALSE(again.job().correctionDate.isEmpty());
}

TEST_F(PaperDialogTest, WarnsOfAFittedPage)
{
    for (QGroupBox* box : m_dialog->findChildren<QGroupBox*>())
        if (box->isCheckable()) box->setChecked(true);
    auto* y = named<LengthEdit>(QStringLiteral("Measured Y"));
    type(y, (std::to_string(y->millimetres() * 279.4 / 297) + " mm").c_str());
    bool warned = false;
    for (const QLabel* label : m_dialog->findChildren<QLabel*>())
        warned = warned || label->text().contains(QLatin1String("looks like fit to page"));
    EXPECT_TRUE(warned);
}

TEST_F(PaperDialogTest, PrintsTheSamePagesTrueToSize)
{
    PaperJob job = m_dialog->job();
    job.size = PaperSize::A4;
    m_dialog->setJob(job);
    const QString path = m_folder.filePath(QStringLiteral("printed.pdf"));
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    prepare(printer, preview()->pages().pages.front(), QStringLiteral("t"));
    EXPECT_TRUE(m_dialog->printOn(printer));
    const auto boxes = testing::mediaBoxes(path);
    ASSERT_EQ(boxes.size(), preview()->pages().pages.size());
    for (std::size_t i = 0; i < boxes.size(); ++i)
        EXPECT_EQ(boxes[i].x > boxes[i].y,
                  preview()->pages().pages[i].width > preview()->pages().pages[i].height)
            << i;
    const auto rulers = testing::strokesOf(path, 1);
    const auto& laid = preview()->pages().templates;
    const auto lid = std::find_if(laid.begin(), laid.end(),
                                  [](const TemplatePages& t) { return t.kind == TemplateKind::Lid; });
    ASSERT_NE(lid, laid.end());
    const auto tile = testing::strokesOf(path, static_cast<int>(lid->firstPage) + 1);
    for (const bool level : {true, false}) {
        EXPECT_GE(testing::countOf(rulers, 100, level), 1);
        EXPECT_GE(testing::countOf(rulers, 101.6, level), 1);
        EXPECT_GE(testing::countOf(tile, 50, level), 2);
    }
}

TEST_F(PaperDialogTest, PrintsOnlyThePagesThatWereChosen)
{
    const QString path = m_folder.filePath(QStringLiteral("printed.pdf"));
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    prepare(printer, preview()->pages().pages.front(), QStringLiteral("t"));
    printer.setPrintRange(QPrinter::PageRange);
    printer.setFromTo(2, 3);
    EXPECT_TRUE(m_dialog->printOn(printer));
    EXPECT_EQ(testing::mediaBoxes(path).size(), 2U);
}

TEST_F(PaperDialogTest, EveryControlHasANameAndATip)
{
    for (QWidget* widget : m_dialog->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisibleTo(m_dialog.get())) continue;
        const auto* button = qobject_cast<QAbstractButton*>(widget);
        const auto* group = qobject_cast<QGroupBox*>(widget);
        const auto* label = qobject_cast<QLabel*>(widget);
        if (label) continue;
        const bool hasName = !widget->accessibleName().isEmpty() || (button && !button->text().isEmpty()) ||
                             (group && !group->title().isEmpty());
        EXPECT_TRUE(hasName) << widget->metaObject()->className();
        EXPECT_FALSE(widget->toolTip().isEmpty())
            << widget->metaObject()->className() << " " << widget->accessibleName().toStdString();
    }
}

}  // namespace
}  // namespace lidwright
