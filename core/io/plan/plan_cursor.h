#pragma once

#include "core/base/result.h"
#include "core/io/plan/json_tree.h"
#include "core/io/plan/unknown_keys.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace lidwright {

/// What the readers of a plan file's parts share: the first error, which stops everything, and the keys
/// that were not understood. The functions give nothing where the value is not what is asked for, and the
/// error then stands.
class PlanCursor {
public:
    explicit PlanCursor(std::string fileName) : m_fileName(std::move(fileName)) {}

    bool failed() const { return m_error.has_value(); }
    const Error& error() const { return *m_error; }
    /// Keeps the first error only. `place` is the path within the file, or "line 3, column 7".
    void fail(const std::string& place, std::string what, std::string mend = {}, int position = -1);

    const json::Value::Object* object(const json::Value& value, const PlanPath& path);
    const json::Value::Array* array(const json::Value& value, const PlanPath& path);

    // Members of an object; absent ones leave `out` as it is.
    void readText(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                  std::string& out);
    void readFlag(const json::Value::Object& object, std::string_view name, const PlanPath& path, bool& out);
    /// A number that is not negative.
    void readMeasure(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                     double& out);
    /// A whole number from 0 to `most`.
    void readWhole(const json::Value::Object& object, std::string_view name, const PlanPath& path,
                   std::uint64_t most, std::uint64_t& out);

    /// A ring of at least three points within kCoordinateLimit, exactly as it stands.
    Ring ring(const json::Value& value, const PlanPath& path);

    UnknownKeys& unknown() { return m_unknown; }

private:
    std::string m_fileName;
    std::optional<Error> m_error;
    UnknownKeys m_unknown;
};

}  // namespace lidwright
