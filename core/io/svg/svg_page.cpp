#include "core/io/svg/svg_page.h"

#include "core/io/svg/svg_length.h"
#include "core/io/svg/svg_viewport.h"
#include "core/io/svg/svg_xml.h"

#include <optional>

namespace lidwright::svg {

namespace {

/// A side of the page; percentages refer to a window that a file does not have and count as not given.
std::optional<Length> side(const pugi::xml_node& root, const char* name)
{
    const auto length = parseLength(attributeOf(root, name));
    return length && length->unit != Unit::Percent ? length : std::nullopt;
}

}  // namespace

Result<Page> readPage(const pugi::xml_node& root, double unitsPerInch)
{
    Page page;
    const auto box = parseViewBox(attributeOf(root, "viewBox"));
    const auto width = side(root, "width"), height = side(root, "height");
    const Error empty{"its page has no size", "width, height or viewBox of the outermost element",
                      "give the page a size in the drawing program"};
    if (box && (box->width <= 0 || box->height <= 0)) return empty;
    if ((width && width->value <= 0) || (height && height->value <= 0)) return empty;

    LengthContext context;
    context.unitsPerInch = unitsPerInch;
    const auto units = [&](const Length& length, Axis axis) { return context.user(length, axis); };
    page.physical = (width && width->physical()) || (height && height->physical());
    page.viewBox = box.has_value();
    if (width) page.width = units(*width, Axis::X);
    if (height) page.height = units(*height, Axis::Y);
    if (box) {
        if (!width && !height) {
            page.width = box->width;
            page.height = box->height;
        } else if (!width) {
            page.width = page.height * box->width / box->height;
        } else if (!height) {
            page.height = page.width * box->height / box->width;
        }
        page.bounded = true;
        page.map = viewBoxMap(*box, page.width, page.height, attributeOf(root, "preserveAspectRatio"));
        page.viewportWidth = box->width;
        page.viewportHeight = box->height;
    } else if (width && height) {
        page.bounded = true;
        page.viewportWidth = page.width;
        page.viewportHeight = page.height;
    }
    if (!isFinite(page.map) || page.map.determinant() == 0) return empty;
    return page;
}

}  // namespace lidwright::svg
