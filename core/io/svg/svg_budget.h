#pragma once

#include "core/base/result.h"
#include "core/io/svg/svg_reader.h"

#include <cstddef>
#include <optional>
#include <utility>

namespace lidwright::svg {

/// Counts what a drawing costs; once a limit is passed, everything that asks stops and the error stands.
class Budget {
public:
    bool broken() const { return m_error.has_value(); }
    const std::optional<Error>& error() const { return m_error; }

    bool elements(std::size_t count)
    {
        return spend(m_elements, count, kSvgElementLimit, "more than 200,000 elements, clones counted",
                     "simplify the drawing or leave out part of it");
    }
    bool points(std::size_t count)
    {
        return spend(m_points, count, kSvgPointLimit, "more than 2,000,000 points",
                     "simplify the outlines in the drawing program");
    }
    bool flatPoints(std::size_t count)
    {
        return spend(m_flatPoints, count, kSvgFlatPointLimit,
                     "more than 6,000,000 points once its curves are divided",
                     "simplify the outlines in the drawing program");
    }
    bool styleTests(std::size_t count)
    {
        return spend(m_styleTests, count, kSvgStyleTestLimit, "too many style rules for so many elements",
                     "save it as plain SVG without a style sheet");
    }
    bool textRuns(std::size_t count)
    {
        return spend(m_textRuns, count, kSvgTextLimit, "more than 20,000 different pieces of text",
                     "turn text into outlines (paths) in the drawing program, or leave out part of it");
    }
    bool depth(int levels)
    {
        if (levels <= kSvgDepthLimit) return !broken();
        fail("more than 512 elements inside one another", "ungroup the drawing");
        return false;
    }
    void tangle()
    {
        fail("its outlines cross one another more often than can be united",
             "unite or simplify the shapes in the drawing program");
    }
    void fail(const char* what, const char* mend)
    {
        if (!m_error) m_error = Error{what, {}, mend};
    }

private:
    std::size_t m_elements = 0;
    std::size_t m_points = 0;
    std::size_t m_flatPoints = 0;
    std::size_t m_styleTests = 0;
    std::size_t m_textRuns = 0;
    std::optional<Error> m_error;

    bool spend(std::size_t& spent, std::size_t count, std::size_t limit, const char* what, const char* mend)
    {
        spent += count;
        if (spent > limit) fail(what, mend);
        return !broken();
    }
};

}  // namespace lidwright::svg
