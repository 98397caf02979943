// GoogleTest inside a QApplication on the offscreen platform, with settings in a folder of its own.
#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>
#include <QTimer>

#include "resources/resource_init.h"

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    ::testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QCoreApplication::setOrganizationName("lidwright-tests");
    QCoreApplication::setApplicationName("lidwright-tests");
    QApplication app(argc, argv);
    QLocale::setDefault(QLocale::c());
    lidwright::initResources();
    return RUN_ALL_TESTS();
}
