#include "core/base/length_scan.h"
#include "core/base/length_text.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace lidwright {

namespace {

using Kind = LengthToken::Kind;

constexpr double kMillimetresPerFoot = 12 * kMillimetresPerInch;
constexpr double kGreatestLength = 1e7;

/// What the text is about and what a number without a unit means.
struct Setting {
    bool lengths = true;
    bool degrees = false;
    bool inches = false;   ///< the plan's unit
    double plainUnit = 1;  ///< mm per unit of a bare number
};

struct Value {
    double number = 0;
    bool isLength = false;  ///< a unit was given: mm; otherwise a bare number
};

enum class Unit { None, Metric, Inch, Foot, Degree };

/// A number as written, before its unit.
struct Literal {
    double value = 0;
    int hyphen = -1;  ///< position of the hyphen of 25-1/2
};

/// Recursive descent over the tokens. Failing calls leave the first error in m_error and answer
/// anything; callers go on only while none is set.
class Parser {
public:
    Parser(std::string_view text, std::vector<LengthToken> tokens, Setting setting)
        : m_text(text), m_tokens(std::move(tokens)), m_setting(setting)
    {}

    Result<double> run()
    {
        if (peek().kind == Kind::End) {
            fail(0, "there is no number",
                 m_setting.lengths ? "write a length, as 25 1/2 in or 648 mm" : "write a number");
        }
        const Value v = sum();
        if (!m_error && peek().kind != Kind::End) unexpected();
        if (m_error) return *m_error;
        const double result = v.isLength ? v.number : v.number * m_setting.plainUnit;
        const bool tooLong = m_setting.lengths && std::abs(result) > kGreatestLength;
        if (!std::isfinite(result) || tooLong) {
            return lengthError(m_text, 0,
                               m_setting.lengths ? "the length is beyond 10 km" : "the number is too large",
                               "check the digits and the unit");
        }
        return result + 0.0;  // no minus on zero
    }

private:
    std::string_view m_text;
    std::vector<LengthToken> m_tokens;
    Setting m_setting;
    std::size_t m_next = 0;
    std::optional<Error> m_error;
    double m_metric = 1;  ///< mm per unit of the metric unit taken last

    const LengthToken& peek(std::size_t ahead = 0) const
    {
        return m_tokens[std::min(m_next + ahead, m_tokens.size() - 1)];
    }
    bool is(Kind kind, std::size_t ahead = 0) const { return peek(ahead).kind == kind; }
    bool isInteger(std::size_t ahead) const { return is(Kind::Number, ahead) && peek(ahead).integer; }

    Value fail(int position, std::string what, std::string mend)
    {
        if (!m_error) m_error = lengthError(m_text, position, std::move(what), std::move(mend));
        return {};
    }

    void unexpected()
    {
        const LengthToken& t = peek();
        if (t.kind == Kind::Close) {
            fail(t.position, "this parenthesis closes nothing", "take it away or open it before");
        } else if (t.kind == Kind::Number || t.kind == Kind::Fraction || t.kind == Kind::Open) {
            besides(t);
        } else {
            fail(t.position, "a number is missing before this", "write a number or take the sign away");
        }
    }

    /// Two numbers stand side by side.
    void besides(const LengthToken& t)
    {
        const LengthToken& before = m_tokens[m_next > 0 ? m_next - 1 : 0];
        if (t.kind == Kind::Number && before.kind == Kind::Number && before.text.size() <= 3 &&
            before.integer && t.text.size() >= 3 && (t.text.size() == 3 || t.text.find_first_of(".,") == 3)) {
            fail(t.position, before.text + " " + t.text + " can be read as one number or as two",
                 "write " + before.text + t.text + ", or put a sign between them");
            return;
        }
        fail(t.position, "there is no sign between this and the number before",
             "put + - * or / between them");
    }

    Value sum()
    {
        Value left = product();
        while (!m_error && (is(Kind::Plus) || is(Kind::Minus))) {
            const double sign = is(Kind::Minus) ? -1 : 1;
            ++m_next;
            Value right = product();
            if (left.isLength != right.isLength) {
                Value& bare = left.isLength ? right : left;
                bare = {bare.number * m_setting.plainUnit, true};
            }
            left.number += sign * right.number;
        }
        return left;
    }

