#pragma once

#include "app/exchange/cut_file.h"

#include <QDialog>

#include <functional>

class QCheckBox;
class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;

namespace lidwright {

/// Asks how the shop wants the lid's file and writes it.
class CutFileDialog : public QDialog {
    Q_OBJECT
public:
    /// `planPath` gives the folder and name that are suggested; may be empty.
    CutFileDialog(const Plan& plan, const Layout& layout, const QString& planPath, QWidget* parent = nullptr);

    /// How the user is asked where to; gets the suggestion, gives an empty text to go back.
    std::function<QString(const QString& suggested)> askForFile;
    /// What was written last; empty while nothing was.
    QString written() const { return m_written; }

private:
    struct Kind {
        const char* ending;
        CutFormat format;
    };
    void compose();
    void write();
    void takePresets();
    CutJob job() const;

    Plan m_plan;
    Layout m_layout;
    QString m_planPath;
    std::vector<CutPreset> m_presets;
    std::optional<CutDrawing> m_drawing;
    QString m_written;
    QComboBox* m_preset;
    QComboBox* m_format;
    QCheckBox* m_underside;
    QCheckBox* m_marks;
    QLabel* m_kerf;
    QLabel* m_totals;
    QListWidget* m_messages;
    QLabel* m_state;
    QPushButton* m_write;
};

}  // namespace lidwright
