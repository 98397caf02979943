#pragma once

#include <QByteArray>

class QImage;

namespace lidwright {

/// The image as a PNG file has it; empty where it could not be spelled.
QByteArray pngOf(const QImage& image);

}  // namespace lidwright
