#pragma once

#include "app/exchange/background.h"
#include "app/exchange/box_outline.h"
#include "app/exchange/drawing_import.h"

#include <QDialog>

class QComboBox;
class QDialogButtonBox;
class QLabel;

namespace lidwright {

/// Takes the outline of the box from a drawing: its largest outer ring.
class BoxOutlineDialog : public QDialog {
    Q_OBJECT
public:
    BoxOutlineDialog(const QString& path, const Plan& plan, QWidget* parent = nullptr);

    /// The plan with that box. Valid after the dialog was accepted.
    const Plan& plan() const { return m_next; }
    DrawingImport& import() { return *m_import; }
    QComboBox& headSide() { return *m_head; }

private:
    void takeReading();
    void showOutline(const Ring& ring);
    void judge();

    Plan m_plan;
    Plan m_next;
    DrawingImport* m_import;
    QComboBox* m_head;
    QLabel* m_size;
    QDialogButtonBox* m_buttons;
    ArtworkPtr m_shown;
    Ring m_ring;
    Background<Ring> m_seek;
};

}  // namespace lidwright
