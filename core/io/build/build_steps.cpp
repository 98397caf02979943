#include "core/io/build/build_steps.h"

#include "core/io/build/cautions.h"
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
    steps::addSupports(in, out);
    steps::addBoardAndHead(in, out);
    steps::addNutAndBridge(in, out);
    steps::addTogether(in, out);
    steps::addStringsAndSetUp(in, out);
    return out.take();
}

std::vector<Sentence> generalCautions(const Plan& plan)
{
    std::vector<Sentence> out{
        {"This sheet does not replace the instructions of tools' and materials' makers, local rules, or "
         "licensed practice where work asks for it: they go first.",
         {}},
        {"Know where the first-aid kit and the extinguisher are. Work rested, in good light, and not alone "
         "with machines (common practice, no source).",
         {}},
        {"Eyes: protection with shields at the sides wherever something can fly (29 CFR 1910.133(a)(1)-(2), "
         "read). Ears at machines; no loose sleeves, rings or open hair near what turns (common practice, no "
         "source).",
         {}}};
    for (Sentence& dust : steps::dustCautions(steps::materialsOf(plan)))
        out.push_back(std::move(dust));
    out.push_back(
        {"The law's limit for dust at work may be far higher than what is recommended: in the United States "
         "15 mg/m\xC2\xB3 in all and 5 of what reaches the lungs (OSHA, as the NIOSH Pocket Guide gives it, "
         "read).",
         {}});
    out.push_back(
        {"Glues and finishes: air the room, gloves, and what their sheets say (common practice, no "
         "source).",
         {}});
    out.push_back(
        {"Nothing in this instrument is ever connected to the mains; equipment that is, only by "
         "its maker's instructions and by those who are licensed for it.",
         {}});
    return out;
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
