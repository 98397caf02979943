#pragma once

#include <QPalette>

namespace lidwright::testing {

/// What a light desktop gives: Fusion's own colours.
inline QPalette lightPalette()
{
    QPalette p(QColor(0xef, 0xef, 0xef));
    p.setColor(QPalette::Window, QColor(0xef, 0xef, 0xef));
    p.setColor(QPalette::WindowText, Qt::black);
    p.setColor(QPalette::Base, Qt::white);
    p.setColor(QPalette::Text, Qt::black);
    p.setColor(QPalette::Highlight, QColor(0x30, 0x8c, 0xc6));
    p.setColor(QPalette::HighlightedText, Qt::white);
    return p;
}

/// A dark desktop.
inline QPalette darkPalette()
{
    QPalette p(QColor(0x2a, 0x2e, 0x32));
    p.setColor(QPalette::Window, QColor(0x2a, 0x2e, 0x32));
    p.setColor(QPalette::WindowText, QColor(0xee, 0xee, 0xec));
    p.setColor(QPalette::Base, QColor(0x1e, 0x21, 0x24));
    p.setColor(QPalette::Text, QColor(0xee, 0xee, 0xec));
    p.setColor(QPalette::Highlight, QColor(0x30, 0x8c, 0xc6));
    p.setColor(QPalette::HighlightedText, Qt::white);
    return p;
}

}  // namespace lidwright::testing
