#include "core/solvers/web_strength.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Beyond these no part of a lid and no finger lies; within, no stress overflows or vanishes.
constexpr double kLeast = 1e-6, kMost = 1e6;

std::optional<Error> caseFault(const WebCase& web)
{
    struct Part {
        const char* name;
        double value;
    };
    for (const Part& part : {Part{"width", web.width}, Part{"run", web.run}, Part{"thickness", web.thickness},
                             Part{"force", web.force_N}})
        if (!(part.value >= kLeast && part.value <= kMost))
            return Error{std::string("the ") + part.name + " of the web is not above 0 or out of all measure",
                         std::string("web ") + part.name, "give it in millimetres, a force in newtons"};
    if (!std::isfinite(web.grainAngle))
        return Error{"the web's angle to the grain is no number", "web angle", "give the grain's direction"};
    return std::nullopt;
}

WebStrength judge(const WebCase& web, const GrainStrength& strength)
{
    const double moment = web.force_N * web.run * (web.cantilever ? kCantileverMoment : kBuiltInMoment);
    const double across = web.force_N * (web.cantilever ? kCantileverShear : kBuiltInShear);
    const double area = web.width * web.thickness;

    WebStrength answer;
    answer.bendingStress_MPa = 6 * moment / (area * web.thickness);
    answer.shearStress_MPa = 1.5 * across / area;
    answer.stress_MPa = answer.bendingStress_MPa;
    answer.strength_MPa = strength.bending.low;
    answer.factorOfSafety = strength.bending.low / answer.bendingStress_MPa;
    double atMost = strength.bending.high / answer.bendingStress_MPa;
    if (strength.shear) {
        answer.shearJudged = true;
        const double factor = strength.shear->low / answer.shearStress_MPa;
        atMost = std::min(atMost, strength.shear->high / answer.shearStress_MPa);
        if (factor < answer.factorOfSafety) {
            answer.shearGoverns = true;
            answer.stress_MPa = answer.shearStress_MPa;
            answer.strength_MPa = strength.shear->low;
            answer.factorOfSafety = factor;
        }
    }
    answer.forceToBreak_N = web.force_N * answer.factorOfSafety;
    answer.forceToBreakAtMost_N = web.force_N * atMost;
    return answer;
}

template <typename Material>
Result<WebStrength> judged(const WebCase& web, const Material& material)
{
    if (const auto error = caseFault(web)) return *error;
    if (const auto error = strengthFault(material)) return *error;
    return judge(web, grainStrength(material, web.grainAngle));
}

}  // namespace

Result<WebStrength> webStrength(const WebCase& web, const Wood& wood)
{
    return judged(web, wood);
}

Result<WebStrength> webStrength(const WebCase& web, const Panel& panel)
{
    return judged(web, panel);
}

}  // namespace lidwright
