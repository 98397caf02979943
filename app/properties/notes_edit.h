#pragma once

#include <QPlainTextEdit>

namespace lidwright {

/// Text of several lines. Taken when the keyboard leaves it or with Ctrl+Enter; Esc brings the old text back.
class NotesEdit final : public QPlainTextEdit {
    Q_OBJECT
public:
    explicit NotesEdit(QWidget* parent = nullptr);

    /// Shows the plan's text; one that is being typed stays.
    void setValue(const QString& text);
    /// Hands a changed text on.
    void commit();

Q_SIGNALS:
    void committed(const QString& text);

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    bool pending() const { return toPlainText() != m_shown; }

    QString m_value;
    QString m_shown;  ///< m_value as the editor gives it back
};

}  // namespace lidwright
