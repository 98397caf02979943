#pragma once

#include "core/base/units.h"
#include "core/plan/art_piece.h"

#include <QDialog>

namespace lidwright {

class PaintTable;

/// The uses of the paints of a piece that is on the lid already.
class PaintUsesDialog : public QDialog {
    Q_OBJECT
public:
    PaintUsesDialog(const ArtPiece& piece, const UnitStyle& style, QWidget* parent = nullptr);

    std::vector<ArtUse> uses() const;
    PaintTable& paints() { return *m_paints; }

private:
    PaintTable* m_paints;
};

}  // namespace lidwright
