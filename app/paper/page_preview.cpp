#include "app/paper/page_preview.h"

#include "app/paper/page_painter.h"

#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>

#include <algorithm>

namespace lidwright {

namespace {

constexpr double kGap = 8;

double mapWidth(const QWidget& widget)
{
    return widget.fontMetrics().averageCharWidth() * 24.0;
}

}  // namespace

PagePreview::PagePreview(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Page preview"));
    setToolTip(
        tr("The page as it will be printed. Arrow and page keys turn the pages; click in the map to choose "
           "one."));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PagePreview::setPages(PaperPages pages)
{
    m_pages = std::move(pages);
    m_page = std::clamp(m_page, 0, std::max(0, static_cast<int>(m_pages.pages.size()) - 1));
    m_picture = {};
    layOutMap();
    setAccessibleDescription(pageText());
    update();
    Q_EMIT pageShown(m_page);
}

void PagePreview::showPage(int page)
{
    const int next = std::clamp(page, 0, std::max(0, static_cast<int>(m_pages.pages.size()) - 1));
    if (next == m_page) return;
    m_page = next;
    m_picture = {};
    setAccessibleDescription(pageText());
    update();
    Q_EMIT pageShown(m_page);
}

QString PagePreview::pageText() const
{
    const auto count = static_cast<int>(m_pages.pages.size());
    if (count == 0) return tr("No page");
    const bool cover = m_page == 0 && !m_pages.templates.empty() && m_pages.pages.front().drawing == nullptr;
    QString what = cover ? tr("how to print and join") : tr("what is wrong with the plan");
    for (const TemplatePages& one : m_pages.templates) {
        const auto first = static_cast<int>(one.firstPage);
        if (m_page < first || m_page >= first + static_cast<int>(one.pageCount)) continue;
        const QString name = QString::fromStdString(m_pages.pages[static_cast<std::size_t>(m_page)].name);
        what = name.isEmpty() ? one.label() : tr("%1, %2").arg(one.label(), name);
    }
    return tr("Page %1 of %2: %3").arg(m_page + 1).arg(count).arg(what);
}

QRectF PagePreview::mapCell(int page) const
{
    const auto found =
        std::find_if(m_cells.begin(), m_cells.end(), [&](const Cell& c) { return c.page == page; });
    return found == m_cells.end() ? QRectF() : found->box.translated(0, -mapShift());
}

QSize PagePreview::sizeHint() const
{
    return {fontMetrics().averageCharWidth() * 100, fontMetrics().height() * 34};
}

QSize PagePreview::minimumSizeHint() const
{
    return {fontMetrics().averageCharWidth() * 40, fontMetrics().height() * 12};
}

void PagePreview::layOutMap()
{
    m_cells.clear();
    m_labels.clear();
    const double width = mapWidth(*this) - kGap;
    const double line = fontMetrics().height();
    double y = kGap;
    const auto heading = [&](const QString& words) {
        y += line;
        m_labels.emplace_back(
            QPointF(kGap, y - fontMetrics().descent()),
            fontMetrics().elidedText(words, Qt::ElideRight, static_cast<int>(width - kGap)));
        y += kGap / 2;
    };
    const double least = std::max(line, 24.0);  // WCAG 2.2, 2.5.8: targets of at least 24 pixels
    if (m_pages.front > 0) {
        heading(m_pages.front == 1 ? tr("First page") : tr("First pages"));
        for (std::size_t i = 0; i < m_pages.front; ++i) {
            const double x = kGap + static_cast<double>(i) * (least + 3);
            m_cells.push_back({static_cast<int>(i), {x, y, least, least * 1.3}, {}});
        }
        y += least * 1.3 + kGap;
    }
    for (const TemplatePages& one : m_pages.templates) {
        heading(one.label());
        const int columns = one.tiling ? one.tiling->columns : 1;
        const double ratio = one.tiling ? one.tiling->pageHeight / one.tiling->pageWidth : 0.7;
        const double cell = std::clamp((width - kGap) / columns, least, least * 2);
        double bottom = y;
        for (std::size_t i = 0; i < one.pageCount; ++i) {
            const int column = one.tiling ? one.tiling->tiles[i].column : 0;
            const int row = one.tiling ? one.tiling->tiles[i].row : 0;
            const QRectF box(kGap + column * cell, y + row * cell * ratio, cell - 3, cell * ratio - 3);
            m_cells.push_back({static_cast<int>(one.firstPage + i), box,
                               QString::fromStdString(m_pages.pages[one.firstPage + i].name)});
            bottom = std::max(bottom, box.bottom());
        }
        y = bottom + kGap;
    }
    m_mapHeight = y;
}

double PagePreview::mapShift() const
{
    if (m_mapHeight <= height()) return 0;
    const auto found =
        std::find_if(m_cells.begin(), m_cells.end(), [this](const Cell& c) { return c.page == m_page; });
    const double here = found == m_cells.end() ? 0 : found->box.center().y();
    return std::clamp(here - height() / 2.0, 0.0, m_mapHeight - height());
}

QRectF PagePreview::pageBox() const
{
    if (m_pages.pages.empty()) return {};
    const PaperPage& page = m_pages.pages[static_cast<std::size_t>(m_page)];
    const QRectF room = QRectF(rect()).adjusted(mapWidth(*this), kGap, -kGap, -kGap);
    if (room.width() <= 1 || room.height() <= 1) return {};
    const double scale = std::min(room.width() / page.width, room.height() / page.height);
    QRectF box(0, 0, page.width * scale, page.height * scale);
    box.moveCenter(room.center());
    return box;
}

void PagePreview::paintMap(QPainter& painter) const
{
    painter.save();
    painter.setClipRect(QRectF(0, 0, mapWidth(*this), height()));
    painter.translate(0, -mapShift());
    painter.setPen(palette().color(QPalette::WindowText));
    for (const auto& [at, words] : m_labels)
        painter.drawText(at, words);
    for (const Cell& cell : m_cells) {
        const bool here = cell.page == m_page;
        painter.setPen(palette().color(QPalette::WindowText));
        painter.setBrush(palette().color(here ? QPalette::Highlight : QPalette::Base));
        painter.drawRect(cell.box);
        painter.setPen(palette().color(here ? QPalette::HighlightedText : QPalette::Text));
        painter.drawText(cell.box, Qt::AlignCenter, cell.name);
    }
    painter.restore();
}

void PagePreview::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMap(painter);
    const QRectF box = pageBox();
    if (box.isEmpty()) return;
    const PaperPage& page = m_pages.pages[static_cast<std::size_t>(m_page)];
    if (m_picture.isNull()) {
        const double ratio = devicePixelRatioF();
        m_picture = QPixmap((box.size() * ratio).toSize().expandedTo({1, 1}));
        m_picture.setDevicePixelRatio(ratio);
        m_picture.fill(Qt::white);  // paper stays white whatever the palette
        QPainter onPaper(&m_picture);
        paintPage(onPaper, page, box.width() / page.width, Surface::Printer);
    }
    painter.drawPixmap(box.topLeft(), m_picture);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(
        QPen(palette().color(hasFocus() ? QPalette::Highlight : QPalette::Mid), hasFocus() ? 2 : 1));
    painter.drawRect(box);
}

void PagePreview::resizeEvent(QResizeEvent*)
{
    m_picture = {};
    layOutMap();
}

void PagePreview::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
        case Qt::Key_Right:
        case Qt::Key_Down:
        case Qt::Key_PageDown:
            showPage(m_page + 1);
            break;
        case Qt::Key_Left:
        case Qt::Key_Up:
        case Qt::Key_PageUp:
            showPage(m_page - 1);
            break;
        case Qt::Key_Home:
            showPage(0);
            break;
        case Qt::Key_End:
            showPage(static_cast<int>(m_pages.pages.size()) - 1);
            break;
        default:
            QWidget::keyPressEvent(event);
    }
}

void PagePreview::mousePressEvent(QMouseEvent* event)
{
    for (const Cell& cell : m_cells)
        if (cell.box.contains(event->position() + QPointF(0, mapShift()))) return showPage(cell.page);
    QWidget::mousePressEvent(event);
}

void PagePreview::wheelEvent(QWheelEvent* event)
{
    // Fine wheels report in small parts; one page to a notch of 15 degrees.
    m_wheel += event->angleDelta().y();
    const int notches = m_wheel / 120;
    m_wheel -= notches * 120;
    if (notches != 0) showPage(m_page - notches);
    event->accept();
}

}  // namespace lidwright
