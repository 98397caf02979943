#pragma once

#include "app/settings/setting.h"

namespace lidwright {

/// How many plans "Open recent" offers.
inline constexpr int kMostRecentFiles = 10;

/// The plans opened or saved last, newest first, by absolute path.
class RecentFiles {
public:
    explicit RecentFiles(Settings& settings) : m_settings(settings) {}

    QStringList paths() const;
    void add(const QString& path);
    void remove(const QString& path);
    void clear();

private:
    Settings& m_settings;
};

}  // namespace lidwright
