#pragma once

#include <QToolButton>

namespace lidwright {

/// The small cross by which a strip or a notice is put away.
class CloseButton final : public QToolButton {
    Q_OBJECT
public:
    /// `what` is its name and its tip: "Close this notice".
    explicit CloseButton(const QString& what, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;
};

}  // namespace lidwright
