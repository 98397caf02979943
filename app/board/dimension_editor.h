#pragma once

#include "core/plan/catalogue.h"

#include <QLabel>
#include <QLineEdit>
#include <QString>

#include <optional>

namespace lidwright {

class PlanDocument;

/// A field that opens where a dimension stands: what is typed goes through the catalogue into the plan.
/// Return applies it, Escape leaves it as it was; a text that cannot be read keeps the field open and says
/// why.
class DimensionEditor : public QLineEdit {
    Q_OBJECT
public:
    /// `board` shows the field and the words of an error.
    DimensionEditor(PlanDocument& document, QWidget* board);

    /// Opens for the parameter `key` with its middle at `middle`. False where the plan has no such parameter.
    bool open(const std::string& key, QPoint middle);
    bool isOpen() const { return m_ref.has_value(); }
    const std::string& key() const { return m_key; }
    /// Closes without a change.
    void close();
    QString error() const { return m_error->text(); }

Q_SIGNALS:
    void closed();
    /// Tab was pressed: the next (or previous) dimension is wanted after this one was applied.
    void nextWanted(bool forward);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

private:
    bool apply();
    void showError(const QString& text);

    PlanDocument& m_document;
    std::string m_key;
    std::optional<ParameterRef> m_ref;
    QString m_start;
    QLabel* m_error;
};

}  // namespace lidwright
