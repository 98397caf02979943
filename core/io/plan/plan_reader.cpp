#include "core/base/length_text.h"
#include "core/io/plan/drawing_reader.h"
#include "core/io/plan/json_tree.h"
#include "core/io/plan/part_members.h"
#include "core/io/plan/plan_cursor.h"
#include "core/io/plan/plan_file.h"

#include <memory>

namespace lidwright {
namespace {

constexpr const char* kFormatName = "lidwright-plan";

/// Refuses other kinds of files and newer formats, as soon as format and version have been seen.
class Header {
public:
    std::optional<Error> check(const std::string& name, const json::Value& value)
    {
        if (name == "format") return checkFormat(value);
        if (name == "version") m_version = value;
        if (name == "version" || name == "format") return checkVersion();
        return std::nullopt;
    }

    /// What is missing once all has been read.
    std::optional<Error> missing() const
    {
        if (!m_format) return Error{"this is not a plan of Lidwright", "format", ""};
        if (!m_version)
            return Error{"the version of the format is missing", "version", "write \"version\": 1"};
        return std::nullopt;
    }

private:
    bool m_format = false;
    std::optional<json::Value> m_version;

    std::optional<Error> checkFormat(const json::Value& value)
    {
        const auto* word = value.as<std::string>();
        if (word == nullptr || *word != kFormatName)
            return Error{"this is not a plan of Lidwright", "format", ""};
        m_format = true;
        return checkVersion();
    }

    std::optional<Error> checkVersion() const
    {
        if (!m_format || !m_version) return std::nullopt;
        const auto* number = m_version->as<std::uint64_t>();
        if (number == nullptr || *number < 1)
            return Error{"the version of the format is a whole number from 1", "version", ""};
        if (*number > static_cast<std::uint64_t>(kPlanFormatVersion))
            return Error{"made by a newer version, format " + std::to_string(*number) +
                             "; this program reads up to " + std::to_string(kPlanFormatVersion),
                         "", "open it with a newer Lidwright; the file is untouched"};
        return std::nullopt;
    }
};

class PlanReader {
public:
    explicit PlanReader(const std::string& fileName) : m_cursor(fileName) {}

    Result<PlanReading> read(std::string_view text)
    {
        Header header;
        const json::Limits limits{kPlanFileLimit, kPlanDepthLimit, kPlanPointLimit, kPlanValueLimit};
        const auto tree = json::parse(text, limits, [&](const std::string& name, const json::Value& value) {
            return header.check(name, value);
        });
        if (!tree) {
            const Error& e = tree.error();
            m_cursor.fail(e.where, e.what, e.mend, e.position);
            return m_cursor.error();
        }
        if (const auto* root = m_cursor.object(*tree, {})) {
            if (const auto missing = header.missing())
                m_cursor.fail(missing->where, missing->what, missing->mend);
            else
                readRoot(*root);
        }
        if (m_cursor.failed()) return m_cursor.error();
        m_plan.unknownKeys = m_cursor.unknown().text();
        return PlanReading{std::move(m_plan), m_cursor.unknown().notes()};
    }

private:
    PlanCursor m_cursor;
    Plan m_plan;

    void readRoot(const json::Value::Object& root)
    {
        std::string units = "mm";
        m_cursor.readText(root, "units", {}, units);
        if (units != "mm") m_cursor.fail("units", "plans are in millimetres", "write \"units\": \"mm\"");
        // In the order in which the writer puts them, so that unknown keys keep theirs.
        std::vector<std::string_view> known = {"format", "version", "units"};
        for (const bool lists : {false, true}) {
            for (const PartInfo& part : parts()) {
                if (part.list != lists) continue;
                known.push_back(part.key);
                const json::Value* value = json::find(root, part.key);
                if (value == nullptr || m_cursor.failed()) continue;
                const PlanPath path = PlanPath{}.member(part.key);
                if (lists)
                    readList(*value, part, path);
                else
                    readSingle(*value, part, path);
            }
        }
        m_cursor.unknown().collect(root, {}, known);
    }

    void readSingle(const json::Value& value, const PartInfo& part, const PlanPath& path)
    {
        const auto* object = m_cursor.object(value, path);
        if (object == nullptr) return;
        auto known = readParameters(*object, part.key, path);
        if (std::string_view(part.key) == "box") {
            known.emplace_back("outline");
            if (const auto* outline = json::find(*object, "outline"))
                readOutline(*outline, path.member("outline"));
        }
        m_cursor.unknown().collect(*object, path, known);
    }

