#include "core/io/plan/drawing_reader.h"

#include "core/io/plan/art_words.h"

#include <algorithm>
#include <limits>
#include <memory>

namespace lidwright {
namespace {

constexpr std::string_view kOwnKeys[] = {"source", "paints", "runs", "messages"};
constexpr std::string_view kSharedKeys[] = {"drawing-of", "uses"};

ArtUse readUse(PlanCursor& cursor, const json::Value& value, const PlanPath& path)
{
    const auto* word = value.as<std::string>();
    std::string all;
    for (const ArtUseWord& entry : kArtUseWords) {
        if (word != nullptr && *word == entry.word) return entry.use;
        all += (all.empty() ? "" : ", ") + std::string(entry.word);
    }
    cursor.fail(path.shown, "the use of a paint is one of: " + all);
    return ArtUse::Ignored;
}

void readSource(PlanCursor& cursor, const json::Value& value, const PlanPath& path, Artwork& art)
{
    const auto* object = cursor.object(value, path);
    if (object == nullptr) return;
    cursor.readText(*object, "name", path, art.fileName);
    cursor.readWhole(*object, "bytes", path, std::numeric_limits<std::uint64_t>::max(), art.fileSize);
    cursor.readMeasure(*object, "width", path, art.width);
    cursor.readMeasure(*object, "height", path, art.height);
    cursor.unknown().collect(*object, path, {"name", "bytes", "width", "height"});
}

void readPaint(PlanCursor& cursor, const json::Value& value, const PlanPath& path, Artwork& art,
               std::vector<ArtUse>& uses)
{
    const auto* object = cursor.object(value, path);
    if (object == nullptr) return;
    ArtPaint paint;
    cursor.readText(*object, "name", path, paint.name);
    cursor.readText(*object, "colour", path, paint.colour);
    cursor.readFlag(*object, "line", path, paint.line);
    cursor.readMeasure(*object, "thinnest", path, paint.thinnest);
    art.paints.push_back(std::move(paint));
    if (const auto* use = json::find(*object, "use")) {
        uses.resize(art.paints.size(), ArtUse::Ignored);
        uses.back() = readUse(cursor, *use, path.member("use"));
    }
    cursor.unknown().collect(*object, path, {"name", "colour", "line", "thinnest", "use"});
}

Region readRegion(PlanCursor& cursor, const json::Value::Object& object, std::string_view name,
                  const PlanPath& path)
{
    Region region;
    const json::Value* value = json::find(object, name);
    if (value == nullptr) return region;
    const auto* rings = cursor.array(*value, path.member(name));
    if (rings == nullptr) return region;
    region.rings.reserve(rings->size());
    for (std::size_t i = 0; i < rings->size() && !cursor.failed(); ++i)
        region.rings.push_back(cursor.ring((*rings)[i], path.member(name).item(i)));
    return region;
}

void readRun(PlanCursor& cursor, const json::Value& value, const PlanPath& path, Artwork& art)
{
    const auto* object = cursor.object(value, path);
    if (object == nullptr) return;
    const auto* given = json::find(*object, "paint");
    const auto* paint = given == nullptr ? nullptr : given->as<std::uint64_t>();
    if (paint == nullptr || *paint >= art.paints.size()) {
        cursor.fail(path.member("paint").shown, "the number of one of the drawing's paints is needed here",
                    art.paints.empty() ? "the drawing has no paints"
                                       : "use 0 to " + std::to_string(art.paints.size() - 1));
        return;
    }
    ArtRun run;
    run.paint = static_cast<int>(*paint);
    run.painted = readRegion(cursor, *object, "painted", path);
    run.enclosed = readRegion(cursor, *object, "enclosed", path);
    art.runs.push_back(std::move(run));
    cursor.unknown().collect(*object, path, {"paint", "painted", "enclosed"});
}

void readMessages(PlanCursor& cursor, const json::Value& value, const PlanPath& path, Artwork& art)
{
    const auto* messages = cursor.array(value, path);
    if (messages == nullptr) return;
    for (std::size_t i = 0; i < messages->size(); ++i) {
        const auto* text = (*messages)[i].as<std::string>();
        if (text == nullptr) {
            cursor.fail(path.item(i).shown, "a text is needed here", "put it in quotation marks");
            return;
        }
        art.messages.push_back(*text);
    }
}

void readOwnDrawing(PlanCursor& cursor, const json::Value::Object& object, const PlanPath& path,
                    ArtPiece& piece)
{
    auto art = std::make_shared<Artwork>();
    if (const auto* source = json::find(object, "source"))
        readSource(cursor, *source, path.member("source"), *art);
    if (const auto* paints = json::find(object, "paints")) {
        const PlanPath here = path.member("paints");
        if (const auto* list = cursor.array(*paints, here))
            for (std::size_t i = 0; i < list->size() && !cursor.failed(); ++i)
                readPaint(cursor, (*list)[i], here.item(i), *art, piece.uses);
    }
    const PlanPath here = path.member("runs");
    const auto* runs = json::find(object, "runs");
    if (runs == nullptr) {
        cursor.fail(here.shown, "the outlines of the drawing are missing",
                    "remove this piece of artwork, or take it from a copy of the file");
        return;
    }
    if (const auto* list = cursor.array(*runs, here))
        for (std::size_t i = 0; i < list->size() && !cursor.failed(); ++i)
            readRun(cursor, (*list)[i], here.item(i), *art);
    if (const auto* messages = json::find(object, "messages"))
        readMessages(cursor, *messages, path.member("messages"), *art);
    piece.art = std::move(art);
}

void readSharedDrawing(PlanCursor& cursor, const json::Value::Object& object, const json::Value& of,
                       const PlanPath& path, Plan& plan, std::size_t index)
{
    const PlanPath here = path.member("drawing-of");
    const auto* number = of.as<std::uint64_t>();
    if (number == nullptr || *number < 1 || *number > index) {
        cursor.fail(here.shown, "the number of an earlier piece of artwork is needed here",
                    "pieces are counted from 1");
        return;
    }
    for (const std::string_view own : kOwnKeys)
        if (json::find(object, own) != nullptr)
            cursor.fail(here.shown, "a piece has either a drawing of its own or that of another piece",
                        "remove \"drawing-of\" or \"" + std::string(own) + "\"");
    ArtPiece& piece = plan.art[index];
    piece.art = plan.art[static_cast<std::size_t>(*number) - 1].art;
    const auto* uses = json::find(object, "uses");
    if (uses == nullptr) return;
    const PlanPath usesPath = path.member("uses");
    const auto* list = cursor.array(*uses, usesPath);
    if (list == nullptr) return;
    if (list->size() > piece.art->paints.size()) {
        cursor.fail(usesPath.shown, "more uses than the " + std::to_string(piece.art->paints.size()) +
                                        " paints of the drawing");
        return;
    }
    for (std::size_t i = 0; i < list->size() && !cursor.failed(); ++i)
        piece.uses.push_back(readUse(cursor, (*list)[i], usesPath.item(i)));
}

}  // namespace

void readDrawing(PlanCursor& cursor, const json::Value::Object& object, const PlanPath& path, Plan& plan,
                 std::size_t index)
{
    if (const auto* of = json::find(object, kSharedKeys[0]))
        readSharedDrawing(cursor, object, *of, path, plan, index);
    else
        readOwnDrawing(cursor, object, path, plan.art[index]);
}

std::vector<std::string_view> drawingKeys(const json::Value::Object& object)
{
    if (json::find(object, kSharedKeys[0]) != nullptr)
        return {std::begin(kSharedKeys), std::end(kSharedKeys)};
    return {std::begin(kOwnKeys), std::end(kOwnKeys)};
}

}  // namespace lidwright
