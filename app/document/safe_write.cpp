#include "app/document/safe_write.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

namespace lidwright {

namespace {

QString say(const char* text)
{
    return QCoreApplication::translate("SafeWrite", text);
}

Error error(const QString& what, const QString& path, const QString& mend)
{
    return {what.toStdString(), QDir::toNativeSeparators(path).toStdString(), mend.toStdString(), -1};
}

}  // namespace

std::optional<Error> writeFileSafely(const QString& path, const QByteArray& bytes)
{
    const QString otherPlace =
        say(QT_TRANSLATE_NOOP("SafeWrite", "save it under another name or in another folder"));
    const QString moreRoom =
        say(QT_TRANSLATE_NOOP("SafeWrite", "make room on the disk or save it in another folder"));
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly))
        return error(
            say(QT_TRANSLATE_NOOP("SafeWrite", "the file cannot be written: %1")).arg(file.errorString()),
            path, otherPlace);
    const qint64 written = file.write(bytes);
    if (written != bytes.size() || !file.flush() || file.size() != bytes.size()) {
        const QString reason = file.error() == QFileDevice::NoError
                                   ? say(QT_TRANSLATE_NOOP("SafeWrite", "the disk took only a part of it"))
                                   : file.errorString();
        file.cancelWriting();
        return error(
            say(QT_TRANSLATE_NOOP("SafeWrite", "the file could not be written whole: %1")).arg(reason), path,
            moreRoom);
    }
    if (!file.commit())
        return error(
            say(QT_TRANSLATE_NOOP("SafeWrite", "the file could not be finished: %1")).arg(file.errorString()),
            path, otherPlace);
    QFile back(path);
    if (!back.open(QIODevice::ReadOnly) || back.size() != bytes.size() || back.readAll() != bytes)
        return error(say(QT_TRANSLATE_NOOP("SafeWrite", "the file does not read back as it was written")),
                     path, moreRoom);
    return std::nullopt;
}

Result<QByteArray> readWholeFile(const QString& path, qint64 limit)
{
    const QFileInfo info(path);
    const QString chooseOther = say(QT_TRANSLATE_NOOP("SafeWrite", "choose another file"));
    if (!info.exists())
        return error(say(QT_TRANSLATE_NOOP("SafeWrite", "there is no such file")), path,
                     say(QT_TRANSLATE_NOOP("SafeWrite", "it may have been moved or renamed")));
    if (!info.isFile())
        return error(say(QT_TRANSLATE_NOOP("SafeWrite", "this is no ordinary file")), path, chooseOther);
    const auto tooLarge = [&] {
        return error(say(QT_TRANSLATE_NOOP("SafeWrite", "the file is larger than %1 MB"))
                         .arg(static_cast<double>(limit) / (1 << 20), 0, 'g', 4),
                     path, chooseOther);
    };
    if (info.size() > limit) return tooLarge();
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return error(
            say(QT_TRANSLATE_NOOP("SafeWrite", "the file cannot be read: %1")).arg(file.errorString()), path,
            say(QT_TRANSLATE_NOOP("SafeWrite", "see to its access rights")));
    // A file may grow between the question and the reading.
    QByteArray bytes = file.read(limit + 1);
    if (bytes.size() > limit) return tooLarge();
    if (file.error() != QFileDevice::NoError)
        return error(
            say(QT_TRANSLATE_NOOP("SafeWrite", "the file cannot be read: %1")).arg(file.errorString()), path,
            say(QT_TRANSLATE_NOOP("SafeWrite", "see whether the disk is well")));
    return bytes;
}

}  // namespace lidwright