    void readList(const json::Value& value, const PartInfo& part, const PlanPath& path)
    {
        const auto* list = m_cursor.array(value, path);
        if (list == nullptr) return;
        const auto [least, most] = listBounds(part);
        if (list->size() > most) {
            m_cursor.fail(
                path.shown,
                "a list of " + std::to_string(list->size()) + " is longer than " + std::to_string(most),
                "remove some");
            return;
        }
        if (list->size() < least) {
            m_cursor.fail(
                path.shown,
                "a list of " + std::to_string(list->size()) + " is shorter than " + std::to_string(least),
                "add some, or leave the list out");
            return;
        }
        resizeList(m_plan, part, list->size());
        for (std::size_t i = 0; i < list->size() && !m_cursor.failed(); ++i) {
            const PlanPath here = path.item(i);
            const auto* object = m_cursor.object((*list)[i], here);
            if (object == nullptr) return;
            auto known = readParameters(*object, listMemberKey(part, i), here);
            if (std::string_view(part.key) == "art" && !m_cursor.failed()) {
                const auto more = drawingKeys(*object);
                known.insert(known.end(), more.begin(), more.end());
                readDrawing(m_cursor, *object, here, m_plan, i);
            }
            m_cursor.unknown().collect(*object, here, known);
        }
    }

    /// Sets what the object names and gives all names that the catalogue has for it.
    std::vector<std::string_view> readParameters(const json::Value::Object& object, std::string_view partKey,
                                                 const PlanPath& path)
    {
        std::vector<std::string_view> names;
        for (const ParameterRef& ref : parametersOf(m_plan, partKey)) {
            const std::string_view name = memberName(*ref.parameter);
            names.push_back(name);
            const json::Value* value = json::find(object, name);
            if (value == nullptr || m_cursor.failed()) continue;
            const auto known = parameterValue(*ref.parameter, *value, path.member(name));
            if (!known) continue;
            auto changed = set(m_plan, ref, *known);
            if (changed)
                m_plan = std::move(changed).value();
            else
                m_cursor.fail(path.member(name).shown, changed.error().what, changed.error().mend);
        }
        return names;
    }

    std::optional<ParameterValue> parameterValue(const Parameter& parameter, const json::Value& value,
                                                 const PlanPath& path)
    {
        switch (parameter.quantity) {
            case Quantity::Text:
                if (const auto* text = value.as<std::string>()) return *text;
                m_cursor.fail(path.shown, "a text is needed here", "put it in quotation marks");
                return std::nullopt;
            case Quantity::Flag:
                if (const auto* flag = value.as<bool>()) return *flag ? 1.0 : 0.0;
                m_cursor.fail(path.shown, "true or false is needed here");
                return std::nullopt;
            case Quantity::Choice:
                return choice(parameter, value, path);
            default:
                if (const auto number = json::number(value)) return *number;
                m_cursor.fail(path.shown, "a number is needed here",
                              "write it without quotation marks or unit");
                return std::nullopt;
        }
    }

    std::optional<ParameterValue> choice(const Parameter& parameter, const json::Value& value,
                                         const PlanPath& path)
    {
        const auto* word = value.as<std::string>();
        std::string all;
        for (std::size_t i = 0; i < parameter.choices.size(); ++i) {
            if (word != nullptr && *word == parameter.choices[i].word) return static_cast<double>(i);
            all += (i > 0 ? ", " : "") + std::string(parameter.choices[i].word);
        }
        m_cursor.fail(path.shown, "one of these words is needed here: " + all);
        return std::nullopt;
    }

    void readOutline(const json::Value& value, const PlanPath& path)
    {
        const auto* object = m_cursor.object(value, path);
        if (object == nullptr) return;
        auto outline = std::make_shared<FreeOutline>();
        m_cursor.readText(*object, "source", path, outline->fileName);
        const auto* points = json::find(*object, "points");
        if (points == nullptr)
            m_cursor.fail(path.member("points").shown, "the points of the outline are missing");
        else
            outline->ring = m_cursor.ring(*points, path.member("points"));
        m_plan.box.outline = std::move(outline);
        m_cursor.unknown().collect(*object, path, {"source", "points"});
    }
};

}  // namespace

Result<PlanReading> readPlan(std::string_view text, const std::string& fileName)
{
    return PlanReader(fileName).read(text);
}

}  // namespace lidwright
