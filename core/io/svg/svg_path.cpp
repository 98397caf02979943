#include "core/io/svg/svg_path.h"

#include "core/io/svg/svg_scan.h"

#include <cctype>
#include <cmath>
#include <optional>

namespace lidwright::svg {

namespace {

class PathReader {
public:
    explicit PathReader(std::string_view data) : m_scan(data) {}

    PathReading read()
    {
        bool good = true;
        m_scan.skipSpace();
        while (good && !m_scan.atEnd()) {
            good = command();
            m_scan.skipSpace();
        }
        return {m_pen.take(), !good};
    }

private:
    Scanner m_scan;
    Pen m_pen;
    bool m_started = false;
    Point m_lastCubic, m_lastQuadratic;  ///< last control point, for the smooth commands
    char m_previous = 0;

    bool command();
    bool arguments(char letter, bool relative);
    bool arc(Point base);

    std::optional<double> number()
    {
        const auto value = m_scan.number();
        if (value) m_scan.skipSeparator();
        return value;
    }
    std::optional<bool> flag()
    {
        // Flags need no separator: "a1 1 0 00 1 1".
        const bool one = m_scan.accept('1');
        if (!one && !m_scan.accept('0')) return std::nullopt;
        m_scan.skipSeparator();
        return one;
    }
    std::optional<Point> pair(Point base)
    {
        const auto x = number();
        const auto y = x ? number() : std::nullopt;
        if (!y) return std::nullopt;
        const Point p = base + Point{*x, *y};
        if (!std::isfinite(p.x) || !std::isfinite(p.y)) return std::nullopt;
        return p;
    }
    bool numberFollows() const
    {
        Scanner ahead = m_scan;
        return ahead.number().has_value();
    }
};

bool PathReader::command()
{
    const char given = m_scan.peek();
    const char letter = static_cast<char>(std::toupper(static_cast<unsigned char>(given)));
    if (std::string_view("MLHVCSQTAZ").find(letter) == std::string_view::npos) return false;
    if (!m_started && letter != 'M') return false;
    m_scan.accept(given);
    m_scan.skipSpace();
    m_started = true;
    if (letter == 'Z') {
        m_pen.close();
        m_previous = 'Z';
        return true;
    }
    const bool relative = given != letter;
    char now = letter;
    do {
        if (!arguments(now, relative)) return false;
        m_previous = now;
        if (now == 'M') now = 'L';
    } while (numberFollows());
    return true;
}

bool PathReader::arguments(char letter, bool relative)
{
    const Point here = m_pen.position();
    const Point base = relative ? here : Point{};
    switch (letter) {
        case 'M': {
            const auto p = pair(base);
            if (p) m_pen.moveTo(*p);
            return p.has_value();
        }
        case 'L': {
            const auto p = pair(base);
            if (p) m_pen.lineTo(*p);
            return p.has_value();
        }
        case 'H': {
            const auto x = number();
            if (x && std::isfinite(base.x + *x)) m_pen.lineTo({base.x + *x, here.y});
            return x.has_value();
        }
        case 'V': {
            const auto y = number();
            if (y && std::isfinite(base.y + *y)) m_pen.lineTo({here.x, base.y + *y});
            return y.has_value();
        }
        case 'C':
        case 'S': {
            const bool smooth = letter == 'S';
            const bool follows = m_previous == 'C' || m_previous == 'S';
            const auto first = smooth ? std::optional(follows ? 2 * here - m_lastCubic : here) : pair(base);
            const auto second = first ? pair(base) : std::nullopt;
            const auto p = second ? pair(base) : std::nullopt;
            if (!p) return false;
            m_pen.curveTo(*first, *second, *p);
            m_lastCubic = *second;
            return true;
        }
        case 'Q':
        case 'T': {
            const bool smooth = letter == 'T';
            const bool follows = m_previous == 'Q' || m_previous == 'T';
            const auto control =
                smooth ? std::optional(follows ? 2 * here - m_lastQuadratic : here) : pair(base);
            const auto p = control ? pair(base) : std::nullopt;
            if (!p) return false;
            m_pen.curveTo((1.0 / 3) * (here + 2 * *control), (1.0 / 3) * (*p + 2 * *control), *p);
            m_lastQuadratic = *control;
            return true;
        }
        default:
            return arc(base);
    }
}

bool PathReader::arc(Point base)
{
    const auto rx = number();
    const auto ry = rx ? number() : std::nullopt;
    const auto turn = ry ? number() : std::nullopt;
    const auto large = turn ? flag() : std::nullopt;
    const auto sweep = large ? flag() : std::nullopt;
    const auto p = sweep ? pair(base) : std::nullopt;
    if (p) m_pen.arcTo(*rx, *ry, *turn, *large, *sweep, *p);
    return p.has_value();
}

}  // namespace

PathReading parsePath(std::string_view data)
{
    return PathReader(data).read();
}

}  // namespace lidwright::svg
