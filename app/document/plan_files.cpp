#include "app/document/plan_files.h"

#include "app/document/safe_write.h"

#include "core/io/plan/plan_file.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace lidwright {

namespace {

Error error(const QString& what, const QString& path, const QString& mend)
{
    return {what.toStdString(), QDir::toNativeSeparators(path).toStdString(), mend.toStdString(), -1};
}

}  // namespace

Result<OpenedPlan> openPlanFile(const QString& path)
{
    const auto bytes = readWholeFile(path, static_cast<qint64>(kPlanFileLimit));
    if (!bytes) return bytes.error();
    const QByteArray& text = *bytes;
    auto reading = readPlan(std::string_view(text.constData(), static_cast<std::size_t>(text.size())),
                            QFileInfo(path).fileName().toStdString());
    if (!reading) return reading.error();
    OpenedPlan opened;
    opened.plan = std::move(reading.value().plan);
    for (const std::string& note : reading.value().notes)
        opened.notes << QString::fromStdString(note);
    return opened;
}

std::optional<Error> savePlanFile(const Plan& plan, const QString& path)
{
    const QByteArray text = QByteArray::fromStdString(writePlan(plan));
    // The last version is safe beside the file before the file itself is touched, and in memory besides.
    std::optional<QByteArray> last;
    if (QFileInfo::exists(path)) {
        auto old = readWholeFile(path, static_cast<qint64>(kPlanFileLimit));
        if (!old) return old.error();
        last = std::move(old).value();
        if (auto failed = writeFileSafely(backupPath(path), *last)) return failed;
    }
    if (auto failed = writeFileSafely(path, text)) return failed;
    const auto again = openPlanFile(path);
    if (again && again->plan == plan) return std::nullopt;
    if (last) {
        if (auto failed = writeFileSafely(path, *last)) return failed;
    } else {
        QFile::remove(path);
    }
    return error(
        QCoreApplication::translate("PlanFiles", "the saved plan does not read back as the same plan"), path,
        QCoreApplication::translate("PlanFiles", "save it under another name and report this"));
}

QString withPlanSuffix(const QString& path)
{
    if (path.isEmpty() || !QFileInfo(path).suffix().isEmpty()) return path;
    return path + QLatin1Char('.') + QLatin1String(kPlanSuffix);
}

QString backupPath(const QString& path)
{
    return path + QLatin1Char('~');
}

}  // namespace lidwright
