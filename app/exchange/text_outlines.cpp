#include "app/exchange/text_outlines.h"

#include <QFont>
#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QGlyphRun>
#include <QGuiApplication>
#include <QPainterPath>
#include <QRawFont>
#include <QTextLayout>

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

/// Size at which fonts are asked for, pixels: most are drawn on a grid of 1000 or 2048 to the em, so that
/// nothing is rounded or hardly anything.
constexpr int kEm = 2048;
constexpr double kMostSpacing = 10;  // em
/// Qt counts places in 32 bits, 64 to the pixel: what is longer than this, pixels, would run over.
constexpr double kLongest = 1 << 24;
/// No letter of a font is wider, em; the widest known are three-em dashes.
constexpr double kWidestLetter = 3;

bool isThere(const QString& family)
{
    return QFontInfo(QFont(family)).family().compare(family, Qt::CaseInsensitive) == 0;
}

/// What the system takes instead of a family.
QString standIn(const QString& family)
{
    QFont font(family);
    font.setPixelSize(kEm);
    return QRawFont::fromFont(font).familyName();
}

/// The wanted families, the first that is here or that the system has a stand-in of its own for in front: Qt
/// itself asks for a stand-in of the first only.
QStringList wantedFamilies(const std::vector<std::string>& names)
{
    QStringList families;
    for (const std::string& name : names)
        families << QString::fromStdString(name);
    if (families.isEmpty()) families << QStringLiteral("serif");
    if (families.size() == 1) return families;
    const QString forAnything = standIn(QStringLiteral("no font has this name"));
    const auto good = std::find_if(families.cbegin(), families.cend(), [&](const QString& family) {
        return isThere(family) || standIn(family) != forAnything;
    });
    families.erase(families.cbegin(), good == families.cend() ? families.cbegin() : good);
    return families;
}

QFont fontFor(const TextRun& run)
{
    QFont font;
    font.setFamilies(wantedFamilies(run.families));
    font.setPixelSize(kEm);
    font.setWeight(QFont::Weight(std::clamp(run.weight, 1, 1000)));
    font.setItalic(run.italic);
    font.setCapitalization(run.smallCapitals ? QFont::SmallCaps : QFont::MixedCase);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::PreferOutline);
    font.setLetterSpacing(QFont::AbsoluteSpacing, run.letterSpacing * kEm / run.size);
    font.setWordSpacing(run.wordSpacing * kEm / run.size);
    if (run.stretch != 100) {
        // A narrow or wide face where the family has one; Qt would also squeeze letters that have none.
        font.setStretch(static_cast<int>(std::lround(run.stretch)));
        const QRawFont face = QRawFont::fromFont(font);
        font.setStretch(QFont::Unstretched);
        font.setFamilies({face.familyName()});
        font.setStyleName(face.styleName());
    }
    return font;
}

/// Adds what Qt drew to the outline, point by point.
void append(svg::Pen& pen, const QPainterPath& path, QPointF at, double scale)
{
    const auto point = [&](int i) {
        const QPainterPath::Element e = path.elementAt(i);
        return Point{(e.x + at.x()) * scale, (e.y + at.y()) * scale};
    };
    bool open = false;
    const auto close = [&] {
        if (open) pen.close();
        open = false;
    };
    for (int i = 0; i < path.elementCount(); ++i) {
        switch (path.elementAt(i).type) {
            case QPainterPath::MoveToElement:
                close();
                pen.moveTo(point(i));
                break;
            case QPainterPath::LineToElement:
                pen.lineTo(point(i));
                open = true;
                break;
            case QPainterPath::CurveToElement:
                if (i + 2 >= path.elementCount()) return close();
                pen.curveTo(point(i), point(i + 1), point(i + 2));
                i += 2;
                open = true;
                break;
            case QPainterPath::CurveToDataElement:
                break;
        }
    }
    close();
}

/// A line of the words' whole length, its middle at `y`.
void appendLine(svg::Pen& pen, double length, double y, double thickness)
{
    const double top = y - thickness / 2, bottom = y + thickness / 2;
    pen.moveTo({0, top});
    pen.lineTo({length, top});
    pen.lineTo({length, bottom});
    pen.lineTo({0, bottom});
    pen.close();
}

}  // namespace

std::optional<TextShape> outlineByComputerFonts(const TextRun& run)
{
    if (!qobject_cast<QGuiApplication*>(QCoreApplication::instance())) return std::nullopt;
    QString words = QString::fromStdString(run.words);
    // What breaks a line or jumps to a stop elsewhere is a blank in a drawing.
    for (QChar& c : words) {
        if (c.isSpace() && c != QChar::Nbsp && c.category() != QChar::Separator_Space) c = QLatin1Char(' ');
    }
    // Other control characters, left by wrongly read encodings, have no look.
    words.removeIf([](QChar c) { return c.category() == QChar::Other_Control; });
    const auto spacing = [&](double space) { return std::abs(space) / run.size; };
    if (!(run.size > 0 && std::isfinite(run.size))) return std::nullopt;
    if (!(spacing(run.letterSpacing) <= kMostSpacing && spacing(run.wordSpacing) <= kMostSpacing))
        return std::nullopt;
    const double widest = kWidestLetter + spacing(run.letterSpacing) + spacing(run.wordSpacing);
    if (static_cast<double>(words.size()) * widest * kEm > kLongest) return std::nullopt;

    const QFont font = fontFor(run);
    QTextLayout layout(words, font);
    QTextOption option;
    option.setWrapMode(QTextOption::NoWrap);
    option.setTextDirection(Qt::LeftToRight);
    layout.setTextOption(option);
    layout.beginLayout();
    QTextLine line = layout.createLine();
    if (!line.isValid()) return std::nullopt;
    line.setLineWidth(kLongest);
    layout.endLayout();

    TextShape shape;
    const double scale = run.size / kEm;
    svg::Pen letters;
    for (const QGlyphRun& part : layout.glyphRuns()) {
        const QRawFont raw = part.rawFont();
        const QList<quint32> glyphs = part.glyphIndexes();
        const QList<QPointF> places = part.positions();
        // Glyph 0 is the box that fonts show for letters that they lack.
        if (!raw.isValid() || part.isRightToLeft() || glyphs.contains(0)) return std::nullopt;
        for (qsizetype i = 0; i < glyphs.size() && i < places.size(); ++i)
            append(letters, raw.pathForGlyph(glyphs[i]), places[i] - QPointF(0, line.ascent()), scale);
        const std::string name = raw.familyName().toStdString();
        if (std::find(shape.fonts.begin(), shape.fonts.end(), name) == shape.fonts.end())
            shape.fonts.push_back(name);
    }
    shape.letters = letters.take();
    shape.advance = line.cursorToX(static_cast<int>(words.size())) * scale;

    const QFontMetricsF metrics(font);
    shape.xHeight = metrics.xHeight() * scale;
    shape.ascent = metrics.ascent() * scale;
    shape.descent = metrics.descent() * scale;
    svg::Pen lines;
    const double thickness = metrics.lineWidth() * scale;
    if (run.underline) appendLine(lines, shape.advance, metrics.underlinePos() * scale, thickness);
    if (run.overline) appendLine(lines, shape.advance, -metrics.overlinePos() * scale, thickness);
    if (run.strikeOut) appendLine(lines, shape.advance, -metrics.strikeOutPos() * scale, thickness);
    shape.lines = lines.take();
    return shape;
}

}  // namespace lidwright
