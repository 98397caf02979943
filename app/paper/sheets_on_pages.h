#pragma once

#include "app/paper/sheet_tiles.h"

#include "core/base/result.h"
#include "core/drawing/template_sheets.h"

#include <QStringList>

#include <vector>

namespace lidwright {

/// A template, or several that share their pages.
struct LaidSheet {
    TemplateKind kind = TemplateKind::Lid;  ///< the first of them
    QStringList names;                      ///< of all of them, for people
    std::shared_ptr<const Sheet> drawing;   ///< null of the overview, which has a page of its own
    std::optional<TiledSheet> tiles;
};

/// Lays the templates on as few pages as these rules find:
/// - a drawing that is smaller without its notes has them in a free place of its own pages, otherwise they
///   share a page with small templates;
/// - long drawings that are one row of pages lie under one another on the same pages;
/// - small ones share pages (packOnPages()).
/// What fits on one page is never split. The error says which template does not fit on this paper.
Result<std::vector<LaidSheet>> laidOnPages(std::vector<LaidSheet> sheets, const TilePaper& paper,
                                           const UnitStyle& style);

}  // namespace lidwright
