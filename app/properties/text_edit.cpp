#include "app/properties/text_edit.h"

namespace lidwright {

TextEdit::TextEdit(int mostBytes, const UnitStyle& style, QWidget* parent) : TypedEdit(style, parent)
{
    setMaxLength(mostBytes);
}

Result<ParameterValue> TextEdit::read(const QString& text) const
{
    return ParameterValue(text.toStdString());
}

QString TextEdit::written(const ParameterValue& value) const
{
    return QString::fromStdString(std::get<std::string>(value));
}

}  // namespace lidwright
