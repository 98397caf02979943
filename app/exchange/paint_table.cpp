#include "app/exchange/paint_table.h"

#include "app/text/texts.h"

#include <QComboBox>
#include <QHeaderView>
#include <QPainter>

#include <algorithm>

namespace lidwright {

namespace {

enum Column { kPaint, kArea, kUse, kColumns };

QIcon swatch(const QColor& colour, bool line, const QPalette& palette)
{
    QPixmap pixmap(32, 16);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setPen(palette.color(QPalette::Text));
    if (line) {
        painter.fillRect(QRect(1, 6, 30, 4), colour);
        painter.drawRect(QRect(1, 5, 29, 5));
    } else {
        painter.setBrush(colour);
        painter.drawRect(QRect(1, 1, 29, 13));
    }
    return QIcon(pixmap);
}

}  // namespace

PaintTable::PaintTable(QWidget* parent) : QTableWidget(parent)
{
    setColumnCount(kColumns);
    setHorizontalHeaderLabels({tr("Paint"), tr("Area"), tr("Use")});
    verticalHeader()->hide();
    horizontalHeader()->setSectionResizeMode(kPaint, QHeaderView::Stretch);
    horizontalHeader()->setSectionResizeMode(kArea, QHeaderView::ResizeToContents);
    horizontalHeader()->setSectionResizeMode(kUse, QHeaderView::ResizeToContents);
    setSelectionMode(QAbstractItemView::NoSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    // The keyboard goes from use to use, and on out of the table.
    setFocusPolicy(Qt::NoFocus);
    setTabKeyNavigation(false);
    setIconSize({32, 16});
    setAccessibleName(tr("Uses of the paints"));
}

void PaintTable::setPaints(const Artwork& art, const std::vector<ArtUse>& uses, const UnitStyle& style,
                           double scale)
{
    setRowCount(0);
    std::vector<double> covered(art.paints.size());
    for (const ArtRun& run : art.runs)
        if (const auto paint = static_cast<std::size_t>(run.paint); paint < covered.size())
            covered[paint] += area(run.painted);
    setRowCount(static_cast<int>(art.paints.size()));
    for (int row = 0; row < rowCount(); ++row) {
        const auto i = static_cast<std::size_t>(row);
        const ArtPaint& paint = art.paints[i];
        const QString name = QString::fromStdString(paint.name);
        auto* first = new QTableWidgetItem(
            swatch(QColor(QString::fromStdString(paint.colour)), paint.line, palette()), name);
        if (paint.line)
            first->setToolTip(
                tr("A line, at its thinnest %1 wide").arg(shown(mm(paint.thinnest * scale), style)));
        setItem(row, kPaint, first);
        auto* size = new QTableWidgetItem(shown(Measure{covered[i] * scale * scale, Quantity::Area}, style));
        size->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
        setItem(row, kArea, size);

        auto* use = new QComboBox;
        use->addItem(tr("cut through"), static_cast<int>(ArtUse::Cut));
        if (paint.line) use->addItem(tr("cut what the line encloses"), static_cast<int>(ArtUse::CutInside));
        use->addItem(tr("engraved"), static_cast<int>(ArtUse::Engraved));
        use->addItem(tr("keeps the wood"), static_cast<int>(ArtUse::Wood));
        use->addItem(tr("ignored"), static_cast<int>(ArtUse::Ignored));
        const ArtUse now = i < uses.size() ? uses[i] : ArtUse::Ignored;
        use->setCurrentIndex(std::max(0, use->findData(static_cast<int>(now))));
        use->setAccessibleName(tr("Use of %1").arg(name));
        use->setToolTip(
            tr("What the cutter does where this paint is seen. \u201ckeeps the wood\u201d also takes back "
               "a cut of a paint that lies under it; \u201cignored\u201d is as though it were not there."));
        connect(use, &QComboBox::currentIndexChanged, this, &PaintTable::usesChanged);
        setCellWidget(row, kUse, use);
    }
    resizeRowsToContents();
}

std::vector<ArtUse> PaintTable::uses() const
{
    std::vector<ArtUse> all;
    for (int row = 0; row < rowCount(); ++row)
        all.push_back(static_cast<ArtUse>(useBox(row)->currentData().toInt()));
    return all;
}

QComboBox* PaintTable::useBox(int row) const
{
    return qobject_cast<QComboBox*>(cellWidget(row, kUse));
}

std::vector<ArtUse> carriedUses(const Artwork& before, const std::vector<ArtUse>& uses, const Artwork& now)
{
    std::vector<ArtUse> carried = firstGuess(now);
    for (std::size_t i = 0; i < now.paints.size() && i < carried.size(); ++i)
        for (std::size_t k = 0; k < before.paints.size() && k < uses.size(); ++k)
            if (before.paints[k].name == now.paints[i].name) carried[i] = uses[k];
    return carried;
}

}  // namespace lidwright
