#include "core/plan/row_builders.h"

/// Pickups, pot and socket.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kKinds[] = {{"disc-pickup", "contact pickup, disc"},
                                 {"rod-pickup", "contact pickup, rod"},
                                 {"magnetic-pickup", "magnetic pickup"},
                                 {"pot", "volume pot"},
                                 {"socket", "output socket"}};
constexpr ChoiceWord kPlaces[] = {{"lid", "lid"},
                                  {"neck", "stick's top"},
                                  {"head-wall", "head-end wall"},
                                  {"tail-wall", "tail-end wall"},
                                  {"bass-wall", "bass side wall"},
                                  {"treble-wall", "treble side wall"}};

const Device& device(const Plan& plan, int index)
{
    return plan.wiring[static_cast<std::size_t>(index)];
}
bool flat(const Plan& plan, int index)
{
    return device(plan, index).place == DevicePlace::Lid || device(plan, index).place == DevicePlace::Neck;
}
bool onWall(const Plan& plan, int index)
{
    return !flat(plan, index);
}
bool threaded(const Plan& plan, int index)
{
    return device(plan, index).kind == DeviceKind::Pot || device(plan, index).kind == DeviceKind::Socket;
}
bool oblong(const Plan& plan, int index)
{
    return !device(plan, index).round();
}

template <auto Member>
Parameter size(const char* key, const char* label, Range range, Customary customary, const char* help,
               ActiveTest active = nullptr)
{
    return eachLength<&Plan::wiring, Member>(key, label, range, customary, help, active);
}

}  // namespace

std::vector<Parameter> wiringRows()
{
    return {
        count<&Plan::wiring>("wiring.count", "Parts of the wiring", "How many pickups, pots and sockets."),
        eachChoice<&Plan::wiring, &Device::kind>("wiring.#.kind", "Kind", kKinds, "What it is."),
        eachChoice<&Plan::wiring, &Device::place>("wiring.#.place", "Fixed to", kPlaces,
                                                  "What it is fixed to; it reaches into the box from there."),
        size<&Device::along>(
            "wiring.#.along", "Along", {-1000, 2500}, kNone,
            "Its middle: on lid, stick and side walls from the head-end wall's outer face; on "
            "an end wall from the centre line to the treble side."),
        size<&Device::aside>("wiring.#.aside", "From centre line", {-1000, 1000}, kNone,
                             "Its middle on lid or stick, from the centre line to the treble side.", flat),
        size<&Device::down>("wiring.#.down", "Below the edge", {0, 400}, practice(15, 40),
                            "Its middle on a wall, below the wall's top edge.", onWall),
        zeroForNone(size<&Device::hole>("wiring.#.hole", "Hole", {0, 80}, practice(6, 22),
                                        "Diameter of the hole through lid or wall; 0 where it needs none.")),
        size<&Device::bodyLength>("wiring.#.body-length", "Body length", {1, 200}, practice(15, 80),
                                  "Along the neck, on an end wall across it; of a round one its diameter."),
        size<&Device::bodyWidth>("wiring.#.body-width", "Body width", {1, 200}, practice(3, 40),
                                 "The other way.", oblong),
        size<&Device::bodyDepth>("wiring.#.body-depth", "Body depth", {0.2, 150}, practice(1, 40),
                                 "How far it reaches into the box or the stick; measure it with its lugs."),
        size<&Device::bush>("wiring.#.bush", "Bush length", {0, 60}, practice(6, 12),
                            "Of the threaded bush, from its flange to its end.", threaded),
    };
}

}  // namespace lidwright::rows
