#include "core/io/build/build_steps.h"

#include "core/io/build/step_list.h"
#include "core/io/plan/plan_file.h"

#include <cstdint>

namespace lidwright {

std::vector<BuildStep> buildSteps(const Plan& plan, const Layout& layout)
{
    steps::StepList out;
    const steps::StepInput in{plan, layout};
    steps::addBoxAndLid(in, out);
    steps::addStick(in, out);
    steps::addBoardAndHead(in, out);
    steps::addTogether(in, out);
    steps::addStringsAndSetUp(in, out);
    return out.take();
}

std::vector<Sentence> generalCautions()
{
    return {{"This sheet does not replace the instructions of tools' and materials' makers, local rules, or "
             "licensed "
             "practice where work asks for it: they go first.",
             {}},
            {"Know where the first-aid kit and the extinguisher are. Work rested, in good light, and not "
             "alone with "
             "machines.",
             {}},
            {steps::kDustCaution, {}},
            {"Glues and finishes: air the room, gloves, and what their sheets say.", {}},
            {"Rosewood (Dalbergia) is in CITES Appendix II: trade in it is controlled, finished instruments "
             "are exempt "
             "(from memory; check before you buy or sell).",
             {}}};
}

std::string planFingerprint(const Plan& plan)
{
    constexpr std::uint64_t kOffset = 14695981039346656037ULL;
    constexpr std::uint64_t kPrime = 1099511628211ULL;
    std::uint64_t hash = kOffset;
    for (const char c : writePlan(plan)) {
        hash ^= static_cast<unsigned char>(c);
        hash *= kPrime;
    }
    constexpr char kDigits[] = "0123456789abcdef";
    std::string out(16, '0');
    for (std::size_t i = 16; i-- > 0; hash >>= 4U)
        out[i] = kDigits[hash & 15U];
    return out;
}

}  // namespace lidwright
