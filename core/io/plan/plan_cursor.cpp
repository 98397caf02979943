#include "core/io/plan/plan_cursor.h"

#include "core/base/length_text.h"
#include "core/geometry/region.h"

#include <cmath>

namespace lidwright {
namespace {

bool withinLimit(Point p)
{
    return std::abs(p.x) <= kCoordinateLimit && std::abs(p.y) <= kCoordinateLimit;
}

}  // namespace

void PlanCursor::fail(const std::string& place, std::string what, std::string mend, int position)
{
    if (m_error) return;
    const std::string where = place.empty() ? m_fileName : m_fileName + ", " + place;
    m_error = Error{std::move(what), where, std::move(mend), position};
}

const json::Value::Object* PlanCursor::object(const json::Value& value, const PlanPath& path)
{
    const auto* found = value.as<json::Value::Object>();
    if (found == nullptr) fail(path.shown, "a group of keys in braces { } is needed here");
    return found;
}

const json::Value::Array* PlanCursor::array(const json::Value& value, const PlanPath& path)
{
    const auto* found = value.as<json::Value::Array>();
    if (found == nullptr) fail(path.shown, "a list in brackets [ ] is needed here");
    return found;
}

void PlanCursor::readText(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                          std::string& out)
{
    const json::Value* value = json::find(object, name);
    if (value == nullptr) return;
    if (const auto* text = value->as<std::string>())
        out = *text;
    else
        fail(path.member(name).shown, "a text is needed here", "put it in quotation marks");
}

void PlanCursor::readFlag(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                          bool& out)
{
    const json::Value* value = json::find(object, name);
    if (value == nullptr) return;
    if (const auto* flag = value->as<bool>())
        out = *flag;
    else
        fail(path.member(name).shown, "true or false is needed here");
}

void PlanCursor::readMeasure(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                             double& out)
{
    const json::Value* value = json::find(object, name);
    if (value == nullptr) return;
    const auto number = json::number(*value);
    if (!number || *number < 0) {
        fail(path.member(name).shown, "a number that is not negative is needed here");
        return;
    }
    out = *number;
}

void PlanCursor::readWhole(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                           std::uint64_t most, std::uint64_t& out)
{
    const json::Value* value = json::find(object, name);
    if (value == nullptr) return;
    const auto* whole = value->as<std::uint64_t>();
    if (whole == nullptr || *whole > most) {
        fail(path.member(name).shown, "a whole number from 0 to " + std::to_string(most) + " is needed here");
        return;
    }
    out = *whole;
}

Ring PlanCursor::ring(const json::Value& value, const PlanPath& path)
{
    constexpr std::size_t kLeastPoints = 3;
    const auto* points = value.as<json::Value::Array>();
    if (points == nullptr || points->size() < kLeastPoints) {
        fail(path.shown, "an outline needs a list of at least three points", "write [[0,0],[10,0],[10,10]]");
        return {};
    }
    Ring ring;
    ring.reserve(points->size());
    for (std::size_t i = 0; i < points->size(); ++i) {
        const auto* point = (*points)[i].as<Point>();
        if (point == nullptr) {
            fail(path.item(i).shown, "a point is two numbers in brackets", "write [12.5,-3]");
            return {};
        }
        if (!withinLimit(*point)) {
            fail(path.item(i).shown,
                 "the point lies more than " + decimalNumber(kCoordinateLimit, 0) + " mm from the origin",
                 "outlines are in millimetres");
            return {};
        }
        ring.push_back(*point);
    }
    return ring;
}

}  // namespace lidwright
