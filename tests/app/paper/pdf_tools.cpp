#include "tests/app/paper/pdf_tools.h"

#include <QDir>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <cmath>
#include <optional>

namespace lidwright::testing {

namespace {

constexpr double kMmPerPoint = 25.4 / 72;

/// "M x y L x y ... Z" into segments, mapped by "matrix(a,b,c,d,e,f)".
void addPath(std::vector<Segment>& all, const QString& data, const QString& matrix, double penWidth)
{
    static const QRegularExpression number(QStringLiteral("-?[0-9.]+(?:e-?[0-9]+)?"));
    double m[6] = {1, 0, 0, 1, 0, 0};
    auto found = number.globalMatch(matrix);
    for (double& entry : m)
        if (found.hasNext()) entry = found.next().captured().toDouble();
    const auto mapped = [&](double x, double y) {
        return Point{(m[0] * x + m[2] * y + m[4]) * kMmPerPoint, (m[1] * x + m[3] * y + m[5]) * kMmPerPoint};
    };
    const double width = penWidth * std::sqrt(std::abs(m[0] * m[3] - m[1] * m[2])) * kMmPerPoint;
    const QStringList words = data.simplified().split(QLatin1Char(' '));
    Point start, here;
    for (qsizetype i = 0; i < words.size(); ++i) {
        const QString& word = words[i];
        const auto pointAfter = [&](qsizetype skip) {
            return mapped(words.value(i + skip).toDouble(), words.value(i + skip + 1).toDouble());
        };
        if (word == QLatin1String("M")) {
            start = here = pointAfter(1);
        } else if (word == QLatin1String("L")) {
            const Point next = pointAfter(1);
            all.push_back({here, next, width});
            here = next;
        } else if (word == QLatin1String("C")) {
            here = pointAfter(5);
        } else if (word == QLatin1String("Z")) {
            all.push_back({here, start, width});
            here = start;
        }
    }
}

/// Empty where the path is not stroked. Cairo wrote a style attribute up to 1.16, attributes of their own
/// since.
std::optional<double> penWidthOf(const QXmlStreamAttributes& attributes)
{
    static const QRegularExpression inStyle(QStringLiteral("stroke-width:([0-9.]+)"));
    const auto width = inStyle.match(attributes.value(QLatin1String("style")).toString());
    if (width.hasMatch()) return width.captured(1).toDouble();
    if (!attributes.hasAttribute(QLatin1String("stroke-width"))) return std::nullopt;
    return attributes.value(QLatin1String("stroke-width")).toDouble();
}

}  // namespace

Output runTool(const QString& program, const QStringList& arguments)
{
    Output output;
    const QString path = QStandardPaths::findExecutable(program);
    if (path.isEmpty()) {
        const char* package = program == QLatin1String("qpdf") ? "qpdf" : "poppler-utils";
        ADD_FAILURE() << program.toStdString() << " is not installed: this test needs the package "
                      << package;
        return output;
    }
    QProcess process;
    process.start(path, arguments);
    if (!process.waitForFinished(120'000)) {
        ADD_FAILURE() << program.toStdString() << " did not end";
        process.kill();
        return output;
    }
    output.code = process.exitCode();
    output.out = process.readAllStandardOutput();
    output.err = process.readAllStandardError();
    return output;
}

std::vector<Segment> strokesOf(const QString& pdf, int page)
{
    const QString number = QString::number(page);
    const Output svg =
        runTool(QStringLiteral("pdftocairo"), {QStringLiteral("-svg"), QStringLiteral("-f"), number,
                                               QStringLiteral("-l"), number, pdf, QStringLiteral("-")});
    EXPECT_EQ(svg.code, 0) << svg.err.toStdString();
    std::vector<Segment> all;
    QXmlStreamReader reader(svg.out);
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement || reader.name() != QLatin1String("path"))
            continue;
        const std::optional<double> width = penWidthOf(reader.attributes());
        if (!width) continue;
        addPath(all, reader.attributes().value(QLatin1String("d")).toString(),
                reader.attributes().value(QLatin1String("transform")).toString(), *width);
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return all;
}

int countOf(const std::vector<Segment>& strokes, double length, bool level, double tolerance)
{
    return static_cast<int>(std::count_if(strokes.begin(), strokes.end(), [&](const Segment& s) {
        return (level ? s.level() : s.upright()) && std::abs(s.length() - length) <= tolerance;
    }));
}

std::vector<QImage> paintedPages(const QString& pdf, int dpi)
{
    QTemporaryDir folder;
    const Output painted = runTool(QStringLiteral("pdftoppm"),
                                   {QStringLiteral("-r"), QString::number(dpi), QStringLiteral("-gray"), pdf,
                                    folder.filePath(QStringLiteral("p"))});
    EXPECT_EQ(painted.code, 0) << painted.err.toStdString();
    std::vector<QImage> pages;
    // The numbers are padded, so that the order of names is the order of pages.
    for (const QString& name :
         QDir(folder.path()).entryList({QStringLiteral("p*.pgm")}, QDir::Files, QDir::Name))
        pages.push_back(QImage(folder.filePath(name)).convertToFormat(QImage::Format_Grayscale8));
    return pages;
}

std::vector<Point> mediaBoxes(const QString& pdf)
{
    const Output info =
        runTool(QStringLiteral("pdfinfo"), {QStringLiteral("-box"), QStringLiteral("-f"), QStringLiteral("1"),
                                            QStringLiteral("-l"), QStringLiteral("1000"), pdf});
    static const QRegularExpression box(
        QStringLiteral("MediaBox:\\s+([0-9.]+)\\s+([0-9.]+)\\s+([0-9.]+)\\s+([0-9.]+)"));
    std::vector<Point> sizes;
    auto found = box.globalMatch(QString::fromLatin1(info.out));
    while (found.hasNext()) {
        const auto match = found.next();
        sizes.push_back({match.captured(3).toDouble() - match.captured(1).toDouble(),
                         match.captured(4).toDouble() - match.captured(2).toDouble()});
    }
    return sizes;
}

}  // namespace lidwright::testing