    Value product()
    {
        Value left = signedPrimary();
        while (!m_error && (is(Kind::Times) || is(Kind::Slash))) {
            const bool divide = is(Kind::Slash);
            const int at = peek().position;
            ++m_next;
            const int divisor = peek().position;
            const Value right = signedPrimary();
            if (m_error) break;
            if (divide && right.isLength) {
                return fail(at, "this divides by a length", "divide by a plain number");
            }
            if (divide && right.number == 0)
                return fail(divisor, "this divides by zero", "divide by another number");
            if (left.isLength && right.isLength) {
                return fail(at, "a length times a length is an area", "leave the unit of one of them out");
            }
            left = {divide ? left.number / right.number : left.number * right.number,
                    left.isLength || right.isLength};
        }
        return left;
    }

    Value signedPrimary()
    {
        double sign = 1;
        int at = -1;
        for (; is(Kind::Plus) || is(Kind::Minus); ++m_next) {
            if (is(Kind::Minus)) sign = -sign;
            at = peek().position;
        }
        if (is(Kind::End) || is(Kind::Close)) {
            // The sign before is what dangles; there is one, or the text would be empty or () or ).
            if (at < 0 && m_next > 0) at = m_tokens[m_next - 1].position;
            const bool nothing = at < 0;
            return fail(nothing ? peek().position : at,
                        nothing ? "this parenthesis closes nothing" : "a number is missing after this",
                        nothing ? "take it away or open it before" : "write a number or take the sign away");
        }
        Value v = primary();
        v.number *= sign;
        return v;
    }

    Value primary()
    {
        Value v;
        if (is(Kind::Open)) {
            const int open = peek().position;
            ++m_next;
            v = sum();
            if (m_error) return v;
            if (!is(Kind::Close)) {
                if (!is(Kind::End)) {
                    unexpected();
                    return v;
                }
                return fail(open, "this parenthesis is never closed", "close it or take it away");
            }
            ++m_next;
            const int at = peek().position;
            const Unit unit = takeUnit();
            if (unit != Unit::None && v.isLength) {
                return fail(at, "the numbers in the parentheses have units already", "leave this unit out");
            }
            if (unit != Unit::None) v = inUnit(v.number, unit);
        } else if (is(Kind::Number) || is(Kind::Fraction)) {
            v = literal();
        } else if (is(Kind::Word) || is(Kind::Foot) || is(Kind::Inch) || is(Kind::Degree)) {
            return fail(peek().position, "there is no number before this",
                        "write the number first, then the unit");
        } else {
            unexpected();
        }
        if (!m_error && (is(Kind::Number) || is(Kind::Fraction) || is(Kind::Open))) besides(peek());
        return v;
    }

    Value inUnit(double number, Unit unit) const
    {
        switch (unit) {
            case Unit::Inch:
                return {number * kMillimetresPerInch, true};
            case Unit::Foot:
                return {number * kMillimetresPerFoot, true};
            case Unit::Metric:
                return {number * m_metric, true};
            case Unit::None:
            case Unit::Degree:
                break;
        }
        return {number, false};
    }

    Unit takeUnit()
    {
        const LengthToken& t = peek();
        Unit unit = Unit::None;
        if (t.kind == Kind::Foot) unit = Unit::Foot;
        if (t.kind == Kind::Inch) unit = Unit::Inch;
        if (t.kind == Kind::Degree) unit = Unit::Degree;
        if (t.kind == Kind::Word) {
            const std::string& w = t.text;
            if (w == "in" || w == "inch" || w == "inches") unit = Unit::Inch;
            if (w == "ft" || w == "foot" || w == "feet") unit = Unit::Foot;
            if (w == "mm" || w == "cm" || w == "m") {
                unit = Unit::Metric;
                m_metric = w == "mm" ? 1 : w == "cm" ? 10 : 1000;
            }
            if (w == "deg") unit = Unit::Degree;
            if (unit == Unit::None) {
                fail(t.position, "the unit " + w + " is not known here",
                     m_setting.lengths ? "use mm, cm, m, in or ft" : "leave the unit out");
            }
        }
        if (unit == Unit::None) return unit;
        const bool wanted = unit == Unit::Degree ? m_setting.degrees : m_setting.lengths;
        if (!wanted) {
            fail(t.position, m_setting.lengths ? "this is not a length" : "no unit of length belongs here",
                 m_setting.lengths ? "use mm, cm, m, in or ft" : "leave the unit out");
        }
        ++m_next;
        return unit;
    }

    Value literal()
    {
        const Literal number = mixedNumber();
        if (m_error) return {};
        const bool mark = is(Kind::Foot);
        const Unit unit = takeUnit();
        if (m_error) return {};
        const bool inches =
            unit == Unit::Inch || unit == Unit::Foot || (unit == Unit::None && m_setting.inches);
        if (number.hyphen >= 0 && !inches) {
            return fail(number.hyphen, "the hyphen can be read as minus or as joining a fraction of an inch",
                        "write spaces around a minus, and a space before a fraction");
        }
        Value v = inUnit(number.value, unit);
        if (unit == Unit::Foot) v.number += inchesAfterFeet(mark);
        return v;
    }

