#include "app/commandline/fineness_argument.h"

#include <algorithm>

namespace lidwright {

Result<Fineness> finenessOf(const Arguments& arguments, Fineness usual)
{
    const auto wanted = arguments.value("--fineness");
    if (!wanted) return usual;
    constexpr Fineness kAll[] = {Fineness::Coarse, Fineness::Usual, Fineness::Fine};
    const auto found =
        std::find_if(std::begin(kAll), std::end(kAll), [&](Fineness f) { return *wanted == word(f); });
    if (found == std::end(kAll))
        return Error{"there is no such fineness", *wanted, "known are coarse, usual and fine"};
    return *found;
}

}  // namespace lidwright
