#pragma once

#include <string>

namespace lidwright {

enum class FretboardEnd { AtBox, OverLid };

struct Fretboard {
    double blankLength = 450;
    double thickness = 6;
    double widthAtNut = 36;
    double widthAtEnd = 38;
    FretboardEnd end = FretboardEnd::AtBox;
    double overLid = 30;                ///< how far it runs over the lid, where it does
    std::string wood = "black-walnut";  ///< id of a wood in core/materials

    bool operator==(const Fretboard&) const = default;
};

}  // namespace lidwright
