#include "app/board/pointer_text.h"

#include "core/base/length_text.h"

namespace lidwright {

QString pointerLength(double millimetres, const UnitStyle& style)
{
    QString text = QString::fromStdString(formatLength(millimetres, style).text);
    constexpr char16_t kAbout = 0x2248;  // the sign that formatLength() puts before a rounded number
    if (text.startsWith(QChar(kAbout))) text = text.mid(1).trimmed();
    return text;
}

}  // namespace lidwright
