#include "app/board/sheet_painter.h"
#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/plan_input.h"
#include "app/document/safe_write.h"

#include "core/base/length_text.h"
#include "core/base/near_word.h"
#include "core/drawing/board_sheet.h"
#include "core/io/drawing/sheet_svg.h"

#include <QBuffer>
#include <QImage>

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace lidwright {

namespace {

constexpr int kUsualWidth = 1600;
constexpr int kLeastWidth = 50;
constexpr int kMostPixels = 20'000;  // of width or height; four bytes each make 1.6 GB at most

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.png|FILE.svg", "the file to write"},
    {"--view", "top|under|side|head-end|tail-end|all", "which view; all where not said"},
    {"--width", "PX", "width of a PNG in pixels; 1600 where not said"},
    kSetOption,
    kArtOption,
};

struct NamedView {
    const char* name;
    std::optional<View> view;
};
constexpr NamedView kViews[] = {{"all", std::nullopt},       {"top", View::Top},
                                {"under", View::Under},      {"side", View::Section},
                                {"head-end", View::HeadEnd}, {"tail-end", View::TailEnd}};

Result<std::optional<View>> viewNamed(const std::string& name)
{
    std::vector<std::string> known;
    for (const NamedView& v : kViews) {
        if (name == v.name) return v.view;
        known.emplace_back(v.name);
    }
    const std::string near = nearestWord(name, known);
    return Error{"there is no such view", "--view " + name,
                 near.empty() ? "known are top, under, side, head-end, tail-end and all"
                              : "did you mean " + near + "?"};
}

Result<int> widthOf(const std::optional<std::string>& text)
{
    if (!text) return kUsualWidth;
    const Result<double> width = parseNumber(*text);
    if (!width || !(*width >= kLeastWidth && *width <= kMostPixels))
        return Error{"the width is a number of pixels from 50 to 20000", "--width " + *text,
                     "write it as 1600"};
    return static_cast<int>(std::lround(*width));
}

std::string endingOf(const std::string& file)
{
    std::string ending = std::filesystem::path(file).extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return ending;
}

/// The board laid out so that its smallest words are easily read when it is `width` pixels wide.
BoardSheet boardForWidth(const Plan& plan, const Layout& layout, BoardOptions& options, int width)
{
    // Words of 2.5 mm on paper become 11 pixels high. Larger words need more room, so the size is found in
    // steps.
    constexpr double kWordPixels = 11, kWordHeight = 2.5;
    BoardSheet board = boardSheet(plan, layout, options);
    for (int step = 0; step < 3; ++step) {
        options.paper = std::clamp(kWordPixels / kWordHeight * board.sheet.extent.width() / width, 0.2, 8.0);
        board = boardSheet(plan, layout, options);
    }
    return board;
}

Result<QByteArray> pngOf(const Sheet& sheet, double paper, int width)
{
    const DrawingSession session;
    const Bounds& part = sheet.extent;
    const double scale = width / part.width();
    const double height = std::ceil(part.height() * scale);
    if (!(height >= 1 && height <= kMostPixels)) {
        return Error{"the picture would be too high", "--width " + std::to_string(width),
                     "choose a smaller width"};
    }
    QImage image(width, static_cast<int>(height), QImage::Format_RGB32);
    if (image.isNull()) return Error{"there is no memory for the picture", {}, "choose a smaller width"};
    PaintLook look;
    look.surface = Surface::Screen;
    look.scale = scale;
    look.origin = {part.minX, part.maxY};
    look.paper = paper;
    look.colours = boardColours(QPalette(Qt::white));
    image.fill(look.colours.theme.paper);
    QPainter painter(&image);
    paintSheet(painter, sheet, look);
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!buffer.open(QIODevice::WriteOnly) || !image.save(&buffer, "PNG"))
        return Error{"the picture could not be made", {}, "choose a smaller width"};
    return bytes;
}

int run(const Arguments& arguments)
{
    const auto file = arguments.value("-o");
    if (!file || file->empty())
        return refuse({"where to?", "picture", "name the file to write: lidwright picture PLAN -o plan.png"});
    const std::string ending = endingOf(*file);
    if (ending != ".png" && ending != ".svg")
        return refuse({"this kind of picture is not known", *file, "end the name in .png or .svg"});
    const Result<int> width = widthOf(arguments.value("--width"));
    if (!width) return refuse(width.error());
    const auto view = viewNamed(arguments.value("--view").value_or("all"));
    if (!view) return refuse(view.error());
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());

    BoardOptions options;
    options.style = unitStyle(input->plan);
    options.projection = input->plan.sheet.projection;
    options.only = *view;
    options.under = *view == View::Under;
    const Layout layout = derive(input->plan);
    // SVG is at full size, so that a millimetre on paper is a millimetre of the drawing.
    options.paper = 1;
    Result<QByteArray> bytes = QByteArray();
    if (ending == ".svg") {
        bytes = QByteArray::fromStdString(writeSheetSvg(boardSheet(input->plan, layout, options).sheet));
    } else {
        const BoardSheet board = boardForWidth(input->plan, layout, options, *width);
        bytes = pngOf(board.sheet, options.paper, *width);
    }
    if (!bytes) return refuse(bytes.error());
    if (const auto error = writeFileSafely(QString::fromStdString(*file), *bytes)) return refuse(*error);
    return finish(print(*file + ": written\n"), kExitFine);
}

}  // namespace

constinit const Command kPictureCommand{
    "picture",
    "the drawing as PNG or SVG",
    "PLAN -o FILE.png|FILE.svg [--view top|under|side|head-end|tail-end|all] [--width PX]\n"
    "                  [--set KEY=VALUE]... [--art FILE.svg]...",
    "Draws one view of the plan, or all of them. SVG is in millimetres at full size.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
