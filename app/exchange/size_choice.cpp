#include "app/exchange/size_choice.h"

#include "app/properties/length_edit.h"

#include "core/base/length_text.h"

#include <QHBoxLayout>
#include <QRadioButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <utility>

namespace lidwright {

namespace {
/// A drawing narrower than this is a mistake, mm (our own choice, no source).
constexpr double kLeastWidth = 1;
}  // namespace

SizeChoice::SizeChoice(const UnitStyle& style, QWidget* parent)
    : QGroupBox(tr("Size"), parent),
      m_byFile(new QRadioButton(this)),
      m_byWidth(new QRadioButton(tr("This &wide:"), this)),
      m_width(new LengthEdit(kLeastWidth, kCoordinateLimit, style, this)),
      m_style(style)
{
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_byFile);
    for (std::size_t i = 0; i < kUnits.size(); ++i) {
        m_byUnits[i] = new QRadioButton(this);
        column->addWidget(m_byUnits[i]);
    }
    m_byFile->setToolTip(tr("The file states its size in a unit of length"));
    m_byUnits[0]->setToolTip(tr("96 to the inch: what CSS and drawing programs of today use"));
    m_byUnits[1]->setToolTip(tr("90 to the inch: what some older drawing programs wrote"));
    m_byUnits[2]->setToolTip(tr("72 to the inch: what page-making programs write"));
    m_byWidth->setToolTip(tr("Give the width of what is painted; the height follows"));
    m_width->setAccessibleName(tr("Width of the drawing"));
    m_width->setToolTip(tr("Width of what is painted, 1 mm to 5 m; any unit can be typed"));
    m_width->setValue(100.0, style);
    auto* line = new QHBoxLayout;
    line->addWidget(m_byWidth);
    line->addWidget(m_width, 1);
    column->addLayout(line);

    const auto all = findChildren<QRadioButton*>();
    for (QRadioButton* button : all)
        connect(button, &QRadioButton::toggled, this, [this](bool on) {
            if (on) Q_EMIT chosen();
        });
    connect(m_width, &TypedEdit::committed, this, [this, style](const ParameterValue& value, bool) {
        const double* width = std::get_if<double>(&value);
        if (!width || *width < kLeastWidth || *width > kCoordinateLimit) {
            m_width->markError({tr("the width must lie between 1 mm and 5 m").toStdString(), {}, {}, 0});
            return;
        }
        m_width->setValue(value, style);
        if (m_byWidth->isChecked())
            Q_EMIT chosen();
        else
            m_byWidth->setChecked(true);
    });
}

void SizeChoice::setReading(const DrawingReading& reading, bool dxf)
{
    m_dxf = dxf;
    m_byFile->setVisible(reading.hasPhysicalSize);
    m_byFile->setEnabled(reading.hasPhysicalSize);
    const QString dxfLabels[] = {tr("Drawn in &millimetres: %1"), tr("Drawn in &inches: %1"),
                                 tr("Drawn in &centimetres: %1")};
    for (std::size_t i = 0; i < m_byUnits.size(); ++i) {
        const double unit = kMillimetresPerInch / (dxf ? kDxfUnits : kUnits)[i];
        const QString size = sizeText(reading.widthUnits * unit, reading.heightUnits * unit);
        m_byUnits[i]->setVisible(!reading.hasPhysicalSize);
        m_byUnits[i]->setEnabled(!reading.hasPhysicalSize);
        m_byUnits[i]->setText(dxf ? dxfLabels[i].arg(size)
                                  : tr("&%1 units to the inch: %2").arg(kUnits[i]).arg(size));
        if (dxf)
            m_byUnits[i]->setToolTip(tr("The unit that the drawing was made in; the file does not name it"));
    }
    if (!std::exchange(m_first, false)) return;
    // The reading at hand was made with this choice: nothing needs to be read again.
    const QSignalBlocker quiet(this);
    m_byFile->setText(tr("As the &file says: %1").arg(sizeText(reading.art.width, reading.art.height)));
    (reading.hasPhysicalSize ? m_byFile : m_byUnits[0])->setChecked(true);
    m_width->setValue(reading.art.width, m_style);
}

SvgOptions SizeChoice::options() const
{
    SvgOptions options;
    if (m_byWidth->isChecked()) options.width_mm = m_width->millimetres();
    for (std::size_t i = 0; i < m_byUnits.size(); ++i)
        if (m_byUnits[i]->isChecked()) options.unitsPerInch = (m_dxf ? kDxfUnits : kUnits)[i];
    return options;
}

QString SizeChoice::sizeText(double width_mm, double height_mm)
{
    const auto pair = [&](const UnitStyle& style) {
        const LengthText across = formatLength(width_mm, style, false), down = formatLength(height_mm, style);
        QString text =
            tr("%1 \u00d7 %2").arg(QString::fromStdString(across.text), QString::fromStdString(down.text));
        if (!across.rounded && !down.rounded) return text;
        // One sign for both numbers.
        return QStringLiteral("\u2248 ") + text.remove(QStringLiteral("\u2248 "));
    };
    UnitStyle inches;
    inches.unit = LengthUnit::InchFraction;
    return tr("%1 (%2)").arg(pair({}), pair(inches));
}

QRadioButton* SizeChoice::unitsButton(int unitsPerInch) const
{
    for (std::size_t i = 0; i < kUnits.size(); ++i)
        if (kUnits[i] == unitsPerInch) return m_byUnits[i];
    return nullptr;
}

}  // namespace lidwright
