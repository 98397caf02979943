#pragma once

#include <QCheckBox>

namespace lidwright {

/// Yes or no; the word stands beside the box.
class FlagEdit final : public QCheckBox {
    Q_OBJECT
public:
    explicit FlagEdit(QWidget* parent = nullptr);

    void setValue(double value);

Q_SIGNALS:
    void committed(double value);

private:
    bool m_value = false;
};

}  // namespace lidwright
