#include "app/paper/bench_text.h"

#include "app/text/texts.h"

#include "core/base/units.h"

#include <QAbstractTextDocumentLayout>
#include <QGuiApplication>
#include <QScreen>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextTable>

namespace lidwright {
namespace {

constexpr double kTitle = 20, kSectionTitle = 14, kInnerTitle = 12;  // points

constexpr double kNoJoining = 0.02;  // dots; too little to be seen

// mm.
constexpr double kTick = 4.2;
constexpr double kUnderHeading = 1.2;
constexpr double kOverHeading = 5;
constexpr double kParagraph = 1.4;  // below one
constexpr double kIndent = 6;
constexpr double kPictureWords = 4;  // above and below a picture that fills its page
constexpr double kPointsPerInch = 72;

/// In one paragraph, however many lines it has.
QString inOneParagraph(QString words)
{
    return words.replace(QLatin1Char('\n'), QChar(QChar::LineSeparator));
}

}  // namespace

BenchText::BenchText(const BenchSheet& sheet, QPaintDevice& device, double width, double height)
    : m_sheet(sheet),
      m_device(device),
      m_width(width),
      m_height(height),
      m_dotsPerMm(device.logicalDpiX() / kMillimetresPerInch),
      m_objects(nullptr)
{
    m_document.setUndoRedoEnabled(false);
    m_document.setDocumentMargin(0);
    QFont font = QGuiApplication::font();
    font.setPointSizeF(kBenchText);
    // Any spacing at all keeps Qt from joining letters, as in "fi": PDF readers search for the letters.
    font.setLetterSpacing(QFont::AbsoluteSpacing, kNoJoining);
    m_document.setDefaultFont(font);
    font.setPixelSize(qRound(kBenchSmall / kPointsPerInch * device.logicalDpiX()));
    m_objects = new BenchObjects(m_dotsPerMm, width, height - kPictureWords, font, &m_document);
    QAbstractTextDocumentLayout* layout = m_document.documentLayout();
    layout->setPaintDevice(&device);
    for (const int kind : {BenchObjects::Picture, BenchObjects::TickBox})
        layout->registerHandler(kind, m_objects);
    write();
    m_document.setPageSize({m_width * m_dotsPerMm, m_height * m_dotsPerMm});
    breakPages();
}

double BenchText::units(double mm) const
{
    // Formats are in pixels of the screen, whatever device the document is laid out for.
    const QScreen* screen = QGuiApplication::primaryScreen();
    const double perInch = screen != nullptr ? qRound(screen->logicalDotsPerInchX()) : 96;
    return mm * perInch / kMillimetresPerInch;
}

QTextCharFormat BenchText::letters(double points, bool bold, bool italic) const
{
    QFont font = m_document.defaultFont();
    font.setPointSizeF(points);
    font.setBold(bold);
    font.setItalic(italic);
    QTextCharFormat format;
    format.setFont(font);
    format.setForeground(Qt::black);
    return format;
}

QTextCursor BenchText::paragraph(double above, double below, double indent)
{
    QTextCursor cursor(&m_document);
    cursor.movePosition(QTextCursor::End);
    QTextBlockFormat format;
    format.setTopMargin(units(above));
    format.setBottomMargin(units(below));
    format.setLeftMargin(units(indent));
    // Behind a table there is an empty paragraph already, over which Qt leaves no space.
    if (m_lastTable != nullptr) {
        QTextTableFormat table = m_lastTable->format();
        table.setBottomMargin(std::max(table.bottomMargin(), units(above)));
        m_lastTable->setFormat(table);
    }
    if (m_empty || m_lastTable != nullptr)
        cursor.setBlockFormat(format);
    else
        cursor.insertBlock(format);
    m_empty = false;
    m_lastTable = nullptr;
    return cursor;
}

void BenchText::say(QTextCursor& cursor, const BenchWords& words, double points, bool bold, bool italic) const
{
    if (!words.lead.empty()) cursor.insertText(shown(words.lead), letters(points, true));
    if (!words.name.empty())
        cursor.insertText(QStringLiteral(", ") + QString::fromStdString(words.name), letters(points));
    if (!words.lead.empty() || !words.name.empty())
        cursor.insertText(
            words.look == BenchWords::Look::Caution ? QStringLiteral(". ") : QStringLiteral(": "),
            letters(points, words.name.empty()));
    cursor.insertText(inOneParagraph(shown(words.words, m_sheet.style)), letters(points, bold, italic));
}

void BenchText::write()
{
    // Laid out once, when all is there.
    QTextCursor whole(&m_document);
    whole.beginEditBlock();
    QTextCursor cursor = paragraph(0, kUnderHeading);
    cursor.insertText(inOneParagraph(shown(m_sheet.title)), letters(kTitle, true));
    cursor = paragraph(0, kParagraph);
    cursor.insertText(inOneParagraph(shown(m_sheet.below, m_sheet.style)), letters(kBenchText));
    for (const BenchSection& section : m_sheet.sections)
        add(section);
    whole.endEditBlock();
    // From now on what is inserted before a paragraph moves the places in it.
    for (Passage& passage : m_passages)
        for (QTextCursor* place : {&passage.heading, &passage.with, &passage.end}) {
            place->setKeepPositionOnInsert(false);
            place->movePosition(QTextCursor::EndOfBlock);
        }
}

QTextCursor BenchText::last() const
{
    QTextCursor cursor(m_document.lastBlock());
    // While more is written behind it.
    cursor.setKeepPositionOnInsert(true);
    return cursor;
}

void BenchText::add(const BenchSection& section)
{
    // Two blocks under a heading are kept with it, so that it never stands over one line alone.
    constexpr int kKept = 2;
    const bool titled = !section.title.empty();
    const std::size_t own = m_passages.size();
    const auto begin = [this](bool newPage, bool together) {
        m_order.emplace_back(false, m_passages.size());
        m_passages.push_back({last(), last(), last(), newPage, together});
        m_underHeading = true;
    };
    if (titled) {
        QTextCursor cursor = paragraph(kOverHeading, kUnderHeading);
        begin(section.newPage, section.together);
        if (section.tick) {
            cursor.insertText(QString(QChar::ObjectReplacementCharacter), m_objects->tickBox(kTick));
            cursor.insertText(QStringLiteral("  "), letters(kSectionTitle, true));
        }
        const QString number = section.number > 0 ? QStringLiteral("%1. ").arg(section.number) : QString();
        cursor.insertText(number + inOneParagraph(shown(section.title)), letters(kSectionTitle, true));
    }
    int blocks = 0;
    std::optional<std::size_t> inner;
    const auto added = [&](const QTextCursor& kept) {
        if (titled && ++blocks <= kKept) m_passages[own].with = kept;
        if (inner) m_passages[*inner].with = m_passages[*inner].end = kept;
        inner.reset();
        m_underHeading = false;
    };
    std::vector<const BenchWords*> cautions;
    const auto flush = [&] {
        if (!cautions.empty()) added(addCautions(cautions));
        cautions.clear();
    };
    for (const BenchBlock& block : section.blocks) {
        const auto* words = std::get_if<BenchWords>(&block);
        if (words != nullptr && words->look == BenchWords::Look::Caution) {
            cautions.push_back(words);
            continue;
        }
        flush();
        added(std::visit([this](const auto& b) { return add(b); }, block));
        if (words == nullptr || words->look != BenchWords::Look::Heading) continue;
        inner = m_passages.size();
        begin(false, false);
    }
    flush();
    if (titled) m_passages[own].end = last();
}

QTextCursor BenchText::add(const BenchWords& words)
{
    switch (words.look) {
        case BenchWords::Look::Heading: {
            QTextCursor cursor = paragraph(kOverHeading / 2, kUnderHeading);
            say(cursor, words, kInnerTitle, true);
            break;
        }
        case BenchWords::Look::Small: {
            QTextCursor cursor = paragraph(0, kParagraph);
            say(cursor, words, kBenchSmall);
            break;
        }
        case BenchWords::Look::Strong: {
            QTextCursor cursor = paragraph(kParagraph, kParagraph);
            say(cursor, words, kBenchText, true);
            break;
        }
        case BenchWords::Look::Indented: {
            QTextCursor cursor = paragraph(0, kParagraph, kIndent);
            say(cursor, words, kBenchText, false, true);
            break;
        }
        case BenchWords::Look::Caution:
        case BenchWords::Look::Plain: {
            QTextCursor cursor = paragraph(0, kParagraph);
            say(cursor, words, kBenchText);
            break;
        }
    }
    return last();
}

QTextCursor BenchText::add(const BenchPicture& picture)
{
    QTextCursor cursor = paragraph(kParagraph, kParagraph);
    cursor.insertText(QString(QChar::ObjectReplacementCharacter), m_objects->picture(picture));
    return last();
}

}  // namespace lidwright
