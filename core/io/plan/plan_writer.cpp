#include "core/io/plan/art_words.h"
#include "core/io/plan/json_layout.h"
#include "core/io/plan/json_spelling.h"
#include "core/io/plan/part_members.h"
#include "core/io/plan/plan_file.h"
#include "core/io/plan/unknown_keys.h"

namespace lidwright {
namespace {

std::string ringText(const Ring& ring)
{
    std::string out;
    out.reserve(ring.size() * 40 + 2);
    out += '[';
    for (std::size_t i = 0; i < ring.size(); ++i) {
        out += i > 0 ? ",[" : "[";
        json::appendNumber(out, ring[i].x);
        out += ',';
        json::appendNumber(out, ring[i].y);
        out += ']';
    }
    return out + ']';
}

class PlanWriter {
public:
    explicit PlanWriter(const Plan& plan) : m_plan(plan), m_unknown(plan.unknownKeys) {}

    std::string write()
    {
        m_out.beginObject();
        writeText("format", "lidwright-plan");
        writeNumber("version", kPlanFormatVersion);
        writeText("units", "mm");
        // Lists come last: a drawing's outlines are long, and what stands below them is not found again.
        for (const PartInfo& part : parts())
            if (!part.list) writeSingle(part);
        for (const PartInfo& part : parts())
            if (part.list) writeList(part);
        endObject({});
        return m_out.take();
    }

private:
    const Plan& m_plan;
    UnknownKeys m_unknown;
    json::Layout m_out;

    void writeText(std::string_view key, std::string_view value)
    {
        m_out.key(key);
        m_out.text(value);
    }
    void writeNumber(std::string_view key, double value)
    {
        m_out.key(key);
        m_out.number(value);
    }
    void writeFlag(std::string_view key, bool value)
    {
        m_out.key(key);
        m_out.flag(value);
    }

    /// Puts the keys that were not understood back where they stood, and closes the object.
    void endObject(const PlanPath& path)
    {
        for (const auto& [name, value] : m_unknown.of(path.pointer)) {
            if (m_out.hasKey(name)) continue;
            std::string text;
            json::appendValue(text, *value);
            m_out.key(name);
            m_out.raw(text);
        }
        m_out.endObject();
    }

    void writeParameters(std::string_view partKey)
    {
        for (const ParameterRef& ref : parametersOf(m_plan, partKey)) {
            const Parameter& p = *ref.parameter;
            m_out.key(memberName(p));
            const ParameterValue value = get(m_plan, ref);
            if (const auto* text = std::get_if<std::string>(&value)) {
                m_out.text(*text);
                continue;
            }
            const double number = std::get<double>(value);
            if (p.quantity == Quantity::Flag)
                m_out.flag(number != 0);
            else if (p.quantity == Quantity::Choice)
                m_out.text(p.choices[static_cast<std::size_t>(number)].word);
            else
                m_out.number(number);
        }
    }

    void writeSingle(const PartInfo& part)
    {
        const PlanPath path = PlanPath{}.member(part.key);
        m_out.key(part.key);
        m_out.beginObject();
        writeParameters(part.key);
        if (std::string_view(part.key) == "box" && m_plan.box.outline) writeOutline(path.member("outline"));
        endObject(path);
    }

    void writeOutline(const PlanPath& path)
    {
        m_out.key("outline");
        m_out.beginObject();
        writeText("source", m_plan.box.outline->fileName);
        m_out.key("points");
        m_out.raw(ringText(m_plan.box.outline->ring));
        endObject(path);
    }

    void writeList(const PartInfo& part)
    {
        const PlanPath path = PlanPath{}.member(part.key);
        m_out.key(part.key);
        m_out.beginArray();
        for (std::size_t i = 0; i < listSize(m_plan, part); ++i) {
            m_out.beginObject();
            writeParameters(listMemberKey(part, i));
            if (std::string_view(part.key) == "art") writeDrawing(i, path.item(i));
            endObject(path.item(i));
        }
        m_out.endArray();
    }

