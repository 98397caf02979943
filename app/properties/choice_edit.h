#pragma once

#include "core/plan/parameter.h"

#include <QComboBox>

namespace lidwright {

/// One word of a choice. The wheel never changes it, so that scrolling past it is safe.
class ChoiceEdit final : public QComboBox {
    Q_OBJECT
public:
    explicit ChoiceEdit(std::span<const ChoiceWord> words, QWidget* parent = nullptr);

    void setValue(double index);
    /// Width at which the longest word is seen whole, pixels.
    int wantedWidth() const;

Q_SIGNALS:
    void committed(double index);

protected:
    void wheelEvent(QWheelEvent* event) override;

private:
    int m_value = -1;
};

}  // namespace lidwright
