#include "app/exchange/png_bytes.h"

#include <QBuffer>
#include <QImage>

namespace lidwright {

QByteArray pngOf(const QImage& image)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes;
}

}  // namespace lidwright
