#pragma once

#include "app/settings/setting.h"

#include <QString>

#include <functional>

class QWidget;

namespace lidwright {

/// How the user is asked for files. Each gives a path, or an empty text when the user goes back.
struct PathQuestions {
    std::function<QString()> planToOpen;
    std::function<QString(const QString& suggested)> planToSave;
    std::function<QString()> drawing;                          ///< an SVG file
    std::function<QString(const QString& suggested)> picture;  ///< .png or .svg
};

/// File dialogs that begin in the folder used last.
PathQuestions fileDialogs(QWidget* window, Settings& settings);

}  // namespace lidwright
