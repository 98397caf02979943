#pragma once

#include "app/paper/paper_pages.h"

#include <QPixmap>
#include <QWidget>

#include <vector>

namespace lidwright {

/// Shows one page as it will be printed, and beside it a map of all pages: each template's tiles in their
/// places. Arrow and page keys, the wheel and clicks in the map choose the page.
class PagePreview : public QWidget {
    Q_OBJECT
public:
    explicit PagePreview(QWidget* parent = nullptr);

    /// Keeps the chosen page where the new pages have as many.
    void setPages(PaperPages pages);
    const PaperPages& pages() const { return m_pages; }
    int page() const { return m_page; }  ///< from 0
    void showPage(int page);
    /// "Page 3 of 9: Lid, A2".
    QString pageText() const;
    /// Where the map shows a page; empty when there is none.
    QRectF mapCell(int page) const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void pageShown(int page);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    struct Cell {
        int page;
        QRectF box;
        QString name;
    };
    void layOutMap();
    /// How far the map is moved up so that the chosen page's cell is in sight.
    double mapShift() const;
    QRectF pageBox() const;
    void paintMap(QPainter& painter) const;

    PaperPages m_pages;
    int m_page = 0;
    QPixmap m_picture;  ///< of the chosen page; null when it must be painted anew
    std::vector<Cell> m_cells;
    std::vector<std::pair<QPointF, QString>> m_labels;
    double m_mapHeight = 0;
    int m_wheel = 0;
};

}  // namespace lidwright
