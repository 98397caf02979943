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
        m_steps.push_back({std::move(id), std::move(title), std::move(tools), {}, {}, {}, {}, {}});
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
    /// Nothing of a table without rows.
    void table(StudyTable table, bool check)
    {
        if (!table.rows.empty()) m_steps.back().tables.push_back({std::move(table), check});
    }
    void picture(StepView view, std::string caption)
    {
        m_steps.back().pictures.push_back({view, std::move(caption)});
    }
    void caution(std::string pattern, std::vector<Sentence::Argument> arguments = {})
    {
        m_steps.back().cautions.push_back({std::move(pattern), std::move(arguments)});
    }
    void cautions(const std::vector<Sentence>& all)
    {
        m_steps.back().cautions.insert(m_steps.back().cautions.end(), all.begin(), all.end());
    }
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
void addSupports(const StepInput& in, StepList& out);
void addBoardAndHead(const StepInput& in, StepList& out);
void addNutAndBridge(const StepInput& in, StepList& out);
void addTogether(const StepInput& in, StepList& out);
void addStringsAndSetUp(const StepInput& in, StepList& out);

/// From the outer face of the head-end wall, as makers measure along the box.
inline double behindWall(const Layout& layout, double x)
{
    return x - layout.headWall.outerX;
}

}  // namespace lidwright::steps
