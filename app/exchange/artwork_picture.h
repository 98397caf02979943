#pragma once

#include "app/exchange/background.h"

#include "core/plan/artwork.h"

#include <QColor>
#include <QImage>
#include <QWidget>

namespace lidwright {

enum class ArtLook {
    Colours,  ///< as its author painted it
    Lid,      ///< as it will be on the lid: wood, cut-outs, engraving
};

/// What a picture of a drawing is made of.
struct ArtPicture {
    ArtworkPtr art;
    std::vector<ArtUse> uses;  ///< for ArtLook::Lid
    ArtLook look = ArtLook::Colours;
    Ring outline;  ///< drawn over it when not empty: the box outline that was found
    QSize size;    ///< device pixels
    QColor ground, wood, gone, engraving, line;
};

/// Paints the drawing as large as it fits. Runs on any thread.
QImage renderArtwork(const ArtPicture& picture);

/// Shows a drawing; the picture is made in the background.
class ArtworkPicture : public QWidget {
    Q_OBJECT
public:
    explicit ArtworkPicture(QWidget* parent = nullptr);

    void show(ArtworkPtr art, std::vector<ArtUse> uses, ArtLook look, Ring outline = {});
    void clear();
    /// True once what was last asked for is on the screen.
    bool settled() const { return !m_background.busy(); }
    const QImage& image() const { return m_image; }

    QSize sizeHint() const override { return {360, 300}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void ask();

    ArtPicture m_wanted;
    QImage m_image;
    Background<QImage> m_background;
};

}  // namespace lidwright
