#pragma once

#include "app/paper/paper_job.h"
#include "app/paper/print_correction.h"

#include <QCoreApplication>
#include <QString>

#include <utility>
#include <vector>

class QCheckBox;
class QComboBox;
class QDialog;
class QGridLayout;
class QGroupBox;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace lidwright {

class LengthEdit;
class PagePreview;

/// The controls of the paper dialog and where they stand. They belong to the dialog.
struct PaperForm {
    Q_DECLARE_TR_FUNCTIONS(PaperForm)
public:
    PaperForm(QDialog& dialog, const UnitStyle& style);

    PaperSize paperSize() const;
    /// Shows the boxes of these templates, in two columns.
    void showTemplates(const std::vector<TemplateKind>& had);
    QString printerName() const;  ///< empty for "any printer"
    /// A roll has no tiles and no page to measure.
    void setRoll(bool roll);
    void showCorrection(const PrintCorrection& correction, double nominalX, double nominalY,
                        const UnitStyle& style);
    void say(const QString& text, bool wrong);

    std::vector<std::pair<TemplateKind, QCheckBox*>> templates;
    QPushButton* all = nullptr;
    QPushButton* none = nullptr;
    QComboBox* size = nullptr;
    LengthEdit* overlap = nullptr;
    LengthEdit* margin = nullptr;
    QComboBox* printer = nullptr;
    QGroupBox* correcting = nullptr;
    LengthEdit* measuredX = nullptr;
    LengthEdit* measuredY = nullptr;
    QLabel* correctionText = nullptr;
    QPushButton* calibrate = nullptr;
    PagePreview* preview = nullptr;
    QLabel* pageText = nullptr;
    QLabel* stateMark = nullptr;
    QLabel* state = nullptr;
    QPushButton* save = nullptr;
    QPushButton* print = nullptr;
    QPushButton* close = nullptr;

private:
    QGridLayout* m_templateGrid = nullptr;
    void buildTemplates(QDialog& dialog, QVBoxLayout& side);
    void buildPaper(QDialog& dialog, QVBoxLayout& side, const UnitStyle& style);
    void buildCorrection(QDialog& dialog, QVBoxLayout& side, const UnitStyle& style);
    void buildPreview(QDialog& dialog, QVBoxLayout& middle);
};

}  // namespace lidwright
