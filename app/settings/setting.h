#pragma once

#include <QSettings>
#include <QString>
#include <QVariant>

namespace lidwright {

/// One remembered choice: its key in the file and the value where nothing is remembered.
template <typename T>
struct Setting {
    const char* key;
    T fallback;
};

/// The user's remembered choices, in one ini file. A value equal to its fallback is not written, so that a
/// better fallback of a later version reaches everybody; keys that this version does not know are left alone.
class Settings {
public:
    explicit Settings(const QString& iniFile);

    /// lidwright/lidwright.ini in the configuration folder (XDG base directory specification 0.8).
    static QString standardFile();

    /// The remembered value, or the fallback when there is none or it is not of this kind.
    template <typename T>
    T read(const Setting<T>& setting) const
    {
        QVariant value = m_store.value(QLatin1String(setting.key));
        if (!value.isValid() || !value.convert(QMetaType::fromType<T>())) return setting.fallback;
        return value.value<T>();
    }

    template <typename T>
    void write(const Setting<T>& setting, const T& value)
    {
        if (value == setting.fallback)
            m_store.remove(QLatin1String(setting.key));
        else
            m_store.setValue(QLatin1String(setting.key), QVariant::fromValue(value));
    }

    /// Brings the choices to the disk now.
    void sync() { m_store.sync(); }
    QString fileName() const { return m_store.fileName(); }

private:
    QSettings m_store;
};

}  // namespace lidwright
