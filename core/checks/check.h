#pragma once

#include "core/checks/finding.h"
#include "core/solvers/lid_plate.h"
#include "core/solvers/neck_bow.h"

#include <optional>
#include <span>
#include <vector>

namespace lidwright {

/// What a check reads.
struct CheckInput {
    CheckInput(const Plan& p, const Layout& l) : plan(p), layout(l) {}

    const Plan& plan;
    const Layout& layout;

    /// The neck under its strings, reckoned once for all rules that ask for it. Not from several threads.
    const NeckBow& bow() const
    {
        if (!m_bow) m_bow = neckBow(plan, layout);
        return *m_bow;
    }

    /// False at the steps of a drag with a large drawing: the lid is then not reckoned.
    bool asksLid() const { return !layout.quick || cutPoints(layout) <= kQuickPoints; }
    /// The lid under its strings, reckoned once: coarsely, and more so at the steps of a drag. Not from
    /// several threads.
    const LidAnswer& lid() const
    {
        if (!m_lid)
            m_lid = lidAnswer(plan, layout, bow(), layout.quick ? Fineness::Sketch : Fineness::Coarse);
        return *m_lid;
    }

private:
    mutable std::optional<NeckBow> m_bow;
    mutable std::optional<LidAnswer> m_lid;
};

/// One rule. Each stands in its own source file with its own speaking plan under tests/data/plans.
struct Check {
    const char* id;      ///< stable, "bridge.art"
    const char* title;   ///< marked English, a few words
    const char* source;  ///< where its limits come from; "common practice, no source" where so
    /// Appends its findings, without remedies.
    void (*judge)(const CheckInput&, std::vector<Finding>&);
    /// Proposes remedies for one of its findings that is tight or wrong; null where there is none.
    /// Proposals need not be right: only those that prove themselves are offered.
    std::vector<Remedy> (*propose)(const CheckInput&, const Finding&);
};

/// Every rule in the order in which a maker meets the parts.
std::span<const Check* const> allChecks();

/// All findings, gravest first; fast enough for every step of a drag. No remedies.
std::vector<Finding> check(const Plan& plan, const Layout& layout);

/// Remedies of one finding that were proven by deriving and checking again: afterwards the finding is good
/// (or tight where it was wrong) and nothing else is worse than before. At most four, the smallest change
/// first.
std::vector<Remedy> provenRemedies(const Plan& plan, const Finding& finding, PlacedArtCache* cache = nullptr);

/// check() with the proven remedies filled in.
std::vector<Finding> checkWithRemedies(const Plan& plan, PlacedArtCache* cache = nullptr);

}  // namespace lidwright
