#pragma once

#include "app/properties/typed_edit.h"

namespace lidwright {

/// An angle in degrees, a ratio or a count.
class NumberEdit final : public TypedEdit {
    Q_OBJECT
public:
    NumberEdit(const Parameter& parameter, const UnitStyle& style, QWidget* parent = nullptr);

protected:
    Result<ParameterValue> read(const QString& text) const override;
    QString written(const ParameterValue& value) const override;
    ParameterValue stepped(const ParameterValue& value, int count) const override;

private:
    const Parameter& m_parameter;
};

}  // namespace lidwright
