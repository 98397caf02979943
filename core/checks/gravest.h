#pragma once

#include "core/checks/judging.h"

#include <limits>
#include <optional>
#include <utility>
#include <vector>

/// Private to core/checks.
namespace lidwright {

/// Of several findings of one rule about one part, keeps the gravest and, of equally grave ones, the one
/// with least in hand.
class Gravest {
public:
    void take(Finding f)
    {
        if (!m_kept || graver(f, *m_kept)) m_kept = std::move(f);
    }
    void pourInto(std::vector<Finding>& out)
    {
        if (m_kept) out.push_back(std::move(*m_kept));
        m_kept.reset();
    }

private:
    std::optional<Finding> m_kept;

    static double inHand(const Finding& f)
    {
        if (!f.measured || !f.required) return std::numeric_limits<double>::infinity();
        const double over = f.measured->value - f.required->value;
        return f.bound == Bound::AtMost ? -over : over;
    }
    static bool graver(const Finding& a, const Finding& b)
    {
        if (a.verdict != b.verdict) return static_cast<int>(a.verdict) > static_cast<int>(b.verdict);
        return inHand(a) < inHand(b);
    }
};

/// A finding about a length that is to be at least `required` and is good from `comfortable` on.
inline Finding atLeast(const char* rule, std::string part, double value, double required, double comfortable)
{
    Finding f = finding(rule, std::move(part), judgeAtLeast(value, required, comfortable - required), {});
    f.measured = mm(value);
    f.required = mm(required);
    f.comfortable = mm(comfortable);
    return f;
}

}  // namespace lidwright
