#include "app/style/verdict_mark.h"

#include <QFile>
#include <QIconEngine>
#include <QSvgRenderer>

#include <memory>

namespace lidwright {
namespace {

/// A one-colour drawing, painted at whatever size is asked in the palette's colour for the state.
class TintedEngine final : public QIconEngine {
public:
    TintedEngine(std::shared_ptr<QSvgRenderer> drawing, const QPalette& palette)
        : m_drawing(std::move(drawing)), m_palette(palette)
    {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State state) override
    {
        const double scale = painter->device()->devicePixelRatio();
        QPixmap image = pixmap(rect.size() * scale, mode, state);
        image.setDevicePixelRatio(scale);
        painter->drawPixmap(rect, image);
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State) override
    {
        QPixmap image(size);
        image.fill(Qt::transparent);
        if (size.isEmpty()) return image;
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        m_drawing->render(&painter, QRectF({}, QSizeF(size)));
        painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
        painter.fillRect(image.rect(), colour(mode));
        return image;
    }
    QIconEngine* clone() const override { return new TintedEngine(*this); }

private:
    QColor colour(QIcon::Mode mode) const
    {
        switch (mode) {
            case QIcon::Disabled:
                return m_palette.color(QPalette::Disabled, QPalette::WindowText);
            case QIcon::Selected:
                return m_palette.color(QPalette::Active, QPalette::HighlightedText);
            default:
                return m_palette.color(QPalette::Active, QPalette::WindowText);
        }
    }

    std::shared_ptr<QSvgRenderer> m_drawing;
    QPalette m_palette;
};

}  // namespace

QIcon tintedIcon(const QString& name, const QPalette& palette)
{
    const QString path = QStringLiteral(":/icons/%1.svg").arg(name);
    if (!QFile::exists(path)) return {};
    auto drawing = std::make_shared<QSvgRenderer>(path);
    if (!drawing->isValid()) return {};
    return QIcon(new TintedEngine(std::move(drawing), palette));
}

}  // namespace lidwright
