#pragma once

#include "core/io/build/build_steps.h"

#include <string>
#include <utility>
#include <vector>

/// How the steps are written. Private to core/io/build.
namespace lidwright::steps {

/// Adds to the step that was begun last.
class StepList {
public:
    void begin(std::string id, std::string title, std::string tools)
    {
        m_steps.push_back({std::move(id), std::move(title), std::move(tools), {}, {}, {}});
    }
    void work(std::string pattern, std::vector<Sentence::Argument> arguments = {})
    {
        m_steps.back().work.push_back({std::move(pattern), std::move(arguments)});
    }
    /// To work to.
    void to(std::string what, double value, Quantity quantity = Quantity::Length)
    {
        m_steps.back().measures.push_back({std::move(what), {value, quantity}, false});
    }
    /// To work to, and to be measured when it is done.
    void check(std::string what, double value, Quantity quantity = Quantity::Length)
    {
        m_steps.back().measures.push_back({std::move(what), {value, quantity}, true});
    }
    void caution(std::string words) { m_steps.back().cautions.push_back({std::move(words), {}}); }
    std::vector<BuildStep> take() { return std::move(m_steps); }

private:
    std::vector<BuildStep> m_steps;
};

struct StepInput {
    const Plan& plan;
    const Layout& layout;
};

// Each adds the steps of its part of the work, as far as the plan has it.
void addBoxAndLid(const StepInput& in, StepList& out);
void addStick(const StepInput& in, StepList& out);
void addBoardAndHead(const StepInput& in, StepList& out);
void addTogether(const StepInput& in, StepList& out);
void addStringsAndSetUp(const StepInput& in, StepList& out);

// Cautions that come more than once.
inline constexpr const char* kSawCaution =
    "Saws: guards on, eyes and ears covered, small pieces in a clamp or sled, never in the hand; the makers' "
    "instructions "
    "decide. Eyes need side protection where things fly (29 CFR 1910.133(a), read).";
inline constexpr const char* kDustCaution =
    "Dust of wood irritates and some of it causes cancer: oak and beech confirmed, birch, mahogany and "
    "walnut suspected "
    "(ACGIH, as OSHA's sampling pages give it, read). Extract at the tool, wear a mask; the recommended "
    "limit is 1 mg/m\xC2\xB3 "
    "(NIOSH Pocket Guide, read).";

}  // namespace lidwright::steps
