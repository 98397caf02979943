#pragma once

#include "core/solvers/study.h"

#include <limits>

namespace lidwright::testing {

/// Two lines and a row of dots over a neck, with the places that are looked for there.
inline StudyPlot sagPlot()
{
    StudyPlot plot;
    plot.title = "Sag under the strings";
    plot.across = {"Distance from the nut", Quantity::Length};
    plot.up = {"Sag", Quantity::Length};
    StudySeries bare{"Bare neck", {}, false}, stiff{"With a bar", {}, false},
        measured{"At the frets", {}, true};
    for (int i = 0; i <= 60; ++i) {
        const double x = 10.0 * i;
        bare.points.push_back({x, -2.4 * std::sin(x / 600 * 3.14159265)});
        stiff.points.push_back({x, -1.1 * std::sin(x / 600 * 3.14159265)});
        if (i % 6 == 0) measured.points.push_back({x, bare.points.back().y + 0.2});
    }
    plot.series = {bare, stiff, measured};
    plot.guides = {
        {0, "Nut"},      {118, "Head-end wall"}, {126, "Inner face of the wall"}, {312, "Twelfth fret"},
        {570, "Saddle"}, {598, "Tail-end wall"}};
    return plot;
}

/// Everything that a plot should not be, each by its name.
inline std::vector<std::pair<const char*, StudyPlot>> strangePlots()
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const double most = std::numeric_limits<double>::max();
    const auto with = [](std::vector<Point> points, bool dots = false) {
        StudyPlot plot = sagPlot();
        plot.guides.clear();
        plot.series = {{"Only one", std::move(points), dots}};
        return plot;
    };
    std::vector<std::pair<const char*, StudyPlot>> plots{
        {"nothing at all", {}},
        {"no points", with({})},
        {"one point", with({{3, 4}})},
        {"one dot", with({{3, 4}}, true)},
        {"all equal", with({{1, 5}, {2, 5}, {3, 5}})},
        {"all at one place", with({{1, 5}, {1, 6}, {1, 7}}, true)},
        {"no numbers", with({{nan, nan}, {nan, 1}, {2, nan}})},
        {"endless", with({{0, -inf}, {1, inf}, {inf, 0}})},
        {"huge", with({{-most, -most}, {most, most}})},
        {"tiny", with({{0, 0}, {1e-300, 1e-300}})},
        {"zeros", with({{0, 0}, {0, 0}})},
        {"a hair apart", with({{0, 1000}, {1, 1000 + 1e-10}})},
        {"gaps", with({{0, 1}, {1, nan}, {2, 2}, {3, nan}, {4, 1}, {5, 2}})},
        {"backwards", with({{5, 1}, {3, 2}, {1, 3}}, true)},
    };
    StudyPlot guides = sagPlot();
    guides.series.clear();
    guides.guides = {{nan, "Nowhere"}, {inf, "Beyond"}, {1, ""}};
    plots.emplace_back("guides only", guides);
    StudyPlot crowd = sagPlot();
    for (int i = 0; i < 200; ++i) {
        crowd.guides.emplace_back(3.0 * i, "Guide with a rather long name " + std::to_string(i));
        crowd.series.push_back(
            {"Line with a rather long name " + std::to_string(i), {{0, 0}, {600, 0.1 * i}}, false});
    }
    plots.emplace_back("crowd", crowd);
    StudyPlot many = with({});
    for (int i = 0; i < 400'000; ++i)
        many.series[0].points.push_back({i / 100.0, std::sin(0.37 * i)});
    plots.emplace_back("very many points", many);
    return plots;
}

}  // namespace lidwright::testing
