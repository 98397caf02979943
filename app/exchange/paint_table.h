#pragma once

#include "core/base/units.h"
#include "core/plan/artwork.h"

#include <QTableWidget>

class QComboBox;

namespace lidwright {

/// The paints of a drawing, one a row: swatch and name, area, and what the cutter does there.
class PaintTable : public QTableWidget {
    Q_OBJECT
public:
    explicit PaintTable(QWidget* parent = nullptr);

    /// Shows the drawing's paints with these uses; `scale` is the placed piece's own, for the areas.
    void setPaints(const Artwork& art, const std::vector<ArtUse>& uses, const UnitStyle& style,
                   double scale = 1);
    std::vector<ArtUse> uses() const;
    QComboBox* useBox(int row) const;

Q_SIGNALS:
    void usesChanged();
};

/// The uses of `before` carried over to a drawing whose paints may have moved, by the paints' names; first
/// guesses for new ones.
std::vector<ArtUse> carriedUses(const Artwork& before, const std::vector<ArtUse>& uses, const Artwork& now);

}  // namespace lidwright
