#pragma once

#include "app/exchange/drawing_import.h"

#include "core/base/units.h"
#include "core/plan/art_piece.h"

#include <QDialog>

class QDialogButtonBox;
class QRadioButton;

namespace lidwright {

class PaintTable;

/// Brings a drawing in as artwork: its picture, its size, what was left out, and the use of every paint.
class ImportArtworkDialog : public QDialog {
    Q_OBJECT
public:
    ImportArtworkDialog(const QString& path, const UnitStyle& style, QWidget* parent = nullptr);

    /// The drawing with its uses; its place is not set. Valid after the dialog was accepted.
    ArtPiece piece() const;
    DrawingImport& import() { return *m_import; }
    PaintTable& paints() { return *m_paints; }

private:
    void takeReading();
    void showPicture();

    UnitStyle m_style;
    DrawingImport* m_import;
    PaintTable* m_paints;
    QRadioButton* m_asLid;
    QRadioButton* m_asDrawn;
    QDialogButtonBox* m_buttons;
    ArtworkPtr m_shown;
};

}  // namespace lidwright
