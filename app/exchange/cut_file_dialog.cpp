#include "app/exchange/cut_file_dialog.h"

#include "app/document/safe_write.h"
#include "app/text/texts.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

namespace lidwright {

namespace {

constexpr qint64 kPresetFileLimit = 1 << 20;

struct FormatChoice {
    CutFormat format;
    const char* ending;
    const char* label;
};
constexpr FormatChoice kFormats[] = {
    {CutFormat::Svg, ".svg", QT_TRANSLATE_NOOP("CutFileDialog", "SVG")},
    {CutFormat::DxfR2000, ".dxf", QT_TRANSLATE_NOOP("CutFileDialog", "DXF, release 2000")},
    {CutFormat::DxfR12, ".dxf", QT_TRANSLATE_NOOP("CutFileDialog", "DXF, release 12")},
    {CutFormat::Pdf, ".pdf", QT_TRANSLATE_NOOP("CutFileDialog", "PDF")},
};

}  // namespace

CutFileDialog::CutFileDialog(const Plan& plan, const Layout& layout, const QString& planPath, QWidget* parent)
    : QDialog(parent),
      m_plan(plan),
      m_layout(layout),
      m_planPath(planPath),
      m_presets(cutPresets()),
      m_preset(new QComboBox(this)),
      m_format(new QComboBox(this)),
      m_underside(new QCheckBox(tr("&Underside up (mirrored)"), this)),
      m_marks(new QCheckBox(tr("&Marks that are not cut, and a 100 mm line"), this)),
      m_kerf(new QLabel(this)),
      m_totals(new QLabel(this)),
      m_messages(new QListWidget(this)),
      m_state(new QLabel(this)),
      m_write(new QPushButton(tr("&Write..."), this))
{
    setWindowTitle(tr("Lid for the cutter"));
    askForFile = [this](const QString& suggested) {
        return QFileDialog::getSaveFileName(this, tr("Write the cutter's file"), suggested);
    };
    for (const FormatChoice& choice : kFormats)
        m_format->addItem(tr(choice.label));
    m_preset->setToolTip(tr("Colours, line widths and layers as a shop wants them: shops differ, ask yours"));
    m_format->setToolTip(tr("The kind of file that the shop reads"));
    m_underside->setToolTip(tr("For cutting with the lid's underside up, so that scorch marks lie inside"));
    m_marks->setToolTip(tr("Centre line, bridge, neck edges and words on a layer of their own"));
    m_marks->setChecked(true);
    m_messages->setAccessibleName(tr("What to know about this file"));
    m_messages->setWordWrap(true);
    for (QLabel* label : {m_kerf, m_totals, m_state})
        label->setWordWrap(true);
    auto* own = new QPushButton(tr("&Own presets..."), this);
    own->setToolTip(
        tr("Read a table of presets (CSV); the command line's lid --print-presets gives one to edit"));
    own->setAutoDefault(false);

    auto* form = new QFormLayout;
    auto* presetRow = new QHBoxLayout;
    presetRow->addWidget(m_preset, 1);
    presetRow->addWidget(own);
    auto* presetLabel = new QLabel(tr("&Preset:"), this);
    presetLabel->setBuddy(m_preset);
    form->addRow(presetLabel, presetRow);
    form->addRow(tr("&File:"), m_format);
    form->addRow(QString(), m_underside);
    form->addRow(QString(), m_marks);
    form->addRow(tr("Kerf:"), m_kerf);
    form->addRow(tr("To cut:"), m_totals);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(m_write, QDialogButtonBox::ActionRole);
    m_write->setDefault(true);
    auto* caution =
        new QLabel(tr("Laser and saw: ventilation and eye protection; never leave a laser alone; glue and "
                      "coatings can give off poison. Follow the makers' instructions and local rules."),
                   this);
    caution->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->addLayout(form);
    column->addWidget(m_messages, 1);
    column->addWidget(caution);
    column->addWidget(m_state);
    column->addWidget(buttons);
    resize(560, 460);

    connect(own, &QPushButton::clicked, this, &CutFileDialog::takePresets);
    connect(m_write, &QPushButton::clicked, this, &CutFileDialog::write);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    for (QComboBox* box : {m_preset, m_format})
        connect(box, qOverload<int>(&QComboBox::currentIndexChanged), this, &CutFileDialog::compose);
    for (QCheckBox* box : {m_underside, m_marks})
        connect(box, &QCheckBox::toggled, this, &CutFileDialog::compose);
    const QSignalBlocker quiet(m_preset);
    for (const CutPreset& preset : m_presets)
        m_preset->addItem(QString::fromStdString(preset.name));
    compose();
}

CutJob CutFileDialog::job() const
{
    const int index = std::clamp(m_preset->currentIndex(), 0, static_cast<int>(m_presets.size()) - 1);
    CutJob job = cutJobOf(m_plan, m_presets[static_cast<std::size_t>(index)]);
    job.mirrored = m_underside->isChecked();
    job.marks = job.checkLine = m_marks->isChecked();
    return job;
}

void CutFileDialog::compose()
{
    const UnitStyle style = unitStyle(m_plan);
    const CutJob wanted = job();
    m_drawing.reset();
    m_messages->clear();
    m_state->clear();
    const QString kerf = shown(Measure{wanted.kerf, Quantity::Length}, style);
    m_kerf->setText(wanted.compensate
                        ? tr("%1, half of it taken off each line: the shop must not do it again").arg(kerf)
                        : tr("%1, not taken off: tell the shop, or choose it in the part Cutter").arg(kerf));
    Result<CutDrawing> drawing = composeCutDrawing(m_plan, m_layout, wanted);
    m_write->setEnabled(drawing.ok());
    if (!drawing) {
        m_totals->clear();
        m_state->setText(shown(drawing.error()));
        return;
    }
    const CutTotals inside = totalsOf(*drawing, CutOperation::CutInside);
    const CutTotals outline = totalsOf(*drawing, CutOperation::CutOutline);
    m_totals->setText(tr("%1 outlines, %2 of cut")
                          .arg(inside.closed + inside.open + outline.closed)
                          .arg(shown(Measure{inside.length + outline.length, Quantity::Length}, style)));
    for (const Sentence& message : drawing->messages)
        m_messages->addItem(shown(message, style));
    if (drawing->messages.empty()) m_messages->addItem(tr("Nothing to look out for."));
    m_drawing = std::move(drawing).value();
}

void CutFileDialog::write()
{
    if (!m_drawing) return;
    const FormatChoice& choice = kFormats[std::max(0, m_format->currentIndex())];
    const QFileInfo plan(m_planPath);
    const QString base = m_planPath.isEmpty() ? tr("lid") : plan.completeBaseName() + QStringLiteral("-lid");
    const QString name =
        QString::fromStdString(cutFileName(base.toStdString(), job())) + QLatin1String(choice.ending);
    QString path = askForFile(m_planPath.isEmpty() ? name : plan.dir().filePath(name));
    if (path.isEmpty()) return;
    if (QFileInfo(path).suffix().isEmpty()) path += QLatin1String(choice.ending);
    const Result<QByteArray> bytes = cutFileBytes(*m_drawing, choice.format);
    const auto error = bytes ? writeFileSafely(path, *bytes) : std::optional<Error>(bytes.error());
    if (error) {
        m_state->setText(shown(*error));
        return;
    }
    m_written = path;
    m_state->setText(tr("Written: %1").arg(QDir::toNativeSeparators(path)));
}

void CutFileDialog::takePresets()
{
    const QString path = QFileDialog::getOpenFileName(this, tr("Read presets"), {}, tr("Tables (*.csv)"));
    if (path.isEmpty()) return;
    const Result<QByteArray> bytes = readWholeFile(path, kPresetFileLimit);
    auto presets =
        bytes ? readCutPresets(bytes->toStdString()) : Result<std::vector<CutPreset>>(bytes.error());
    if (!presets || presets->empty()) {
        m_state->setText(presets ? tr("The table has no presets.") : shown(presets.error()));
        return;
    }
    m_presets = std::move(presets).value();
    {
        const QSignalBlocker quiet(m_preset);
        m_preset->clear();
        for (const CutPreset& preset : m_presets)
            m_preset->addItem(QString::fromStdString(preset.name));
    }
    compose();
}

}  // namespace lidwright
