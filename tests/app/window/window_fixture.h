#pragma once

#include "app/board/board_widget.h"
#include "app/settings/all_settings.h"
#include "app/window/first_steps.h"
#include "app/window/folding_side.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QDialog>
#include <QFile>
#include <QMessageBox>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <functional>

namespace lidwright::testing {

/// A main window with settings and recovery folder of its own; files are named by the test instead of by
/// dialogs.
class WindowTest : public ::testing::Test {
protected:
    void SetUp() override { open(); }

    void open()
    {
        window.reset();
        settings = std::make_unique<Settings>(dir.filePath(QStringLiteral("settings.ini")));
        window = std::make_unique<MainWindow>(*settings, recovery());
        window->resize(1280, 800);
        window->questions().planToOpen = [this] { return chosenPath; };
        window->questions().planToSave = [this](const QString& path) {
            suggestedPath = path;
            return chosenPath;
        };
        window->questions().drawing = [this] { return chosenPath; };
        window->questions().picture = [this](const QString&) { return chosenPath; };
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    QString recovery() const { return dir.filePath(QStringLiteral("recovery")); }
    QString at(const char* name) const { return dir.filePath(QLatin1String(name)); }
    PlanDocument& document() { return window->document(); }
    QAction* action(Command command) { return window->actions().at(command); }
    void edit(double length)
    {
        document().edit({{"box.length", length}}, QStringLiteral("Length %1").arg(length));
    }
    QStringList notices() { return window->notices().messages(); }

    /// Does `act`; when it opens a dialog, `answer` is done to that.
    static bool whenAsked(const std::function<void(QDialog*)>& answer, const std::function<void()>& act)
    {
        bool asked = false;
        QTimer poll;
        poll.setInterval(5);
        QObject::connect(&poll, &QTimer::timeout, &poll, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!dialog || asked) return;
            asked = true;
            poll.stop();
            answer(dialog);
        });
        poll.start();
        act();
        return asked;
    }
    /// Answers a message box with one of its buttons, by a real click.
    static std::function<void(QDialog*)> click(QMessageBox::StandardButton which, QString* text = nullptr)
    {
        return [which, text](QDialog* dialog) {
            auto* box = qobject_cast<QMessageBox*>(dialog);
            ASSERT_NE(box, nullptr);
            if (text) *text = box->text();
            ASSERT_NE(box->button(which), nullptr);
            QTest::mouseClick(box->button(which), Qt::LeftButton);
        };
    }

    QTemporaryDir dir;
    std::unique_ptr<Settings> settings;
    std::unique_ptr<MainWindow> window;
    QString chosenPath;
    QString suggestedPath;
};

}  // namespace lidwright::testing
