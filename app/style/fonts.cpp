#include "app/style/fonts.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

QFont scaledFont(QFont font, double share)
{
    if (font.pointSizeF() > 0)
        font.setPointSizeF(font.pointSizeF() * share);
    else
        font.setPixelSize(std::max(1, static_cast<int>(std::lround(font.pixelSize() * share))));
    return font;
}

QFont boldFont(QFont font)
{
    font.setBold(true);
    return font;
}

}  // namespace lidwright
