#include "app/commandline/drawing_session.h"

namespace lidwright {

namespace {

/// Qt remarks on the folders and plugins that it does not need here; only what stops it is for the user.
void onlyGrave(QtMsgType type, const QMessageLogContext&, const QString& message)
{
    if (type == QtCriticalMsg || type == QtFatalMsg)
        std::fprintf(stderr, "lidwright: %s\n", qPrintable(message));
}

}  // namespace

DrawingSession::DrawingSession()
{
    qInstallMessageHandler(onlyGrave);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    m_application = std::make_unique<QGuiApplication>(m_argc, m_argv);
}

DrawingSession::~DrawingSession()
{
    m_application.reset();
    qInstallMessageHandler(nullptr);
}

}  // namespace lidwright