    void writeDrawing(std::size_t index, const PlanPath& path)
    {
        const ArtPiece& piece = m_plan.art[index];
        static const Artwork nothing;
        const Artwork& art = piece.art ? *piece.art : nothing;
        for (std::size_t earlier = 0; piece.art && earlier < index; ++earlier) {
            if (m_plan.art[earlier].art != piece.art) continue;
            writeNumber("drawing-of", static_cast<double>(earlier + 1));
            writeUses(piece.uses, art.paints.size());
            return;
        }
        writeSource(art, path.member("source"));
        m_out.key("paints");
        m_out.beginArray();
        for (std::size_t i = 0; i < art.paints.size(); ++i)
            writePaint(art.paints[i], i < piece.uses.size() ? wordOf(piece.uses[i]) : "",
                       path.member("paints").item(i));
        m_out.endArray();
        m_out.key("runs");
        m_out.beginArray();
        for (std::size_t i = 0; i < art.runs.size(); ++i)
            writeRun(art.runs[i], path.member("runs").item(i));
        m_out.endArray();
        m_out.key("messages");
        m_out.beginArray();
        for (const std::string& message : art.messages)
            m_out.text(message);
        m_out.endArray();
    }

    void writeUses(const std::vector<ArtUse>& uses, std::size_t paints)
    {
        m_out.key("uses");
        m_out.beginArray();
        for (std::size_t i = 0; i < uses.size() && i < paints; ++i)
            m_out.text(wordOf(uses[i]));
        m_out.endArray();
    }

    void writeSource(const Artwork& art, const PlanPath& path)
    {
        m_out.key("source");
        m_out.beginObject();
        writeText("name", art.fileName);
        m_out.key("bytes");
        m_out.raw(std::to_string(art.fileSize));
        writeNumber("width", art.width);
        writeNumber("height", art.height);
        endObject(path);
    }

    void writePaint(const ArtPaint& paint, std::string_view use, const PlanPath& path)
    {
        m_out.beginObject();
        writeText("name", paint.name);
        writeText("colour", paint.colour);
        writeFlag("line", paint.line);
        writeNumber("thinnest", paint.thinnest);
        if (!use.empty()) writeText("use", use);
        endObject(path);
    }

    void writeRun(const ArtRun& run, const PlanPath& path)
    {
        m_out.beginObject();
        writeNumber("paint", run.paint);
        writeRegion("painted", run.painted);
        writeRegion("enclosed", run.enclosed);
        endObject(path);
    }

    void writeRegion(std::string_view key, const Region& region)
    {
        m_out.key(key);
        m_out.beginArray();
        for (const Ring& ring : region.rings)
            m_out.raw(ringText(ring));
        m_out.endArray();
    }
};

void addRegion(const Region& region, json::Amount& amount)
{
    amount.values += 1 + region.rings.size();
    for (const Ring& ring : region.rings)
        amount.points += ring.size();
}

}  // namespace

std::string writePlan(const Plan& plan)
{
    return PlanWriter(plan).write();
}

std::optional<Error> beyondPlanLimits(const Plan& plan)
{
    // Parts, their parameters and the lists' own members: far fewer than these.
    constexpr std::size_t kParameters = 10'000;
    constexpr std::size_t kPerPaint = 6;
    json::Amount amount = json::amountOf(UnknownKeys(plan.unknownKeys).all());
    amount.values += kParameters;
    if (plan.box.outline) amount.points += plan.box.outline->ring.size();
    for (std::size_t i = 0; i < plan.art.size(); ++i) {
        amount.values += plan.art[i].uses.size();
        bool shared = plan.art[i].art == nullptr;
        for (std::size_t earlier = 0; earlier < i && !shared; ++earlier)
            shared = plan.art[earlier].art == plan.art[i].art;
        if (shared) continue;
        const Artwork& art = *plan.art[i].art;
        amount.values += kPerPaint * art.paints.size() + art.messages.size();
        for (const ArtRun& run : art.runs) {
            amount.values += 2;
            addRegion(run.painted, amount);
            addRegion(run.enclosed, amount);
        }
    }
    if (amount.points > kPlanPointLimit)
        return Error{"the drawings have " + std::to_string(amount.points) + " points, a plan can keep " +
                         std::to_string(kPlanPointLimit),
                     "art", "simplify the drawings"};
    if (amount.values > kPlanValueLimit)
        return Error{"the drawings have too many outlines and colours for one plan", "art",
                     "simplify the drawings"};
    return std::nullopt;
}

}  // namespace lidwright
