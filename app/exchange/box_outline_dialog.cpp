#include "app/exchange/box_outline_dialog.h"

#include "app/text/texts.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace lidwright {

BoxOutlineDialog::BoxOutlineDialog(const QString& path, const Plan& plan, QWidget* parent)
    : QDialog(parent),
      m_plan(plan),
      m_next(plan),
      m_import(new DrawingImport(path, unitStyle(plan), this)),
      m_head(new QComboBox(this)),
      m_size(new QLabel(this)),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this)),
      m_seek(this, [this](const Ring& ring) { showOutline(ring); })
{
    setWindowTitle(tr("Box outline: %1").arg(m_import->fileName()));
    m_buttons->button(QDialogButtonBox::Ok)->setText(tr("&Take this outline"));
    m_head->addItem(tr("at the left"), static_cast<int>(HeadSide::Left));
    m_head->addItem(tr("at the top"), static_cast<int>(HeadSide::Top));
    m_head->addItem(tr("at the right"), static_cast<int>(HeadSide::Right));
    m_head->addItem(tr("at the bottom"), static_cast<int>(HeadSide::Bottom));
    m_head->setToolTip(tr("Which side of the drawing is the end of the box toward the headstock"));
    m_size->setWordWrap(true);

    auto* form = new QFormLayout;
    form->addRow(tr("&Head end:"), m_head);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_import, 1);
    column->addLayout(form);
    column->addWidget(m_size);
    column->addWidget(m_buttons);
    resize(560, 660);

    connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_import, &DrawingImport::readingChanged, this, &BoxOutlineDialog::takeReading);
    connect(m_head, &QComboBox::currentIndexChanged, this, &BoxOutlineDialog::judge);
    takeReading();
}

void BoxOutlineDialog::takeReading()
{
    const ArtworkPtr art = m_import->busy() ? nullptr : m_import->art();
    if (art && art == m_shown) return;
    m_shown = art;
    m_ring.clear();
    judge();
    if (art) m_seek.ask([art] { return largestOutline(*art); });
}

void BoxOutlineDialog::showOutline(const Ring& ring)
{
    if (!m_shown) return;
    m_ring = ring;
    m_import->picture().show(m_shown, {}, ArtLook::Colours, m_ring);
    judge();
}

void BoxOutlineDialog::judge()
{
    bool ok = false;
    m_size->clear();
    if (!m_ring.empty()) {
        const Ring turned = turnedToHead(m_ring, static_cast<HeadSide>(m_head->currentData().toInt()));
        auto next = withBoxOutline(m_plan, turned, m_import->fileName().toStdString());
        const Bounds box = bounds(turned);
        ok = next.ok();
        m_size->setText(
            ok ? tr("The box becomes %1 long and wide.").arg(SizeChoice::sizeText(box.width(), box.height()))
               : shown(next.error()));
        if (ok) m_next = std::move(next).value();
    }
    m_buttons->button(QDialogButtonBox::Ok)->setEnabled(ok);
}

}  // namespace lidwright
