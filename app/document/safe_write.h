#pragma once

#include "core/base/result.h"

#include <QByteArray>
#include <QString>

#include <optional>

namespace lidwright {

/// Puts `bytes` into the file so that at every moment either the old or the whole new content is there.
/// Returns what went wrong, in which case the old file is untouched. The new file is read back and compared.
/// (QSaveFile alone replaces a good file by a short one when the disk fills up during one large write.)
std::optional<Error> writeFileSafely(const QString& path, const QByteArray& bytes);

/// The whole of an ordinary file of at most `limit` bytes. Folders, pipes and devices are refused unopened.
Result<QByteArray> readWholeFile(const QString& path, qint64 limit);

}  // namespace lidwright
