#include "tests/app/paper/pdf_words.h"

#include "tests/app/paper/pdf_tools.h"

#include <QXmlStreamReader>

namespace lidwright::testing {

QString PdfPage::text(double below) const
{
    QStringList all;
    for (const PdfWord& word : words)
        if (word.box.bottom() < below) all << word.text;
    return all.join(QLatin1Char(' '));
}

std::vector<PdfPage> wordsOf(const QString& pdf)
{
    const Output read =
        runTool(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), pdf, QStringLiteral("-")});
    EXPECT_EQ(read.code, 0) << read.err.toStdString();
    std::vector<PdfPage> pages;
    QXmlStreamReader reader(read.out);
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement) continue;
        const auto attributes = reader.attributes();
        const auto number = [&](const char* name) {
            return attributes.value(QLatin1String(name)).toDouble();
        };
        if (reader.name() == QLatin1String("page")) {
            pages.push_back({number("width"), number("height"), {}});
        } else if (reader.name() == QLatin1String("word") && !pages.empty()) {
            const QRectF box(QPointF(number("xMin"), number("yMin")),
                             QPointF(number("xMax"), number("yMax")));
            pages.back().words.push_back({reader.readElementText(), box});
        }
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return pages;
}

}  // namespace lidwright::testing
