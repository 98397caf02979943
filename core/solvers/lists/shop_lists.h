#pragma once

#include "core/solvers/study.h"

namespace lidwright {

/// What the shop works by: the lists of a plan, told as studies, so that window, command line and CSV follow.
/// Fret and string tables are the studies "frets" and "strings".
const std::vector<StudyEntry>& shopLists();

/// What goes to the bench as tables: shopLists(), and the studies of frets and strings.
const std::vector<StudyEntry>& benchLists();

/// studies() and then shopLists().
const std::vector<StudyEntry>& allSubjects();

/// Every piece of wood and panel once: finished and rough size, grain, from which stock.
Study cutList(const Plan& plan, const Layout& layout);
/// Every piece of stock that is cut up: what is cut where, saw cuts, what is left. The rows under a piece of
/// stock add up to its own area.
Study stockList(const Plan& plan, const Layout& layout);
/// Every hole and slot: where, how wide, how deep, in what.
Study holeList(const Plan& plan, const Layout& layout);
/// Where the stick is lowered: stations, depths and the router's passes.
Study reliefList(const Plan& plan, const Layout& layout);
/// What is bought beside the wood at hand, with prices where the plan has them, and their sum.
Study hardwareList(const Plan& plan, const Layout& layout);

}  // namespace lidwright
