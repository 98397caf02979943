#pragma once

#include "core/geometry/narrow_voronoi.h"

#include <vector>

namespace lidwright {

/// A part of a piece of the medial axis along which the clearance changes one way only.
struct NarrowLink {
    int edge = 0;             ///< number in MedialAxis::narrow
    double from = 0, to = 0;  ///< parameters of its arc
    double clearanceFrom = 0, clearanceTo = 0;
    double length = 0;  ///< mm
    int nodeFrom = 0, nodeTo = 0;
};

/// A walk along links, end to end.
struct NarrowPath {
    struct Step {
        int link = 0;
        bool backwards = false;
    };
    std::vector<Step> steps;
    int nodeFrom = 0, nodeTo = 0;
};

/// The part of the medial axis where the clearance is below a level, parted into what connects wide places
/// and the dead ends that hang on it.
class NarrowGraph {
public:
    NarrowGraph(const MedialAxis& axis, double level);

    const std::vector<NarrowLink>& links() const { return m_links; }
    double clearance(int node) const { return m_nodes[static_cast<std::size_t>(node)].clearance; }
    /// The axis goes on beyond this node, at the level.
    bool exit(int node) const { return m_nodes[static_cast<std::size_t>(node)].exit; }

    /// Stretches between exits and junctions from which no dead end is counted, in a fixed order. One that
    /// closes on itself without a junction has the same node at both ends.
    const std::vector<NarrowPath>& branches() const { return m_branches; }

    /// A dead end: the longest path from where it hangs to a corner of the region.
    struct DeadEnd {
        NarrowPath path;
        double forkAlong = 0;  ///< mm along the path to its last fork, 0 where it has none
        bool widens = false;   ///< the clearance rises somewhere on the way outwards
    };
    /// All dead ends, also those that hang on others, which are at least `length` mm long or widen.
    std::vector<DeadEnd> deadEnds(double length) const;
    /// The longest path through each part that has neither an exit nor a ring in it.
    std::vector<NarrowPath> lonePaths() const;

private:
    struct Node {
        double clearance = 0;
        bool exit = false;
        int degree = 0;      ///< links not cut off as dead ends
        int first = 0;       ///< into m_incident
        double reach = 0;    ///< mm, the longest way outwards over dead ends
        int reachLink = -1;  ///< the link with which it begins
        bool widens = false;
        bool removed = false;
    };

    void addLinks(const MedialAxis& axis, double level);
    int addNode(double clearance, bool exit);
    void listIncident();
    void cutDeadEnds();
    void collectBranches();
    NarrowPath follow(int link, bool backwards, std::vector<bool>& used) const;
    DeadEnd outwards(int node, int link, std::vector<std::pair<int, int>>& further) const;
    bool onTree(int link) const { return m_cutChild[static_cast<std::size_t>(link)] >= 0; }
    int other(int link, int node) const;
    Node& node(int i) { return m_nodes[static_cast<std::size_t>(i)]; }
    const Node& node(int i) const { return m_nodes[static_cast<std::size_t>(i)]; }
    const NarrowLink& link(int i) const { return m_links[static_cast<std::size_t>(i)]; }

    std::vector<NarrowLink> m_links;
    std::vector<Node> m_nodes;
    std::vector<int> m_incident;  ///< links by node
    std::vector<int> m_cutChild;  ///< by link: its outer node where it is in a dead end, else -1
    std::vector<int> m_lone;      ///< last nodes of parts that were cut off altogether
    std::vector<NarrowPath> m_branches;
};

}  // namespace lidwright
