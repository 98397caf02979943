#pragma once

#include "core/base/units.h"
#include "core/io/svg/svg_reader.h"

#include <QGroupBox>

#include <array>

class QLabel;
class QRadioButton;

namespace lidwright {

class LengthEdit;

/// How large a drawing is meant: as its file says, by its units per inch, or by a width. Each choice shows
/// the size that comes of it, in mm and in inches, before anything is brought in.
class SizeChoice : public QGroupBox {
    Q_OBJECT
public:
    explicit SizeChoice(const UnitStyle& style, QWidget* parent = nullptr);

    /// Offers what fits the drawing. The first call chooses: the file's own size, or 96 units per inch.
    /// A DXF is drawn in a unit of length that it may not name: those are offered then.
    void setReading(const DrawingReading& reading, bool dxf = false);
    SvgOptions options() const;
    /// "120.5 × 80 mm (4 3/4 × 3 5/32 in)".
    static QString sizeText(double width_mm, double height_mm);

    QRadioButton* unitsButton(int unitsPerInch) const;
    QRadioButton* widthButton() const { return m_byWidth; }
    LengthEdit* widthEdit() const { return m_width; }

Q_SIGNALS:
    void chosen();

private:
    static constexpr std::array<double, 3> kUnits{96, 90, 72};
    static constexpr std::array<double, 3> kDxfUnits{25.4, 1, 2.54};  ///< mm, in, cm

    bool m_dxf = false;
    QRadioButton* m_byFile;
    std::array<QRadioButton*, kUnits.size()> m_byUnits{};
    QRadioButton* m_byWidth;
    LengthEdit* m_width;
    UnitStyle m_style;
    bool m_first = true;
};

}  // namespace lidwright
