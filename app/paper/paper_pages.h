#pragma once

#include "app/paper/paper_job.h"
#include "app/paper/tiling.h"

#include "core/base/result.h"

#include <memory>
#include <optional>

namespace lidwright {

/// One page of paper, ready to be painted.
///
/// Its content stands in true millimetres, y up, with the origin at the lower left of what the margins leave;
/// the page's own millimetres are the content's times the correction.
struct PaperPage {
    double width = 0;  ///< of the paper, mm
    double height = 0;
    double margin = 0;
    double correctionX = 1;
    double correctionY = 1;

    std::shared_ptr<const Sheet> drawing;  ///< null on the cover
    std::shared_ptr<const Sheet> checks;   ///< total-length lines, in the drawing's frame; may be null
    Point offset;                          ///< content = drawing + offset
    Bounds window;                         ///< of the content; the drawing is cut off outside
    std::vector<Bounds> waste;             ///< of the content: tinted, cut away or covered when joined
    Sheet furniture;                       ///< of the content
    std::string name;                      ///< "A1"; empty on the cover and for a lone page
    bool fullSize = true;                  ///< false where nothing is measured on it: the overview

    Point toPage(Point content) const
    {
        return {margin + correctionX * content.x, margin + correctionY * content.y};
    }
};

/// An empty page of paper of that size, mm, with the job's margin and correction.
PaperPage blankPage(const PaperJob& job, double width, double height);

/// One template and how it lies on its pages, or several small ones that share one.
struct TemplatePages {
    TemplateKind kind = TemplateKind::Lid;  ///< the first of them
    QStringList names;                      ///< of all that lies there, for people: "Nut", "Bridge"
    std::optional<Tiling> tiling;           ///< none on a roll and of the overview
    std::size_t firstPage = 0;              ///< index into PaperPages::pages
    std::size_t pageCount = 0;

    QString label() const { return names.join(QStringLiteral(", ")); }
};

struct PaperPages {
    std::vector<PaperPage> pages;
    std::size_t front = 0;  ///< how many stand before the templates: the cover, what is wrong with the plan
    std::vector<TemplatePages> templates;
};

/// The pages of a job: on sheets of paper first a cover with the rulers, the page maps and how to join, then
/// each template's tiles, small ones together on one page; on a roll one page per template, with the rulers
/// on it. The overview has a page of its own of A3 or tabloid, whatever the job's paper. The error says what
/// to change where the job cannot be done.
Result<PaperPages> composePages(const Plan& plan, const PaperJob& job, const PaperGoOn& goOn = {});

/// The page by which a printer is measured: two long lines of known length, printed without correction.
struct CalibrationPage {
    PaperPage page;
    double nominalX = 0;  ///< length of the level line, mm
    double nominalY = 0;  ///< of the upright one
};
/// Not for a roll: the error says so.
Result<CalibrationPage> calibrationPage(PaperSize size, double margin, const QString& printerName,
                                        const UnitStyle& style);

/// What stands at the foot of every page.
inline constexpr double kFooterHeight = 14;  ///< mm

/// The template's name for people: "Lid", "Head-end wall", "Tail-end wall".
QString templateLabel(TemplateKind kind);

}  // namespace lidwright
