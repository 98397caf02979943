#include "app/settings/setting.h"

#include <QStandardPaths>

namespace lidwright {

Settings::Settings(const QString& iniFile) : m_store(iniFile, QSettings::IniFormat) {}

QString Settings::standardFile()
{
    return QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
           QStringLiteral("/lidwright/lidwright.ini");
}

}  // namespace lidwright
