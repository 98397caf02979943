#pragma once

#include "core/solvers/study.h"

namespace lidwright {

/// String by string: tension, share of the breaking load, stiffness, and the pull on the neck in all.
Study stringStudy(const Plan& plan, const Layout& layout);

/// Fret by fret: where it lies, how it is marked out, what the rule's step does to its pitch, how much wire
/// it takes.
Study fretStudy(const Plan& plan, const Layout& layout);

/// String by string and fret by fret: how far the saddle stands from where it would be best, and what that
/// does to the pitch.
Study intonationStudy(const Plan& plan, const Layout& layout);

/// Fret by fret: how high the strings stand.
Study heightStudy(const Plan& plan, const Layout& layout);

/// The neck as a beam under its strings: how far it is lifted, what the wood bears.
Study neckStudy(const Plan& plan, const Layout& layout);
/// What every piece weighs, and where the whole balances.
Study weightStudy(const Plan& plan, const Layout& layout);

}  // namespace lidwright
