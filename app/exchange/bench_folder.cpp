#include "app/exchange/bench_folder.h"

#include "app/document/safe_write.h"
#include "app/exchange/build_sheet.h"
#include "app/exchange/cut_file.h"
#include "app/paper/page_furniture.h"

#include "core/solvers/lists/shop_lists.h"

#include <QDir>

namespace lidwright {
namespace {

Error textError(const QString& words)
{
    return {words.toStdString(), {}, {}};
}

/// The cutter's file by the first of the presets; nothing where the plan has no lid to cut.
std::optional<Error> writeLid(const BenchFolder& bench, const QString& path)
{
    const std::vector<CutPreset> presets = cutPresets();
    if (presets.empty()) return std::nullopt;
    const Result<CutDrawing> drawing =
        composeCutDrawing(bench.plan, bench.layout, cutJobOf(bench.plan, presets.front()));
    if (!drawing) return drawing.error();
    const auto format = cutFormatOf(path, DxfVersion::R2000);
    const Result<QByteArray> bytes = cutFileBytes(*drawing, *format);
    if (!bytes) return bytes.error();
    return writeFileSafely(path, *bytes);
}

}  // namespace

Result<QStringList> writeBenchFolder(const BenchFolder& bench, const QString& folder, const PaperGoOn& goOn)
{
    if (!QDir().mkpath(folder))
        return Error{"the folder cannot be made", folder.toStdString(), "choose another place"};
    const QDir dir(folder);
    QStringList written;
    const auto at = [&](const char* name) { return dir.filePath(QLatin1String(name)); };
    const auto goesOn = [&](double share) { return !goOn || goOn(share); };

    constexpr double kTemplates = 0.7;  // of the time, about
    const QString templates = at("templates.pdf");
    const PaperGoOn part = [&](double share) { return goesOn(share * kTemplates); };
    if (const QString problem = writePaperPdf(bench.plan, bench.paper, templates, part); !problem.isEmpty())
        return textError(problem);
    written << templates;
    for (const char* name : {"build-sheet.pdf", "build-sheet.html"}) {
        if (!goesOn(kTemplates + 0.1)) return textError(stoppedText());
        if (const auto error = writeBenchSheet(bench.sheet, bench.paper.size, at(name))) return *error;
        written << at(name);
    }
    for (const char* name : {"lid.svg", "lid.dxf"}) {
        if (!goesOn(kTemplates + 0.2)) return textError(stoppedText());
        if (const auto error = writeLid(bench, at(name))) return *error;
        written << at(name);
    }
    for (const StudyEntry& entry : benchLists()) {
        const Study study = entry.reckon(bench.plan, bench.layout);
        // A plan without strings has no table of them; its other lists are written all the same.
        if (study.problem) continue;
        const QString path = dir.filePath(QString::fromStdString(entry.id) + QStringLiteral(".csv"));
        const std::string csv = bench.decimalComma ? csvWithDecimalComma(study.table) : csvOf(study.table);
        if (const auto error = writeFileSafely(path, QByteArray::fromStdString(csv))) return *error;
        written << path;
    }
    return written;
}

}  // namespace lidwright
