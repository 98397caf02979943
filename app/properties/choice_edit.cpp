#include "app/properties/choice_edit.h"

#include "app/text/texts.h"

#include <QStyleOptionComboBox>
#include <QWheelEvent>

#include <algorithm>

namespace lidwright {

ChoiceEdit::ChoiceEdit(std::span<const ChoiceWord> words, QWidget* parent) : QComboBox(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    // The longest word must not widen the panel; the list that opens shows it whole.
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(4);
    for (const ChoiceWord& word : words)
        addItem(shown(word.label));
    connect(this, &QComboBox::activated, this, [this](int index) {
        if (index != m_value) Q_EMIT committed(index);
        setCurrentIndex(m_value);  // a choice that was refused goes back
    });
}

void ChoiceEdit::setValue(double index)
{
    m_value = static_cast<int>(index);
    setCurrentIndex(m_value);
}

int ChoiceEdit::wantedWidth() const
{
    int widest = 0;
    for (int i = 0; i < count(); ++i)
        widest = std::max(widest, fontMetrics().horizontalAdvance(itemText(i)));
    QStyleOptionComboBox option;
    initStyleOption(&option);
    return style()->sizeFromContents(QStyle::CT_ComboBox, &option, {widest, 0}, this).width();
}

void ChoiceEdit::wheelEvent(QWheelEvent* event)
{
    event->ignore();
}

}  // namespace lidwright
