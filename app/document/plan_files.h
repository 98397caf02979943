#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <QString>
#include <QStringList>

#include <optional>

namespace lidwright {

/// The ending of plan files, without the dot.
inline constexpr const char* kPlanSuffix = "lidplan";

/// A plan from a file, and what its reader has to say about it.
struct OpenedPlan {
    Plan plan;
    QStringList notes;
};

/// Reads a plan file (also from the program's own resources, ":/samples/..."). The file is never changed.
Result<OpenedPlan> openPlanFile(const QString& path);

/// Saves the plan. The last version stays beside it as `name~`. The new file is read back and parsed; when it
/// does not give the same plan the last version is put back. On error the file is as it was before.
std::optional<Error> savePlanFile(const Plan& plan, const QString& path);

/// The path with the plan files' ending, added when it has none.
QString withPlanSuffix(const QString& path);

/// Where the last version is kept: the path and "~".
QString backupPath(const QString& path);

}  // namespace lidwright
