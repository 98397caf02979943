#include "app/window/application.h"

#include "app/style/palette.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include "resources/resource_init.h"

#include <QApplication>
#include <QIcon>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

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
    applyReadableHighlight(app);

    Settings settings(Settings::standardFile());
    MainWindow window(settings, Autosave::standardFolder());
    window.show();

    QString wanted;
    const QStringList arguments = QCoreApplication::arguments().mid(1);
    for (const QString& argument : arguments)
        if (wanted.isEmpty() && !argument.startsWith(QLatin1Char('-'))) wanted = argument;
    const bool drawing = wanted.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    if (wanted.isEmpty() || drawing || !window.files().openPath(wanted))
        window.files().openSample(QLatin1String(kFirstSample), FileFlow::Notices::Keep);
    window.offerLeftOvers();
    if (drawing) window.importArtwork(wanted);
    return QApplication::exec();
}

}  // namespace lidwright
