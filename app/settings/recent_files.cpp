#include "app/settings/recent_files.h"

#include "app/settings/all_settings.h"

#include <QFileInfo>

namespace lidwright {

QStringList RecentFiles::paths() const
{
    QStringList list = m_settings.read(kRecentFiles);
    list.removeAll(QString());
    return list.mid(0, kMostRecentFiles);
}

void RecentFiles::add(const QString& path)
{
    const QString whole = QFileInfo(path).absoluteFilePath();
    QStringList list = paths();
    list.removeAll(whole);
    list.prepend(whole);
    m_settings.write(kRecentFiles, list.mid(0, kMostRecentFiles));
}

void RecentFiles::remove(const QString& path)
{
    QStringList list = paths();
    list.removeAll(QFileInfo(path).absoluteFilePath());
    m_settings.write(kRecentFiles, list);
}

void RecentFiles::clear()
{
    m_settings.write(kRecentFiles, QStringList());
}

}  // namespace lidwright
