#pragma once

#include "core/plan/artwork.h"

#include <string_view>

namespace lidwright {

/// How plan files spell the use of a paint.
struct ArtUseWord {
    ArtUse use;
    std::string_view word;
};
inline constexpr ArtUseWord kArtUseWords[] = {{ArtUse::Cut, "cut"},
                                              {ArtUse::CutInside, "cut-inside"},
                                              {ArtUse::Engraved, "engraved"},
                                              {ArtUse::Wood, "wood"},
                                              {ArtUse::Ignored, "ignored"}};

constexpr std::string_view wordOf(ArtUse use)
{
    for (const ArtUseWord& entry : kArtUseWords)
        if (entry.use == use) return entry.word;
    return "ignored";
}

}  // namespace lidwright
