#include "app/commandline/paper_argument.h"

#include "app/paper/paper_size.h"

namespace lidwright {

Result<PaperSize> pagePaperOf(const Arguments& arguments)
{
    const auto name = arguments.value("--size");
    if (!name) return usualPaperSize(QLocale::system());
    const auto named = paperSizeNamed(*name);
    if (!named || *named == PaperSize::Roll)
        return Error{"there is no such choice", "--size " + *name, "known are a4, letter, a3 and tabloid"};
    return *named;
}

}  // namespace lidwright
