#pragma once

#include "app/properties/typed_edit.h"

namespace lidwright {

/// One line of plain text.
class TextEdit final : public TypedEdit {
    Q_OBJECT
public:
    /// At most `mostBytes` bytes of UTF-8.
    TextEdit(int mostBytes, const UnitStyle& style, QWidget* parent = nullptr);

protected:
    Result<ParameterValue> read(const QString& text) const override;
    QString written(const ParameterValue& value) const override;
};

}  // namespace lidwright
