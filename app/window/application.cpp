#include "app/window/application.h"

#include "app/style/palette.h"
#include "app/window/main_window.h"

#include <QApplication>
#include <QIcon>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

#include "resources/resource_init.h"
#include <algorithm>

namespace lidwright {

namespace {

const char* const kFirstSample = ":/samples/harbour-light.lidplan";

void translate(QApplication& app)
{
    auto* toolkit = new QTranslator(&app);
    if (toolkit->load(QLocale(), QStringLiteral("qtbase"), QStringLiteral("_"),
                      QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
        QCoreApplication::installTranslator(toolkit);
    auto* ours = new QTranslator(&app);
    if (ours->load(QLocale(), QStringLiteral("lidwright"), QStringLiteral("_"), QStringLiteral(":/i18n")))
        QCoreApplication::installTranslator(ours);
}

}  // namespace

int runWindow(int argc, char** argv)
{
    QApplication app(argc, argv);
    initResources();
    QCoreApplication::setApplicationName(QStringLiteral("lidwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(LIDWRIGHT_VERSION));
    QGuiApplication::setApplicationDisplayName(QStringLiteral("Lidwright"));
    QGuiApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/lidwright.svg")));
    translate(app);
    const QPalette readable = withReadableHighlight(QApplication::palette());
    QPalette ours;
    for (const auto group : {QPalette::Active, QPalette::Inactive})
        for (const auto role : {QPalette::Highlight, QPalette::HighlightedText})
            ours.setColor(group, role, readable.color(group, role));
    // Only these roles are set: the rest goes on following the desktop.
    QApplication::setPalette(ours);

    Settings settings(Settings::standardFile());
    MainWindow window(settings, Autosave::standardFolder());
    window.show();

    // A sample stands on the board first, so that a file that cannot be opened leaves no empty window.
    window.files().openSample(QLatin1String(kFirstSample));
    const QStringList arguments = QCoreApplication::arguments().mid(1);
    const auto wanted = std::find_if(arguments.begin(), arguments.end(), [](const QString& argument) {
        return !argument.startsWith(QLatin1Char('-'));
    });
    window.offerLeftOvers();
    if (wanted != arguments.end()) window.openAny(*wanted);
    return QApplication::exec();
}

}  // namespace lidwright
