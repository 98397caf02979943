// A picture of the main window: screenshot [OPTIONS] OUT.png
//   --plan FILE       plan to show (default: the first sample)
//   --size WxH        in logical pixels (default 1280x800)
//   --dark            a dark palette
//   --scale F         logical to device pixels, 1 to 3
//   --select PART     a part key: bridge, art.1
//   --under           the under view
//   --studies SUBJECT with the figures of a subject below the board
//   --paper           the window in which templates are printed, on its second page
//   --no-steps        without the strip of first steps
//   --language xx     locale for texts and numbers
#include "app/board/board_widget.h"
#include "app/paper/page_preview.h"
#include "app/paper/paper_dialog.h"
#include "app/settings/all_settings.h"
#include "app/studies/study_panel.h"
#include "app/style/palette.h"
#include "app/window/main_window.h"

#include <QApplication>
#include <QCommandLineParser>
#include <QElapsedTimer>
#include <QStyleFactory>
#include <QTemporaryDir>

#include <cstdio>
#include <functional>

namespace {

QPalette darkPalette()
{
    QPalette palette(QColor(49, 54, 59), QColor(35, 38, 41));
    palette.setColor(QPalette::Base, QColor(27, 30, 32));
    palette.setColor(QPalette::AlternateBase, QColor(35, 38, 41));
    palette.setColor(QPalette::ToolTipBase, QColor(49, 54, 59));
    palette.setColor(QPalette::ToolTipText, QColor(239, 240, 241));
    palette.setColor(QPalette::Link, QColor(120, 190, 255));
    palette.setColor(QPalette::Disabled, QPalette::WindowText, QColor(140, 145, 150));
    palette.setColor(QPalette::Disabled, QPalette::Text, QColor(140, 145, 150));
    palette.setColor(QPalette::Disabled, QPalette::ButtonText, QColor(140, 145, 150));
    return palette;
}

void wait(const std::function<bool()>& until, int milliseconds)
{
    QElapsedTimer timer;
    timer.start();
    while (!until() && timer.elapsed() < milliseconds)
        QApplication::processEvents(QEventLoop::AllEvents, 20);
}

}  // namespace

int main(int argc, char** argv)
{
    for (int i = 1; i + 1 < argc; ++i)
        if (qstrcmp(argv[i], "--scale") == 0) qputenv("QT_SCALE_FACTOR", argv[i + 1]);
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    Q_INIT_RESOURCE(lidwright);

    QCommandLineParser parser;
    parser.addHelpOption();
    const auto option = [&parser](const char* name, const char* value, const char* otherwise) {
        parser.addOption({QLatin1String(name), {}, QLatin1String(value), QLatin1String(otherwise)});
    };
    option("plan", "file", ":/samples/harbour-light.lidplan");
    option("size", "WxH", "1280x800");
    option("scale", "factor", "1");
    option("select", "part", "");
    option("studies", "subject", "");
    option("language", "xx", "en");
    parser.addOptions({{QStringLiteral("dark"), {}},
                       {QStringLiteral("under"), {}},
                       {QStringLiteral("no-steps"), {}},
                       {QStringLiteral("paper"), {}}});
    parser.addPositionalArgument(QStringLiteral("out"), QStringLiteral("PNG file"));
    parser.process(app);
    if (parser.positionalArguments().size() != 1) parser.showHelp(2);

    QLocale::setDefault(QLocale(parser.value(QStringLiteral("language"))));
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    if (parser.isSet(QStringLiteral("dark"))) QApplication::setPalette(darkPalette());
    QApplication::setPalette(lidwright::withReadableHighlight(QApplication::palette()));

    const QTemporaryDir state;
    lidwright::Settings settings(state.filePath(QStringLiteral("a.ini")));
    settings.write(lidwright::kFirstStepsDismissed, parser.isSet(QStringLiteral("no-steps")));
    lidwright::MainWindow window(settings, state.filePath(QStringLiteral("recovery")));
    const QStringList size = parser.value(QStringLiteral("size")).split(QLatin1Char('x'));
    window.show();
    window.resize(size.value(0).toInt(), size.value(1).toInt());
    QApplication::processEvents();
    const QString plan = parser.value(QStringLiteral("plan"));
    const bool opened =
        plan.startsWith(QLatin1Char(':')) ? window.files().openSample(plan) : window.files().openPath(plan);
    if (!opened) {
        std::fprintf(stderr, "screenshot: %s cannot be opened\n", qPrintable(plan));
        return 1;
    }
    window.document().select(parser.value(QStringLiteral("select")));
    if (parser.isSet(QStringLiteral("under"))) window.actions().at(lidwright::Command::UnderView)->trigger();
    if (parser.isSet(QStringLiteral("studies"))) {
        window.actions().at(lidwright::Command::Studies)->trigger();
        if (!window.studyPanel().choose(parser.value(QStringLiteral("studies")).toStdString())) {
            std::fprintf(stderr, "screenshot: there is no such subject\n");
            return 1;
        }
        wait([] { return false; }, 600);  // the dock comes up in steps
    }
    window.board().fitAll();
    wait([&] { return !window.document().remediesPending(); }, 60'000);
    wait([] { return false; }, 600);  // what is painted or sought a moment later
    const QString out = parser.positionalArguments().first();
    if (parser.isSet(QStringLiteral("paper"))) {
        const lidwright::Plan& shown = window.document().plan();
        lidwright::PaperDialog paper(
            shown, {}, settings,
            lidwright::wrongSentences(window.document().findings(), lidwright::unitStyle(shown)));
        paper.resize(window.size());
        paper.show();
        paper.findChild<lidwright::PagePreview*>()->showPage(1);
        wait([] { return false; }, 600);
        return paper.grab().save(out) ? 0 : 1;
    }
    if (!window.grab().save(out)) {
        std::fprintf(stderr, "screenshot: %s cannot be written\n", qPrintable(out));
        return 1;
    }
    return 0;
}
