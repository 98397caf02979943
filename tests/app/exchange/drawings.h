#pragma once

#include <QByteArray>
#include <QFile>
#include <QTemporaryDir>

namespace lidwright::testing {

/// A folder with a few drawings.
class Drawings {
public:
    Drawings()
    {
        // Black disc with white over its middle, a red hairline frame, and a word that cannot be taken over.
        write("unitless.svg",
              R"(<svg xmlns="http://www.w3.org/2000/svg" width="480" height="240" viewBox="0 0 480 240">
                 <circle cx="100" cy="120" r="80" fill="#000000"/><circle cx="100" cy="120" r="30" fill="#ffffff"/>
                 <rect x="240" y="40" width="192" height="160" fill="none" stroke="#ff0000" stroke-width="0.2"/>
                 <text x="20" y="20" writing-mode="tb">word</text></svg>)");
        write("lettered.svg",
              R"(<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="60mm" viewBox="0 0 120 60">
                 <text x="10" y="40" font-family="DejaVu Sans" font-size="30">Lid</text></svg>)");
        write("measured.svg",
              R"(<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="60mm" viewBox="0 0 120 60">
                 <rect x="10" y="10" width="100" height="40" fill="#000"/></svg>)");
        write("tall.svg",
              R"(<svg xmlns="http://www.w3.org/2000/svg" width="250mm" height="420mm" viewBox="0 0 250 420">
                 <path d="M25 20 H225 V200 L205 400 H45 L25 200 Z" fill="#884400"/>
                 <circle cx="125" cy="200" r="40" fill="#ffffff"/></svg>)");
        write("small.svg",
              R"(<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 20 10">
                 <rect width="20" height="10" fill="#000"/></svg>)");
        write("broken.svg", "<svg><path");
    }

    QString path(const char* name) const { return m_dir.filePath(QLatin1String(name)); }
    void write(const char* name, const QByteArray& text) const
    {
        QFile file(path(name));
        if (file.open(QIODevice::WriteOnly)) file.write(text);
    }

private:
    QTemporaryDir m_dir;
};

}  // namespace lidwright::testing
