#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/plan_input.h"
#include "app/document/safe_write.h"

#include "core/checks/check.h"
#include "core/io/build/build_sheet_html.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDate>
#include <QPageLayout>
#include <QPdfWriter>
#include <QTextDocument>

#include <algorithm>
#include <filesystem>

namespace lidwright {

namespace {

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.html|FILE.pdf", "the file to write; the drawing is in the page, not in the PDF"},
    kSetOption,
    kArtOption,
};

/// The page without its drawing as a PDF on A4: text and tables are all that Qt's rich text takes of it.
QByteArray pdfOfPage(const std::string& html)
{
    const DrawingSession session;
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!buffer.open(QIODevice::WriteOnly)) return {};
    {
        QPdfWriter writer(&buffer);
        writer.setPageSize(QPageSize(QPageSize::A4));
        constexpr double kMargin = 15;  // mm
        writer.setPageMargins({kMargin, kMargin, kMargin, kMargin}, QPageLayout::Millimeter);
        QTextDocument document;
        QFont font = document.defaultFont();
        font.setPointSizeF(11);
        document.setDefaultFont(font);
        document.setHtml(QString::fromStdString(html));
        document.print(&writer);
    }
    return bytes;
}

int run(const Arguments& arguments)
{
    const auto file = arguments.value("-o");
    if (!file || file->empty())
        return refuse({"where to?", "sheet", "name the file to write: lidwright sheet PLAN -o build.html"});
    std::string ending = std::filesystem::path(*file).extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (ending != ".html" && ending != ".htm" && ending != ".pdf")
        return refuse({"this kind of build sheet is not known", *file, "end the name in .html or .pdf"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const Layout layout = derive(input->plan);
    BuildSheetInput with;
    with.version = LIDWRIGHT_VERSION;
    with.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    with.drawing = ending != ".pdf";
    const auto findings = check(input->plan, layout);
    const std::string html = buildSheetHtml(input->plan, layout, findings, with);
    const QByteArray bytes = with.drawing ? QByteArray::fromStdString(html) : pdfOfPage(html);
    if (bytes.isEmpty()) return refuse({"the PDF could not be made", *file, "write it as .html"});
    if (const auto error = writeFileSafely(QString::fromStdString(*file), bytes)) return refuse(*error);
    return finish(print(*file + ": written\n"), kExitFine);
}

}  // namespace

constinit const Command kSheetCommand{
    "sheet",
    "the build sheet: the steps of the work, with measures and cautions",
    "PLAN -o FILE.html|FILE.pdf [--set KEY=VALUE]... [--art FILE.svg]...",
    "The steps in the order in which the work must go, each with its tools, its dimensions from the plan, a "
    "box to\n"
    "write what came out, and the usual cautions; then the findings and what the figures stand on.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
