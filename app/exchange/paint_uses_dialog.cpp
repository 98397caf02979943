#include "app/exchange/paint_uses_dialog.h"

#include "app/exchange/artwork_picture.h"
#include "app/exchange/paint_table.h"

#include <QDialogButtonBox>
#include <QVBoxLayout>

namespace lidwright {

PaintUsesDialog::PaintUsesDialog(const ArtPiece& piece, const UnitStyle& style, QWidget* parent)
    : QDialog(parent), m_paints(new PaintTable(this))
{
    setWindowTitle(tr("Uses of the paints: %1").arg(QString::fromStdString(piece.name)));
    auto* picture = new ArtworkPicture(this);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    auto* column = new QVBoxLayout(this);
    column->addWidget(picture, 1);
    column->addWidget(m_paints, 1);
    column->addWidget(buttons);
    resize(560, 620);

    m_paints->setPaints(*piece.art, piece.uses, style, piece.scale);
    const auto showPicture = [this, picture, art = piece.art] { picture->show(art, uses(), ArtLook::Lid); };
    connect(m_paints, &PaintTable::usesChanged, picture, showPicture);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    showPicture();
}

std::vector<ArtUse> PaintUsesDialog::uses() const
{
    return m_paints->uses();
}

}  // namespace lidwright
