#pragma once

#include "core/plan/catalogue.h"

#include <QWidget>

class QLabel;
class QToolButton;
class QBoxLayout;

namespace lidwright {

class ParameterEditor;
class PlanDocument;

/// One quantity in a part's form: label with the customary range, the control, the way back to the default,
/// and below them why a typed value was refused or why the quantity does not count.
class ParameterRow final : public QWidget {
    Q_OBJECT
public:
    ParameterRow(PlanDocument& document, const ParameterRef& ref, QWidget* parent = nullptr);

    const ParameterRef& ref() const { return m_ref; }
    ParameterEditor& editor() const { return *m_editor; }
    /// Takes over what the plan has now. `derived` is what the layout gives for a quantity that does not
    /// count; empty where it gives nothing.
    void refresh(const QString& derived);
    /// Puts the keyboard into the control.
    void takeFocus();

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void choose(const ParameterValue& value, bool step);
    void showError(const QString& message);
    void paintQuiet();
    void scaleFonts();

    PlanDocument& m_document;
    ParameterRef m_ref;
    QBoxLayout* m_line;
    QLabel* m_label;
    QLabel* m_hint;
    ParameterEditor* m_editor;
    QToolButton* m_reset;
    QLabel* m_message;
    bool m_refused = false;
};

}  // namespace lidwright
