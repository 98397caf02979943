#include "app/exchange/import_artwork_dialog.h"

#include "app/exchange/paint_table.h"

#include <QDialogButtonBox>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

namespace lidwright {

ImportArtworkDialog::ImportArtworkDialog(const QString& path, const UnitStyle& style, QWidget* parent)
    : QDialog(parent),
      m_style(style),
      m_import(new DrawingImport(path, style, this)),
      m_paints(new PaintTable(this)),
      m_asLid(new QRadioButton(tr("As on the &lid"), this)),
      m_asDrawn(new QRadioButton(tr("As &drawn"), this)),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this))
{
    setWindowTitle(tr("Add artwork: %1").arg(m_import->fileName()));
    m_buttons->button(QDialogButtonBox::Ok)->setText(tr("&Add to the lid"));
    m_asLid->setChecked(true);
    m_asLid->setToolTip(tr("Wood, cut-outs and engraving by the uses of the paints"));
    m_asDrawn->setToolTip(tr("The colours that the drawing's author gave it"));

    auto* looks = new QHBoxLayout;
    auto* picture = new QLabel(tr("Picture:"), this);
    looks->addWidget(picture);
    looks->addWidget(m_asLid);
    looks->addWidget(m_asDrawn);
    looks->addStretch(1);
    auto* title = new QLabel(tr("&Uses of the paints"), this);
    title->setBuddy(m_paints);
    auto* hint =
        new QLabel(tr("The first guess is by colour and line width. Nothing here is final: the uses can be "
                      "changed later from the Edit menu."),
                   this);
    hint->setWordWrap(true);
    auto* right = new QVBoxLayout;
    right->addLayout(looks);
    right->addWidget(title);
    right->addWidget(m_paints, 1);
    right->addWidget(hint);
    auto* halves = new QHBoxLayout;
    halves->addWidget(m_import, 1);
    halves->addLayout(right, 1);
    auto* column = new QVBoxLayout(this);
    column->addLayout(halves, 1);
    column->addWidget(m_buttons);
    resize(900, 620);

    connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_import, &DrawingImport::readingChanged, this, &ImportArtworkDialog::takeReading);
    connect(m_paints, &PaintTable::usesChanged, this, &ImportArtworkDialog::showPicture);
    connect(m_asLid, &QRadioButton::toggled, this, &ImportArtworkDialog::showPicture);
    takeReading();
}

ArtPiece ImportArtworkDialog::piece() const
{
    ArtPiece piece;
    piece.art = m_shown;
    piece.uses = m_paints->uses();
    const QString name = QFileInfo(m_import->fileName()).completeBaseName().simplified();
    if (!name.isEmpty()) piece.name = name.toStdString();
    return piece;
}

void ImportArtworkDialog::takeReading()
{
    const ArtworkPtr art = m_import->art();
    // While the size is read anew the table stays, so that the choices made are not swept away.
    m_buttons->button(QDialogButtonBox::Ok)->setEnabled(art && !m_import->busy());
    m_paints->setEnabled(art != nullptr);
    if (!art || art == m_shown) return;
    const auto uses = m_shown ? carriedUses(*m_shown, m_paints->uses(), *art) : firstGuess(*art);
    m_shown = art;
    m_paints->setPaints(*art, uses, m_style);
    showPicture();
}

void ImportArtworkDialog::showPicture()
{
    if (m_shown)
        m_import->picture().show(m_shown, m_paints->uses(),
                                 m_asLid->isChecked() ? ArtLook::Lid : ArtLook::Colours);
}

}  // namespace lidwright
