#include "app/properties/length_edit.h"

#include "core/base/length_text.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr QChar kAbout = QChar(0x2248);  // ≈

}  // namespace

double lengthStep(double most, LengthUnit unit)
{
    const bool metric = unit == LengthUnit::Millimetre;
    if (most <= 10) return metric ? 0.1 : kMillimetresPerInch / 64;
    if (most <= 60) return metric ? 0.5 : kMillimetresPerInch / 32;
    return metric ? 1.0 : kMillimetresPerInch / 16;
}

LengthEdit::LengthEdit(double least, double most, const UnitStyle& style, QWidget* parent)
    : TypedEdit(style, parent), m_least(least), m_most(most)
{
    setMaxLength(kLengthTextLimit);
}

Result<ParameterValue> LengthEdit::read(const QString& text) const
{
    // The mark of a rounded value may have been left standing before the new digits.
    qsizetype start = 0;
    while (start < text.size() && (text.at(start) == kAbout || text.at(start).isSpace()))
        ++start;
    const QByteArray skipped = text.left(start).toUtf8();
    const Result<double> length = parseLength(text.mid(start).toStdString(), style());
    if (length) return ParameterValue(*length);
    Error error = length.error();
    if (error.position >= 0) error.position += static_cast<int>(skipped.size());
    return error;
}

QString LengthEdit::written(const ParameterValue& value) const
{
    return QString::fromStdString(formatLength(std::get<double>(value), style()).text);
}

ParameterValue LengthEdit::stepped(const ParameterValue& value, int count) const
{
    // Rounded to a picometre, so that a hundred steps of 0.1 mm are ten millimetres.
    constexpr double kGrid = 1e9;
    const double next = std::get<double>(value) + count * lengthStep(m_most, style().unit);
    return std::clamp(std::round(next * kGrid) / kGrid, std::min(m_least, std::get<double>(value)),
                      std::max(m_most, std::get<double>(value)));
}

}  // namespace lidwright
