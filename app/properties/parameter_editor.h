#pragma once

#include "core/plan/catalogue.h"

#include <QWidget>

namespace lidwright {

/// The control for one parameter, whatever its kind: hides which widget it is.
class ParameterEditor : public QObject {
    Q_OBJECT
public:
    /// The control that fits the parameter's quantity, as a child of `parent`.
    static ParameterEditor* make(const Parameter& parameter, const UnitStyle& style, QWidget* parent);

    QWidget* widget() const { return m_widget; }
    /// Shows the plan's value; what is being typed stays.
    virtual void setValue(const ParameterValue& value, const UnitStyle& style) = 0;
    /// Shows what a silenced quantity comes out as; for controls that show words of their own it does
    /// nothing.
    virtual void showInstead(const QString&) {}
    /// The value that was chosen last is refused.
    virtual void refuse(const Error& error);
    /// Width below which the control would cut its words off; 0 where it has none.
    virtual int wantedWidth() const { return 0; }
    /// Reads what is being typed, as Enter does.
    virtual void commit() {}

Q_SIGNALS:
    void chosen(const ParameterValue& value, bool step);
    void errorChanged(const QString& message);

protected:
    explicit ParameterEditor(QWidget* widget);

private:
    QWidget* m_widget;
};

}  // namespace lidwright
