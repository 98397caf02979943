#include "core/geometry/narrow_graph.h"

#include <cstddef>
#include <utility>

namespace lidwright {

NarrowGraph::NarrowGraph(const MedialAxis& axis, double level)
{
    addLinks(axis, level);
    listIncident();
    cutDeadEnds();
    collectBranches();
}

int NarrowGraph::addNode(double clearance, bool exit)
{
    m_nodes.emplace_back();
    m_nodes.back().clearance = clearance;
    m_nodes.back().exit = exit;
    return static_cast<int>(m_nodes.size()) - 1;
}

void NarrowGraph::addLinks(const MedialAxis& axis, double level)
{
    std::vector<int> known(axis.nodeClearance.size(), -1);
    const auto nodeAt = [&](int number) {
        if (number < 0) return addNode(0, false);
        int& n = known[static_cast<std::size_t>(number)];
        if (n < 0) n = addNode(axis.nodeClearance[static_cast<std::size_t>(number)], false);
        return n;
    };
    const auto clearanceAt = [&](int number) {
        return number < 0 ? 0 : axis.nodeClearance[static_cast<std::size_t>(number)];
    };
    for (std::size_t i = 0; i < axis.narrow.size(); ++i) {
        const AxisEdge& e = axis.narrow[i];
        const AxisArc& arc = e.arc;
        const double df = clearanceAt(e.nodeFrom), dt = clearanceAt(e.nodeTo), low = arc.lowest();
        const auto add = [&](double u, double du, int nu, double v, double dv, int nv) {
            m_links.push_back({static_cast<int>(i), u, v, du, dv, arc.lengthBetween(u, v), nu, nv});
        };
        // From the lowest place to either end, as far as it is narrow.
        const auto upTo = [&](double dl, int nl, double end, double de, int number) {
            if (de < level) {
                add(low, dl, nl, end, de, nodeAt(number));
            } else {
                const double at = arc.reaching(level, low, end);
                add(low, dl, nl, at, level, addNode(level, true));
            }
        };
        if (low == arc.from() || df <= arc.clearance(low)) {
            upTo(df, nodeAt(e.nodeFrom), arc.to(), dt, e.nodeTo);
        } else if (low == arc.to() || dt <= arc.clearance(low)) {
            // Kept in the direction of the arc's own end; the walk along it does not mind.
            if (df < level) {
                add(arc.to(), dt, nodeAt(e.nodeTo), arc.from(), df, nodeAt(e.nodeFrom));
            } else {
                add(arc.to(), dt, nodeAt(e.nodeTo), arc.reaching(level, arc.to(), arc.from()), level,
                    addNode(level, true));
            }
        } else {
            const double dl = arc.clearance(low);
            const int neck = addNode(dl, false);
            upTo(dl, neck, arc.from(), df, e.nodeFrom);
            upTo(dl, neck, arc.to(), dt, e.nodeTo);
        }
    }
}

void NarrowGraph::listIncident()
{
    for (const NarrowLink& l : m_links) {
        ++node(l.nodeFrom).degree;
        ++node(l.nodeTo).degree;
    }
    int sum = 0;
    for (Node& n : m_nodes) {
        n.first = sum;
        sum += n.degree;
    }
    m_incident.resize(static_cast<std::size_t>(sum));
    std::vector<int> filled(m_nodes.size(), 0);
    const auto put = [&](int n, int l) {
        m_incident[static_cast<std::size_t>(node(n).first + filled[static_cast<std::size_t>(n)]++)] = l;
    };
    for (std::size_t i = 0; i < m_links.size(); ++i) {
        put(m_links[i].nodeFrom, static_cast<int>(i));
        put(m_links[i].nodeTo, static_cast<int>(i));
    }
}

int NarrowGraph::other(int l, int n) const
{
    return link(l).nodeFrom == n ? link(l).nodeTo : link(l).nodeFrom;
}

void NarrowGraph::cutDeadEnds()
{
    m_cutChild.assign(m_links.size(), -1);
    std::vector<int> queue;
    for (std::size_t i = 0; i < m_nodes.size(); ++i) {
        if (m_nodes[i].degree == 1 && !m_nodes[i].exit) queue.push_back(static_cast<int>(i));
    }
    for (std::size_t head = 0; head < queue.size(); ++head) {
        const int outer = queue[head];
        Node& leaf = node(outer);
        leaf.removed = true;
        if (leaf.degree == 0) {
            m_lone.push_back(outer);
            continue;
        }
        const std::size_t last = static_cast<std::size_t>(outer) + 1 < m_nodes.size()
                                     ? static_cast<std::size_t>(node(outer + 1).first)
                                     : m_incident.size();
        for (auto k = static_cast<std::size_t>(leaf.first); k < last; ++k) {
            const int l = m_incident[k];
            if (onTree(l)) continue;
            m_cutChild[static_cast<std::size_t>(l)] = outer;
            const int inner = other(l, outer);
            Node& root = node(inner);
            const double reach = leaf.reach + link(l).length;
            if (reach > root.reach || root.reachLink < 0) {
                root.reach = reach;
                root.reachLink = l;
            }
            root.widens = root.widens || leaf.widens || leaf.clearance > root.clearance;
            --leaf.degree;
            if (--root.degree == 1 && !root.exit) queue.push_back(inner);
            // The other end of the last link of all is in the queue already.
            break;
        }
    }
}

void NarrowGraph::collectBranches()
{
    std::vector<bool> used(m_links.size(), false);
    const auto ends = [&](int n) { return node(n).exit || node(n).degree != 2; };
    for (int pass = 0; pass < 2; ++pass) {
        for (std::size_t i = 0; i < m_links.size(); ++i) {
            const int l = static_cast<int>(i);
            if (used[i] || onTree(l)) continue;
            // First what begins at an exit or a junction; what is left closes on itself.
            if (pass == 1 || ends(link(l).nodeFrom)) {
                m_branches.push_back(follow(l, false, used));
            } else if (ends(link(l).nodeTo)) {
                m_branches.push_back(follow(l, true, used));
            }
        }
    }
}

NarrowPath NarrowGraph::follow(int l, bool backwards, std::vector<bool>& used) const
{
    NarrowPath path;
    path.nodeFrom = backwards ? link(l).nodeTo : link(l).nodeFrom;
    int n = path.nodeFrom;
    for (;;) {
        used[static_cast<std::size_t>(l)] = true;
        path.steps.push_back({l, link(l).nodeFrom != n});
        n = other(l, n);
        if (n == path.nodeFrom || node(n).exit || node(n).degree != 2) break;
        const std::size_t last = static_cast<std::size_t>(n) + 1 < m_nodes.size()
                                     ? static_cast<std::size_t>(node(n + 1).first)
                                     : m_incident.size();
        int next = -1;
        for (auto k = static_cast<std::size_t>(node(n).first); k < last; ++k) {
            const int m = m_incident[k];
            if (!onTree(m) && !used[static_cast<std::size_t>(m)]) next = m;
        }
        if (next < 0) break;
        l = next;
    }
    path.nodeTo = n;
    return path;
}

NarrowGraph::DeadEnd NarrowGraph::outwards(int n, int l, std::vector<std::pair<int, int>>& further) const
{
    DeadEnd end;
    end.path.nodeFrom = n;
    double along = 0;
    for (;;) {
        end.path.steps.push_back({l, link(l).nodeFrom != n});
        const int outer = other(l, n);
        end.widens = end.widens || node(outer).clearance > node(n).clearance;
        along += link(l).length;
        n = outer;
        const int longest = node(n).reachLink;
        if (longest < 0) break;
        const std::size_t last = static_cast<std::size_t>(n) + 1 < m_nodes.size()
                                     ? static_cast<std::size_t>(node(n + 1).first)
                                     : m_incident.size();
        for (auto k = static_cast<std::size_t>(node(n).first); k < last; ++k) {
            const int m = m_incident[k];
            if (m == longest || m == l) continue;
            end.forkAlong = along;
            further.emplace_back(n, m);
        }
        l = longest;
    }
    end.path.nodeTo = n;
    return end;
}

std::vector<NarrowGraph::DeadEnd> NarrowGraph::deadEnds(double length) const
{
    // Where dead ends hang: on nodes that were not cut off.
    std::vector<std::pair<int, int>> roots;
    for (std::size_t i = 0; i < m_links.size(); ++i) {
        const int outer = m_cutChild[i];
        if (outer < 0) continue;
        const int inner = other(static_cast<int>(i), outer);
        if (!node(inner).removed) roots.emplace_back(inner, static_cast<int>(i));
    }
    std::vector<DeadEnd> ends;
    std::vector<std::pair<int, int>> further;
    while (!roots.empty()) {
        const auto [n, l] = roots.back();
        roots.pop_back();
        const int outer = other(l, n);
        const bool widens = node(outer).widens || node(outer).clearance > node(n).clearance;
        if (!widens && link(l).length + node(outer).reach < length) continue;
        further.clear();
        DeadEnd end = outwards(n, l, further);
        roots.insert(roots.end(), further.begin(), further.end());
        ends.push_back(std::move(end));
    }
    return ends;
}

std::vector<NarrowPath> NarrowGraph::lonePaths() const
{
    std::vector<NarrowPath> paths;
    std::vector<std::pair<int, int>> ways, ignored;
    for (const int top : m_lone) {
        // The longest path through a tree is, at some node of it, the two longest ways outwards.
        double best = -1;
        int bestNode = top, bestSecond = -1;
        std::vector<std::pair<int, int>> nodes{{top, -1}};
        while (!nodes.empty()) {
            const auto [n, from] = nodes.back();
            nodes.pop_back();
            const std::size_t last = static_cast<std::size_t>(n) + 1 < m_nodes.size()
                                         ? static_cast<std::size_t>(node(n + 1).first)
                                         : m_incident.size();
            double second = 0;
            int secondLink = -1;
            for (auto k = static_cast<std::size_t>(node(n).first); k < last; ++k) {
                const int l = m_incident[k];
                if (l == from) continue;
                const int outer = other(l, n);
                nodes.emplace_back(outer, l);
                const double reach = link(l).length + node(outer).reach;
                if (l != node(n).reachLink && reach > second) {
                    second = reach;
                    secondLink = l;
                }
            }
            if (node(n).reachLink >= 0 && node(n).reach + second > best) {
                best = node(n).reach + second;
                bestNode = n;
                bestSecond = secondLink;
            }
        }
        if (node(bestNode).reachLink < 0) continue;
        NarrowPath path = outwards(bestNode, node(bestNode).reachLink, ignored).path;
        if (bestSecond >= 0) {
            const NarrowPath way = outwards(bestNode, bestSecond, ignored).path;
            NarrowPath whole;
            whole.nodeFrom = way.nodeTo;
            for (auto step = way.steps.rbegin(); step != way.steps.rend(); ++step)
                whole.steps.push_back({step->link, !step->backwards});
            whole.steps.insert(whole.steps.end(), path.steps.begin(), path.steps.end());
            whole.nodeTo = path.nodeTo;
            path = std::move(whole);
        }
        paths.push_back(std::move(path));
    }
    return paths;
}

}  // namespace lidwright
