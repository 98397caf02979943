#include "app/exchange/box_outline_dialog.h"
#include "app/exchange/import_artwork_dialog.h"
#include "app/exchange/paint_uses_dialog.h"
#include "app/paper/paper_dialog.h"
#include "app/studies/study_panel.h"
#include "app/window/about_dialog.h"
#include "app/window/keys_page.h"
#include "tests/app/exchange/drawings.h"
#include "tests/app/window/window_fixture.h"
#include "tests/support/plans.h"

#include <QAbstractScrollArea>
#include <QAccessible>
#include <QMenu>

#include <map>

namespace lidwright {
namespace {

bool isControl(QAccessible::Role role)
{
    switch (role) {
        case QAccessible::PushButton:
        case QAccessible::ButtonMenu:
        case QAccessible::ButtonDropDown:
        case QAccessible::CheckBox:
        case QAccessible::RadioButton:
        case QAccessible::ComboBox:
        case QAccessible::EditableText:
        case QAccessible::SpinBox:
        case QAccessible::Slider:
        case QAccessible::List:
        case QAccessible::Table:
        case QAccessible::Tree:
        case QAccessible::PageTab:
        case QAccessible::ProgressBar:
        case QAccessible::Graphic:
        case QAccessible::Canvas:
            return true;
        default:
            return false;
    }
}

/// Whether Qt or the style made it as a part of another control, which has the name.
bool isInnerPart(const QWidget* widget)
{
    const QString name = widget->objectName();
    return name.startsWith(QLatin1String("qt_")) || widget->inherits("QComboBoxPrivateContainer") ||
           widget->inherits("QScrollBar") ||
           (widget->parentWidget() && widget->parentWidget()->inherits("QComboBox")) ||
           (widget->parentWidget() && widget->parentWidget()->inherits("QLineEdit")) ||
           widget->inherits("QTableCornerButton") || widget->inherits("QHeaderView");
}

QString pathOf(const QWidget* widget)
{
    QString path;
    for (const QWidget* w = widget; w; w = w->parentWidget())
        path.prepend(
            QStringLiteral("/%1(%2)").arg(QLatin1String(w->metaObject()->className()), w->objectName()));
    return path;
}

/// Everything enabled and visible that can be worked has a name, and what has the keyboard says what it is
/// for.
void expectNamed(QWidget& window)
{
    int controls = 0;
    const auto all = window.findChildren<QWidget*>();
    for (QWidget* widget : all) {
        if (!widget->isVisibleTo(&window) || !widget->isEnabled() || isInnerPart(widget)) continue;
        QAccessibleInterface* face = QAccessible::queryAccessibleInterface(widget);
        ASSERT_NE(face, nullptr);
        const bool reached = (widget->focusPolicy() & Qt::TabFocus) != 0;
        // A label, also one with a picture in it, is no control.
        if (!reached && (!isControl(face->role()) || widget->inherits("QLabel"))) continue;
        ++controls;
        EXPECT_FALSE(face->text(QAccessible::Name).isEmpty()) << "no name: " << pathOf(widget).toStdString();
        const bool explains =
            !widget->toolTip().isEmpty() || widget->inherits("QAbstractItemView") ||
            widget->inherits("QTextBrowser") || widget->inherits("QMenuBar") ||
            (widget->parentWidget() && widget->parentWidget()->inherits("QDialogButtonBox")) ||
            widget->inherits("lidwright::BoardWidget") ||
            // These two answer the pointer with a tip for the very place.
            widget->inherits("lidwright::StationRule") || widget->inherits("lidwright::BridgeLaneBar");
        EXPECT_TRUE(explains) << "no tooltip: " << pathOf(widget).toStdString();
    }
    EXPECT_GT(controls, 0);
}

class AccessibleNames : public testing::WindowTest {};

TEST_F(AccessibleNames, OfTheMainWindowWithEveryPartSelected)
{
    window->files().openSample(QStringLiteral(":/samples/harbour-light.lidplan"));
    Plan plan = document().plan();
    plan.holes.resize(1);
    plan.blocks.resize(1);
    document().replace(plan, QStringLiteral("more parts"));
    window->notices().show(QStringLiteral("A message"), {}, {{QStringLiteral("Answer"), nullptr}});
    while (document().remediesPending())
        QTest::qWait(20);
    expectNamed(*window);
    for (const PartInfo& part : parts()) {
        document().select(part.list ? QStringLiteral("%1.1").arg(QLatin1String(part.key))
                                    : QLatin1String(part.key));
        QApplication::processEvents();
        SCOPED_TRACE(part.key);
        expectNamed(*window);
    }
    window->partsSide().setFolded(true);
    window->findingsSide().setFolded(true);
    expectNamed(*window);
    action(Command::Studies)->trigger();
    for (const StudyEntry& entry : allSubjects()) {
        SCOPED_TRACE(entry.id);
        ASSERT_TRUE(window->studyPanel().choose(entry.id));
        QApplication::processEvents();
        expectNamed(*window);
    }
}

TEST_F(AccessibleNames, OfTheDialogs)
{
    const testing::Drawings drawings;
    const auto look = [](QDialog& dialog, const char* name) {
        SCOPED_TRACE(name);
        dialog.show();
        expectNamed(dialog);
    };
    ImportArtworkDialog import(drawings.path("unitless.svg"), {});
    ASSERT_TRUE(QTest::qWaitFor([&] { return !import.import().busy(); }, 20'000));
    look(import, "import");
    BoxOutlineDialog outline(drawings.path("tall.svg"), {});
    ASSERT_TRUE(QTest::qWaitFor([&] { return !outline.import().busy(); }, 20'000));
    look(outline, "outline");
    PaintUsesDialog uses(testing::pieceOf({{circleRing({0, 0}, 20)}}), {});
    look(uses, "uses");
    KeysPage keys;
    look(keys, "keys");
    AboutDialog about;
    look(about, "about");
    PaperDialog paper({}, {}, *settings);
    look(paper, "paper");
}

TEST_F(AccessibleNames, NoTwoActionsOfTheWindowShareKeys)
{
    std::map<QString, QString> taken;
    const auto actions = window->findChildren<QAction*>();
    for (const QAction* one : actions)
        for (const QKeySequence& keys : one->shortcuts()) {
            const QString text = keys.toString(QKeySequence::PortableText);
            if (one->shortcutContext() == Qt::WidgetShortcut) continue;
            EXPECT_FALSE(taken.contains(text))
                << one->text().toStdString() << " and " << taken[text].toStdString() << " share "
                << text.toStdString();
            taken[text] = one->text();
        }
    EXPECT_GT(taken.size(), 20u);
}

TEST_F(AccessibleNames, TheKeyboardGetsRoundTheWindow)
{
    window->files().openSample(QStringLiteral(":/samples/harbour-light.lidplan"));
    const auto inside = [this](QWidget& region) {
        QWidget* now = QApplication::focusWidget();
        return now && (now == &region || region.isAncestorOf(now));
    };
    window->board().setFocus();
    QTest::keyClick(window.get(), Qt::Key_F6);
    EXPECT_TRUE(inside(window->findingsSide()));
    QTest::keyClick(window.get(), Qt::Key_F6);
    EXPECT_TRUE(inside(window->partsSide()));
    QTest::keyClick(window.get(), Qt::Key_F6);
    EXPECT_TRUE(inside(window->board()));
    // And Tab alone gets out of every region, also of the board.
    QTest::keyClick(window.get(), Qt::Key_F6);
    QSet<QWidget*> seen;
    for (int i = 0; i < 400 && !(inside(window->partsSide())); ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        seen.insert(QApplication::focusWidget());
    }
    EXPECT_TRUE(inside(window->partsSide()));
}

}  // namespace
}  // namespace lidwright
