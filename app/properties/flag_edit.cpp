#include "app/properties/flag_edit.h"

namespace lidwright {

FlagEdit::FlagEdit(QWidget* parent) : QCheckBox(parent)
{
    constexpr int kLeastTarget = 24;  // WCAG 2.2, success criterion 2.5.8
    setMinimumHeight(kLeastTarget);
    setValue(0);
    connect(this, &QCheckBox::clicked, this, [this](bool checked) {
        Q_EMIT committed(checked ? 1 : 0);
        setValue(m_value ? 1 : 0);  // what was refused goes back
    });
}

void FlagEdit::setValue(double value)
{
    m_value = value != 0;
    setChecked(m_value);
    setText(m_value ? tr("yes") : tr("no"));
}

}  // namespace lidwright
