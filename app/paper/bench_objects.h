#pragma once

#include "core/io/build/bench_sheet.h"

#include <QFont>
#include <QObject>
#include <QTextObjectInterface>

#include <vector>

namespace lidwright {

/// Draws what rich text cannot hold: a sheet's pictures with the drawing's own painter, as lines and not as
/// pixels, with their captions, which no page break may part from them; and boxes to tick.
class BenchObjects : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)
public:
    enum Kind { Picture = QTextFormat::UserObject + 1, TickBox };

    /// `dotsPerMm` of the device that the document is laid out for; no picture is wider than `widest` or
    /// higher than `highest`, mm, with its caption.
    BenchObjects(double dotsPerMm, double widest, double highest, const QFont& captions, QObject* parent);

    /// The character format of an object of that kind; `picture` must outlive the document.
    QTextCharFormat picture(const BenchPicture& picture);
    QTextCharFormat tickBox(double size) const;

    QSizeF intrinsicSize(QTextDocument* document, int position, const QTextFormat& format) override;
    void drawObject(QPainter* painter, const QRectF& rect, QTextDocument* document, int position,
                    const QTextFormat& format) override;

private:
    const BenchPicture* pictureOf(const QTextFormat& format) const;
    double captionHeight(const BenchPicture& picture) const;

    double m_dotsPerMm;
    double m_widest, m_highest;
    QFont m_captions;  ///< its size in dots
    std::vector<const BenchPicture*> m_pictures;
};

}  // namespace lidwright
