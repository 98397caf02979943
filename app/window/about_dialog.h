#pragma once

#include <QDialog>

namespace lidwright {

/// Version, what the program is for, and the libraries that it stands on with their licences.
class AboutDialog : public QDialog {
    Q_OBJECT
public:
    explicit AboutDialog(QWidget* parent = nullptr);
};

}  // namespace lidwright
