#include "app/text/unbroken.h"

#include <QRegularExpression>

namespace lidwright {

QString unbroken(QString text)
{
    // A space after ≈, between a whole number and its fraction, and before a unit.
    static const QRegularExpression inside(
        QStringLiteral("(?<=\u2248) |(?<=[0-9]) (?=[0-9]+/[0-9]|(mm|cm|in|deg|litres)(?![a-z]))"));
    return text.replace(inside, QString(QChar(QChar::Nbsp)));
}

}  // namespace lidwright
