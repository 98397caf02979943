#include "app/exchange/drawing_import.h"

#include "app/document/safe_write.h"
#include "app/exchange/text_outlines.h"
#include "app/text/texts.h"

#include "core/io/drawing_file.h"

#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QProgressBar>
#include <QTimer>
#include <QVBoxLayout>

namespace lidwright {

namespace {
/// Work that is over sooner than this shows no bar, so that nothing flickers.
constexpr int kPatience_ms = 500;
}  // namespace

DrawingImport::DrawingImport(const QString& path, const UnitStyle& style, QWidget* parent)
    : QWidget(parent),
      m_path(path),
      m_picture(new ArtworkPicture(this)),
      m_size(new SizeChoice(style, this)),
      m_state(new QLabel(this)),
      m_progress(new QProgressBar(this)),
      m_messages(new QListWidget(this)),
      m_messagesTitle(new QLabel(tr("&Not taken over as it stands:"), this)),
      m_background(this, [this](Outcome outcome) { take(std::move(outcome)); })
{
    m_state->setWordWrap(true);
    m_state->setTextFormat(Qt::PlainText);
    m_state->setObjectName(QStringLiteral("state"));
    m_progress->setRange(0, 0);
    m_progress->setAccessibleName(tr("Reading the drawing"));
    m_progress->hide();
    m_messages->setWordWrap(true);
    m_messages->setMaximumHeight(90);
    m_messages->setAccessibleName(tr("What could not be taken over from the drawing as it stands there"));
    m_messagesTitle->setBuddy(m_messages);
    m_messages->hide();
    m_messagesTitle->hide();
    m_size->setEnabled(false);

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_picture, 1);
    column->addWidget(m_state);
    column->addWidget(m_progress);
    column->addWidget(m_size);
    column->addWidget(m_messagesTitle);
    column->addWidget(m_messages);

    connect(m_size, &SizeChoice::chosen, this, &DrawingImport::read);
    read();
}

ArtworkPtr DrawingImport::art() const
{
    return m_reading ? ArtworkPtr(m_reading, &m_reading->art) : nullptr;
}

QString DrawingImport::fileName() const
{
    return QFileInfo(m_path).fileName();
}

QStringList DrawingImport::messages() const
{
    QStringList list;
    for (int i = 0; i < m_messages->count(); ++i)
        list << m_messages->item(i)->text();
    return list;
}

void DrawingImport::read()
{
    SvgOptions options = m_size->options();
    options.outlineText = outlineByComputerFonts;
    m_background.ask([path = m_path, name = fileName().toStdString(), text = m_text, options]() -> Outcome {
        Outcome outcome;
        outcome.text = text;
        if (!outcome.text) {
            auto bytes = readWholeFile(path, static_cast<qint64>(kSvgFileLimit));
            if (!bytes) {
                outcome.error = bytes.error();
                return outcome;
            }
            outcome.text = std::make_shared<const QByteArray>(std::move(bytes).value());
        }
        const std::string_view view(outcome.text->constData(),
                                    static_cast<std::size_t>(outcome.text->size()));
        auto reading = readDrawingText(view, name, options);
        if (reading)
            outcome.reading = std::make_shared<const SvgReading>(std::move(reading).value());
        else
            outcome.error = reading.error();
        return outcome;
    });
    QTimer::singleShot(kPatience_ms, this, [this] { m_progress->setVisible(busy()); });
    m_state->setText(tr("Reading %1 ...").arg(fileName()));
    Q_EMIT readingChanged();
}

void DrawingImport::take(Outcome outcome)
{
    m_progress->hide();
    m_text = outcome.text;
    m_reading = outcome.reading;
    m_error = outcome.error ? shown(*outcome.error) : QString();
    m_messages->clear();
    if (m_reading) {
        m_size->setEnabled(true);
        m_size->setReading(*m_reading, namedDxf(fileName().toStdString()));
        m_state->setText(
            tr("%1: %2").arg(fileName(), SizeChoice::sizeText(m_reading->art.width, m_reading->art.height)));
        for (const std::string& message : m_reading->art.messages)
            m_messages->addItem(shown(message));
    } else {
        m_picture->clear();
        m_state->setText(m_error);
    }
    m_messages->setVisible(m_messages->count() > 0);
    m_messagesTitle->setVisible(m_messages->count() > 0);
    Q_EMIT readingChanged();
}

}  // namespace lidwright
