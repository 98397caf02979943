#include "app/properties/number_edit.h"

#include "core/base/length_text.h"
#include "core/plan/catalogue.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

NumberEdit::NumberEdit(const Parameter& parameter, const UnitStyle& style, QWidget* parent)
    : TypedEdit(style, parent), m_parameter(parameter)
{
    setMaxLength(kLengthTextLimit);
}

Result<ParameterValue> NumberEdit::read(const QString& text) const
{
    return parseValue(m_parameter, text.toStdString(), style());
}

QString NumberEdit::written(const ParameterValue& value) const
{
    return QString::fromStdString(formatValue(m_parameter, value, style()));
}

ParameterValue NumberEdit::stepped(const ParameterValue& value, int count) const
{
    // One degree, one piece, a hundredth of a ratio (our own choice, no source).
    const double size = m_parameter.quantity == Quantity::Ratio ? 0.01 : 1;
    constexpr double kGrid = 1e9;
    const double next = std::get<double>(value) + count * size;
    return std::clamp(std::round(next * kGrid) / kGrid, std::min(m_parameter.least, std::get<double>(value)),
                      std::max(m_parameter.most, std::get<double>(value)));
}

}  // namespace lidwright
