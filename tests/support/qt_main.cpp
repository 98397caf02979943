// GoogleTest inside a QApplication on the offscreen platform, with settings in a folder of its own.
#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>
#include <QTimer>

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    ::testing::InitGoogleTest(&argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QCoreApplication::setOrganizationName("lidwright-tests");
    QCoreApplication::setApplicationName("lidwright-tests");
    QApplication app(argc, argv);
    QLocale::setDefault(QLocale::c());
    Q_INIT_RESOURCE(lidwright);
    return RUN_ALL_TESTS();
}
