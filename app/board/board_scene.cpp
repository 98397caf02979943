#include "app/board/board_scene.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace lidwright {

namespace {

Bounds boundsOfElement(const Element& element)
{
    if (const auto* s = std::get_if<Stroke>(&element.what)) return bounds(s->points);
    if (const auto* f = std::get_if<Fill>(&element.what)) return bounds(f->ring);
    if (const auto* t = std::get_if<Text>(&element.what)) return bounds(std::vector<Point>{t->at});
    const auto& d = std::get<Dimension>(element.what);
    return bounds(std::vector<Point>{d.a, d.b});
}

bool isArea(const Element& e)
{
    return std::holds_alternative<Fill>(e.what);
}
bool isDrawn(const Element& e)
{
    return isArea(e) || std::holds_alternative<Stroke>(e.what);
}

/// Rank of a part key: the place of its first word in the catalogue, then its number.
std::pair<std::size_t, int> rank(const std::string& part)
{
    const std::size_t dot = part.find('.');
    const std::string first = part.substr(0, dot);
    std::size_t i = 0;
    for (const PartInfo& info : parts()) {
        if (first == info.key) break;
        ++i;
    }
    return {i, dot == std::string::npos ? 0 : std::atoi(part.c_str() + dot + 1)};
}

}  // namespace

BoardScene::BoardScene(BoardSheet board) : m_board(std::move(board))
{
    m_bounds.reserve(m_board.sheet.elements.size());
    for (const Element& e : m_board.sheet.elements)
        m_bounds.push_back(boundsOfElement(e));
}

const PlacedView* BoardScene::placed(View view) const
{
    for (const PlacedView& v : m_board.views)
        if (v.view == view) return &v;
    return nullptr;
}

const PlacedView* BoardScene::viewAt(Point sheet, double reach) const
{
    for (const PlacedView& v : m_board.views)
        if (v.extent.contains(sheet)) return &v;
    for (const PlacedView& v : m_board.views)
        if (v.extent.grown(reach).contains(sheet)) return &v;
    return nullptr;
}

const PlacedView* BoardScene::lidView() const
{
    const PlacedView* top = placed(View::Top);
    return top ? top : placed(View::Under);
}

std::vector<std::string> BoardScene::partsInOrder() const
{
    std::vector<std::string> found;
    const std::string* last = nullptr;
    for (const Element& e : m_board.sheet.elements) {
        // Elements of one part come in runs: most are known by the one before.
        if (e.part.empty() || !isDrawn(e) || (last && *last == e.part)) continue;
        last = &e.part;
        if (std::find(found.begin(), found.end(), e.part) == found.end()) found.push_back(e.part);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const std::string& a, const std::string& b) { return rank(a) < rank(b); });
    return found;
}

const PlacedView* BoardScene::viewOf(const std::string& part) const
{
    for (const bool areas : {true, false}) {
        for (const PlacedView& view : m_board.views) {
            for (std::size_t i = 0; i < m_bounds.size(); ++i) {
                const Element& e = m_board.sheet.elements[i];
                if (e.part == part && (areas ? isArea(e) : isDrawn(e)) &&
                    view.extent.contains(m_bounds[i].centre()))
                    return &view;
            }
        }
    }
    return nullptr;
}

Bounds BoardScene::extentOf(const std::string& part, const PlacedView& view) const
{
    for (const bool areas : {true, false}) {
        Bounds all;
        for (std::size_t i = 0; i < m_bounds.size(); ++i) {
            const Element& e = m_board.sheet.elements[i];
            if (e.part == part && (areas ? isArea(e) : isDrawn(e)) &&
                view.extent.contains(m_bounds[i].centre()))
                all.include(m_bounds[i]);
        }
        if (!all.empty()) return all;
    }
    return {};
}

}  // namespace lidwright