    /// The 2 3/8" of 1' 2 3/8", in mm; 0 where none follows.
    double inchesAfterFeet(bool mark)
    {
        const bool hyphen = is(Kind::Minus) && !peek().spaceBefore && !peek(1).spaceBefore;
        const std::size_t at = hyphen ? 1 : 0;
        if (!is(Kind::Number, at) && !is(Kind::Fraction, at)) return 0;
        const LengthToken& first = peek(at);
        if (mark && !hyphen && first.integer && !first.spaceBefore && first.text.size() == 3) {
            fail(first.position, "the ' can be read as feet or as grouping digits",
                 "write a space after feet, and no mark between digits");
            return 0;
        }
        const std::size_t back = m_next;
        m_next += at;
        const Literal inches = mixedNumber();
        const LengthToken& after = peek();
        const bool inch = is(Kind::Inch) || (is(Kind::Word) && after.text.substr(0, 2) == "in");
        const bool otherUnit = !inch && (is(Kind::Foot) || is(Kind::Word));
        if (m_error) return 0;
        if (hyphen && otherUnit) {
            m_next = back;  // 5'-3mm is a difference
            return 0;
        }
        if (hyphen && !inch) {
            fail(m_tokens[back].position, "the hyphen can be read as minus or as joining feet and inches",
                 "give the inches their mark, or write spaces around a minus");
        } else if (otherUnit) {
            fail(after.position, "only inches can follow feet", "put + between the two lengths");
        } else if (inch) {
            takeUnit();
        }
        return inches.value * kMillimetresPerInch;
    }

    /// A whole number, a decimal, a fraction, or a whole number and a fraction.
    Literal mixedNumber()
    {
        const LengthToken first = peek();
        if (first.kind == Kind::Fraction) {
            ++m_next;
            return {first.value};
        }
        if (isFraction(0)) return {fraction()};
        ++m_next;
        if (!first.integer) return {first.value};
        if (is(Kind::Fraction) || (peek().spaceBefore && isFraction(0))) {
            return {first.value + properFraction()};
        }
        const bool tight = is(Kind::Minus) && !peek().spaceBefore && !peek(1).spaceBefore;
        const bool tightFraction =
            is(Kind::Fraction, 1) || (isFraction(1) && !peek(2).spaceBefore && !peek(3).spaceBefore);
        if (tight && tightFraction) {
            const int hyphen = peek().position;
            ++m_next;
            return {first.value + properFraction(), hyphen};
        }
        return {first.value};
    }

    bool isFraction(std::size_t ahead) const
    {
        return isInteger(ahead) && is(Kind::Slash, ahead + 1) && isInteger(ahead + 2);
    }

    double fraction()
    {
        const double numerator = peek().value, denominator = peek(2).value;
        if (denominator == 0) fail(peek(2).position, "this divides by zero", "divide by another number");
        m_next += 3;
        return numerator / denominator;
    }

    double properFraction()
    {
        const LengthToken t = peek();
        if (t.kind == Kind::Fraction) {
            ++m_next;
            return t.value;
        }
        const double value = fraction();
        if (!m_error && (value >= 1 || t.text.front() == '0')) {
            fail(t.position, "the fraction after a whole number must lie between 0 and 1",
                 "write a proper fraction, or put a sign between the numbers");
        }
        return value;
    }
};

Result<double> parse(std::string_view text, char decimalMark, const Setting& setting)
{
    if (text.size() > kLengthTextLimit) {
        return lengthError(text, kLengthTextLimit, "the text is too long",
                           "keep it below " + std::to_string(kLengthTextLimit) + " characters");
    }
    auto tokens = scanLength(text, decimalMark);
    if (!tokens) return tokens.error();
    return Parser(text, std::move(tokens).value(), setting).run();
}

}  // namespace

Result<double> parseLength(std::string_view text, const UnitStyle& style)
{
    Setting setting;
    setting.inches = style.unit != LengthUnit::Millimetre;
    setting.plainUnit = setting.inches ? kMillimetresPerInch : 1;
    return parse(text, style.decimalMark, setting);
}

Result<double> parseNumber(std::string_view text, bool angle, char decimalMark)
{
    Setting setting;
    setting.lengths = false;
    setting.degrees = angle;
    return parse(text, decimalMark, setting);
}

}  // namespace lidwright
