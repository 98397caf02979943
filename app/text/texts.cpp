#include "app/text/texts.h"

#include "core/layout/inside_parts.h"
#include "core/plan/catalogue.h"

#include <QCoreApplication>

#include <string_view>

namespace lidwright {
namespace {

/// The context under which core's marked English stands in the translation files.
constexpr const char* kCoreContext = "core";

/// First word of a part key and the member's number, 0 where there is none: "art.2" -> {"art", 2}.
struct PartKey {
    QString word;
    int number = 0;
};

PartKey splitPartKey(const QString& key)
{
    PartKey out;
    const qsizetype dot = key.indexOf(QLatin1Char('.'));
    out.word = key.left(dot);
    if (dot >= 0) {
        bool isNumber = false;
        const int number = key.mid(dot + 1).toInt(&isNumber);
        if (isNumber && number > 0) out.number = number;
    }
    return out;
}

QString withCapital(QString text)
{
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

/// "Neck, Width" where `where` is a parameter's key, otherwise `where` as it is (file, line).
QString placeLabel(const std::string& where)
{
    std::string pattern;
    bool inNumber = false;
    for (const char c : where) {
        const bool digit = c >= '0' && c <= '9';
        const bool starts = digit && !pattern.empty() && pattern.back() == '.';
        if (starts) pattern += '#';
        if (!starts && !(digit && inNumber)) pattern += c;
        inNumber = starts || (digit && inNumber);
    }
    for (const Parameter& parameter : catalogue()) {
        if (pattern != parameter.key && where != parameter.key) continue;
        const std::string_view key = parameter.key;
        for (const PartInfo& part : parts()) {
            if (key.substr(0, key.find('.')) != part.key) continue;
            const QString partName = shown(part.label);
            const QString name = shown(parameter.label);
            return partName == name ? name
                                    : QCoreApplication::translate("Texts", "%1, %2").arg(partName, name);
        }
    }
    return QString::fromStdString(where);
}

}  // namespace

QString shown(const char* marked)
{
    // An empty source text is the key of the translation file's own header.
    if (marked == nullptr || *marked == '\0') return {};
    return QCoreApplication::translate(kCoreContext, marked);
}

QString shown(const std::string& marked)
{
    return shown(marked.c_str());
}

QString shown(const Sentence& sentence, const UnitStyle& style)
{
    std::vector<Sentence::Argument> arguments = sentence.arguments;
    for (Sentence::Argument& argument : arguments)
        if (auto* word = std::get_if<std::string>(&argument)) *word = shown(*word).toStdString();
    return QString::fromStdString(spoken(shown(sentence.pattern).toStdString(), arguments, style));
}

QString shown(const Measure& measure, const UnitStyle& style)
{
    return QString::fromStdString(spoken(measure, style));
}

QString shown(Verdict verdict)
{
    return shown(word(verdict));
}

QString shown(const Error& error)
{
    QString text = withCapital(shown(error.what));
    const QString place = placeLabel(error.where);
    if (!place.isEmpty()) text = QCoreApplication::translate("Texts", "%1: %2").arg(place, shown(error.what));
    if (error.mend.empty()) return text;
    const bool ended = text.endsWith(QLatin1Char('.')) || text.endsWith(QLatin1Char('?'));
    return text + (ended ? QStringLiteral(" ") : QStringLiteral(". ")) + withCapital(shown(error.mend));
}

QString partLabel(const Plan& plan, const QString& partKey)
{
    const PartKey key = splitPartKey(partKey);
    for (const PartInfo& part : parts()) {
        if (key.word != QLatin1String(part.key)) continue;
        const QString label = shown(part.label);
        if (key.number == 0) return label;
        if (key.word == QLatin1String("art") && key.number <= static_cast<int>(plan.art.size())) {
            // The name that every fresh drawing has tells two of them no better apart than their numbers.
            static const ArtPiece fresh;
            const std::string& own = plan.art[static_cast<std::size_t>(key.number - 1)].name;
            if (!own.empty() && own != fresh.name) return QString::fromStdString(own);
        }
        // Of the wiring's parts the kind says more than that they are wiring.
        const bool device =
            key.word == QLatin1String("wiring") && key.number <= static_cast<int>(plan.wiring.size());
        const QString name =
            device ? shown(deviceName(plan.wiring[static_cast<std::size_t>(key.number - 1)].kind)) : label;
        return QCoreApplication::translate("Texts", "%1 %2").arg(name).arg(key.number);
    }
    return withCapital(key.word);
}

}  // namespace lidwright
