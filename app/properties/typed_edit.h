#pragma once

#include "core/base/result.h"
#include "core/plan/parameter.h"

#include <QLineEdit>

class QAction;

namespace lidwright {

/// A line in which one value of a plan is typed.
///
/// The value and its text are kept apart: what is shown may be rounded, and opening and closing the field
/// without typing leaves the value as it was, bit for bit. A changed text is read on Enter or when the
/// keyboard leaves the field; one that cannot be read stays where it is, marked, with the bad part selected,
/// until it is mended or Esc brings the old value back. Up and Down step the value, Shift and the page keys
/// ten steps; the wheel steps only while the field has the keyboard.
class TypedEdit : public QLineEdit {
    Q_OBJECT
public:
    explicit TypedEdit(const UnitStyle& style, QWidget* parent = nullptr);

    /// Shows a value that the plan has now. A text that is being typed stays.
    void setValue(const ParameterValue& value, const UnitStyle& style);
    const ParameterValue& value() const { return m_value; }
    /// Shows this text in the value's place until setValue() is called: what a silenced quantity comes out
    /// as.
    void showInstead(const QString& text);

    /// Keeps the text and marks it as refused; selects from the error's position to the end of that word.
    void markError(const Error& error);
    bool hasError() const { return m_errorMark != nullptr; }

    /// Reads a changed text as Enter does. False when it cannot be read.
    bool commit();
    /// Back to the value, as Esc does.
    void restore();

Q_SIGNALS:
    /// The user chose this value. Whoever takes it answers with setValue() or markError().
    void committed(const ParameterValue& value, bool step);
    /// Why the text was refused; empty when it is in order again.
    void errorChanged(const QString& message);

protected:
    virtual Result<ParameterValue> read(const QString& text) const = 0;
    virtual QString written(const ParameterValue& value) const = 0;
    /// The value `count` steps up (down where negative), kept within its range; the value where it has no
    /// steps.
    virtual ParameterValue stepped(const ParameterValue& value, int count) const;

    const UnitStyle& style() const { return m_style; }

    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    bool pending() const { return text() != m_shown; }
    void showText();
    void clearError();
    void step(int count);
    void selectFrom(int byte);

    UnitStyle m_style;
    ParameterValue m_value;
    QString m_shown;  ///< the text that stands for m_value
    QAction* m_errorMark = nullptr;
    int m_wheel = 0;  ///< eighths of a degree that have not made a step yet
};

}  // namespace lidwright
