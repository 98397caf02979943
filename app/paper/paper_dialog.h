#pragma once

#include "app/paper/paper_pages.h"
#include "app/paper/print_correction.h"

#include "core/plan/parameter.h"

#include <QDialog>

#include <memory>

class QPrinter;

namespace lidwright {

class LengthEdit;
struct PaperForm;

/// Where full-size templates are made: which ones, on what paper, with which correction for the printer;
/// shows the pages as they will be, then writes a PDF or prints. Works on the plan as it was when it was
/// opened.
class PaperDialog : public QDialog {
    Q_OBJECT
public:
    /// `suggestedPath`: the plan's file, for the name that the PDF is offered under; may be empty. `wrong`:
    /// see PaperJob::wrong.
    PaperDialog(const Plan& plan, const QString& suggestedPath, Settings& settings,
                const QStringList& wrong = {}, QWidget* parent = nullptr);
    ~PaperDialog() override;

    /// The job as it is chosen now.
    PaperJob job() const;
    /// Chooses templates, paper, margin and overlap; the correction comes with the printer.
    void setJob(const PaperJob& job);

    // What the buttons do once a name or printer is chosen. The state line says what went wrong, where it
    // did.
    bool savePdfAs(const QString& filePath);
    bool saveMeasuringPageAs(const QString& filePath);
    bool printOn(QPrinter& printer);

Q_SIGNALS:
    void paperMade();  ///< templates were written or sent to the printer

private:
    void compose();
    void tickAll(bool on);
    void chooseCorrection();
    void showMeasured();
    void takeMeasured(LengthEdit& edit, const ParameterValue& value);
    bool commitTyping();
    void savePdf();
    void print();
    void saveMeasuringPage();
    void say(const QString& text, bool wrong);
    QString offeredPath(const QString& ending) const;

    Plan m_plan;
    QString m_suggestedPath;
    QStringList m_wrong;
    bool m_choosing = false;  ///< several boxes are ticked at once; the pages are composed when that is done
    Settings& m_settings;
    UnitStyle m_style;
    PrintCorrection m_correction;
    double m_nominalX = 0;  ///< of the measuring page's lines on this paper, mm
    double m_nominalY = 0;
    std::unique_ptr<PaperForm> m_form;
};

}  // namespace lidwright
