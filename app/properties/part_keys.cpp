#include "app/properties/part_keys.h"

#include "app/text/texts.h"

#include "core/plan/catalogue.h"

#include <algorithm>
#include <string_view>

namespace lidwright {
namespace {

/// First words of derived keys that are no parts themselves.
struct Home {
    const char* word;
    const char* part;
};
constexpr Home kHomes[] = {{"nut", "scale"},
                           {"saddle", "bridge"},
                           {"action", "setup"},
                           {"head-wall", "head-opening"},
                           {"tail-wall", "tail-opening"},
                           {"sound-hole", "lid"},
                           {"air", "lid"},
                           {"weight", "sheet"},
                           {"backing", "backing-fit"}};

std::string withDashes(std::string text)
{
    std::replace(text.begin(), text.end(), '.', '-');
    return text;
}

}  // namespace

QString partWord(const QString& partKey)
{
    return partKey.left(partKey.indexOf(QLatin1Char('.')));
}

QString memberKey(const QString& word, int index)
{
    return QStringLiteral("%1.%2").arg(word).arg(index + 1);
}

bool isListPart(const QString& word)
{
    for (const PartInfo& part : parts())
        if (word == QLatin1String(part.key)) return part.list;
    return false;
}

QString listLabel(const Plan& plan, const QString& word)
{
    const std::string count = word.toStdString() + ".count";
    for (const Parameter& parameter : catalogue())
        if (count == parameter.key) return shown(parameter.label);
    return partLabel(plan, word);
}

QString partIconName(const QString& partKey)
{
    return QStringLiteral("part_") + partWord(partKey).replace(QLatin1Char('-'), QLatin1Char('_'));
}

QString partOfDerived(const std::string& derivedKey)
{
    const QString key = QString::fromStdString(derivedKey);
    const QString owner = key.left(key.lastIndexOf(QLatin1Char('.')));
    for (const Home& home : kHomes)
        if (owner == QLatin1String(home.word)) return QString::fromLatin1(home.part);
    const qsizetype dot = owner.indexOf(QLatin1Char('.'));
    if (dot >= 0 && partWord(owner) == QLatin1String("strings"))
        return QStringLiteral("string") + owner.mid(dot);
    for (const PartInfo& part : parts())
        // What is told fret by fret stands in the studies: a form would drown in it.
        if (partWord(owner) == QLatin1String(part.key)) return part.list || dot < 0 ? owner : QString();
    return {};
}

bool standsFor(const std::string& derivedKey, const std::string& parameterKey)
{
    if (derivedKey == parameterKey) return true;
    const std::string quantity = parameterKey.substr(parameterKey.find('.') + 1);
    if (withDashes(derivedKey) == quantity) return true;
    const std::string owner = parameterKey.substr(0, parameterKey.find('.'));
    if (partOfDerived(derivedKey).toStdString() != owner) return false;
    return derivedKey.ends_with(".opening-" + quantity) || derivedKey.ends_with("." + quantity + "-above");
}

}  // namespace lidwright
