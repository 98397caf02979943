#pragma once

#include "app/properties/typed_edit.h"

namespace lidwright {

/// A length, typed in the length grammar and kept in millimetres. A value that the text rounds is shown with
/// ≈.
class LengthEdit final : public TypedEdit {
    Q_OBJECT
public:
    /// Steps stay within [least, most], mm.
    LengthEdit(double least, double most, const UnitStyle& style, QWidget* parent = nullptr);

    double millimetres() const { return std::get<double>(value()); }

protected:
    Result<ParameterValue> read(const QString& text) const override;
    QString written(const ParameterValue& value) const override;
    ParameterValue stepped(const ParameterValue& value, int count) const override;

private:
    double m_least;
    double m_most;
};

/// One step of a length field, mm: 1 mm or 1/16 in; 0.5 mm or 1/32 in where the range ends at 60 mm, 0.1 mm
/// or 1/64 in where it ends at 10 mm (our own choice, no source).
double lengthStep(double most, LengthUnit unit);

}  // namespace lidwright
