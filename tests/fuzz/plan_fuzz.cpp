// Feeds any bytes to the plan reader. What it accepts must come back from the writer as the same plan, and
// the layout of it must end and be made of numbers.

#include "core/io/plan/plan_file.h"
#include "core/solvers/playing_values.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

using namespace lidwright;

void require(bool holds)
{
    if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const Result<PlanReading> read = readPlan(text, "x.lidplan");
    if (!read) {
        const Error& error = read.error();
        require(!error.what.empty() && error.where.starts_with("x.lidplan"));
        require(error.position <= static_cast<int>(size));
        return 0;
    }
    const std::string written = writePlan(read->plan);
    const Result<PlanReading> again = readPlan(written, "x.lidplan");
    require(again.ok());
    require(again->plan == read->plan);
    require(again->notes == read->notes);
    require(writePlan(again->plan) == written);
    require(!beyondPlanLimits(read->plan));

    for (const DerivedValue& value : allValues(read->plan, derive(read->plan)))
        require(std::isfinite(value.measure.value));
    return 0;
}
