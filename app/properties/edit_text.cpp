#include "app/properties/edit_text.h"

#include "app/text/texts.h"

#include "core/base/length_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace lidwright {
namespace {

constexpr QChar kAbout = QChar(0x2248);  // ≈, before a rounded value
constexpr int kCoarse = 16;              // parts of an inch in which usual ranges are told
constexpr int kLongestText = 40;         // characters of a text that an undo step repeats

/// The context under which this file's texts are translated.
struct EditText {
    Q_DECLARE_TR_FUNCTIONS(EditText)
};

QString partOf(const ParameterRef& ref)
{
    const QString key = QString::fromStdString(ref.key());
    return key.left(key.lastIndexOf(QLatin1Char('.')));
}

QString withoutCapital(QString text)
{
    // "ISO" keeps its capitals, "Neck" does not.
    if (text.size() > 1 && text.at(1).isLower()) text[0] = text.at(0).toLower();
    return text;
}

QString shownValue(const Parameter& parameter, const ParameterValue& value, const UnitStyle& style)
{
    QString text = shown(formatValue(parameter, value, style));
    if (!parameter.isText()) return text;
    text.replace(QLatin1Char('\n'), QLatin1Char(' '));
    if (text.size() > kLongestText) text = text.left(kLongestText) + QChar(0x2026);
    return text.isEmpty() ? EditText::tr("nothing") : QStringLiteral("\u201c%1\u201d").arg(text);
}

bool isMeasured(Quantity quantity)
{
    return quantity != Quantity::Choice && quantity != Quantity::Flag && quantity != Quantity::Text;
}

/// The values that a choice or flag can have.
int valueCount(const Parameter& parameter)
{
    if (parameter.quantity == Quantity::Flag) return 2;
    return parameter.quantity == Quantity::Choice ? static_cast<int>(parameter.choices.size()) : 0;
}

}  // namespace

QString parameterName(const Plan& plan, const ParameterRef& ref)
{
    const QString part = partLabel(plan, partOf(ref));
    const QString name = shown(ref.parameter->label);
    if (part == name) return name;
    return EditText::tr("%1, %2").arg(part, withoutCapital(name));
}

QString editText(const Plan& plan, const ParameterRef& ref, const ParameterValue& value)
{
    const QString part = partLabel(plan, partOf(ref));
    const QString name = shown(ref.parameter->label);
    const QString what = part == name ? withoutCapital(name)
                                      : EditText::tr("%1 %2").arg(withoutCapital(part), withoutCapital(name));
    return EditText::tr("Set %1 to %2").arg(what, shownValue(*ref.parameter, value, unitStyle(plan)));
}

QString customaryHint(const Parameter& parameter, const UnitStyle& style)
{
    if (parameter.customaryLeast == 0 && parameter.customaryMost == 0) return {};
    UnitStyle coarse = style;
    coarse.denominator = kCoarse;
    QString least = QString::fromStdString(formatValue(parameter, parameter.customaryLeast, coarse));
    QString most = QString::fromStdString(formatValue(parameter, parameter.customaryMost, coarse));
    // A usual range is not exact anyway, and one unit speaks for both ends.
    least.remove(kAbout);
    most.remove(kAbout);
    const qsizetype unit = most.lastIndexOf(QLatin1Char(' '));
    if (parameter.quantity == Quantity::Length && unit > 0 && least.endsWith(most.mid(unit)))
        least.chop(most.size() - unit);
    //: a customary range: "usual 32 to 50 mm"
    return EditText::tr("usual %1 to %2").arg(least.trimmed(), most.trimmed());
}

bool outsideCustomary(const Parameter& parameter, const ParameterValue& value)
{
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr || (parameter.customaryLeast == 0 && parameter.customaryMost == 0)) return false;
    if (*number == 0 && parameter.zeroIsNone) return false;
    return *number < parameter.customaryLeast || *number > parameter.customaryMost;
}

QString parameterTip(const Plan& plan, const ParameterRef& ref)
{
    const Parameter& parameter = *ref.parameter;
    const UnitStyle style = unitStyle(plan);
    QStringList lines{parameterName(plan, ref), shown(parameter.help)};
    if (parameter.quantity == Quantity::Length) {
        const double exact = std::get<double>(get(plan, ref));
        lines << EditText::tr("Exactly %1 mm.").arg(QString::fromStdString(exactNumber(exact)));
    }
    // The control may be too narrow for the word that is chosen.
    if (parameter.quantity == Quantity::Choice)
        lines << EditText::tr("Now: %1.").arg(shown(formatValue(parameter, get(plan, ref), style)));
    if (isMeasured(parameter.quantity)) {
        lines << EditText::tr("From %1 to %2.")
                     .arg(QString::fromStdString(formatValue(parameter, parameter.least, style)),
                          QString::fromStdString(formatValue(parameter, parameter.most, style)));
        const QString usual = customaryHint(parameter, style);
        if (!usual.isEmpty()) lines << EditText::tr("%1 (%2).").arg(usual, shown(parameter.source));
    }
    return lines.join(QLatin1Char('\n'));
}

QString inactiveReason(const Plan& plan, const ParameterRef& ref, bool follows)
{
    if (active(plan, ref)) return {};
    // The catalogue says whether a quantity counts, not why; trying the choices tells.
    for (const Parameter& other : catalogue()) {
        const bool inOtherList =
            other.inList() && (!ref.parameter->inList() || other.size != ref.parameter->size);
        if (inOtherList) continue;
        const ParameterRef choice{&other, other.inList() ? ref.index : 0};
        const double now = valueCount(other) > 0 ? std::get<double>(get(plan, choice)) : 0;
        for (int value = 0; value < valueCount(other); ++value) {
            if (value == static_cast<int>(now)) continue;
            const Result<Plan> changed = set(plan, choice, static_cast<double>(value));
            if (!changed || !active(*changed, ref)) continue;
            const QString choiceName = withoutCapital(
                partOf(choice) == partOf(ref) ? shown(other.label) : parameterName(plan, choice));
            const QString chosen = shown(formatValue(other, now, unitStyle(plan)));
            return (follows ? EditText::tr("Follows while %1 is \u201c%2\u201d.")
                            : EditText::tr("Does not count while %1 is \u201c%2\u201d."))
                .arg(choiceName, chosen);
        }
    }
    return follows ? EditText::tr("Follows from the rest.") : EditText::tr("Does not count now.");
}

}  // namespace lidwright
