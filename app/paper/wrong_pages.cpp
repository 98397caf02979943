#include "app/paper/wrong_pages.h"

#include "app/paper/page_furniture.h"
#include "app/paper/paper_size.h"

#include "core/drawing/lettering.h"
#include "core/drawing/template_parts.h"

namespace lidwright {
namespace {

constexpr double kHeight = 3.5;          // mm, of the sentences: read at the bench
constexpr double kHeading = 7;           // mm
constexpr double kBetweenSentences = 4;  // mm

PaperPage blank(const PaperJob& job)
{
    const PaperFormat& format = formatOf(job.size == PaperSize::Roll ? PaperSize::A4 : job.size);
    return blankPage(job, format.width, format.height);
}

}  // namespace

void addWrongPages(PaperPages& all, const Plan& plan, const PaperJob& job)
{
    if (job.wrong.isEmpty()) return;
    PaperPage page = blank(job);
    const double width = (page.width - 2 * page.margin) / page.correctionX;
    const double top = (page.height - 2 * page.margin) / page.correctionY;
    double y = top;
    const auto begin = [&](Furniture& furniture) {
        y = top - kHeading;
        furniture.text({0, y}, PaperText::tr("Do not cut yet"), kHeading);
        y -= 2 * kHeight;
        furniture.text({0, y},
                       PaperText::tr("Wrong with the plan %1:")
                           .arg(shortened(QString::fromStdString(plan.sheet.title), 50)),
                       kHeight);
        y -= kBetweenSentences;
    };
    Furniture furniture;
    begin(furniture);
    int number = 0;
    for (const QString& sentence : job.wrong) {
        const std::string words = std::to_string(++number) + ". " + sentence.toStdString();
        const std::vector<NoteLine> lines = wrapped({{words, kHeight}}, width);
        const double needed = static_cast<double>(lines.size()) * kLinePitch * kHeight + kBetweenSentences;
        if (y - needed < 0) {
            page.furniture = furniture.sheet();
            all.pages.push_back(std::move(page));
            page = blank(job);
            furniture = {};
            begin(furniture);
        }
        y -= kBetweenSentences;
        for (const NoteLine& line : lines) {
            y -= kLinePitch * kHeight;
            furniture.text({0, y}, QString::fromStdString(line.words), kHeight);
        }
    }
    page.furniture = furniture.sheet();
    all.pages.push_back(std::move(page));
}

}  // namespace lidwright
